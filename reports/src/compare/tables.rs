//! `comparison.csv`, one row a job, and `differences.csv`, one row a job against the first.

use crate::compare::findings::{ComparisonSays, Saved};
use crate::findings::Estimate;
use crate::render::csv::{ExportError, number, table};

const COMPARISON: [&str; 43] = [
    "letter",
    "choice",
    "file",
    "alternative",
    "changes",
    "same_as",
    "best",
    "runs",
    "set_aside_after_runs",
    "finish_working_p10_s",
    "finish_working_p10_s_low_95",
    "finish_working_p10_s_high_95",
    "finish_working_p50_s",
    "finish_working_p50_s_low_95",
    "finish_working_p50_s_high_95",
    "finish_working_p80_s",
    "finish_working_p80_s_low_95",
    "finish_working_p80_s_high_95",
    "finish_working_p90_s",
    "finish_working_p90_s_low_95",
    "finish_working_p90_s_high_95",
    "finish_working_mean_s",
    "finish_working_mean_s_low_95",
    "finish_working_mean_s_high_95",
    "finish_clock_p80_s",
    "currency",
    "cost_p10",
    "cost_p10_low_95",
    "cost_p10_high_95",
    "cost_p50",
    "cost_p50_low_95",
    "cost_p50_high_95",
    "cost_p80",
    "cost_p80_low_95",
    "cost_p80_high_95",
    "cost_p90",
    "cost_p90_low_95",
    "cost_p90_high_95",
    "cost_mean",
    "cost_mean_low_95",
    "cost_mean_high_95",
    "chance_short",
    "mean_short_m3",
];

/// Every job by itself.
///
/// # Errors
/// If the table cannot be written.
pub fn comparison_csv(says: &ComparisonSays) -> Result<Vec<u8>, ExportError> {
    let rows = says.choices.iter().map(|choice| {
        let text = |text: &Option<String>| text.clone().unwrap_or_default();
        let yes = if choice.letter == says.verdict.best { "yes" } else { "no" };
        let mut row = vec![
            choice.letter.clone(),
            choice.name.clone(),
            choice.file.clone(),
            text(&choice.alternative),
            choice.changes.join("; "),
            text(&choice.same_as),
            yes.to_owned(),
            choice.runs.to_string(),
            number(choice.set_aside_after_runs.map(f64::from)),
        ];
        row.extend(choice.finish.iter().flat_map(|p| with_ends(Some(p.finish_working_s))));
        row.extend(with_ends(Some(choice.mean_finish_working_s)));
        row.push(number(choice.finish.get(2).map(|p| p.finish_clock_s.value)));
        row.push(choice.cost.as_ref().map(|cost| cost.currency.clone()).unwrap_or_default());
        for place in 0..4 {
            let at = choice.cost.as_ref().and_then(|cost| cost.percentiles.get(place).copied());
            row.extend(with_ends(at));
        }
        row.extend(with_ends(choice.cost.as_ref().map(|cost| cost.mean)));
        row.extend([number(choice.chance_short.value), number(choice.mean_short_m3)]);
        row
    });
    table(COMPARISON, rows)
}

const DIFFERENCES: [&str; 41] = [
    "letter",
    "choice",
    "against",
    "runs",
    "time_saved_median_s",
    "time_saved_median_s_low_95",
    "time_saved_median_s_high_95",
    "time_saved_p10_s",
    "time_saved_p10_s_low_95",
    "time_saved_p10_s_high_95",
    "time_saved_p90_s",
    "time_saved_p90_s_low_95",
    "time_saved_p90_s_high_95",
    "time_saved_mean_s",
    "time_saved_mean_s_low_95",
    "time_saved_mean_s_high_95",
    "chance_faster",
    "chance_faster_low_95",
    "chance_faster_high_95",
    "chance_same_time",
    "chance_same_time_low_95",
    "chance_same_time_high_95",
    "currency",
    "cost_saved_median",
    "cost_saved_median_low_95",
    "cost_saved_median_high_95",
    "cost_saved_p10",
    "cost_saved_p10_low_95",
    "cost_saved_p10_high_95",
    "cost_saved_p90",
    "cost_saved_p90_low_95",
    "cost_saved_p90_high_95",
    "cost_saved_mean",
    "cost_saved_mean_low_95",
    "cost_saved_mean_high_95",
    "chance_cheaper",
    "chance_cheaper_low_95",
    "chance_cheaper_high_95",
    "chance_same_cost",
    "chance_same_cost_low_95",
    "chance_same_cost_high_95",
];

/// Every job but the first against the first; above 0 where time or money is saved.
///
/// # Errors
/// If the table cannot be written.
pub fn differences_csv(says: &ComparisonSays) -> Result<Vec<u8>, ExportError> {
    let first = says.choices.first().map(|choice| (choice.letter.clone(), choice.cost.as_ref()));
    let (against, cost) = first.unwrap_or_default();
    let currency = cost.map(|cost| cost.currency.clone()).unwrap_or_default();
    let rows = says.differences.iter().map(|difference| {
        let mut row = vec![
            difference.letter.clone(),
            difference.name.clone(),
            against.clone(),
            difference.runs.to_string(),
        ];
        row.extend(saved(Some(&difference.time)));
        row.push(if difference.money.is_some() { currency.clone() } else { String::new() });
        row.extend(saved(difference.money.as_ref()));
        row
    });
    table(DIFFERENCES, rows)
}

fn saved(saved: Option<&Saved>) -> Vec<String> {
    let each: [fn(&Saved) -> Estimate; 6] =
        [|s| s.median, |s| s.p10, |s| s.p90, |s| s.mean, |s| s.smaller, |s| s.same];
    each.into_iter().flat_map(|of| with_ends(saved.map(of))).collect()
}

/// A figure and the ends of its interval; empty where there is none.
fn with_ends(estimate: Option<Estimate>) -> [String; 3] {
    [
        number(estimate.map(|e| e.value)),
        number(estimate.and_then(|e| e.low)),
        number(estimate.and_then(|e| e.high)),
    ]
}
