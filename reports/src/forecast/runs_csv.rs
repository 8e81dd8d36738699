//! `runs.csv`: one row a run.

use crate::findings::{LOADER_KEYS, RAKER_KEYS, is_fuelled, is_priced};
use crate::render::csv::{ExportError, clock_s, exact_s, fuels, number, rounded, table, volumes};
use sim::{Job, Outcome, Study};

/// The runs of a study, in order, the first `most` of them.
///
/// # Errors
/// If the table cannot be written.
pub fn runs_csv(job: &Job, study: &Study, most: usize) -> Result<Vec<u8>, ExportError> {
    rows(job, study.outcomes.get(..most).unwrap_or(&study.outcomes))
}

/// One run, with the columns of [`runs_csv`].
///
/// # Errors
/// If the table cannot be written.
pub fn run_csv(job: &Job, outcome: &Outcome) -> Result<Vec<u8>, ExportError> {
    rows(job, std::slice::from_ref(outcome))
}

fn rows(job: &Job, outcomes: &[Outcome]) -> Result<Vec<u8>, ExportError> {
    let header = header();
    let (fuelled, priced) = (is_fuelled(job), is_priced(job));
    let tidy = |row: Vec<String>| header.iter().zip(row).map(|(name, field)| rounded(name, field)).collect();
    table(header.iter().map(String::as_str), outcomes.iter().map(|o| tidy(row(job, o, fuelled, priced))))
}

const FIRST: [&str; 16] = [
    "run",
    "finish_working_s",
    "finish_clock_s",
    "completion_working_s",
    "completion_clock_s",
    "loads",
    "placed_m3",
    "placed_yd3",
    "left_over_m3",
    "left_over_yd3",
    "short_m3",
    "short_yd3",
    "fuel_l",
    "fuel_gal",
    "labour_h",
    "cost",
];

fn header() -> Vec<String> {
    let first = FIRST.iter().map(|name| (*name).to_owned());
    let loaders = LOADER_KEYS.iter().map(|key| format!("loaders_{key}_s"));
    let rakers = RAKER_KEYS.iter().map(|key| format!("rakers_{key}_s"));
    first.chain(loaders).chain(rakers).collect()
}

fn row(job: &Job, o: &Outcome, fuelled: bool, priced: bool) -> Vec<String> {
    let mut fields = vec![o.run.to_string()];
    for moment in [o.finish, o.completion] {
        fields.extend([exact_s(moment.working), clock_s(job, moment.clock)]);
    }
    fields.push(o.loads.to_string());
    fields.extend([o.placed_m3, o.left_over_m3, o.short_m3].into_iter().flat_map(volumes));
    fields.extend(fuels(Some(o.fuel_l).filter(|_| fuelled)));
    fields.extend([number(o.labour_h), number(Some(o.cost).filter(|_| priced))]);
    fields.extend(o.loaders.iter().map(|(_, t)| t).chain(o.rakers.iter().map(|(_, t)| t)).map(exact_s));
    fields
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_column_has_its_field() {
        let outcome = crate::example::outcome(7);
        let job = crate::example::scenario().job;
        let (row, header) = (row(&job, &outcome, true, true), header());
        assert_eq!(row.len(), header.len());
        let of = |name: &str| row[header.iter().position(|h| h == name).unwrap()].as_str();
        assert_eq!(of("run"), "7");
        assert_eq!(of("loads"), outcome.loads.to_string());
        assert_eq!(of("cost"), outcome.cost.to_string());
        assert_eq!(
            of("loaders_waiting_for_room_s"),
            exact_s(outcome.loaders.time(sim::LoaderActivity::WaitingForRoom))
        );
    }

    #[test]
    fn fuel_and_cost_that_nobody_knows_are_empty_and_not_0() {
        let row = row(&crate::example::scenario().job, &crate::example::outcome(0), false, false);
        assert_eq!(row[12..14], ["", ""]);
        assert_eq!(row[15], "");
    }
}
