//! Deliveries against the hours of work.

use super::entry::Caution;
use crate::parse::clock::DAY;
use crate::units::{System, clock, duration};
use sim::Job;

pub(super) fn cautions(job: &Job, system: System) -> Vec<Caution> {
    let shift = &job.shift;
    let mut all = Vec::new();
    let end = shift.end_s.unwrap_or(DAY);
    for pile in &job.stockpiles {
        for delivery in &pile.deliveries {
            let time = delivery.at_s.rem_euclid(DAY);
            let (when, name) = (clock(delivery.at_s, system), &pile.name);
            let cause = if time < shift.start_s && delivery.at_s >= DAY || delivery.at_s < shift.start_s {
                format!(
                    "The delivery to \"{name}\" at {when} comes before work begins at {}.",
                    clock(shift.start_s, system)
                )
            } else if time >= end {
                format!(
                    "The delivery to \"{name}\" at {when} comes after work ends at {}.",
                    clock(end, system)
                )
            } else {
                continue;
            };
            let remedy = "Make sure somebody is there to show the driver where to tip, or have it come in working hours.";
            all.push(Caution::warning("delivery-out-of-hours", cause, remedy));
        }
    }
    all.extend(nothing_at_first(job, system));
    all
}

fn nothing_at_first(job: &Job, system: System) -> Option<Caution> {
    if job.stockpiles.iter().any(|pile| pile.on_hand_m3 > 0.0) {
        return None;
    }
    let deliveries = job.stockpiles.iter().flat_map(|pile| &pile.deliveries);
    let first = deliveries.map(|delivery| delivery.at_s).min_by(f64::total_cmp)?;
    let ready = job.shift.start_s + job.shift.set_up_s.mean();
    (first > ready).then(|| {
        let cause = format!(
            "Nothing lies at the piles until the first delivery at {}, so everybody waits {} for it.",
            clock(first, system),
            duration(first - ready)
        );
        Caution::warning(
            "nothing-to-load-at-first",
            cause,
            "Begin later, or have the first truck come earlier.",
        )
    })
}
