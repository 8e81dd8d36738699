//! What would help: the time each improvement saves, with its interval.

mod sketch;

pub(crate) use sketch::draw;
pub(crate) use sketch::draw_as;

use crate::findings::{ReliefFindings, ReliefLine};

/// Time saved by improvements, ready to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct ReliefData {
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
pub(crate) struct Row {
    /// The improvement in plain words.
    pub name: String,
    /// Mean of the paired differences; below 0 where it takes longer.
    pub saved: f64,
    /// Its 95 % interval; `None` with too few runs.
    pub interval: Option<(f64, f64)>,
    /// The same in words.
    pub words: String,
}

/// Prepares the figure from what is said of each improvement. One whose worth is not in minutes is left out.
pub(crate) fn prepare(findings: &ReliefFindings) -> ReliefData {
    let lines =
        || findings.lines.iter().filter(|line| line.done_after.is_none() && line.saved_min.is_finite());
    let ends = |line: &ReliefLine| [Some(line.saved_min), line.saved_min_low, line.saved_min_high];
    let most_s =
        lines().flat_map(ends).flatten().fold(0.0_f64, |most, minutes| most.max(60.0 * minutes.abs()));
    let (unit, unit_min) = match most_s {
        s if s < 180.0 => ("s", 1.0 / 60.0),
        s if s < 5.0 * 3600.0 => ("min", 1.0),
        _ => ("h", 60.0),
    };
    ReliefData {
        title: findings.title.clone(),
        note: format!("working time saved, {unit}. {}", findings.how),
        unit,
        rows: lines().map(|line| row(line, unit_min)).collect(),
    }
}

fn row(line: &ReliefLine, unit_min: f64) -> Row {
    let interval = line.saved_min_low.zip(line.saved_min_high);
    // The same words as in the tables.
    let words = if line.interval == line.saves || interval.is_none() {
        line.saves.clone()
    } else {
        format!("{} ({})", line.saves, line.interval)
    };
    Row {
        name: line.what.clone(),
        saved: line.saved_min / unit_min,
        interval: interval.map(|(low, high)| (low / unit_min, high / unit_min)),
        words: words.replace('-', "\u{2212}"),
    }
}

/// With a real minus sign, and none before a zero.
pub(crate) fn minus(number: &str) -> String {
    match number.strip_prefix('-') {
        Some(digits) if digits.chars().all(|c| c == '0' || c == '.') => digits.to_owned(),
        Some(digits) => format!("\u{2212}{digits}"),
        None => number.to_owned(),
    }
}

#[cfg(test)]
mod tests;
