//! How a quote was worked out, and what it takes to get the same page again.

use crate::quote::Quote;
use crate::render::page::fold::Part;
use crate::render::page::made_with::made_with;
use crate::render::page::words;
use maud::html;

pub(super) fn part(quote: &Quote) -> Part {
    let from = &quote.provenance;
    let runs = words::number(from.runs.into());
    let body = html! {
            p {
                "The job was run " (words::count(from.runs.into(), "time")) " in a simulator, each time with other random draws, and each "
                "run was charged at the prices of the job. A risk of 10 % means: 1 run in 10 cost more than the price. Prices "
                "are taken as they stand in the job; only times, volumes and fuel differ from run to run."
            }
            p {
                "Percentiles are Hyndman and Fan's type 7. Every interval has a 95 % confidence level: order statistics for "
                "percentiles, Student's t for means, Clopper and Pearson for chances. Intervals cover the random draws of the runs, not a "
                "wrong price in the job. A margin is a share of the price: price = mean cost / (1 - margin)."
            }
            (made_with(from, &runs))
    };
    Part::folded("foot", "How it was worked out", body)
}
