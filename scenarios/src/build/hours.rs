//! Hours of work of the job.

use super::makings::Makings;
use crate::defaults::{NOTHING_SAID, START};
use crate::diagnostics::{At, Diagnostics, Read};
use crate::units::clock;
use sim::{Break, Distribution, Shift};

pub(super) fn make(makings: &Makings<'_>) -> Read<Shift> {
    let mut diagnostics = Diagnostics::default();
    let raw = &makings.raw.shift;
    let start_s = match &raw.start {
        Some(start) => start.value,
        None => {
            let words = format!("work begins at {}", clock(START.value, makings.system));
            diagnostics.assume("shift.start", words, START.from);
            START.value
        }
    };
    if !raw.end_is_said {
        diagnostics.assume("shift.end", "the crew goes on until it is done", NOTHING_SAID);
    }
    if !raw.breaks_are_said {
        diagnostics.assume("shift.breaks", "there are no breaks", NOTHING_SAID);
    }
    let mut step = |law: &Option<At<Distribution>>, key: &str, what: &str| match law {
        Some(law) => makings.law(&law.value),
        None => {
            diagnostics.assume(format!("shift.{key}"), format!("{what} takes no time"), NOTHING_SAID);
            Distribution::Constant(0.0)
        }
    };
    let shift = Shift {
        start_s,
        end_s: raw.end.as_ref().map(|end| end.value),
        breaks: raw
            .breaks
            .iter()
            .map(|pause| Break { start_s: pause.from.value, end_s: pause.to.value })
            .collect(),
        set_up_s: step(&raw.set_up, "set_up", "setting up"),
        clean_up_s: step(&raw.clean_up, "clean_up", "cleaning up"),
    };
    Read { made: Some(shift), diagnostics }
}
