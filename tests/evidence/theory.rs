//! Jobs for which queueing theory has the answer, and how far from it chance may lead.

use super::comparison::Comparison;
pub(crate) use super::table::Table;
use sim::*;

/// One unit of time in the tables, long enough that whole microseconds do not matter \[s\].
pub(crate) const UNIT_S: f64 = 100.0;

/// Loads of 1 m3, of which `loads` are wanted; nothing takes any time until it is given some. Without rakers, a heap is
/// raked out as it is dumped.
pub(crate) fn job(loads: u32, loaders: usize) -> Job {
    let loader = Loader {
        name: "loader".into(),
        heaped_m3: 1.0,
        struck_m3: None,
        lift_kg: None,
        width_m: 0.0,
        loaded_m_per_s: 1.0,
        empty_m_per_s: 1e12,
        load_s: 0.0,
        dump_s: 0.0,
        start_stop_s: 0.0,
        spread_s_per_m3: 0.0,
        machine_cost_per_h: 0.0,
        operator_cost_per_h: 0.0,
        fuel_working_l_per_h: 0.0,
        fuel_idling_l_per_h: 0.0,
        stoppages: None,
    };
    Job {
        material: Material { name: "any".into(), density_kg_per_m3: 1.0, fill_factor: 1.0 },
        zones: vec![Zone {
            name: "zone".into(),
            need_m3: f64::from(loads),
            room: None,
            ways: vec![Way { stockpile: 0, distance_m: 0.0, passes: vec![] }],
            walks_m: vec![0.0],
        }],
        stockpiles: vec![Stockpile {
            name: "pile".into(),
            on_hand_m3: f64::from(loads) + 1.0,
            deliveries: vec![],
            face: 1,
        }],
        passes: vec![],
        loaders: (1..=loaders).map(|n| Loader { name: format!("loader {n}"), ..loader.clone() }).collect(),
        rakers: vec![],
        raking: Raking { together: None, fatigue: None, spread_share: 1.0, stand_clear: false },
        fill_order: FillOrder::AsListed,
        finish: FinishRule::AreaCovered,
        shift: Shift {
            start_s: 0.0,
            end_s: None,
            breaks: vec![],
            set_up_s: Distribution::Constant(0.0),
            clean_up_s: Distribution::Constant(0.0),
        },
        chance: Chance::none(),
        prices: Prices { fuel_per_l: 0.0, material: 0.0 },
    }
}

/// The law that makes a time exponential.
pub(crate) fn exponential() -> Distribution {
    Distribution::Exponential { mean: 1.0 }
}

/// Every loader loads for so many units of time on average.
pub(crate) fn loading(mut job: Job, units: f64, law: Distribution) -> Job {
    job.loaders.iter_mut().for_each(|l| l.load_s = units * UNIT_S);
    job.chance.loads.loading = law;
    job
}

/// The loaded leg takes so many units of time on average, the way back none.
pub(crate) fn travel(mut job: Job, units: f64, law: Distribution) -> Job {
    job.zones[0].ways[0].distance_m = units * UNIT_S;
    job.chance.loads.haul = law;
    job
}

/// This many rakers, each with so many loads in a unit of time, exponential.
pub(crate) fn raking(mut job: Job, rakers: usize, rate: f64) -> Job {
    job.raking.spread_share = 0.0;
    job.chance.loads.raking = exponential();
    let rate_m3_per_h = rate / UNIT_S * 3600.0;
    let raker = |n| Raker {
        name: format!("raker {n}"),
        rate_m3_per_h,
        start_zone: 0,
        walking_m_per_s: 1.0,
        cost_per_h: 0.0,
    };
    job.rakers = (1..=rakers).map(raker).collect();
    job
}

/// Runs a job with a fixed seed.
pub(crate) fn study(job: &Job, runs: u32) -> Study {
    Study::new(&Plan::new(job).unwrap(), 20_260_418, Runs::Exactly(runs), |_| {}).unwrap()
}

/// Working time to the last heap raked out, in units.
pub(crate) fn completion(o: &Outcome) -> f64 {
    o.completion.working.as_secs_f64() / UNIT_S
}

/// Compares mean, sd, P10, P50, P80, P90 and P95 of a sample with what `truth` gives by these names. The error of a
/// percentile is read off its 95 % interval; that of the spread off the sample's fourth moment.
pub(crate) fn percentiles(
    comparison: &mut Comparison,
    what: &str,
    sample: &Sorted,
    truth: impl Fn(&str) -> f64,
    rounding: f64,
) {
    let mean = sample.mean();
    let root = (mean.n as f64).sqrt();
    comparison.compare(format!("{what}: mean"), mean.value, mean.sd / root, truth("mean"), rounding);
    let (sd, error) = spread(sample);
    comparison.compare(format!("{what}: sd"), sd, error, truth("sd"), rounding);
    for (name, share) in [("P10", 0.1), ("P50", 0.5), ("P80", 0.8), ("P90", 0.9), ("P95", 0.95)] {
        let percentile = sample.percentile(share);
        let error = (percentile.high.unwrap() - percentile.low.unwrap()) / (2.0 * 1.96);
        comparison.compare(format!("{what}: {name}"), percentile.value, error, truth(name), rounding);
    }
}

/// Standard deviation of a sample, and its standard error.
pub(crate) fn spread(sample: &Sorted) -> (f64, f64) {
    let mean = sample.mean();
    let fourth = sample.values().iter().map(|x| (x - mean.value).powi(4)).sum::<f64>() / mean.n as f64;
    let variance = mean.sd * mean.sd;
    (mean.sd, ((fourth - variance * variance) / (4.0 * variance * mean.n as f64)).sqrt())
}

/// Mean of a figure over runs, and its standard error.
pub(crate) fn mean_of(study: &Study, figure: impl Fn(&Outcome) -> f64) -> (f64, f64) {
    mean_and_error(study.sorted(figure).values())
}

/// Loads in a unit of time.
pub(crate) fn throughput(o: &Outcome) -> f64 {
    f64::from(o.loads) / (o.completion.working.as_secs_f64() / UNIT_S)
}

/// Mean of a figure of several runs, and its standard error.
pub(crate) fn mean_and_error(of_runs: &[f64]) -> (f64, f64) {
    let mean = sim::mean(of_runs);
    (mean.value, mean.sd / (mean.n as f64).sqrt())
}
