//! Job factors over the chance of single loads: the two layers together.
//!
//! Source: `layers.csv`, status computed.

use super::*;

/// `lognormal 0.2`, `gamma 0.3` or `one`: a factor as the table writes it.
fn factor(text: &str) -> Distribution {
    match text.split_once(' ') {
        None if text == "one" => Distribution::Constant(1.0),
        Some(("lognormal", cv)) => Distribution::Lognormal { mean: 1.0, cv: cv.parse().unwrap() },
        Some(("gamma", cv)) => Distribution::Gamma { mean: 1.0, cv: cv.parse().unwrap() },
        _ => panic!("no such factor: {text}"),
    }
}

/// Finite jobs whose days differ as well as their loads.
pub(crate) fn two_layers() -> Comparison {
    let mut comparison = Comparison::new(
        "Slow and fast days mix the percentiles of their own jobs as the law of total probability says",
        "chains as above, or the sum of the loads, mixed over the factors by Gauss's rules; second: chains that follow everybody, \
         transformed and mixed by the trapezoid rule; a gamma day by Bessel's function",
        Status::Computed,
        MOST,
    );
    let table = table("layers.csv");
    for row in &table.rows {
        let f = |heading: &str| table.number(row, heading);
        let (loads, rakers, room) = (f("loads") as u32, f("rakers") as usize, f("room") as u32);
        // Without rakers the job is the sum of its loads.
        let mut job = job(loads, 1);
        if rakers > 0 {
            job = raking(job, rakers, 1.0 / f("rake"));
        }
        job = cycle(job, Cycle { load: f("load"), haul: f("haul"), dump: f("dump"), back: f("ret") });
        job.zones[0].room = Some(room);
        let (day, pace) = (table.text(row, "day"), table.text(row, "loader_pace"));
        let (travel, rakes) = (table.text(row, "travel"), table.text(row, "raker_pace"));
        let days = &mut job.chance.days;
        (days.day, days.loader_pace) = (factor(day), factor(pace));
        (days.travel, days.raker_pace) = (factor(travel), factor(rakes));
        let sample = study(&job, RUNS).sorted(completion);
        let what = format!(
            "{loads} loads, rakers {rakers}, room {room}; day {day}, loader {pace}, travel {travel}, raker {rakes}"
        );
        percentiles(&mut comparison, &what, &sample, f, ROUNDING);
    }
    comparison
}

#[test]
fn slow_and_fast_days_mix_the_percentiles_of_their_own_jobs() {
    two_layers().judge(42);
}
