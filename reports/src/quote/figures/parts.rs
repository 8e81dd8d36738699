//! What the cost is made of: the mean of each part with its range from the P10 to the P90.

use crate::chart::relief::{ReliefData, Row, draw_as};
use crate::chart::{ChartError, Size};
use crate::findings::capital;
use crate::quote::findings::{CostFindings, CostLine};

/// Prepares the figure: the largest part first.
pub(crate) fn prepare(findings: &CostFindings, runs: u32, currency: &str) -> ReliefData {
    let mut lines: Vec<&CostLine> = findings.parts.iter().collect();
    lines.sort_by(|a, b| b.mean.value.total_cmp(&a.mean.value));
    let row = |line: &&CostLine| {
        let [p10, .., p90, _] = &line.said;
        let words =
            if p10 == p90 { line.mean_said.clone() } else { format!("{} ({p10} to {p90})", line.mean_said) };
        Row {
            name: capital(line.what),
            saved: line.mean.value,
            interval: Some((line.percentiles[0].value, line.percentiles[3].value)),
            words,
        }
    };
    let runs = if runs == 1 {
        "1 run".into()
    } else {
        format!("{} runs", scenarios::units::figure(f64::from(runs)))
    };
    ReliefData {
        title: title(&lines, findings),
        note: format!(
            "cost, {}: bar and dot: mean of {runs}; line: P10 to P90. Means add up to {}, the ends of the lines do not",
            if currency.is_empty() { "money" } else { currency },
            findings.total.mean_said
        ),
        unit: "",
        rows: lines.iter().map(row).collect(),
    }
}

/// Draws the figure. Its height follows from the number of parts.
///
/// # Errors
/// If nothing costs anything, or the size has no room for a figure.
pub(crate) fn draw(data: &ReliefData, size: Size) -> Result<String, ChartError> {
    draw_as("parts", data, size)
}

fn title(lines: &[&CostLine], findings: &CostFindings) -> String {
    let Some(first) = lines.first() else { return "Nothing costs anything".into() };
    let all = &findings.total.mean_said;
    if lines.len() == 1 {
        return format!("It is all {}: {all}", first.what);
    }
    let share = crate::findings::percent(first.share_of_mean);
    format!("{} is {share} of the mean cost, {} of {all}", capital(first.what), first.mean_said)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::legibility;

    #[test]
    fn the_largest_part_comes_first_and_no_label_is_cut_off() {
        let quote = crate::example::quote();
        let data = prepare(&quote.findings.cost, 100, "$");
        assert!(data.rows.is_sorted_by(|a, b| a.saved >= b.saved));
        assert!(data.title.starts_with("Material is "), "{}", data.title);
        for size in [Size::PAGE, Size::WIDE, Size::PHONE] {
            assert_eq!(legibility::faults(&draw(&data, size).unwrap()), [""; 0]);
        }
    }
}
