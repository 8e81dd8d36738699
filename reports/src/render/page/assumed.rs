//! Every figure that is assumed, with its source.

use super::fold::Part;
use super::words::sentence;
use crate::findings::{self, AssumedLine};
use maud::html;
use scenarios::Assumption;

pub(crate) fn part(assumptions: &[Assumption]) -> Part {
    let findings = findings::assumed(assumptions);
    let body = html! {
            p { (findings.sentence) @if !findings.all.is_empty() { " Write the key into the file to say it yourself." } }
            @for (source, lines) in by_source(&findings.all) {
                h3 { "Source: " (source) }
                ul.assumed { @for line in lines { li {
                    (sentence(&line.words)) " " code { (line.key) }
                } } }
            }
    };
    Part::folded("assumed", "What was assumed", body)
}

/// Sources in the order they first appear, each with what is taken from it.
fn by_source(all: &[AssumedLine]) -> Vec<(&str, Vec<&AssumedLine>)> {
    let mut sources: Vec<(&str, Vec<&AssumedLine>)> = Vec::new();
    for line in all {
        match sources.iter_mut().find(|(source, _)| *source == line.from) {
            Some((_, lines)) => lines.push(line),
            None => sources.push((&line.from, vec![line])),
        }
    }
    sources
}
