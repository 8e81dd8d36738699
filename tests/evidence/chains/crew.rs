//! A crew that rakes together, and loaders that spread a share of each load themselves.
//!
//! Source: `crew.csv`, status computed.

use super::*;

/// Crews that rake together and loaders that spread.
pub(crate) fn together_and_spreading() -> Comparison {
    let mut comparison = Comparison::new(
        "A crew raking together is one raker at the sum of its rates times crowding; spreading moves work from rakers to loader",
        CHAIN,
        Status::Computed,
        MOST,
    );
    let table = table("crew.csv");
    for row in &table.rows {
        let f = |heading: &str| table.number(row, heading);
        let (loads, rakers, room) = (f("loads") as u32, f("rakers") as usize, f("room") as u32);
        let mut job = raking(job(loads, 1), rakers, 1.0 / f("rake"));
        job = cycle(job, Cycle { load: f("load"), dump: f("dump"), ..Cycle::default() });
        job.zones[0].room = Some(room);
        job.raking.stand_clear = f("clear") > 0.0;
        job.raking.together = (f("crowding") > 0.0).then(|| f("crowding"));
        job.raking.spread_share = f("spread_share");
        job.loaders[0].spread_s_per_m3 = f("spread") * UNIT_S;
        let study = study(&job, RUNS);
        let what = format!(
            "rakers {rakers}, crowding {}, room {room}, share spread {}",
            f("crowding"),
            f("spread_share")
        );
        percentiles(&mut comparison, &what, &study.sorted(completion), f, ROUNDING);
        times(&mut comparison, &what, &study, &f, &["waiting_room", "dumping"]);
        // The table counts one raker where the whole crew is on a heap.
        let crew = if f("crowding") > 0.0 { f("rakers") } else { 1.0 };
        times(&mut comparison, &what, &study, &|heading| crew * f(heading), &["raking", "standing_clear"]);
    }
    comparison
}

#[test]
fn a_crew_together_and_a_loader_that_spreads_finish_as_the_chain_says() {
    together_and_spreading().judge(50);
}
