//! The day by the clock: what should happen when.

use crate::findings::span;
use crate::findings::{Calendar, about_duration as duration, done_by, halfway};
use crate::forecast::Forecast;
use scenarios::units::volume;

/// A line of the day.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Moment {
    /// When, in words.
    pub(super) when: String,
    /// What.
    pub(super) what: String,
    /// To sort by \[s after midnight of the first day\].
    at_s: f64,
}

/// Start, breaks, deliveries, marks and the end, in the order of the clock.
pub(super) fn times(forecast: &Forecast) -> Vec<Moment> {
    let job = &forecast.scenario.job;
    let several_days = forecast.study.outcomes.iter().any(|o| o.finish.clock != o.finish.working);
    let every_day = if several_days { ", every day" } else { "" };
    let calendar = Calendar::of(&forecast.scenario, forecast.units);
    let at = |at_s: f64, what: String| Moment { when: calendar.clock(at_s), what, at_s };
    let shift = &job.shift;
    let set_up_s = shift.set_up_s.mean();
    let mut all = vec![at(shift.start_s, format!("Start{every_day}"))];
    if set_up_s > 0.0 {
        let what = format!("First load, after about {} of set-up", duration(set_up_s));
        all.push(at(shift.start_s + set_up_s, what));
    }
    all.extend(shift.breaks.iter().map(|b| Moment {
        when: format!("{} to {}", calendar.clock(b.start_s), calendar.clock(b.end_s)),
        what: format!("Break{every_day}: no new load is begun"),
        at_s: b.start_s,
    }));
    for pile in &job.stockpiles {
        for delivery in &pile.deliveries {
            let late_s = delivery.late_s.quantile(0.9);
            let late = if late_s >= 30.0 {
                format!("; 9 days in 10 at most {} late", duration(late_s))
            } else {
                String::new()
            };
            let what =
                format!("Delivery of {} to {}{late}", volume(delivery.volume_m3, forecast.units), pile.name);
            all.push(at(delivery.at_s, what));
        }
    }
    if let Some(end_s) = shift.end_s.filter(|_| several_days) {
        all.push(at(end_s, "End of the day, every day".into()));
    }
    for mark in &halfway::marks(forecast) {
        let when = mark.span();
        let what = format!("{} raked out (about {})", crate::findings::capital(mark.part), mark.volume);
        all.push(Moment { when, what, at_s: mark.middle_s as f64 });
    }
    all.sort_by(|a, b| a.at_s.total_cmp(&b.at_s));
    all.push(end(forecast));
    all
}

/// The end, as a range with the line to plan on.
fn end(forecast: &Forecast) -> Moment {
    let done = done_by(forecast);
    let clean_up_s = forecast.scenario.job.shift.clean_up_s.mean();
    let clean_up = if clean_up_s > 0.0 {
        format!(", with about {} of clean-up", duration(clean_up_s))
    } else {
        String::new()
    };
    let when = match (done.rows.first(), done.rows.last()) {
        (Some(first), Some(last)) => span(&first.clock, &last.clock),
        _ => done.plan.clock.clone(),
    };
    let plan = if when == done.plan.clock { String::new() } else { format!("; plan on {}", done.plan.clock) };
    let end = if done.order.enough { "Done" } else { "Stops, not done: material is missing" };
    Moment { when, what: format!("{end}{clean_up}{plan}"), at_s: f64::INFINITY }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn the_day_is_told_in_the_order_of_the_clock() {
        let mut forecast = example::forecast();
        forecast.scenario.job.shift.breaks = vec![sim::Break { start_s: 9.0 * 3600.0, end_s: 9.25 * 3600.0 }];
        forecast.scenario.job.shift.set_up_s = sim::Distribution::Constant(900.0);
        let told: Vec<String> = times(&forecast).iter().map(|m| format!("{}: {}", m.when, m.what)).collect();
        assert_eq!(told[..2], ["8:00 am: Start", "8:15 am: First load, after about 15 min of set-up"]);
        let place = |what: &str| told.iter().position(|line| line.contains(what)).expect(what);
        let order =
            [place("A quarter"), place("Break"), place("Half"), place("Three quarters"), place("Done")];
        assert!(order.is_sorted(), "{told:?}");
        assert!(told.last().is_some_and(|line| line.contains("plan on")), "{told:?}");
    }
}
