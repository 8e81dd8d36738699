//! What would help: the time each improvement saves, with its interval.

mod sketch;

pub use sketch::draw;
pub(super) use sketch::draw_as;

use crate::findings::{capital, improvement_words};
use scenarios::units::{duration, figure};
use sim::{Mean, Relief};

/// Time saved by improvements, ready to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct ReliefData {
    /// The finding.
    pub title: String,
    /// What was compared.
    pub note: String,
    /// Unit of all times here: `s`, `min` or `h`.
    pub unit: &'static str,
    /// One for each improvement, in the order given.
    pub rows: Vec<Row>,
}

/// What one improvement saves, in the unit of the figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The improvement in plain words.
    pub name: String,
    /// Mean of the paired differences; below 0 where it takes longer.
    pub saved: f64,
    /// Its 95 % interval; `None` with too few runs.
    pub interval: Option<(f64, f64)>,
    /// The same in words.
    pub words: String,
}

/// Prepares the figure from comparisons over `runs` runs.
pub fn prepare(reliefs: &[Relief], runs: u32) -> ReliefData {
    let most = reliefs.iter().flat_map(|r| [r.saved_s.value, r.saved_s.low, r.saved_s.high]);
    let most = most.filter(|s| s.is_finite()).fold(0.0_f64, |most, s| most.max(s.abs()));
    let (unit, unit_s) = match most {
        s if s < 180.0 => ("s", 1.0),
        s if s < 5.0 * 3600.0 => ("min", 60.0),
        _ => ("h", 3600.0),
    };
    let rows = reliefs.iter().filter(|r| r.saved_s.value.is_finite()).map(|r| row(r, unit, unit_s)).collect();
    let how_many = match runs {
        1 => "1 run".to_owned(),
        n => format!("{} runs", figure(f64::from(n))),
    };
    ReliefData {
        title: title(reliefs),
        note: format!(
            "working time saved, {unit}: mean of {how_many} with the same luck, line: 95 % interval"
        ),
        unit,
        rows,
    }
}

fn interval(mean: Mean) -> Option<(f64, f64)> {
    Some((mean.low, mean.high)).filter(|(low, high)| low.is_finite() && high.is_finite())
}

fn row(relief: &Relief, unit: &'static str, unit_s: f64) -> Row {
    let saved = relief.saved_s.value / unit_s;
    let interval = interval(relief.saved_s).map(|(low, high)| (low / unit_s, high / unit_s));
    let widest = interval.map_or(saved.abs(), |(low, high)| low.abs().max(high.abs()));
    let digits = usize::from(unit == "h" || (unit == "min" && widest < 10.0));
    let say = |value: f64| minus(&format!("{value:.digits$}"));
    let words = match interval.map(|(low, high)| (say(low), say(high))) {
        Some((low, high)) if low == high => format!("{} {unit}", say(saved)),
        Some((low, high)) => format!("{} {unit} ({low} to {high})", say(saved)),
        None => format!("{} {unit}", say(saved)),
    };
    Row { name: improvement_words(relief.improvement).1.to_owned(), saved, interval, words }
}

/// With a real minus sign, and none before a nought.
pub(super) fn minus(number: &str) -> String {
    match number.strip_prefix('-') {
        Some(digits) if digits.chars().all(|c| c == '0' || c == '.') => digits.to_owned(),
        Some(digits) => format!("\u{2212}{digits}"),
        None => number.to_owned(),
    }
}

/// Names the improvement that saves most, if it surely saves anything; if the interval of the next one reaches into its
/// own, both.
fn title(reliefs: &[Relief]) -> String {
    let mut order: Vec<&Relief> = reliefs.iter().filter(|r| r.saved_s.value.is_finite()).collect();
    order.sort_by(|a, b| b.saved_s.value.total_cmp(&a.saved_s.value));
    let Some(best) = order.first() else { return "There was nothing to improve".into() };
    let name = |r: &Relief| improvement_words(r.improvement).1;
    let saves = duration(best.saved_s.value);
    let Some((low, high)) = interval(best.saved_s) else {
        let saves = if best.saved_s.value > 0.0 { format!("saves {saves}") } else { "saves nothing".into() };
        return format!("In the one run compared, {} {saves}", name(best));
    };
    if low <= 0.0 {
        return "None of these changes surely saves time".into();
    }
    let sure = |r: &&&Relief| r.saved_s.low > 0.0 && r.saved_s.high >= low;
    match order.iter().skip(1).find(sure) {
        Some(next) => {
            let both = format!("{} and {}", name(best), name(next));
            format!("{} save most: {saves} and {}", capital(&both), duration(next.saved_s.value))
        }
        None if order.len() == 1 => format!("{} saves {saves}", capital(name(best))),
        None if duration(low) == duration(high) => {
            format!("{} helps most: it saves {saves}", capital(name(best)))
        }
        None => {
            let between = format!("between {} and {}", duration(low), duration(high));
            format!("{} helps most: it saves {saves} ({between})", capital(name(best)))
        }
    }
}

#[cfg(test)]
mod tests;
