//! How long a person waits: the largest of the shipped scenarios simulated, and whole forecasts of 10,000 runs, from the
//! start of the program until all files are written.
//!
//! Of what comes with heapcast, `show-ground` has the most loads (some 870 a run) and nearly every feature. A forecast is
//! timed alternately with its own simulation on as many threads; the difference is all the rest: starting, reading, trying
//! what would help, charts, page, tables, files.

#![allow(dead_code, unreachable_pub, reason = "the benches share modules")]
#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a benchmark prints, and ends where it cannot go on"
)]

#[path = "../../sim/benches/engine/jobs.rs"]
mod jobs;
#[path = "../../sim/benches/engine/side_by_side.rs"]
mod side_by_side;
#[path = "../../sim/benches/engine/work.rs"]
mod work;

use criterion::{Criterion, SamplingMode, Throughput};
use rayon::ThreadPool;
use reports::findings::tries;
use scenarios::{Selection, Texts, read_text};
use side_by_side::{ROUNDS, Side, Target, alternately, heading, line};
use sim::{Job, Plan, relief};
use std::hint::black_box;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;
use work::{SEED, Work};

const ONE_AND_ONE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/speed/one_and_one.toml");
const SHOW_GROUND: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../scenarios/scenarios/show-ground.toml");

/// Runs in one go of the show ground, where the simulation alone is timed.
const RUNS: u32 = 200;

fn main() {
    let all = std::thread::available_parallelism().unwrap().get();
    let (one, many) = (work::pool(1), work::pool(all));
    assert_same_job();
    let show_ground = Work::new(&one, &job(SHOW_GROUND), RUNS);

    let mut criterion = Criterion::default()
        .without_plots()
        .sample_size(10)
        .warm_up_time(Duration::from_millis(500))
        .measurement_time(Duration::from_secs(3))
        .configure_from_args();
    bench_show_ground(&mut criterion, &show_ground);
    bench_forecast(&mut criterion);
    bench_replay(&mut criterion);
    criterion.final_summary();

    if side_by_side::wanted() {
        show_largest(&show_ground);
        show_forecast("one and one", ONE_AND_ONE, &one, ROUNDS, Target::AtMost(0.3));
        show_forecast("one and one", ONE_AND_ONE, &many, ROUNDS, Target::AtMost(0.3));
        show_forecast("show-ground", SHOW_GROUND, &many, 3, Target::Open);
    }
}

fn job(file: &str) -> Job {
    read_text(&std::fs::read_to_string(file).unwrap(), file, Texts::default(), &Selection::default())
        .unwrap()
        .job
}

/// What stands in the file is the job that `engine` times.
fn assert_same_job() {
    let pool = work::pool(1);
    let [written, read] = [jobs::one_and_one(), job(ONE_AND_ONE)].map(|job| {
        let outcomes = Work::new(&pool, &job, 100).study().outcomes;
        outcomes.into_iter().map(|o| (o.loads, o.completion, o.finish, o.progress)).collect::<Vec<_>>()
    });
    assert_eq!(written, read);
}

fn bench_show_ground(criterion: &mut Criterion, work: &Work<'_>) {
    let mut group = criterion.benchmark_group("show-ground");
    group.sampling_mode(SamplingMode::Flat);
    group.throughput(Throughput::Elements(work.loads()));
    group.bench_function("loads", |b| b.iter(|| work.go()));
    group.throughput(Throughput::Elements(work.runs()));
    group.bench_function("runs", |b| b.iter(|| work.go()));
    group.finish();
}

fn bench_forecast(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("forecast of 10,000 runs");
    group.sampling_mode(SamplingMode::Flat);
    let folder = tempfile::tempdir().unwrap();
    group.bench_function("one and one", |b| b.iter(|| forecast(ONE_AND_ONE, folder.path(), 1)));
    group.finish();
}

/// Whole replays, picture included, of ever more loads: the time for one must not grow.
fn bench_replay(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("replay of a long job");
    group.sampling_mode(SamplingMode::Flat);
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(ONE_AND_ONE).unwrap();
    for times in [100, 1_000] {
        let job: Vec<String> = text.lines().map(|line| many_times(line, times)).collect();
        let file = folder.path().join(format!("{times}.toml"));
        std::fs::write(&file, job.join("\n")).unwrap();
        let out = folder.path().join("replay");
        let go = || {
            let status = Command::new(env!("CARGO_BIN_EXE_heapcast"))
                .args(["replay", "--run", "0", "--quiet"])
                .args([file.as_os_str(), "--out".as_ref(), out.as_os_str()])
                .stdout(Stdio::null())
                .status();
            assert!(status.unwrap().success());
        };
        go();
        let loads = std::fs::read_to_string(out.join("loads.csv")).unwrap().lines().count() as u64 - 1;
        group.throughput(Throughput::Elements(loads));
        group.bench_function(format!("{loads} loads"), |b| b.iter(go));
    }
    group.finish();
}

/// A line of the job with its volumes so many times as large.
fn many_times(line: &str, times: u32) -> String {
    let volume = line.split_once(" = \"").filter(|(key, _)| ["volume", "on_hand"].contains(key));
    let number = volume.and_then(|(key, rest)| {
        let (number, unit) = rest.split_once(' ')?;
        Some(format!("{key} = \"{} {unit}", number.parse::<f64>().ok()? * f64::from(times)))
    });
    number.unwrap_or_else(|| line.to_owned())
}

/// A whole `heapcast forecast`.
fn forecast(file: &str, folder: &Path, threads: usize) {
    let status = Command::new(env!("CARGO_BIN_EXE_heapcast"))
        .args(["forecast", file, "--quiet", "--seed", &SEED.to_string()])
        .args(["--runs", &runs().to_string(), "--threads", &threads.to_string(), "--out"])
        .arg(folder.join("forecast"))
        .stdout(Stdio::null())
        .status();
    assert!(status.unwrap().success());
}

/// Runs of a forecast.
fn runs() -> u32 {
    if side_by_side::only_a_try() { 100 } else { 10_000 }
}

fn show_largest(work: &Work<'_>) {
    let times = alternately(ROUNDS, vec![Side::new("show-ground", work.loads(), || work.go())]);
    let loads = work.loads() / work.runs();
    heading(&format!("show-ground: {loads} loads a run, one thread"));
    line("nanoseconds a load", times.ns_a_part("show-ground"), Target::Open);
    line("milliseconds a run", times.seconds("show-ground").times(1e3 / work.runs() as f64), Target::Open);
}

fn show_forecast(name: &str, file: &str, pool: &ThreadPool, rounds: usize, most_more: Target) {
    let (job, folder, threads) = (job(file), tempfile::tempdir().unwrap(), pool.current_num_threads());
    let work = Work::new(pool, &job, runs());
    let (study, plan) = (work.study(), Plan::new(&job).unwrap());
    let helps =
        || pool.install(|| drop(black_box(relief(&job, &plan, &study, 0.0, tries(&study), |_| {}).unwrap())));
    let sides = vec![
        Side::new("forecast", 1, || forecast(file, folder.path(), threads)),
        Side::new("simulation", 1, || work.go()),
        Side::new("relief", 1, helps),
    ];
    let times = alternately(rounds, sides);
    heading(&format!("{name}: forecast of {} runs, {threads} threads, seconds", runs()));
    line("whole forecast, start to files written", times.seconds("forecast"), Target::Open);
    line("its simulation alone", times.seconds("simulation"), Target::Open);
    line("what would help alone", times.seconds("relief"), Target::Open);
    line("forecast - simulation", times.seconds_more("forecast", "simulation"), most_more);
}
