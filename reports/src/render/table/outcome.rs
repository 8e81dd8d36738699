//! What one run comes to, for every table and document that tells it.

use super::{Table, Unit};
use crate::findings::{is_fuelled, is_priced};
use sim::{Job, Outcome};

/// The figures of a run; fuel and cost are unknown where the job does not say what they come to.
pub(crate) fn outcome(job: &Job) -> Table<'_, Outcome> {
    let (fuelled, priced, start_s) = (is_fuelled(job), is_priced(job), job.shift.start_s);
    Table::new()
        .plain("run", |o: &Outcome| o.run)
        .figure("finish_working", Unit::Seconds, |o| o.finish.working)
        .clock("finish_clock", start_s, |o| o.finish.clock)
        .figure("completion_working", Unit::Seconds, |o| o.completion.working)
        .clock("completion_clock", start_s, |o| o.completion.clock)
        .figure("loads", Unit::Loads, |o| o.loads)
        .volume("placed", |o| o.placed_m3)
        .volume("left_over", |o| o.left_over_m3)
        .volume("short", |o| o.short_m3)
        .fuel("fuel", move |o| Some(o.fuel_l).filter(|_| fuelled))
        .figure("labour", Unit::Hours, |o| o.labour_h)
        .figure("cost", Unit::Money, move |o| Some(o.cost).filter(|_| priced))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fuel_and_cost_that_nobody_knows_are_unknown_and_not_0() {
        let mut job = crate::example::scenario().job;
        let fields = |job: &Job| {
            let csv = outcome(job).csv(&[crate::example::outcome(7)]).unwrap();
            let csv = String::from_utf8(csv).unwrap();
            let row: Vec<String> = csv.lines().nth(1).unwrap().split(',').map(str::to_owned).collect();
            [row[0].clone(), row[12].clone(), row[13].clone(), row[15].clone()]
        };
        assert!(fields(&job).iter().all(|field| !field.is_empty()), "{:?}", fields(&job));
        job.prices.material = 0.0;
        job.rakers.clear();
        for loader in &mut job.loaders {
            (loader.machine_cost_per_h, loader.operator_cost_per_h) = (0.0, 0.0);
            (loader.fuel_working_l_per_h, loader.fuel_idling_l_per_h) = (0.0, 0.0);
        }
        job.prices.fuel_per_l = 0.0;
        assert_eq!(fields(&job), ["7", "", "", ""]);
    }
}
