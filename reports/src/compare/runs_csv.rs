//! `runs.csv` of a comparison: every run of every job, those on the same days and loads below one another.

use crate::compare::{Choice, Comparison};
use crate::findings::is_priced;
use crate::render::csv::{ExportError, clock_s, exact_s, number, rounded, table};

const HEADER: [&str; 8] =
    ["run", "letter", "choice", "finish_working_s", "finish_clock_s", "short_m3", "currency", "cost"];

/// Every run, by number and then by job, the first `most` of each; a job that was set aside has fewer.
///
/// # Errors
/// If the table cannot be written.
pub fn paired_runs_csv(comparison: &Comparison, most: usize) -> Result<Vec<u8>, ExportError> {
    let most =
        comparison.choices.iter().map(|choice| choice.study.outcomes.len()).max().unwrap_or(0).min(most);
    let priced: Vec<bool> = comparison.choices.iter().map(|c| is_priced(&c.scenario.job)).collect();
    let row = |run: usize, place: usize| {
        let choice = &comparison.choices[place];
        let o = choice.study.outcomes.get(run)?;
        let currency = if priced[place] { choice.scenario.currency.clone() } else { String::new() };
        Some(vec![
            o.run.to_string(),
            Choice::letter(place),
            choice.name.clone(),
            exact_s(o.finish.working),
            clock_s(&choice.scenario.job, o.finish.clock),
            number(o.short_m3),
            currency,
            number(Some(o.cost).filter(|_| priced[place])),
        ])
    };
    let places = comparison.choices.len();
    let rows = (0..most).flat_map(|run| (0..places).map(move |place| (run, place)));
    let tidy = |row: Vec<String>| HEADER.iter().zip(row).map(|(name, field)| rounded(name, field)).collect();
    table(HEADER, rows.filter_map(|(run, place)| row(run, place)).map(tidy))
}
