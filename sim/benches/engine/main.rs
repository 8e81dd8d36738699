//! How fast the engine is: two jobs against the time it takes to draw their random numbers, against the same job written
//! by hand, on two threads against one, and in growing numbers of loads, loaders and runs.
//!
//! Criterion times each by itself and compares it with the last time. What has a target is timed alternately, at the end:
//! `cargo bench --bench engine -- ratios` makes that part alone. DEVELOPERS.md says how to read it.

#![allow(dead_code, unreachable_pub, reason = "the benches share modules")]
#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a benchmark prints, and ends where it cannot go on"
)]

mod by_hand;
mod floors;
mod growth;
mod jobs;
mod side_by_side;
mod work;

use by_hand::{ByHand, Keep};
use criterion::{BenchmarkId, Criterion, SamplingMode, Throughput};
use floors::{Tables, Usual};
use rayon::ThreadPool;
use side_by_side::{ROUNDS, Side, Target, alternately, heading, line};
use sim::Job;
use std::hint::black_box;
use std::time::Duration;
use work::{SEED, Work};

/// Runs in one go: of one and one as many as a forecast makes, of the yard about as many loads.
const RUNS_OF_ONE_AND_ONE: u32 = 10_000;
const RUNS_OF_THE_YARD: u32 = 1_000;

/// Targets of the one engine, from its goals in instructions a load: 1,200 for one and one, 2,000 for the yard. Where it took 1,582
/// and 2,537, the ratios were 1.28 and 2.91 over the usual floor, and 3.8 over the same by hand.
const ONE_AND_ONE_OVER_FLOOR: f64 = 1.28 * 1_200.0 / 1_582.0;
const YARD_OVER_FLOOR: f64 = 2.91 * 2_000.0 / 2_537.0;
const OVER_BY_HAND: f64 = 3.8 * 1_200.0 / 1_582.0;

/// A job with its floors, and by hand where that is written.
struct Timed<'a> {
    name: &'static str,
    work: Work<'a>,
    usual: Usual,
    tables: Tables,
    hand: Option<ByHand>,
}

impl<'a> Timed<'a> {
    fn new(name: &'static str, pool: &'a ThreadPool, job: &Job, runs: u32) -> Self {
        let tables = Tables::of(&job.chance.loads);
        Self { name, work: Work::new(pool, job, runs), usual: Usual::new(), tables, hand: None }
    }

    /// With the same job by hand, which must come to the same.
    fn and(self, hand: ByHand) -> Self {
        let study = self.work.study();
        let own = hand.runs(SEED, study.runs(), Keep::AccountsAndProgress);
        own.iter().zip(&study.outcomes).for_each(|(own, engine)| own.check(engine));
        Self { hand: Some(hand), ..self }
    }

    fn sides(&self) -> Vec<Side<'_>> {
        let loads = self.work.loads();
        let mut sides = vec![
            Side::new("heapcast", loads, || self.work.go()),
            Side::new("usual floor", loads, move || self.usual.draw(loads)),
            Side::new("table floor", loads, move || self.tables.draw(loads)),
        ];
        if let Some(hand) = &self.hand {
            let runs = self.work.runs() as u32;
            let by_hand = |keep| move || drop(black_box(hand.runs(SEED, runs, keep)));
            sides.push(Side::new("by hand", loads, by_hand(Keep::AccountsAndProgress)));
            sides.push(Side::new("by hand, no progress", loads, by_hand(Keep::Accounts)));
        }
        sides
    }

    fn bench(&self, criterion: &mut Criterion) {
        let mut group = criterion.benchmark_group(self.name);
        group.throughput(Throughput::Elements(self.work.loads()));
        for mut side in self.sides() {
            group.bench_function(side.name, |b| b.iter(&mut side.go));
        }
        group.finish();
    }
}

fn main() {
    let (one, two) = (work::pool(1), work::pool(2));
    let plain = Timed::new("one and one", &one, &jobs::one_and_one(), RUNS_OF_ONE_AND_ONE)
        .and(ByHand::new(&jobs::one_and_one()));
    let yard = Timed::new("the yard", &one, &jobs::yard(), RUNS_OF_THE_YARD);
    let growing = growth::all(&one);

    let mut criterion = Criterion::default()
        .without_plots()
        .sample_size(20)
        .warm_up_time(Duration::from_millis(500))
        .measurement_time(Duration::from_secs(2))
        .configure_from_args();
    plain.bench(&mut criterion);
    yard.bench(&mut criterion);
    growing.iter().for_each(|series| bench_growth(&mut criterion, series));
    criterion.final_summary();

    if side_by_side::wanted() {
        against_floors(&plain, ONE_AND_ONE_OVER_FLOOR);
        against_floors(&yard, YARD_OVER_FLOOR);
        two_threads(&plain.work, &two);
        growing.iter().for_each(show_growth);
    }
}

fn bench_growth(criterion: &mut Criterion, series: &growth::Series<'_>) {
    let mut group = criterion.benchmark_group(series.name);
    group.sample_size(10).sampling_mode(SamplingMode::Flat).measurement_time(Duration::from_millis(500));
    for (n, work) in &series.works {
        group.throughput(Throughput::Elements(work.loads()));
        group.bench_function(BenchmarkId::from_parameter(n), |b| b.iter(|| work.go()));
    }
    group.finish();
}

fn against_floors(timed: &Timed<'_>, most: f64) {
    let sides = timed.sides();
    let names: Vec<&str> = sides.iter().map(|side| side.name).collect();
    let times = alternately(ROUNDS, sides);
    let loads = timed.work.loads() / timed.work.runs();
    heading(&format!("{}: {loads} loads a run, nanoseconds a load", timed.name));
    names.iter().for_each(|name| line(name, times.ns_a_part(name), Target::Open));
    let heapcast_over = |other| times.ratio("heapcast", other);
    line("heapcast / usual floor", heapcast_over("usual floor"), Target::AtMost(most));
    line("heapcast / table floor", heapcast_over("table floor"), Target::Open);
    if timed.hand.is_some() {
        line("heapcast / by hand", heapcast_over("by hand"), Target::AtMost(OVER_BY_HAND));
        line("heapcast / by hand, no progress", heapcast_over("by hand, no progress"), Target::Open);
    }
}

fn two_threads(one: &Work<'_>, pool: &ThreadPool) {
    let two = Work::new(pool, &jobs::one_and_one(), RUNS_OF_ONE_AND_ONE);
    assert_eq!(one.study(), two.study());
    let sides = vec![
        Side::new("one thread", one.loads(), || one.go()),
        Side::new("two threads", two.loads(), || two.go()),
    ];
    let times = alternately(ROUNDS, sides);
    heading("one and one: threads");
    line("one thread / two threads", times.ratio("one thread", "two threads"), Target::AtLeast(1.9));
}

fn show_growth(series: &growth::Series<'_>) {
    let names: Vec<String> = series.works.iter().map(|(n, _)| n.to_string()).collect();
    let sides = series.works.iter().zip(&names);
    let sides = sides.map(|((_, work), name)| Side::new(name, work.loads(), || work.go())).collect();
    let times = alternately(ROUNDS, sides);
    let against = series.against.to_string();
    heading(&format!("{}: time per load over that of {against}", series.name));
    for name in &names {
        let ns = times.ns_a_part(name).middle;
        line(&format!("{name:>9}  {ns:>8.1} ns a load"), times.ratio(name, &against), Target::Open);
    }
}
