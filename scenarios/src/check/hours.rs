//! The hours of work can hold the work.

use crate::defaults;
use crate::diagnostics::{At, Diagnostics};
use crate::raw::RawShift;
use crate::units::{System, clock, duration};

pub(super) fn check(shift: &RawShift) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    if shift.start_is_wrong {
        return diagnostics;
    }
    let start = shift.start.as_ref().map_or(defaults::START.value, |start| start.value);
    let said = |seconds| clock(seconds, System::Metric);
    if start >= crate::parse::clock::DAY
        && let Some(typed) = &shift.start
    {
        return Diagnostics::of_value(
            typed,
            "the day cannot begin when it ends",
            "write a time before 24:00",
        );
    }
    let mut last = start;
    for pause in &shift.breaks {
        if pause.from.value < last {
            let what = if last > start {
                "this break overlaps the one before it, or comes before it".to_owned()
            } else {
                format!("this break begins before the day does, at {}", said(start))
            };
            diagnostics.wrong_at(&pause.from, what, "list breaks in order, within the day");
        }
        last = f64::max(last, pause.to.value);
        if let Some(end) = &shift.end
            && end.value > start
            && pause.to.value > end.value
        {
            let how = if pause.from.value >= end.value { "begins after" } else { "lasts longer than" };
            let what = format!("this break {how} the day, which ends at {}", said(end.value));
            diagnostics.wrong_at(&pause.to, what, "keep breaks within the day");
        }
    }
    if let Some(end) = &shift.end {
        diagnostics.join(day_is_long_enough(shift, start, end));
    }
    diagnostics
}

fn day_is_long_enough(shift: &RawShift, start: f64, end: &At<f64>) -> Diagnostics {
    let said = |seconds| clock(seconds, System::Metric);
    if end.value <= start {
        let how = if end.value == start { "when" } else { "before" };
        let what = format!("the day ends {how} it begins, at {}", said(start));
        return Diagnostics::of_value(end, what, "write a later time; work over midnight is not covered");
    }
    let breaks: f64 = shift.breaks.iter().map(|pause| pause.to.value - pause.from.value).sum();
    let open = end.value - start - breaks;
    let set_up = shift.set_up.as_ref().map_or(0.0, |law| law.value.mean());
    if open <= 0.0 {
        let right = "shorten the breaks or lengthen the day";
        Diagnostics::of_value(end, "breaks leave no time to work", right)
    } else if open <= set_up {
        let what = format!(
            "the day ends before the job can begin: it has {} of work, setting up takes {}",
            duration(open),
            duration(set_up)
        );
        Diagnostics::of_value(end, what, "write a later end, or an earlier start")
    } else {
        Diagnostics::default()
    }
}
