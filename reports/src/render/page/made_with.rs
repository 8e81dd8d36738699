//! What it takes to get the same page again.

use crate::provenance::Provenance;
use maud::{Markup, html};

/// What it takes to get the same page again; `runs` tells of the runs made.
pub(crate) fn made_with(from: &Provenance, runs: &str) -> Markup {
    html! {
        dl {
            dt { "Made with" } dd { "heapcast " (from.version) }
            dt { "File" } dd {
                (from.file)
                @if let Some(name) = &from.alternative { ", alternative: " (name) }
                @if !from.changes.is_empty() { ", changed: " (from.changes.join("; ")) }
            }
            dt { "Its SHA-256" } dd { (from.scenario_hash) }
            dt { "Seed" } dd { (from.seed) }
            dt { "Runs" } dd { (runs) }
            dt { "The same again" } dd { code { (from.command) } }
        }
    }
}
