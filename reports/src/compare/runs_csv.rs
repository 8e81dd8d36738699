//! `runs.csv` of a comparison: every run of every job, those on the same days and loads below one another.

use crate::compare::{Choice, Comparison};
use crate::findings::is_priced;
use crate::render::ExportError;
use crate::render::table::{Cell, Table, Unit};
use sim::Outcome;

struct Row<'a> {
    letter: String,
    choice: &'a Choice,
    outcome: &'a Outcome,
}

impl Row<'_> {
    fn is_priced(&self) -> bool {
        is_priced(&self.choice.scenario.job)
    }
}

/// Every run, by number and then by job, the first `most` of each; a job that was set aside has fewer.
pub(crate) fn paired_runs_csv(comparison: &Comparison, most: usize) -> Result<Vec<u8>, ExportError> {
    let choices = &comparison.choices;
    let most = choices.iter().map(|choice| choice.study.outcomes.len()).max().unwrap_or(0).min(most);
    let row = |run: usize, place: usize| {
        let choice = &choices[place];
        Some(Row { letter: Choice::letter(place), choice, outcome: choice.study.outcomes.get(run)? })
    };
    let rows: Vec<Row<'_>> =
        (0..most).flat_map(|run| (0..choices.len()).filter_map(move |place| row(run, place))).collect();
    Table::new()
        .plain("run", |row: &Row<'_>| row.outcome.run)
        .plain("letter", |row| row.letter.clone())
        .plain("choice", |row| row.choice.name.clone())
        .figure("finish_working", Unit::Seconds, |row| row.outcome.finish.working)
        .figure("finish_clock", Unit::Clock, |row| {
            Cell::Clock(Some(row.outcome.finish.clock), row.choice.scenario.job.shift.start_s)
        })
        .figure("short", Unit::M3, |row| row.outcome.short_m3)
        .plain("currency", |row| Some(row.choice.scenario.currency.clone()).filter(|_| row.is_priced()))
        .figure("cost", Unit::Money, |row| Some(row.outcome.cost).filter(|_| row.is_priced()))
        .rounded()
        .csv(&rows)
}
