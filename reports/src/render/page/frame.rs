//! What every page has around its sections.

use super::fold::{Part, parts};
use super::words::sentence;
use super::{style, words};
use crate::findings;
use maud::{DOCTYPE, Markup, html};
use scenarios::Scenario;

/// Nothing may be fetched and no script may run, whatever finds its way into the page.
const NOTHING_FETCHED: &str = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

/// A whole page of this title.
pub(crate) fn frame(title: &str, sections: Markup) -> String {
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta http-equiv="Content-Security-Policy" content=(NOTHING_FETCHED);
                meta name="color-scheme" content="light dark";
                title { (title) }
                (style::style(title))
            }
            body { main { (sections) } }
        }
    }
    .into_string()
}

/// A page with its heading, its answer, a contents list, and its parts.
pub(crate) fn whole(title: &str, heading: &Markup, answer: &Markup, all: &[Part]) -> String {
    frame(title, html! { (heading) (answer) (parts(all)) })
}

/// The title of a job in one sentence, with its date, its alternative and what else is changed.
pub(crate) fn heading(scenario: &Scenario) -> Markup {
    let date = scenario.date.map(words::date);
    let alternative = scenario.alternative.as_ref().map(|name| format!("Alternative: {name}"));
    let changes: Vec<String> = scenario.changes.iter().map(ToString::to_string).collect();
    let changed = (!changes.is_empty()).then(|| format!("Changed: {}", changes.join("; ")));
    let below: Vec<String> = [date, alternative, changed].into_iter().flatten().collect();
    html! {
        header {
            h1 { (scenario.title) }
            p { (sentence(&findings::the_job_in_lines(scenario))) }
            @if !below.is_empty() { p.soft { (below.join(" · ")) } }
        }
    }
}
