//! How it was worked out, and what it takes to get the same page again.

use crate::compare::Comparison;
use crate::compare::findings::ComparisonFindings;
use crate::findings::percent;
use crate::render::page::fold::Part;
use crate::render::page::made_with::made_with;
use crate::render::page::words;
use maud::html;
use sim::LEVEL;

pub(super) fn part(comparison: &Comparison, findings: &ComparisonFindings) -> Part {
    let from = &comparison.provenance;
    let verdict = &findings.verdict;
    let body = html! {
            p {
                "Every job was run many times in a simulator, each time with other random draws; run by run all of them had the same: "
                "load for load the same good or bad day, the same bucketfuls. What is left of the difference is the jobs' own."
            }
            p {
                "They were judged by " (verdict.judged_by_words) ", on average. Runs were made until one was the best, or none better "
                "by more than was said not to matter, with " (percent(verdict.confidence)) " confidence; a job surely worse "
                "than another got no more runs (Fan, Hong and Nelson, Operations Research 64, 2016, with intervals that hold at "
                "every look)."
            }
            p {
                "Percentiles are Hyndman and Fan's type 7. Every other interval has a " (percent(LEVEL)) " confidence level: "
                "Student's t for means, Clopper and Pearson for chances. Intervals cover the random draws of the runs, not a wrong "
                "figure in the job. What happens less often than once in "
                (words::number(u64::from(comparison.promise.first) / 3)) " runs may not have been seen before a job was dropped."
            }
            (made_with(from, &format!("{} in all. {}", words::number(from.runs.into()), findings.runs)))
            @for choice in further_files(findings, &from.scenario_hash) {
                p.note { "Also " (choice.0) ", SHA-256 " (choice.1) }
            }
    };
    Part::folded("foot", "How it was worked out", body)
}

/// Files besides the first, with their hashes.
fn further_files<'a>(findings: &'a ComparisonFindings, first: &str) -> Vec<(&'a str, &'a str)> {
    let mut all: Vec<(&str, &str)> = Vec::new();
    for choice in &findings.choices {
        let one = (choice.file.as_str(), choice.scenario_hash.as_str());
        if one.1 != first && !all.contains(&one) {
            all.push(one);
        }
    }
    all
}
