//! The jobs that are timed. Every number is invented for it.

use sim::*;

/// One loader, one raker, one zone with room for three heaps, one pile: 27.16 m3 in buckets of 0.4 m3; a load takes 18,
/// 20, 12 and 16 s to load, haul, dump and return on average.
pub fn one_and_one() -> Job {
    let fill = Distribution::Pert { least: 0.75, mode: 0.95, greatest: 1.10 };
    let lognormal = |cv| Distribution::Lognormal { mean: 1.0, cv };
    let loads = LoadNoise {
        fill: fill.relative(),
        loading: lognormal(0.25),
        haul: lognormal(0.15),
        dump: lognormal(0.30),
        return_leg: lognormal(0.15),
        raking: lognormal(0.30),
    };
    Job {
        material: Material { name: "chips".into(), density_kg_per_m3: 250.0, fill_factor: fill.mean() },
        zones: vec![zone("orchard", 27.16, 1, vec![])],
        stockpiles: vec![pile(32.0)],
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
        chance: Chance { loads, ..Chance::none() },
        prices: Prices { fuel_per_l: 0.0, material: 0.0 },
    }
}

/// One and one for this much.
pub fn one_and_one_of(volume_m3: f64) -> Job {
    let mut job = one_and_one();
    job.zones[0].need_m3 = volume_m3;
    job.stockpiles[0].on_hand_m3 = 1.2 * volume_m3;
    job
}

/// What so many loads come to \[m3\]: the bucket times its mean fill.
pub fn volume_m3(loads: u32) -> f64 {
    f64::from(loads) * 0.4 * (0.75 + 4.0 * 0.95 + 1.10) / 6.0
}

/// Four such loaders at one face, one gate both ways, three zones served in turn with two rakers each: 271.6 m3.
pub fn yard() -> Job {
    yard_of(4, 271.6)
}

/// The yard with this many loaders, for this much.
pub fn yard_of(loaders: usize, volume_m3: f64) -> Job {
    const ZONES: usize = 3;
    let gate = vec![PassOnWay { pass: 0, share: 0.5 }];
    let each_m3 = volume_m3 / ZONES as f64;
    Job {
        zones: (0..ZONES).map(|n| zone(&format!("plot {n}"), each_m3, ZONES, gate.clone())).collect(),
        stockpiles: vec![pile(1.2 * volume_m3)],
        passes: vec![Pass { name: "gate".into(), width_m: 3.0, passing_s: 5.0, at_once: 1 }],
        loaders: (0..loaders).map(|n| loader(&format!("loader {n}"))).collect(),
        rakers: (0..2 * ZONES).map(|n| raker(&format!("raker {n}"), n / 2)).collect(),
        fill_order: FillOrder::InTurn,
        ..one_and_one()
    }
}

fn zone(name: &str, need_m3: f64, zones: usize, passes: Vec<PassOnWay>) -> Zone {
    let ways = vec![Way { stockpile: 0, distance_m: 40.0, passes }];
    Zone { name: name.into(), need_m3, room: Some(3), ways, walks_m: vec![0.0; zones] }
}

fn pile(on_hand_m3: f64) -> Stockpile {
    Stockpile { name: "pile".into(), on_hand_m3, deliveries: vec![], face: 1 }
}

fn loader(name: &str) -> Loader {
    Loader {
        name: name.into(),
        heaped_m3: 0.4,
        struck_m3: None,
        lift_kg: None,
        width_m: 1.2,
        loaded_m_per_s: 2.0,
        empty_m_per_s: 2.5,
        load_s: 18.0,
        dump_s: 12.0,
        start_stop_s: 0.0,
        spread_s_per_m3: 0.0,
        machine_cost_per_h: 0.0,
        operator_cost_per_h: 0.0,
        fuel_working_l_per_h: 0.0,
        fuel_idling_l_per_h: 0.0,
        stoppages: None,
    }
}

fn raker(name: &str, start_zone: usize) -> Raker {
    Raker { name: name.into(), rate_m3_per_h: 17.76, start_zone, walking_m_per_s: 1.0, cost_per_h: 0.0 }
}
