//! Two zones, served in the order listed, in turn or where most room is left: one loader or two, a raker at home in each zone or
//! some who walk.
//!
//! Source: `zones.csv` and `pair_in_zones.csv`, status computed.

use super::*;

/// So many loaders and one raker in two zones with the row's needs, rooms, ways and order.
fn two_zones_of(table: &Table, row: &csv::StringRecord, loaders: usize, rake: f64) -> Job {
    let f = |heading: &str| table.number(row, heading);
    let mut job = raking(job((f("need_1") + f("need_2")) as u32, loaders), 1, 1.0 / rake);
    // The ways are given their own lengths below.
    job = cycle(job, Cycle { load: f("load"), haul: 1.0, dump: f("dump"), back: 0.0 });
    job.zones.push(Zone { name: "other zone".into(), ..job.zones[0].clone() });
    for (n, zone) in job.zones.iter_mut().enumerate() {
        let f = |heading| table.number(row, &format!("{heading}_{}", n + 1));
        zone.need_m3 = f("need");
        zone.room = Some(f("room") as u32);
        zone.ways[0].distance_m = f("haul") * UNIT_S;
        zone.walks_m = vec![0.0, 0.0];
    }
    job.fill_order = match table.text(row, "order") {
        "listed" => FillOrder::AsListed,
        "in turn" => FillOrder::InTurn,
        "most room" => FillOrder::MostRoom,
        other => panic!("no such order: {other}"),
    };
    job
}

/// Another raker, who starts in this zone and takes so many units for a load.
fn joined_by(mut job: Job, start_zone: usize, rake: f64) -> Job {
    let rate_m3_per_h = 3600.0 / UNIT_S / rake;
    let name = format!("raker {}", job.rakers.len() + 1);
    let raker = Raker { name, rate_m3_per_h, start_zone, ..job.rakers[0].clone() };
    job.rakers.push(raker);
    job
}

fn comparison_of(
    claim: &'static str,
    name: &str,
    job_of: impl Fn(&Table, &csv::StringRecord) -> Job,
    names: &[&str],
) -> Comparison {
    let mut comparison = Comparison::new(claim, CHAIN, Status::Computed, MOST);
    let table = table(name);
    for row in &table.rows {
        let f = |heading: &str| table.number(row, heading);
        let (order, rakers) = (table.text(row, "order"), f("rakers"));
        let what = format!("{order}, rakers {rakers}, rooms {} and {}", f("room_1"), f("room_2"));
        let study = study(&job_of(&table, row), RUNS);
        percentiles(&mut comparison, &what, &study.sorted(completion), f, ROUNDING);
        times(&mut comparison, &what, &study, &f, names);
    }
    comparison
}

/// Two zones with rakers at home in each, or walking between them in no time.
pub(crate) fn two_zones() -> Comparison {
    let job_of = |table: &Table, row: &csv::StringRecord| {
        let f = |heading: &str| table.number(row, heading);
        let job = two_zones_of(table, row, 1, f("rake_1"));
        // Where each stays at home no zone has room for two heaps, so that nobody is ever called to the other.
        let home = if f("at_home") > 0.0 { 1 } else { 0 };
        if f("rakers") > 1.0 { joined_by(job, home, f("rake_2")) } else { job }
    };
    comparison_of(
        "Two zones, each with its own room, are filled in the order asked for and take what the chain says",
        "zones.csv",
        job_of,
        &["loading", "hauling", "waiting_room", "dumping", "raking"],
    )
}

/// Two loaders that choose between two zones, each counting where the other is bound.
pub(crate) fn two_loaders_two_zones() -> Comparison {
    let job_of = |table: &Table, row: &csv::StringRecord| {
        let f = |heading: &str| table.number(row, heading);
        let job = two_zones_of(table, row, 2, f("rake"));
        if f("rakers") > 1.0 { joined_by(job, 0, f("rake")) } else { job }
    };
    comparison_of(
        "Two loaders choose between two zones, each counting where the other is bound, and finish as the chain says",
        "pair_in_zones.csv",
        job_of,
        &["loading", "waiting_face", "hauling", "waiting_room", "dumping", "raking"],
    )
}

#[test]
fn two_zones_finish_as_the_chain_says() {
    two_zones().judge(90);
}

#[test]
fn two_loaders_in_two_zones_finish_as_the_chain_says() {
    two_loaders_two_zones().judge(36);
}
