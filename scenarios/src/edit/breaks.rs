//! Another break, at a time when there is none.

use super::draft::{Draft, Step};
use super::fault::Fault;
use super::figures::raw;
use super::written::typed;
use crate::defaults::START;
use crate::document::Value;
use crate::document::quoted;
use crate::parse::clock::{DAY, clock_of};
use crate::units::{System, clock};

const MINUTE: f64 = 60.0;
/// Breaks as people have them: beginning and length \[min after midnight, min\].
const USUAL: [[u32; 2]; 4] = [[12 * 60, 30], [10 * 60, 15], [15 * 60, 15], [9 * 60, 15]];

pub(super) fn one_more(draft: &mut Draft) -> Result<(), Fault> {
    let taken = raw(draft).map(|raw| raw.shift);
    let of = |at: &Option<crate::diagnostics::At<f64>>| at.as_ref().map(|at| at.value);
    let start = taken.as_ref().and_then(|shift| of(&shift.start)).unwrap_or(START.value);
    let end = taken.as_ref().and_then(|shift| of(&shift.end)).unwrap_or(DAY);
    let breaks: Vec<[f64; 2]> =
        taken.iter().flat_map(|shift| &shift.breaks).map(|one| [one.from.value, one.to.value]).collect();
    let free = |[from, to]: &[f64; 2]| {
        *from > start && *to < end && breaks.iter().all(|[other, until]| *to < *other || *from > *until)
    };
    let usual = USUAL.map(|[from, length]| [f64::from(from) * MINUTE, f64::from(from + length) * MINUTE]);
    let quarters = (0..96).map(|quarter| f64::from(quarter) * 15.0 * MINUTE);
    let any = quarters.flat_map(|from| [[from, from + 15.0 * MINUTE], [from, from + 5.0 * MINUTE]]);
    let found = usual.into_iter().chain(any).find(free);
    let [from, to] =
        found.ok_or_else(|| Fault::new("there is no time left for a break", "lengthen the day first"))?;
    let path = ["shift", "breaks"].map(|key| Step::Key(key.to_owned()));
    let list = match draft.node(&path).map(|node| &node.value) {
        Some(Value::List(list)) if !list.is_empty() => list.as_slice(),
        _ => &[],
    };
    let am_pm = list.first().map_or(System::Metric, |first| clock_of(&typed(draft.written(first))));
    let said = |at| clock(at, am_pm);
    let text = quoted(&format!("{}-{}", said(from), said(to)));
    let before = breaks.iter().position(|[other, _]| *other > from).and_then(|at| list.get(at));
    match before.map(|node| node.span.start) {
        Some(at) => draft.splice(at..at, &format!("{text}, ")),
        None => draft.push_inline(&path, &text),
    }
}
