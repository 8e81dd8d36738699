//! Two loaders that queue for the face, a one-lane pass and room.
//!
//! Source: `pair.csv`, status computed.

use super::*;

const TIMES: [&str; 8] = [
    "loading",
    "waiting_face",
    "passing",
    "waiting_pass",
    "waiting_room",
    "dumping",
    "raking",
    "standing_clear",
];

/// Two loaders at one face, through one pass there and back, with limited room.
pub(crate) fn two_loaders() -> Comparison {
    let mut comparison = Comparison::new(
        "Two loaders that wait for the face, a one-lane pass and room finish and wait as the chain says",
        CHAIN,
        Status::Computed,
        MOST,
    );
    let table = table("pair.csv");
    for row in &table.rows {
        let f = |heading: &str| table.number(row, heading);
        let (loads, rakers, room) = (f("loads") as u32, f("rakers") as usize, f("room") as u32);
        let mut job = raking(job(loads, 2), rakers, 1.0 / f("rake"));
        job = cycle(job, Cycle { load: f("load"), dump: f("dump"), ..Cycle::default() });
        job.zones[0].room = Some(room);
        job.raking.stand_clear = f("clear") > 0.0;
        if f("pass") > 0.0 {
            // The leg is nothing but the passing, which the leg's noise makes exponential.
            let passing_s = f("pass") * UNIT_S;
            job.passes = vec![Pass { name: "gate".into(), width_m: 1.0, passing_s, at_once: 1 }];
            job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.5 }];
        }
        let study = study(&job, RUNS);
        let what = format!(
            "{loads} loads, rakers {rakers}, room {room}, pass {}, stand clear {}",
            f("pass"),
            f("clear")
        );
        percentiles(&mut comparison, &what, &study.sorted(completion), f, ROUNDING);
        times(&mut comparison, &what, &study, &f, &TIMES);
    }
    comparison
}

#[test]
fn two_loaders_through_face_pass_and_room_finish_as_the_chain_says() {
    two_loaders().judge(90);
}
