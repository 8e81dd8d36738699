//! Random streams: draws of one run, of neighbouring runs and of neighbouring seeds have nothing to do with one another.

use super::super::comparison::{Comparison, Status};
use super::families::{chi_square, kolmogorov};
use super::*;

const KINDS: [LoadDraw; 6] =
    [LoadDraw::Fill, LoadDraw::Loading, LoadDraw::Haul, LoadDraw::Dump, LoadDraw::Return, LoadDraw::Raking];
const FACTORS: [Factor; 8] = [
    Factor::Day,
    Factor::LoaderPace,
    Factor::Travel,
    Factor::RakerPace,
    Factor::Fill,
    Factor::Need,
    Factor::SetUp,
    Factor::CleanUp,
];
const SEED: u64 = 20_260_418;

fn loads_stream(seed: u64, run: u32, load: u32) -> impl Iterator<Item = u64> {
    let streams = Streams::new(seed, run).load(load);
    KINDS.into_iter().map(move |kind| streams.bits(kind))
}

/// All that two loads, the day and two deliveries of one run draw.
fn runs_streams(seed: u64, run: u32) -> Vec<u64> {
    let streams = Streams::new(seed, run);
    let loads = loads_stream(seed, run, 0).chain(loads_stream(seed, run, 1));
    let factors = FACTORS.into_iter().map(|factor| streams.factor(factor));
    let deliveries = [streams.bulk(0), streams.lateness(0), streams.bulk(1), streams.lateness(1)];
    loads.chain(factors).chain(deliveries).collect()
}

/// A draw as a number of mean 0 and variance 1.
fn standard(bits: u64) -> f64 {
    (bits as f64 / 2.0_f64.powi(64) - 0.5) * 12.0_f64.sqrt()
}

/// Sums of products, draw by draw, of what two rows hold.
struct Products {
    sums: Vec<f64>,
    rows: u32,
}

impl Products {
    fn over(rows: u32, row: impl Fn(u32) -> (Vec<u64>, Vec<u64>)) -> Self {
        let mut sums = Vec::new();
        for i in 0..rows {
            let (left, right) = row(i);
            let right: Vec<f64> = right.into_iter().map(standard).collect();
            sums.resize(left.len() * right.len(), 0.0);
            for (sums, left) in sums.chunks_mut(right.len()).zip(left.into_iter().map(standard)) {
                sums.iter_mut().zip(&right).for_each(|(sum, right)| *sum += left * right);
            }
        }
        Self { sums, rows }
    }

    /// Correlations in standard errors; of a row with itself, each pair once.
    fn in_standard_errors(&self, with_itself: bool) -> Vec<f64> {
        let side = (self.sums.len() as f64).sqrt() as usize;
        let counts = |i: &usize| !with_itself || i / side < i % side;
        (0..self.sums.len()).filter(counts).map(|i| self.sums[i] / f64::from(self.rows).sqrt()).collect()
    }
}

/// Two figures for a bundle of correlations that should all be nothing: their squares summed, and the largest.
fn add_correlations(comparison: &mut Comparison, what: &str, in_standard_errors: &[f64]) {
    let n = in_standard_errors.len() as f64;
    let squares: f64 = in_standard_errors.iter().map(|z| z * z).sum();
    comparison.compare(
        format!("{what}: {n} correlations, squares summed"),
        squares,
        (2.0 * n).sqrt(),
        n,
        0.0,
    );
    let largest = in_standard_errors.iter().fold(0.0_f64, |most, z| most.max(z.abs()));
    // The chance that none of n standard normal numbers lies farther out.
    let none_farther = (n * libm::log1p(-libm::erfc(largest / 2.0_f64.sqrt()))).exp();
    let what = format!("{what}: the largest, {largest:.2} standard errors, as a score");
    comparison.compare(what, score(none_farther), 1.0, 0.0, 0.0);
}

