//! Loads, finish and minutes saved of each bucket and of hand barrows, and what else would help.

use crate::buckets::findings::{BucketsFindings, Runs, Standing};
use crate::findings::capital;
use crate::render::page::fold::Part;
use crate::render::page::table::{Row, Table};
use crate::render::page::words::{sentence, tight};
use maud::html;
use scenarios::units::figure;

pub(super) fn part(findings: &BucketsFindings) -> Part {
    let others = findings.buckets.iter().filter(|bucket| bucket.standing != Standing::Today);
    let mut rows: Vec<(&str, &Runs)> =
        others.filter_map(|bucket| Some((bucket.name.as_str(), bucket.runs.as_ref()?))).collect();
    rows.extend(findings.barrow.iter().filter_map(|b| Some((b.name.as_str(), b.runs.as_ref()?))));
    let heads = [
        "",
        "loads",
        "1 day in 2 within",
        "8 days in 10 within",
        "saves on average",
        "8 jobs in 10",
        "the middle job",
    ];
    let body = html! {
        @if !rows.is_empty() {
            (Table::new(heads).rows(rows.iter().map(row)).draw())
            p.note {
                "Run by run on the same days and loads; within: P50 and P80 with how closely they are known; ± with 95 % confidence."
            }
            h3 { "What holds the job up" }
            dl { @for (name, runs) in &rows { dt { (name) } dd { (tight(&sentence(&runs.held_up))) } } }
        }
        @if let Some(barrow) = &findings.barrow {
            p { b { (capital(&barrow.name)) ". " } (tight(&barrow.words)) }
        }
    };
    Part::folded("minutes", "Against today's bucket", body)
}

fn row((name, runs): &(&str, &Runs)) -> Row {
    let saved = &runs.saved.said;
    let within = runs.finish.iter().map(|at| format!("{} ({})", at.duration, at.known));
    let saved = [&saved.mean, &saved.eight_in_ten, &saved.median].map(String::clone);
    let cells = std::iter::once(figure(runs.loads.value)).chain(within).chain(saved);
    Row::new(html! { (name) }, cells.map(|words| html! { (tight(&words)) }))
}

/// What else would help, as minutes.
pub(super) fn helps(findings: &BucketsFindings) -> Option<Part> {
    let row = |line: &crate::buckets::findings::HelpLine| {
        Row::new(
            html! { (crate::findings::capital(&line.what)) },
            [html! { (tight(&line.saves)) }, html! { (tight(&line.interval)) }],
        )
    };
    (!findings.helps.is_empty()).then(|| {
        let heads = ["Tried alone, with today's bucket", "saves a job", "saves between"];
        let body = Table::new(heads).rows(findings.helps.iter().map(row)).draw();
        Part::folded("helps", "What else would help", body)
    })
}
