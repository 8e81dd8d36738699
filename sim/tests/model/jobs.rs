//! Small jobs to build tests from.

use sim::*;

/// One loader, one raker, one zone, one pile, everything constant: load 20 s, haul 10 s, dump 5 s, return 10 s, raking
/// 50 s a load; ten loads of 1 m3.
pub(crate) fn one_and_one() -> Job {
    Job {
        material: Material { name: "chips".into(), density_kg_per_m3: 250.0, fill_factor: 1.0 },
        zones: vec![zone("north", 10.0, 0, 20.0)],
        stockpiles: vec![pile("pile", 10.0)],
        passes: vec![],
        loaders: vec![loader("loader")],
        rakers: vec![raker("raker", 0)],
        raking: Raking { together: None, fatigue: None, spread_share: 0.0, stand_clear: false },
        fill_order: FillOrder::AsListed,
        finish: FinishRule::AreaCovered,
        shift: Shift {
            start_s: 8.0 * 3600.0,
            end_s: None,
            breaks: vec![],
            set_up_s: Distribution::Constant(0.0),
            clean_up_s: Distribution::Constant(0.0),
        },
        chance: Chance::none(),
        prices: Prices { fuel_per_l: 0.0, material: 0.0 },
    }
}

/// A zone with no limit of room, reached from one pile.
pub(crate) fn zone(name: &str, need_m3: f64, stockpile: usize, distance_m: f64) -> Zone {
    Zone {
        name: name.into(),
        need_m3,
        room: None,
        ways: vec![Way { stockpile, distance_m, passes: vec![] }],
        walks_m: vec![0.0],
    }
}

/// A pile where one loader can load at once.
pub(crate) fn pile(name: &str, on_hand_m3: f64) -> Stockpile {
    Stockpile { name: name.into(), on_hand_m3, deliveries: vec![], face: 1 }
}

/// 1 m3 heaped, 2 m/s, load 20 s, dump 5 s.
pub(crate) fn loader(name: &str) -> Loader {
    Loader {
        name: name.into(),
        heaped_m3: 1.0,
        struck_m3: None,
        lift_kg: None,
        width_m: 1.0,
        loaded_m_per_s: 2.0,
        empty_m_per_s: 2.0,
        load_s: 20.0,
        dump_s: 5.0,
        start_stop_s: 0.0,
        spread_s_per_m3: 0.0,
        machine_cost_per_h: 0.0,
        operator_cost_per_h: 0.0,
        fuel_working_l_per_h: 0.0,
        fuel_idling_l_per_h: 0.0,
        stoppages: None,
    }
}

/// 72 m3/h, so 50 s for a load of 1 m3; walks 1 m/s.
pub(crate) fn raker(name: &str, start_zone: usize) -> Raker {
    Raker { name: name.into(), rate_m3_per_h: 72.0, start_zone, walking_m_per_s: 1.0, cost_per_h: 0.0 }
}

/// The job with this chance of days and loads: all lognormal with these coefficients of variation.
pub(crate) fn with_lognormal_noise(mut job: Job, days: f64, loads: f64) -> Job {
    let law = |cv: f64| Distribution::Lognormal { mean: 1.0, cv };
    job.chance = Chance {
        days: JobFactors {
            day: law(days),
            loader_pace: law(days),
            travel: law(days),
            raker_pace: law(days),
            fill: law(days),
            need: law(days),
            bulk: law(days),
        },
        loads: LoadNoise {
            fill: Distribution::Pert { least: 0.75, mode: 1.0, greatest: 1.25 },
            loading: law(loads),
            haul: law(loads),
            dump: law(loads),
            return_leg: law(loads),
            raking: law(loads),
        },
    };
    job
}

/// The job without rakers: the loader spreads all itself in no time, so a heap is raked out when its dump ends and the
/// cycle is 20 + 10 + 5 + 10 s.
pub(crate) fn without_rakers(mut job: Job) -> Job {
    job.rakers.clear();
    job.raking.spread_share = 1.0;
    job
}

/// The job with these zones, each so far on foot from every other.
pub(crate) fn with_zones(mut job: Job, zones: Vec<Zone>, walk_m: f64) -> Job {
    let count = zones.len();
    job.zones = zones;
    for (i, zone) in job.zones.iter_mut().enumerate() {
        zone.walks_m = (0..count).map(|other| if other == i { 0.0 } else { walk_m }).collect();
    }
    job
}

/// The job with so many copies of its loader.
pub(crate) fn with_loaders(mut job: Job, count: usize) -> Job {
    job.loaders =
        (1..=count).map(|n| Loader { name: format!("loader {n}"), ..job.loaders[0].clone() }).collect();
    job
}

/// A gate 2 m wide, for one machine at a time, 4 s.
pub(crate) fn gate() -> Pass {
    Pass { name: "gate".into(), width_m: 2.0, passing_s: 4.0, at_once: 1 }
}

/// A break from so many to so many seconds after the start of the day.
pub(crate) fn pause(job: &Job, from_s: f64, to_s: f64) -> Break {
    Break { start_s: job.shift.start_s + from_s, end_s: job.shift.start_s + to_s }
}