/// Correlations of everything a run draws.
pub(crate) fn correlations() -> Comparison {
    let mut comparison = Comparison::new(
        "Draws of one run, of neighbouring loads, runs and seeds, and of different kinds are uncorrelated",
        "under independence a correlation of n pairs times root n is standard normal; 100,000 pairs each. Ten figures at 4 \
         standard errors: below 0.001 for all together",
        Status::Computed,
        4.0,
    );
    let n = 100_000;
    let own = Products::over(n, |run| (runs_streams(SEED, run), runs_streams(SEED, run)));
    add_correlations(&mut comparison, "all draws of a run", &own.in_standard_errors(true));
    let next = Products::over(n, |i| (runs_streams(SEED, i), runs_streams(SEED, i + 1)));
    add_correlations(&mut comparison, "a run and the next", &next.in_standard_errors(false));
    let seeds = Products::over(n, |i| (runs_streams(u64::from(i), 0), runs_streams(u64::from(i) + 1, 0)));
    add_correlations(&mut comparison, "a seed and the next", &seeds.in_standard_errors(false));
    let crossed = Products::over(n, |i| (runs_streams(u64::from(i), 1), runs_streams(u64::from(i) + 1, 0)));
    add_correlations(
        &mut comparison,
        "run 1 of a seed and run 0 of the next",
        &crossed.in_standard_errors(false),
    );
    let loads =
        Products::over(n, |i| (loads_stream(SEED, 0, i).collect(), loads_stream(SEED, 0, i + 1).collect()));
    add_correlations(&mut comparison, "a load and the next of one run", &loads.in_standard_errors(false));
    comparison
}

/// Neighbours in pairs on a chessboard of 32 by 32.
pub(crate) fn pairs() -> Comparison {
    let mut comparison = Comparison::new(
        "Neighbouring draws, taken in pairs, fall on every field of a 32 by 32 board equally often",
        "serial test (Knuth, The Art of Computer Programming 2, 3.3.2 B, from memory): chi-square, 1,023 degrees of freedom, \
         300,000 pairs that do not overlap",
        Status::Computed,
        4.5,
    );
    let haul = |seed: u64, run: u32, load: u32| Streams::new(seed, run).load(load).bits(LoadDraw::Haul);
    let day = |seed: u64, run: u32| Streams::new(seed, run).factor(Factor::Day);
    let mut add = |what: &str, pair: &dyn Fn(u32) -> (u64, u64)| {
        let mut board = vec![0.0; 1_024];
        for i in 0..300_000 {
            let (a, b) = pair(i);
            board[((a >> 59) << 5 | (b >> 59)) as usize] += 1.0;
        }
        comparison.compare(what, chi_square(&board), 2_046.0_f64.sqrt(), 1_023.0, 0.0);
    };
    add("a load and the next", &|i| (haul(SEED, 0, 2 * i), haul(SEED, 0, 2 * i + 1)));
    add("the same load of a run and the next", &|i| (haul(SEED, 2 * i, 7), haul(SEED, 2 * i + 1, 7)));
    add("the same load under a seed and the next", &|i| {
        (haul(u64::from(2 * i), 3, 7), haul(u64::from(2 * i + 1), 3, 7))
    });
    for (a, b) in KINDS.into_iter().zip(KINDS.into_iter().skip(1)) {
        add(&format!("{a:?} and {b:?} of a load"), &|i| {
            let streams = Streams::new(SEED, 1).load(i);
            (streams.bits(a), streams.bits(b))
        });
    }
    add("the day of a run and the next", &|i| (day(SEED, 2 * i), day(SEED, 2 * i + 1)));
    add("the day under a seed and the next", &|i| (day(u64::from(2 * i), 0), day(u64::from(2 * i + 1), 0)));
    for (a, b) in FACTORS.into_iter().zip(FACTORS.into_iter().skip(1)) {
        add(&format!("{a:?} and {b:?} of a run"), &|run| {
            let streams = Streams::new(SEED, run);
            (streams.factor(a), streams.factor(b))
        });
    }
    add("a delivery's volume and the next's", &|run| {
        (Streams::new(SEED, run).bulk(0), Streams::new(SEED, run).bulk(1))
    });
    add("a delivery's volume and its lateness", &|run| {
        (Streams::new(SEED, run).bulk(2), Streams::new(SEED, run).lateness(2))
    });
    // The place within a cell of the sampler's table is taken from the bits below those that say which cell.
    add("the first five bits of a draw and the next five", &|i| {
        let bits = haul(SEED, 2, i);
        (bits, bits << 5)
    });
    comparison
}

