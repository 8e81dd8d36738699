//! What is said of each job by itself.

use crate::compare::{Choice, Comparison};
use crate::findings::about_money;
use crate::findings::{Calendar, DoneRow, Estimate, done_rows, is_priced, who_waits_in};
use serde::Serialize;
use sim::Sorted;

/// Percentiles told of each job.
pub const SHARES: [f64; 4] = [0.1, 0.5, 0.8, 0.9];

/// One of the jobs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ChoiceFindings {
    /// Its letter in tables and charts.
    pub letter: String,
    /// What it is called.
    pub name: String,
    /// The file it was read from.
    pub file: String,
    /// SHA-256 of what was read.
    pub scenario_hash: String,
    /// The file's alternative that was taken.
    pub alternative: Option<String>,
    /// What was changed besides, as typed.
    pub changes: Vec<String>,
    /// The letter of the job it is the very same as.
    pub same_as: Option<String>,
    /// Runs it was given.
    pub runs: u32,
    /// After how many runs it was set aside as surely worse than another.
    pub set_aside_after_runs: Option<u32>,
    /// P10, P50, P80 and P90 of the finish.
    pub finish: Vec<DoneRow>,
    /// Mean of the working time to the finish with its interval \[s\].
    pub mean_finish_working_s: Estimate,
    /// What it costs; `None` where the file names no prices.
    pub cost: Option<Cost>,
    /// Who waits for whom, in a short sentence.
    pub held_up: String,
    /// What follows from it.
    pub held_up_more: String,
    /// Chance that the ground lacks material in the end \[0 to 1\].
    pub chance_short: Estimate,
    /// Mean volume short, over all runs \[m3\].
    pub mean_short_m3: f64,
}

/// What a job costs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Cost {
    /// Currency as typed.
    pub currency: String,
    /// P10, P50, P80 and P90.
    pub percentiles: Vec<Estimate>,
    /// Mean with its interval.
    pub mean: Estimate,
    /// P10, P50, P80 and P90 in words.
    pub said: Vec<String>,
}

/// Every job by itself, in their order.
pub(super) fn choices(comparison: &Comparison) -> Vec<ChoiceFindings> {
    (0..comparison.choices.len()).map(|place| findings(comparison, place)).collect()
}

fn findings(comparison: &Comparison, place: usize) -> ChoiceFindings {
    let choice = &comparison.choices[place];
    let (scenario, study) = (&choice.scenario, &choice.study);
    let waits = who_waits_in(&scenario.job, study);
    let short = study.sorted(|o| o.short_m3);
    ChoiceFindings {
        letter: Choice::letter(place),
        name: choice.name.clone(),
        file: scenario.file.clone(),
        scenario_hash: scenario.hash.clone(),
        alternative: scenario.alternative.clone(),
        changes: scenario.changes.iter().map(ToString::to_string).collect(),
        same_as: comparison.same_as(place).map(Choice::letter),
        runs: study.runs(),
        set_aside_after_runs: choice.set_aside,
        finish: done_rows(
            study,
            scenario.job.shift.start_s,
            &SHARES,
            Calendar::of(scenario, comparison.units),
        ),
        mean_finish_working_s: Estimate::from(study.sorted(|o| o.finish.working.as_secs_f64()).mean()),
        cost: is_priced(&scenario.job).then(|| cost(study.sorted(|o| o.cost), &scenario.currency)),
        held_up: waits.title,
        held_up_more: waits.sentence,
        chance_short: chance_short(&short),
        mean_short_m3: short.mean().value,
    }
}

fn chance_short(short: &Sorted) -> Estimate {
    let none = short.share_up_to(0.0);
    Estimate { value: 1.0 - none.value, low: Some(1.0 - none.high), high: Some(1.0 - none.low) }
}

fn cost(sample: Sorted, currency: &str) -> Cost {
    let at = SHARES.map(|share| Estimate::from(sample.percentile(share)));
    Cost {
        currency: currency.to_owned(),
        said: at.iter().map(|p| about_money(p.value, currency)).collect(),
        percentiles: at.to_vec(),
        mean: Estimate::from(sample.mean()),
    }
}
