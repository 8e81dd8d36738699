//! An option of a question: what is shown of it, what it holds, and how that is read.

use std::fmt;

/// What can be told of an option whatever it holds.
#[derive(Clone, Copy, Debug)]
pub struct About {
    /// Its name, without dashes.
    pub name: &'static str,
    /// How its value is shown, such as `NUMBER`.
    pub value: &'static str,
    /// What it means.
    pub help: &'static str,
    /// What is taken when nothing is said, as it would be typed.
    pub default: Option<&'static str>,
    /// The words it may hold, each with its meaning, which may be empty; no words: anything that can be read.
    pub words: &'static [(&'static str, &'static str)],
    /// Whether it may be given several times.
    pub is_repeated: bool,
    /// Whether it has to be given.
    pub is_required: bool,
    /// Whether a value may begin with a hyphen, so that it can be told what is wrong with it.
    pub may_begin_with_hyphen: bool,
    /// Options that cannot be given with it.
    pub conflicts: &'static [&'static str],
    /// Options without which it means nothing.
    pub requires: &'static [&'static str],
}

/// An option whatever it holds.
pub trait AnyOpt: Sync {
    /// What can be told of it.
    fn about(&self) -> &About;

    /// Whether a text can be its value.
    ///
    /// # Errors
    /// What is wrong with it and what would be right, in words.
    fn check(&self, text: &str) -> Result<(), String>;

    /// A text that can be its value, in the way in which it is typed again.
    fn again(&self, text: &str) -> String;
}

impl fmt::Debug for dyn AnyOpt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "--{}", self.about().name)
    }
}

/// An option that holds a `T`.
#[derive(Clone, Copy, Debug)]
pub struct Opt<T> {
    about: About,
    read: fn(&str) -> Result<T, String>,
    again: Option<fn(&T) -> String>,
}

impl<T> Opt<T> {
    /// One that may be given once.
    pub const fn new(
        name: &'static str,
        value: &'static str,
        help: &'static str,
        read: fn(&str) -> Result<T, String>,
    ) -> Self {
        let about = About {
            name,
            value,
            help,
            default: None,
            words: &[],
            is_repeated: false,
            is_required: false,
            may_begin_with_hyphen: false,
            conflicts: &[],
            requires: &[],
        };
        Self { about, read, again: None }
    }

    /// The same with another meaning.
    pub const fn means(mut self, help: &'static str) -> Self {
        self.about.help = help;
        self
    }

    /// What is taken when nothing is said, as it would be typed.
    pub const fn usually(mut self, default: &'static str) -> Self {
        self.about.default = Some(default);
        self
    }

    /// The words it may hold, each with its meaning.
    pub const fn one_of(mut self, words: &'static [(&'static str, &'static str)]) -> Self {
        self.about.words = words;
        self
    }

    /// It may be given several times.
    pub const fn repeated(mut self) -> Self {
        self.about.is_repeated = true;
        self
    }

    /// It has to be given.
    pub const fn required(mut self) -> Self {
        self.about.is_required = true;
        self
    }

    /// A value may begin with a hyphen.
    pub const fn hyphens(mut self) -> Self {
        self.about.may_begin_with_hyphen = true;
        self
    }

    /// It cannot be given together with these.
    pub const fn without(mut self, others: &'static [&'static str]) -> Self {
        self.about.conflicts = others;
        self
    }

    /// It means nothing without these.
    pub const fn with(mut self, others: &'static [&'static str]) -> Self {
        self.about.requires = others;
        self
    }

    /// How what was typed is said in the command that gives the same answer again; without this, as it was typed.
    pub const fn typed_again(mut self, again: fn(&T) -> String) -> Self {
        self.again = Some(again);
        self
    }

    /// Its name.
    pub const fn name(&self) -> &'static str {
        self.about.name
    }

    /// What a text means.
    ///
    /// # Errors
    /// What is wrong with it and what would be right, in words.
    pub fn read(&self, text: &str) -> Result<T, String> {
        (self.read)(text)
    }
}

impl<T> AnyOpt for Opt<T> {
    fn about(&self) -> &About {
        &self.about
    }

    fn check(&self, text: &str) -> Result<(), String> {
        let words = self.about.words;
        if !words.is_empty() && words.iter().all(|(word, _)| *word != text) {
            let words: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
            return Err(format!("write {}", words.join(" or ")));
        }
        self.read(text).map(drop)
    }

    fn again(&self, text: &str) -> String {
        let again = self.again.and_then(|again| self.read(text).ok().map(|value| again(&value)));
        again.unwrap_or_else(|| text.to_owned())
    }
}
