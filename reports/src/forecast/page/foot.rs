//! How it was worked out, and what it takes to get the same page again.

use crate::findings;
use crate::forecast::run::Forecast;
use crate::render::page::fold::Part;
use crate::render::page::made_with::made_with;
use crate::render::page::words;
use maud::html;
use sim::LEVEL;

pub(super) fn part(forecast: &Forecast) -> Part {
    let from = &forecast.provenance;
    let body = html! {
            p {
                "The job was run " (words::count(from.runs.into(), "time")) " in a simulator, each time with other random draws: "
                "good days and bad ones, full buckets and light ones, quick loads and slow ones. \"8 days in 10\" (P80) "
                "means: in 8 of 10 such runs it took no longer."
            }
            p {
                "Percentiles are Hyndman and Fan's type 7. Every interval (\"known to\", \"saves between\") has a "
                (findings::percent(LEVEL)) " confidence level: order statistics for percentiles, Student's t for means, "
                "Clopper and Pearson for chances. Intervals cover the random draws of the runs, not a wrong figure in the job."
            }
            (made_with(from, &runs(forecast)))
    };
    Part::folded("foot", "How it was worked out", body)
}

fn runs(forecast: &Forecast) -> String {
    let runs = words::number(forecast.provenance.runs.into());
    match forecast.relief.iter().map(|relief| relief.saved_s.n).max() {
        Some(most) => {
            format!("{runs}; up to {} for each change under \"What would help\"", words::number(most as u64))
        }
        None => runs,
    }
}
