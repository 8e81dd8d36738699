//! `comparison.csv`, one row a job, and `differences.csv`, one row a job against the first.

use crate::compare::findings::{ChoiceFindings, ComparisonFindings, Difference, SHARES};
use crate::render::ExportError;
use crate::render::table::{Table, Unit};

/// Every job by itself.
pub(crate) fn comparison_csv(findings: &ComparisonFindings) -> Result<Vec<u8>, ExportError> {
    let percents = || SHARES.into_iter().enumerate().map(|(place, share)| (place, share * 100.0));
    let finish = percents().fold(Table::new(), |table, (place, percent)| {
        let at = move |choice: &ChoiceFindings| choice.finish.get(place).map(|row| row.finish_working_s);
        table.estimate(format!("finish_working_p{percent:.0}"), Unit::Seconds, at)
    });
    let cost = percents().fold(Table::new(), |table, (place, percent)| {
        let at = move |choice: &ChoiceFindings| choice.cost.as_ref()?.percentiles.get(place).copied();
        table.estimate(format!("cost_p{percent:.0}"), Unit::Money, at)
    });
    Table::new()
        .plain("letter", |choice: &ChoiceFindings| choice.letter.clone())
        .plain("choice", |choice| choice.name.clone())
        .plain("file", |choice| choice.file.clone())
        .plain("alternative", |choice| choice.alternative.clone())
        .plain("changes", |choice| choice.changes.join("; "))
        .plain("same_as", |choice| choice.same_as.clone())
        .plain("best", |choice| choice.letter == findings.verdict.best)
        .plain("runs", |choice| choice.runs)
        .plain("set_aside_after_runs", |choice| choice.set_aside_after_runs.map(f64::from))
        .chain(finish)
        .estimate("finish_working_mean", Unit::Seconds, |choice| choice.mean_finish_working_s)
        // From midnight already.
        .figure("finish_clock_p80", Unit::Clock, |choice| {
            choice.finish.get(2).map(|p| p.finish_clock_s.value)
        })
        .plain("currency", |choice| choice.cost.as_ref().map(|cost| cost.currency.clone()))
        .chain(cost)
        .estimate("cost_mean", Unit::Money, |choice| choice.cost.as_ref().map(|cost| cost.mean))
        .plain("chance_short", |choice| choice.chance_short.value)
        .figure("mean_short", Unit::M3, |choice| choice.mean_short_m3)
        .csv(&findings.choices)
}

/// Every job but the first against the first; above 0 where time or money is saved.
pub(crate) fn differences_csv(findings: &ComparisonFindings) -> Result<Vec<u8>, ExportError> {
    let first = findings.choices.first();
    let against = first.map(|choice| choice.letter.clone());
    let currency = first.and_then(|choice| choice.cost.as_ref()).map(|cost| cost.currency.clone());
    Table::new()
        .plain("letter", |other: &Difference| other.letter.clone())
        .plain("choice", |other| other.name.clone())
        .plain("against", |_| against.clone())
        .plain("runs", |other| other.runs)
        .saved("time_saved", Unit::Seconds, |other| Some(&other.time), "chance_faster")
        .estimate("chance_same_time", Unit::None, |other| other.time.same)
        .plain("currency", |other| currency.clone().filter(|_| other.money.is_some()))
        .saved("cost_saved", Unit::Money, |other| other.money.as_ref(), "chance_cheaper")
        .estimate("chance_same_cost", Unit::None, |other| other.money.as_ref().map(|saved| saved.same))
        .csv(&findings.differences)
}