/// The first two gaps and lengths of each loader's stoppages, in their means, from the log of a run.
fn first_stoppages(replay: &Replay, loaders: usize) -> Vec<f64> {
    let mut all = Vec::new();
    for loader in 0..loaders {
        let turns: Vec<(Duration, LoaderActivity)> = (replay.log.iter())
            .filter_map(|entry| match entry.event {
                Event::Loader { loader: who, activity, .. } if who == loader => Some((entry.at, activity)),
                _ => None,
            })
            .skip_while(|(_, activity)| *activity != LoaderActivity::Loading)
            .take(5)
            .collect();
        let doing = [LoaderActivity::Loading, LoaderActivity::Stopped];
        for (i, pair) in turns.windows(2).enumerate() {
            assert_eq!(pair[0].1, doing[i % 2]);
            all.push((pair[1].0 - pair[0].0).as_micros() as f64 / (UNIT_S * 1e6));
        }
    }
    all
}

/// Stoppages, seen through the engine.
pub(crate) fn stoppages() -> Comparison {
    let mut comparison = Comparison::new(
        "Stoppages come at exponential gaps, and those of each loader have nothing to do with any other draw",
        "Kolmogorov-Smirnov (D root n) and correlations of 20,000 runs' first stoppages, by their event logs",
        Status::Computed,
        5.3,
    );
    let mut job = loading(job(2, 2), 30.0, exponential());
    (job.chance.loads.loading, job.stockpiles[0].face) = (Distribution::Constant(1.0), 2);
    for loader in &mut job.loaders {
        let length_s = Distribution::Exponential { mean: UNIT_S };
        loader.stoppages = Some(Stoppages { mean_gap_s: UNIT_S, length_s });
    }
    let (plan, runs) = (Plan::new(&job).unwrap(), 20_000);
    let of_runs: Vec<Vec<f64>> =
        (0..runs).map(|run| first_stoppages(&Replay::new(&plan, SEED, run).unwrap(), 2)).collect();
    let names = ["first gap", "first length", "second gap", "second length"];
    for place in 0..8 {
        let mut all: Vec<f64> = of_runs.iter().map(|run| run[place]).collect();
        all.sort_unstable_by(f64::total_cmp);
        let what = format!("loader {}, {}: D root n", place / 4 + 1, names[place % 4]);
        comparison.compare(what, kolmogorov(&all, |x| 1.0 - (-x).exp()), 0.260_333, 0.868_731, 0.0);
    }
    // As draws: the chance of less, on 64 bits; beside the rest of the draws of the run, and the stoppages of the next run.
    let bits = |run: u32| -> Vec<u64> {
        of_runs[run as usize].iter().map(|x| ((1.0 - (-x).exp()) * 2.0_f64.powi(64)) as u64).collect()
    };
    let beside = |run: u32| [bits(run), runs_streams(SEED, run)].concat();
    let own = Products::over(runs, |run| (beside(run), beside(run)));
    add_correlations(&mut comparison, "stoppages and all other draws", &own.in_standard_errors(true));
    let next = Products::over(runs - 1, |run| (bits(run), bits(run + 1)));
    add_correlations(&mut comparison, "stoppages of a run and the next", &next.in_standard_errors(false));
    comparison
}

#[test]
fn draws_of_loads_runs_seeds_and_kinds_are_uncorrelated() {
    correlations().judge(10);
}

#[test]
fn neighbouring_draws_in_pairs_fall_everywhere_equally_often() {
    pairs().judge(20);
}

#[test]
fn stoppages_are_exponential_and_have_streams_of_their_own() {
    stoppages().judge(12);
}
