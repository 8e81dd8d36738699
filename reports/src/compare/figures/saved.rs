//! What jobs save against the first, from what a comparison says.

use crate::chart::relief::minus;
use crate::chart::saved::{SavedData, SavedRow};
use crate::chart::words::short_name;
use crate::compare::findings::ComparisonFindings;
use crate::findings::{Estimate, Saved, about_duration, about_money, share_of_runs};

/// The figure of time saved.
pub(crate) fn prepare_time(findings: &ComparisonFindings) -> SavedData {
    let rows: Vec<(String, &Saved)> =
        findings.differences.iter().map(|d| (named(&d.letter, &d.name), &d.time)).collect();
    let (unit, unit_s) = match furthest(&rows) {
        s if s < 180.0 => ("s", 1.0),
        s if s < 5.0 * 3_600.0 => ("min", 60.0),
        _ => ("h", 3_600.0),
    };
    let scale = Scale::Time(unit_s);
    let words = Words { figure: "differences", what: "time", better: "faster", unit };
    prepare(findings, &rows, &scale, &words)
}

/// The figure of money saved; without rows where costs are not known.
pub(crate) fn prepare_money(findings: &ComparisonFindings) -> SavedData {
    let priced =
        findings.differences.iter().filter_map(|d| Some((named(&d.letter, &d.name), d.money.as_ref()?)));
    let rows: Vec<(String, &Saved)> = priced.collect();
    let cost = findings.choices.first().and_then(|choice| choice.cost.as_ref());
    let currency = cost.map_or("", |cost| cost.currency.as_str());
    let digits = if furthest(&rows) < 10.0 { 2 } else { 0 };
    let scale = Scale::Money(digits, currency);
    let words = Words { figure: "money", what: "money", better: "cheaper", unit: currency };
    prepare(findings, &rows, &scale, &words)
}

struct Words<'a> {
    figure: &'static str,
    what: &'static str,
    better: &'static str,
    unit: &'a str,
}

/// How figures are scaled and written.
enum Scale<'a> {
    /// Seconds, so many to the unit of the axis.
    Time(f64),
    /// Money with so many digits and its currency.
    Money(usize, &'a str),
}

impl Scale<'_> {
    fn per(&self) -> f64 {
        match self {
            Self::Time(per) => *per,
            Self::Money(..) => 1.0,
        }
    }

    fn say(&self, value: f64) -> String {
        let words = match self {
            Self::Time(_) => about_duration(value),
            Self::Money(digits, currency) => {
                let unit = 10f64.powi(*digits as i32);
                about_money((value * unit).round() / unit, currency)
            }
        };
        minus(&words)
    }
}

fn named(letter: &str, name: &str) -> String {
    format!("{letter} {name}")
}

fn furthest(rows: &[(String, &Saved)]) -> f64 {
    let ends = rows.iter().flat_map(|(_, s)| [s.p10.value, s.p90.value, s.mean.value]);
    ends.filter(|v| v.is_finite()).fold(0.0, |most: f64, v| most.max(v.abs()))
}

fn prepare(
    findings: &ComparisonFindings,
    rows: &[(String, &Saved)],
    scale: &Scale<'_>,
    words: &Words<'_>,
) -> SavedData {
    let first = findings
        .choices
        .first()
        .map_or_else(String::new, |c| format!("{} \"{}\"", c.letter, short_name(&c.name)));
    let row = |(name, saved): &(String, &Saved)| SavedRow {
        name: name.clone(),
        band: (saved.p10.value / scale.per(), saved.p90.value / scale.per()),
        median: saved.median.value / scale.per(),
        mean: saved.mean.value / scale.per(),
        interval: saved
            .mean
            .low
            .zip(saved.mean.high)
            .map(|(low, high)| (low / scale.per(), high / scale.per())),
        words: {
            let same = saved.said.same.as_ref().map(|same| format!(", same in {same}")).unwrap_or_default();
            format!("{}, {} in {}{same}", scale.say(saved.mean.value), words.better, saved.said.smaller)
        },
    };
    let unit = if words.unit.is_empty() { String::new() } else { format!(", {}", words.unit) };
    SavedData {
        figure: words.figure,
        title: title(findings, rows, scale, words),
        note: format!(
            "{} saved compared with {first}{unit}, run by run on the same days and loads; band: 8 runs in 10, upright line: the middle run, \
             dot: mean with its 95 % interval",
            words.what
        ),
        rows: rows.iter().map(row).collect(),
    }
}

/// Names the job that surely saves most on average; if none does, says so.
fn title(
    findings: &ComparisonFindings,
    rows: &[(String, &Saved)],
    scale: &Scale<'_>,
    words: &Words<'_>,
) -> String {
    let what = words.what;
    let first = findings.choices.first().map_or_else(String::new, |c| format!("\"{}\"", short_name(&c.name)));
    let sure = |mean: Estimate| mean.low.is_some_and(|low| low > 0.0);
    let best = rows.iter().max_by(|(_, a), (_, b)| a.mean.value.total_cmp(&b.mean.value));
    match best {
        Some((name, saved)) if sure(saved.mean) => format!(
            "{} saves {} on average against {first} and is the {} in {}",
            quoted_after_letter(name),
            scale.say(saved.mean.value),
            words.better,
            share_of_runs(saved.smaller.value)
        ),
        _ if rows.iter().all(|(_, saved)| saved.mean.high.is_some_and(|high| high < 0.0)) => {
            format!("None of them saves {what} against {first}")
        }
        _ => format!("None of them surely saves {what} against {first}"),
    }
}

/// `B a second raker` as `"a second raker"`.
fn quoted_after_letter(name: &str) -> String {
    format!("\"{}\"", short_name(name.split_once(' ').map_or(name, |(_, name)| name)))
}

#[cfg(test)]
mod tests;
