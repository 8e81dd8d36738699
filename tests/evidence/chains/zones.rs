//! Two zones, served in the order listed, in turn or where most room is left; a raker at home in each, or some who walk.
//!
//! Source: `zones.csv`, status computed.

use super::*;

fn job_of(table: &Table, row: &csv::StringRecord) -> Job {
    let f = |heading: &str| table.number(row, heading);
    let needs = [f("need_1"), f("need_2")];
    let mut job = raking(job((needs[0] + needs[1]) as u32, 1), 1, 1.0 / f("rake_1"));
    job = cycle(job, Cycle { load: f("load"), dump: f("dump"), ..Cycle::default() });
    job.loaders[0].loaded_m_per_s = 1.0;
    job.loaders[0].empty_m_per_s = 1e12;
    job.zones.push(Zone { name: "other zone".into(), ..job.zones[0].clone() });
    for (n, zone) in job.zones.iter_mut().enumerate() {
        let f = |heading| table.number(row, &format!("{heading}_{}", n + 1));
        zone.need_m3 = needs[n];
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
    for n in 1..f("rakers") as usize {
        let home = f("at_home") as usize * n;
        // Where each stays at home no zone has room for two heaps, so that nobody is ever called to the other.
        let rate_m3_per_h = job.rakers[0].rate_m3_per_h * f("rake_1") / f("rake_2");
        let name = format!("raker {}", n + 1);
        job.rakers.push(Raker { name, rate_m3_per_h, start_zone: home, ..job.rakers[0].clone() });
    }
    job
}

/// Two zones with rakers at home in each, or walking between them in no time.
pub(in crate::evidence) fn two_zones() -> Sheet {
    let mut sheet = Sheet::new(
        "Two zones, each with its own room, are filled in the order asked for and take what the chain says",
        CHAIN,
        Status::Computed,
        MOST,
    );
    let table = table("zones.csv");
    for row in &table.rows {
        let f = |heading: &str| table.number(row, heading);
        let what = format!(
            "{}, rakers {}, rooms {} and {}",
            table.text(row, "order"),
            f("rakers"),
            f("room_1"),
            f("room_2")
        );
        let study = study(&job_of(&table, row), RUNS);
        percentiles(&mut sheet, &what, &study.sorted(completion), f, ROUNDING);
        let names = ["loading", "hauling", "waiting_room", "dumping", "raking"];
        times(&mut sheet, &what, &study, &f, &names);
    }
    sheet
}

#[test]
fn two_zones_finish_as_the_chain_says() {
    two_zones().judge(90);
}
