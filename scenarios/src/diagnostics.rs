//! All that comes up while a file is read: problems, assumptions, units, currency, further files.

use crate::document::Node;
use crate::files::{Files, NamedFile};
use crate::problem::Problem;
use crate::scenario::Assumption;
use crate::units::System;
use std::ops::Range;

/// Most problems of one file that are listed.
pub(crate) const MOST_PROBLEMS: usize = 100;

/// Where something stands, in words and in the text.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Place {
    /// For people: `zone "north".depth`.
    pub(crate) words: String,
    /// For programs and alternatives: `zone.north.depth`.
    pub(crate) path: String,
    /// Bytes of the text; `None` = the whole file.
    pub(crate) span: Option<Range<usize>>,
}

impl Place {
    /// A key of this place.
    pub(crate) fn key(&self, key: &str) -> Place {
        let join = |above: &str| if above.is_empty() { key.to_owned() } else { format!("{above}.{key}") };
        Place { words: join(&self.words), path: join(&self.path), span: self.span.clone() }
    }

    /// The same place with its own span.
    pub(crate) fn at(mut self, span: &Range<usize>) -> Place {
        self.span = Some(span.clone());
        self
    }
}

/// A value read, with its place and how it was typed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct At<T> {
    /// The value.
    pub(crate) value: T,
    /// Where it stands.
    pub(crate) place: Place,
    /// How it was typed.
    pub(crate) typed: String,
}

/// What comes up while a file is read in which nothing is wrong.
#[derive(Clone, Debug, Default)]
pub(crate) struct Said {
    /// Defaults used and fits made.
    pub(crate) assumptions: Vec<Assumption>,
    us: usize,
    metric: usize,
    currency: Option<At<String>>,
    /// The files of observed values read, in order.
    pub(crate) files_read: Vec<NamedFile>,
}

/// All that comes up while a file is read.
pub(crate) struct Diagnostics<'t> {
    file: &'t str,
    text: &'t str,
    line_starts: Vec<usize>,
    problems: Vec<Problem>,
    unlisted: usize,
    /// What is no problem.
    pub(crate) said: Said,
    /// Where files come from that are named.
    pub(crate) files: &'t dyn Files,
    /// Density of the material, once it is known: by it tons are turned into volumes \[kg/m3\].
    pub(crate) density: Option<f64>,
}

impl Said {
    /// The currency of the file, if it has prices.
    pub(crate) fn currency(&self) -> Option<&str> {
        self.currency.as_ref().map(|at| at.value.as_str())
    }
}

impl<'t> Diagnostics<'t> {
    pub(crate) fn new(file: &'t str, text: &'t str, files: &'t dyn Files) -> Self {
        let starts = text.bytes().enumerate().filter(|(_, b)| *b == b'\n').map(|(i, _)| i + 1);
        Self {
            file,
            text,
            line_starts: std::iter::once(0).chain(starts).collect(),
            problems: Vec::new(),
            unlisted: 0,
            said: Said::default(),
            files,
            density: None,
        }
    }

    /// A problem of a value.
    pub(crate) fn wrong(
        &mut self,
        place: &Place,
        node: &Node,
        what: impl Into<String>,
        right: impl Into<String>,
    ) {
        self.problem(&place.clone().at(&node.span), &node.typed, what, right);
    }

    /// A problem of a value read.
    pub(crate) fn wrong_at<T>(&mut self, at: &At<T>, what: impl Into<String>, right: impl Into<String>) {
        self.problem(&at.place, &at.typed, what, right);
    }

    /// A problem at a place.
    pub(crate) fn problem(
        &mut self,
        place: &Place,
        typed: &str,
        what: impl Into<String>,
        right: impl Into<String>,
    ) {
        if self.is_full() {
            self.unlisted += 1;
            return;
        }
        let (line, column) = place.span.as_ref().map_or((0, 0), |span| self.line_and_column(span.start));
        self.problems.push(Problem {
            file: self.file.to_owned(),
            span: place.span.clone(),
            line,
            column,
            key: place.words.clone(),
            value: typed.to_owned(),
            what: what.into(),
            right: right.into(),
        });
    }

    /// The problems so far.
    pub(crate) fn problems(&self) -> &[Problem] {
        &self.problems
    }

    /// Whether nothing is wrong so far.
    pub(crate) fn is_clean(&self) -> bool {
        self.problems.is_empty()
    }

    /// Whether no further problem would be listed.
    pub(crate) fn is_full(&self) -> bool {
        self.problems.len() >= MOST_PROBLEMS
    }

    /// All problems in the order of the file, the same one only once.
    pub(crate) fn into_problems(mut self) -> Vec<Problem> {
        self.problems.sort_by_key(|problem| problem.span.as_ref().map_or(usize::MAX, |span| span.start));
        self.problems.dedup();
        if self.unlisted > 0 {
            let unlisted = self.unlisted;
            let mut last = self.problems.last().cloned();
            if let Some(last) = &mut last {
                (last.span, last.line, last.column) = (None, 0, 0);
                (last.key, last.value, last.right) = Default::default();
                last.what = format!("{unlisted} more problems are not listed");
            }
            self.problems.extend(last);
        }
        self.problems
    }

    /// Line and column, both from 1.
    pub(crate) fn line_and_column(&self, at: usize) -> (usize, usize) {
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

    /// Something the file does not say that is assumed.
    pub(crate) fn assume(
        &mut self,
        key: impl Into<String>,
        words: impl Into<String>,
        from: impl Into<String>,
    ) {
        self.said.assumptions.push(Assumption { key: key.into(), words: words.into(), from: from.into() });
    }

    /// A unit of one of the systems was typed.
    pub(crate) fn saw_unit(&mut self, system: Option<System>) {
        match system {
            Some(System::Us) => self.said.us += 1,
            Some(System::Metric) => self.said.metric += 1,
            None => {}
        }
    }

    /// The system typed most; metric if neither.
    pub(crate) fn usual_system(&self) -> System {
        if self.said.us > self.said.metric { System::Us } else { System::Metric }
    }

    /// A currency was typed; one that differs from the first is a problem.
    pub(crate) fn saw_currency(&mut self, place: &Place, node: &Node, currency: &str) {
        match &self.said.currency {
            None => {
                let place = place.clone().at(&node.span);
                self.said.currency =
                    Some(At { value: currency.to_owned(), place, typed: node.typed.clone() });
            }
            Some(first) if first.value == currency => {}
            Some(first) => {
                let stands = self.where_it_stands(&first.place);
                let other = stands.split_once(' ').map_or("the file", |(_, words)| words);
                let (what, right) = (
                    format!("this is in {currency}, but {other} is in {}", first.value),
                    format!("write all prices in one currency, such as {}", first.value),
                );
                self.wrong(place, node, what, right);
            }
        }
    }

    /// The currency of the file, if it has prices.
    pub(crate) fn currency(&self) -> Option<&str> {
        self.said.currency()
    }
}
