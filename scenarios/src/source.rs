//! The text that is read: where things stand in it, and all that came up turned into problems and into what was said.

use crate::assumption::Assumption;
use crate::diagnostics::{At, Diagnostic, Diagnostics, MOST_PROBLEMS, Place};
use crate::files::NamedFile;
use crate::problem::{Problem, Refusal};
use crate::units::System;

/// A text with the name of its file.
#[derive(Debug)]
pub(crate) struct Source<'t> {
    file: &'t str,
    text: &'t str,
    line_starts: Vec<usize>,
}

/// What a text says beside the values in it.
#[derive(Clone, Debug)]
pub(crate) struct Said {
    /// Fits made and defaults used.
    pub(crate) assumptions: Vec<Assumption>,
    /// The system of units typed most; metric if neither.
    pub(crate) system: System,
    /// The currency of all prices, if there are any.
    pub(crate) currency: Option<String>,
    /// The files of observed values read, in order.
    pub(crate) files_read: Vec<NamedFile>,
}

impl Said {
    pub(crate) const NOTHING: Said =
        Said { assumptions: Vec::new(), system: System::Metric, currency: None, files_read: Vec::new() };
}

impl<'t> Source<'t> {
    pub(crate) fn new(file: &'t str, text: &'t str) -> Self {
        let starts = text.bytes().enumerate().filter(|(_, b)| *b == b'\n').map(|(i, _)| i + 1);
        Self { file, text, line_starts: std::iter::once(0).chain(starts).collect() }
    }

    /// Line and column, both from 1.
    fn line_and_column(&self, at: usize) -> (usize, usize) {
        let line = self.line_starts.partition_point(|start| *start <= at).max(1);
        let start = self.line_starts[line - 1];
        let before = self.text.get(start..at.min(self.text.len())).unwrap_or_default();
        (line, before.chars().count() + 1)
    }

    /// `on line 5`, or in what it stands where that is no line of the file.
    pub(crate) fn where_it_stands(&self, place: &Place) -> String {
        match &place.span {
            None => "in the file".to_owned(),
            // What was typed on the command line stands behind the end of the text.
            Some(span) if span.start > self.text.len() => "in another change".to_owned(),
            Some(span) => format!("on line {}", self.line_and_column(span.start).0),
        }
    }

    /// What a text says beside its values. A currency that differs from the first becomes a problem.
    pub(crate) fn said(&self, diagnostics: &mut Diagnostics) -> Said {
        let (mut assumptions, mut files_read) = (Vec::new(), Vec::new());
        let (mut us, mut metric) = (0, 0);
        let mut first: Option<At<String>> = None;
        for one in &mut diagnostics.0 {
            match one {
                Diagnostic::Problem { .. } => {}
                Diagnostic::Assumed(assumption) => assumptions.push(assumption.clone()),
                Diagnostic::Unit(System::Us) => us += 1,
                Diagnostic::Unit(System::Metric) => metric += 1,
                Diagnostic::File(file) => files_read.push(file.clone()),
                Diagnostic::Currency(at) => match &first {
                    None => first = Some(at.clone()),
                    Some(first) if first.value == at.value => {}
                    Some(first) => *one = self.other_currency(first, at),
                },
            }
        }
        let system = if us > metric { System::Us } else { System::Metric };
        Said { assumptions, system, currency: first.map(|first| first.value), files_read }
    }

    fn other_currency(&self, first: &At<String>, at: &At<String>) -> Diagnostic {
        let stands = self.where_it_stands(&first.place);
        let other = stands.split_once(' ').map_or("the file", |(_, words)| words);
        Diagnostic::Problem {
            place: at.place.clone(),
            typed: at.typed.clone(),
            what: format!("this is in {}, but {other} is in {}", at.value, first.value),
            right: format!("write all prices in one currency, such as {}", first.value),
        }
    }

    /// All problems in the order of the text, the same one only once, and a line for those not listed.
    pub(crate) fn problems(&self, diagnostics: Diagnostics) -> Vec<Problem> {
        let all = diagnostics.0.into_iter().filter_map(|one| match one {
            Diagnostic::Problem { place, typed, what, right } => Some((place, typed, what, right)),
            _ => None,
        });
        let mut all: Vec<_> = all.collect();
        let unlisted = all.len().saturating_sub(MOST_PROBLEMS);
        all.truncate(MOST_PROBLEMS);
        let mut problems: Vec<Problem> = all
            .into_iter()
            .map(|(place, value, what, right)| {
                let (line, column) =
                    place.span.as_ref().map_or((0, 0), |span| self.line_and_column(span.start));
                let (file, key) = (self.file.to_owned(), place.words);
                Problem { file, span: place.span, line, column, key, value, what, right }
            })
            .collect();
        problems.sort_by_key(|problem| problem.span.as_ref().map_or(usize::MAX, |span| span.start));
        problems.dedup();
        if unlisted > 0 {
            let what = format!("{unlisted} more problems are not listed");
            problems.push(Problem { file: self.file.to_owned(), what, ..Problem::default() });
        }
        problems
    }

    /// The text refused.
    pub(crate) fn refusal(&self, problems: Vec<Problem>) -> Refusal {
        Refusal { file: self.file.to_owned(), text: self.text.to_owned(), problems }
    }
}
