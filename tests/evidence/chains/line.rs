//! One loader and several rakers with limited room: the places held while dumping, standing clear, stoppages.
//!
//! Source: `line.csv`, status computed.

use super::*;

const TIMES: [&str; 8] =
    ["loading", "hauling", "waiting_room", "dumping", "returning", "stopped", "raking", "standing_clear"];

fn comparison_of(claim: &'static str, shows: &[&str]) -> Comparison {
    let mut comparison = Comparison::new(claim, CHAIN, Status::Computed, MOST);
    let table = table("line.csv");
    for row in table.rows.iter().filter(|row| shows.contains(&table.text(row, "shows"))) {
        let f = |heading: &str| table.number(row, heading);
        let (loads, rakers, room) = (f("loads") as u32, f("rakers") as usize, f("room") as u32);
        let times_of = Cycle { load: f("load"), haul: f("haul"), dump: f("dump"), back: f("ret") };
        let mut job = cycle(raking(job(loads, 1), rakers, 1.0 / f("rake")), times_of);
        job.zones[0].room = Some(room);
        job.raking.stand_clear = f("clear") > 0.0;
        if f("gap") > 0.0 {
            let length_s = Distribution::Exponential { mean: f("length") * UNIT_S };
            job.loaders[0].stoppages = Some(Stoppages { mean_gap_s: f("gap") * UNIT_S, length_s });
        }
        let study = study(&job, RUNS);
        let what = format!("{loads} loads, rakers {rakers}, room {room}, {:?}", TimesInWords(times_of));
        percentiles(&mut comparison, &what, &study.sorted(completion), f, ROUNDING);
        times(&mut comparison, &what, &study, &f, &TIMES);
    }
    comparison
}

/// `load 1, haul 0.5, dump 0.5, back 0.5`.
struct TimesInWords(Cycle);

impl std::fmt::Debug for TimesInWords {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Cycle { load, haul, dump, back } = self.0;
        write!(f, "load {load}, haul {haul}, dump {dump}, back {back}")
    }
}

/// Rakers with limited room, the heap being dumped and those being raked holding their places.
pub(crate) fn limited_room() -> Comparison {
    comparison_of(
        "With several rakers and limited room, dumping and driving included, a finite job takes what the chain says",
        &["rakers", "dump", "cycle"],
    )
}

/// Rakers who stand clear.
pub(crate) fn standing_clear() -> Comparison {
    comparison_of(
        "Rakers who stand clear while a loader dumps rake, stand and finish as the chain says",
        &["clear"],
    )
}

/// A loader that is stopped now and then, holding what it occupies.
pub(crate) fn stoppages() -> Comparison {
    comparison_of(
        "A loader held by stoppages finishes as a server that breaks down while it works",
        &["stops"],
    )
}

#[test]
fn several_rakers_with_limited_room_finish_as_the_chain_says() {
    limited_room().judge(100);
}

#[test]
fn rakers_who_stand_clear_finish_as_the_chain_says() {
    standing_clear().judge(60);
}

#[test]
fn a_loader_held_by_stoppages_finishes_as_the_chain_says() {
    stoppages().judge(55);
}
