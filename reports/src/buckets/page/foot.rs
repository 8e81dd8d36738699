//! How buckets were compared with one another, and what it takes to get the same page again.

use crate::buckets::findings::BucketsFindings;
use crate::buckets::{Buckets, FUTURES};
use crate::render::page::fold::Part;
use crate::render::page::made_with::made_with;
use crate::render::page::words;
use maud::html;

pub(super) fn part(all: &Buckets, findings: &BucketsFindings) -> Part {
    let from = &all.provenance;
    let runs = format!("{} of each", words::number(from.runs.into()));
    let body = html! {
            p {
                "The job was run " (words::count(from.runs.into(), "time")) " in a simulator with every bucket, each time with other random draws; "
                "run by run all of them had the same. A larger bucket carries more at the same fill; loading and dumping it take as "
                "long as today's."
            }
            @if findings.usage.is_some() {
                p {
                    (words::number(FUTURES.into())) " futures were played for each bucket: in each year a number of jobs, each of them saving "
                    "what one of the runs saves. Paid back: price divided by what a year saves, without interest. Worth: savings at the "
                    "end of each year, discounted yearly, less the price (textbook payback and net present value)."
                }
            }
            p {
                "Percentiles are Hyndman and Fan's type 7. Every interval has a 95 % confidence level: order statistics for percentiles, "
                "Student's t for means, Clopper and Pearson for chances. Intervals cover the random draws of the runs, not a wrong figure in a file."
            }
            (made_with(from, &runs))
            p.note { "List " (all.list.file) ", SHA-256 " (all.list.hash) }
    };
    Part::folded("foot", "How it was worked out", body)
}
