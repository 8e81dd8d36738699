//! How a sweep was worked out, and what it takes to get the same page again.

use crate::findings::percent;
use crate::render::page::fold::Part;
use crate::render::page::made_with::made_with;
use crate::render::page::words::number;
use crate::sweep::Sweep;
use crate::sweep::findings::SweepFindings;
use maud::html;
use sim::LEVEL;

pub(super) fn part(sweep: &Sweep, findings: &SweepFindings) -> Part {
    let from = &sweep.provenance;
    let runs = format!("{} at every point, {} in all", number(from.runs.into()), number(sweep.runs_in_all()));
    let body = html! {
            p {
                "The job was run at every point on the same days and loads: load by load the same good and bad days, the same full and "
                "light buckets. What is saved is the mean of the differences run by run, so that small true differences show. "
                "A point is the same as a forecast of the job so changed, with the same seed and number of runs."
            }
            p {
                "\"8 days in 10\" (P80) means: in 8 of 10 such runs it took no longer. Percentiles are Hyndman and Fan's type 7. "
                "Every interval has a " (percent(LEVEL)) " confidence level for its point alone: order statistics for "
                "percentiles, Student's t for means, Clopper and Pearson for chances. \"Surely\" means that the whole interval "
                "keeps what is wanted, \"perhaps\" that a part of it does. Intervals cover the random draws of the runs, not a wrong "
                "figure in the job."
            }
            @if findings.money.is_none() { p { "Without prices the smallest crew counts as the least, then the fewest steps from the slow end." } }
            (made_with(from, &runs))
    };
    Part::folded("foot", "How it was worked out", body)
}
