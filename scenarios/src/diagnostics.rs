//! What comes up while something is read or made: problems, assumptions, units, currencies, files. Each reader returns its
//! own beside what it made; [`crate::source`] turns all of them together into what a person is told.

use crate::assumption::Assumption;
use crate::files::NamedFile;
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

/// One thing that came up.
#[derive(Clone, Debug)]
pub(crate) enum Diagnostic {
    /// Something is wrong.
    Problem { place: Place, typed: String, what: String, right: String },
    /// Something the file does not say is assumed.
    Assumed(Assumption),
    /// A unit of one of the systems was typed.
    Unit(System),
    /// A currency was typed.
    Currency(At<String>),
    /// A file of observed values was read.
    File(NamedFile),
}

/// All that came up, in its order.
#[derive(Clone, Debug, Default)]
pub(crate) struct Diagnostics(pub(crate) Vec<Diagnostic>);

impl Diagnostics {
    /// A problem at a place.
    pub(crate) fn problem(
        &mut self,
        place: &Place,
        typed: &str,
        what: impl Into<String>,
        right: impl Into<String>,
    ) {
        let (place, typed) = (place.clone(), typed.to_owned());
        self.0.push(Diagnostic::Problem { place, typed, what: what.into(), right: right.into() });
    }

    /// A problem of a value read.
    pub(crate) fn wrong_at<T>(&mut self, at: &At<T>, what: impl Into<String>, right: impl Into<String>) {
        self.problem(&at.place, &at.typed, what, right);
    }

    /// Something the file does not say that is assumed.
    pub(crate) fn assume(
        &mut self,
        key: impl Into<String>,
        words: impl Into<String>,
        from: impl Into<String>,
    ) {
        let (key, words, from) = (key.into(), words.into(), from.into());
        self.0.push(Diagnostic::Assumed(Assumption { key, words, from }));
    }

    /// One problem.
    pub(crate) fn of(place: &Place, typed: &str, what: impl Into<String>, right: impl Into<String>) -> Self {
        let mut one = Self::default();
        one.problem(place, typed, what, right);
        one
    }

    /// One problem of a value read.
    pub(crate) fn of_value<T>(at: &At<T>, what: impl Into<String>, right: impl Into<String>) -> Self {
        Self::of(&at.place, &at.typed, what, right)
    }

    /// What came up elsewhere, after this.
    pub(crate) fn join(&mut self, later: Diagnostics) {
        self.0.extend(later.0);
    }

    /// How many things are wrong.
    pub(crate) fn problems(&self) -> usize {
        self.0.iter().filter(|one| matches!(one, Diagnostic::Problem { .. })).count()
    }

    /// Whether nothing is wrong.
    pub(crate) fn is_clean(&self) -> bool {
        self.problems() == 0
    }

    /// All that was assumed.
    pub(crate) fn assumptions(self) -> impl Iterator<Item = Assumption> {
        self.0.into_iter().filter_map(|one| match one {
            Diagnostic::Assumed(assumption) => Some(assumption),
            _ => None,
        })
    }
}

impl FromIterator<Diagnostics> for Diagnostics {
    fn from_iter<I: IntoIterator<Item = Diagnostics>>(all: I) -> Self {
        Self(all.into_iter().flat_map(|one| one.0).collect())
    }
}

/// What a reader made, if it could, and what came up meanwhile.
#[derive(Debug)]
#[must_use]
pub(crate) struct Read<T> {
    pub(crate) made: Option<T>,
    pub(crate) diagnostics: Diagnostics,
}

impl<T> Read<T> {
    /// Reads with diagnostics of its own.
    pub(crate) fn of(read: impl FnOnce(&mut Diagnostics) -> Option<T>) -> Self {
        let mut diagnostics = Diagnostics::default();
        Self { made: read(&mut diagnostics), diagnostics }
    }

    /// What was made, with nothing to say about it.
    pub(crate) fn made(made: T) -> Self {
        Self { made: Some(made), diagnostics: Diagnostics::default() }
    }

    /// What was made, where the file does not say it.
    pub(crate) fn assumed(
        made: T,
        key: impl Into<String>,
        words: impl Into<String>,
        from: impl Into<String>,
    ) -> Self {
        let mut read = Self::made(made);
        read.diagnostics.assume(key, words, from);
        read
    }

    /// Nothing was made, because of this.
    pub(crate) fn problem(
        place: &Place,
        typed: &str,
        what: impl Into<String>,
        right: impl Into<String>,
    ) -> Self {
        Self { made: None, diagnostics: Diagnostics::of(place, typed, what, right) }
    }

    /// What was made; what came up joins the rest.
    pub(crate) fn join(self, diagnostics: &mut Diagnostics) -> Option<T> {
        diagnostics.join(self.diagnostics);
        self.made
    }

    /// Something else made of it.
    pub(crate) fn map<U>(self, make: impl FnOnce(T) -> U) -> Read<U> {
        Read { made: self.made.map(make), diagnostics: self.diagnostics }
    }

    /// What is read next, if this was made.
    pub(crate) fn and_then<U>(self, next: impl FnOnce(T) -> Read<U>) -> Read<U> {
        Read::of(|diagnostics| next(self.join(diagnostics)?).join(diagnostics))
    }
}

impl<T> Read<Vec<T>> {
    /// What is read of each; what could not be read is left out.
    pub(crate) fn each<U>(self, mut read: impl FnMut(T) -> Read<U>) -> Read<Vec<U>> {
        Read::of(|diagnostics| {
            let all = self.join(diagnostics)?;
            Some(all.into_iter().filter_map(|one| read(one).join(diagnostics)).collect())
        })
    }
}
