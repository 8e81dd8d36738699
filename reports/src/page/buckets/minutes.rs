//! Loads, finish and minutes saved of each bucket and of hand barrows, and what else would help.

use crate::findings::buckets::{BucketsSays, Runs, Standing};
use crate::findings::capital;
use crate::page::words::{sentence, tight};
use maud::{Markup, html};
use scenarios::units::figure;

pub(super) fn section(says: &BucketsSays) -> Markup {
    let others = says.buckets.iter().filter(|bucket| bucket.standing != Standing::Today);
    let mut rows: Vec<(&str, &Runs)> =
        others.filter_map(|bucket| Some((bucket.name.as_str(), bucket.runs.as_ref()?))).collect();
    rows.extend(says.barrow.iter().filter_map(|b| Some((b.name.as_str(), b.runs.as_ref()?))));
    html! {
        section id="minutes" {
            h2 { "Against today's bucket" }
            @if !rows.is_empty() {
                table.short {
                    thead { tr {
                        th scope="col" { "" }
                        th scope="col" { "loads" }
                        th scope="col" { "1 day in 2 within" }
                        th scope="col" { "8 days in 10 within" }
                        th scope="col" { "saves on average" }
                        th scope="col" { "8 jobs in 10" }
                        th scope="col" { "the middle job" }
                    } }
                    tbody { @for (name, runs) in &rows { tr {
                        th scope="row" { (name) }
                        td { (figure(runs.loads.value)) }
                        @for at in &runs.finish { td { (tight(&format!("{} ({})", at.duration, at.known))) } }
                        td { (tight(&runs.saved.said.mean)) }
                        td { (tight(&runs.saved.said.eight_in_ten)) }
                        td { (tight(&runs.saved.said.median)) }
                    } } }
                }
                p.note {
                    "Run against run with the same luck; within: P50 and P80 with how closely they are known; ± with 95 % confidence."
                }
                h3 { "What holds the job up" }
                dl { @for (name, runs) in &rows { dt { (name) } dd { (tight(&sentence(&runs.held_up))) } } }
            }
            @if let Some(barrow) = &says.barrow {
                p { b { (capital(&barrow.name)) ". " } (tight(&barrow.words)) }
            }
        }
    }
}

/// What else would help, as minutes.
pub(super) fn helps(says: &BucketsSays) -> Markup {
    let interval = |line: &crate::findings::buckets::HelpLine| match (line.saved_s.low, line.saved_s.high) {
        (Some(low), Some(high)) => {
            let minutes = |s: f64| format!("{:.1}", s / 60.0 + 0.0);
            format!("{} to {} min", minutes(low), minutes(high))
        }
        _ => "too few runs".into(),
    };
    html! {
        @if !says.helps.is_empty() {
            section id="helps" {
                h2 { "What else would help" }
                table.short {
                    thead { tr {
                        th scope="col" { "Tried alone, with today's bucket" }
                        th scope="col" { "saves a job" }
                        th scope="col" { "saves between" }
                    } }
                    tbody { @for line in &says.helps { tr {
                        th scope="row" { (line.what) }
                        td { (tight(&line.saves)) }
                        td { (tight(&interval(line))) }
                    } } }
                }
            }
        }
    }
}
