//! What a sentence is made of.

use crate::units::System;

/// How times of the clock are said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clock {
    /// `2:15 pm`.
    AmPm,
    /// `14:15`.
    Hours24,
}

impl Clock {
    /// The usual one beside a system of units.
    pub fn of(system: System) -> Self {
        match system {
            System::Us => Self::AmPm,
            System::Metric => Self::Hours24,
        }
    }
}

/// A job in words: the first sentence says what is moved, where, with whom and when; further ones what else is known of it.
///
/// ```
/// use scenarios::{Answers, JobFile, Texts, starter, units::System};
/// let text = starter(&Answers::usual(System::Metric));
/// let file = JobFile::of_text(&text, "new.toml", Texts::default()).unwrap();
/// let sentence = file.sentence(None, None);
/// assert_eq!(
///     sentence.words(),
///     "Move 24 m3 of wood chips, green, from the pile, 25 m, to the ground, with one loader of 0.4 m3 and one person raking, \
///      from 08:00, no break."
/// );
/// let distance = sentence.values().find(|value| value.key == "zone.ground.distance").unwrap();
/// assert_eq!((distance.typed.as_str(), distance.less.as_deref(), distance.more.as_deref()), ("25 m", Some("20 m"), Some("30 m")));
/// assert!(distance.usual);
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sentence {
    /// Its clauses, in the order they are said; each begins with the comma, space or full stop before it.
    pub clauses: Vec<Clause>,
    /// How many of its values are the usual ones, because nothing else was said.
    pub usual: usize,
    /// What the file says besides, which the sentence does not.
    pub further: Vec<Further>,
}

/// A part of the sentence that belongs together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Clause {
    /// What it tells of: `material`, `stockpile`, `zones`, `zone`, `loader`, `raker`, `date`, `shift`, `breaks`, `pile`, `delivery`, `machine`,
    /// `people`, `pass`, `hours`, `finish`, `price`.
    pub kind: &'static str,
    /// The name by which [`Edit::Remove`](crate::Edit::Remove) takes it.
    pub name: Option<String>,
    /// Words and values, one after the other.
    pub parts: Vec<Part>,
    /// What can be added behind it.
    pub add: Option<Add>,
    /// Whether it can be removed.
    pub can_remove: bool,
    /// Whether all in it is usual and [`Sentence::words`] leaves it out.
    pub is_quiet: bool,
}

/// A piece of a clause.
#[derive(Clone, Debug, PartialEq)]
pub enum Part {
    /// Words, with the spaces around them.
    Words(String),
    /// A value that can be changed.
    Value(Box<Value>),
}

/// Something that can be added to a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Add {
    /// What [`Edit::Add`](crate::Edit::Add) takes.
    pub kind: String,
    /// What it is, in words: `another zone`.
    pub words: String,
}

/// A value that can be changed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Value {
    /// Its key, as [`Edit::Set`](crate::Edit::Set) takes it.
    pub key: String,
    /// As the sentence says it.
    pub words: String,
    /// As a person would type it; empty where nothing is said.
    pub typed: String,
    /// Whether it is what is taken anyway, because nothing else was said.
    pub usual: bool,
    /// What it is, in a few words: `how far`.
    pub title: String,
    /// What it means, in a sentence.
    pub help: String,
    /// Within which limits it may lie, in words.
    pub limits: String,
    /// The next value down in steps a person would take, as it would be typed.
    pub less: Option<String>,
    /// The next value up.
    pub more: Option<String>,
    /// Usual choices, as they would be typed.
    pub choices: Vec<String>,
    /// Units it can be typed in, the usual one first; of money what stands behind the sum.
    pub units: Vec<String>,
}

/// Something a file says that the sentence does not.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Further {
    /// Its key.
    pub key: String,
    /// What it means, in a sentence.
    pub words: String,
}

impl Clause {
    fn words(&self) -> String {
        self.parts.iter().map(Part::words).collect()
    }
}

impl Part {
    /// As the sentence says it.
    pub fn words(&self) -> &str {
        match self {
            Self::Words(words) => words,
            Self::Value(value) => &value.words,
        }
    }
}

impl Sentence {
    /// All of it as plain text, without what is usual and need not be said.
    pub fn words(&self) -> String {
        self.said().map(Clause::words).collect()
    }

    /// The first clauses of it, as many as go into so many characters; if not all do, three dots at the end.
    ///
    /// ```
    /// use scenarios::{JobFile, Texts};
    /// let (name, text) = scenarios::shipped()[3];
    /// let sentence = JobFile::of_text(text, name, Texts::default()).unwrap().sentence(None, None);
    /// assert_eq!(sentence.first_words(80), "Move 62.2 yd3 of bark mulch from the yard pile to 3 zones ...");
    /// assert_eq!(sentence.first_words(10_000), sentence.words());
    /// ```
    pub fn first_words(&self, characters: usize) -> String {
        let mut said = String::new();
        for words in self.said().map(Clause::words) {
            if said.chars().count() + words.chars().count() > characters && !said.is_empty() {
                return said.trim_end_matches([' ', ',', ';', ':', '.']).to_owned() + " ...";
            }
            said.push_str(&words);
        }
        said
    }

    /// All values that can be changed, in their order.
    pub fn values(&self) -> impl Iterator<Item = &Value> {
        self.clauses.iter().flat_map(|clause| &clause.parts).filter_map(|part| match part {
            Part::Value(value) => Some(value.as_ref()),
            Part::Words(_) => None,
        })
    }

    fn said(&self) -> impl Iterator<Item = &Clause> {
        self.clauses.iter().filter(|clause| !clause.is_quiet)
    }
}
