//! The first screen of an answer as data: a terminal lays it out in lines, a page as it likes.

use crate::findings::{AssumedLine, Estimate, Warning, Warnings};
use serde::Serialize;

/// The answer as it is shown first.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Card {
    /// The answer in one line.
    pub headline: String,
    /// Which job, or jobs, it is about.
    pub job: CardRow,
    /// What is to be known, in the order people ask it.
    pub rows: Vec<CardRow>,
    /// When it will be done, to be drawn; `None` where nothing is left to chance, and of answers that tell no such range.
    pub picture: Option<Picture>,
    /// What to heed before the work begins: doubtful figures first.
    pub warnings: Vec<CardWarning>,
    /// What the file does not say and has been assumed.
    pub assumed: Vec<AssumedLine>,
    /// The files that may come with the answer.
    pub files: &'static [&'static str],
    /// What would help, what saves most first.
    pub helps: Vec<Help>,
}

/// A line of it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct CardRow {
    /// What it tells: `Plan on`.
    pub label: String,
    /// What is told, in one sentence or several lines; may be empty.
    pub words: String,
}

/// The time at which it will be done, from a good day to a bad one.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Picture {
    /// Whether the material is enough: if not, these are the times at which the crew would stop.
    pub enough: bool,
    /// One day in ten is done earlier.
    pub low: Mark,
    /// Half of the days are.
    pub middle: Mark,
    /// Eight days in ten are: what to plan on.
    pub plan: Mark,
    /// Nine days in ten are.
    pub high: Mark,
}

/// A time of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Mark {
    /// Clock time \[s after midnight of the first day\].
    pub clock_s: Estimate,
    /// The same in words: `10:40 am`.
    pub clock: String,
    /// Working time up to it, in words: `2 h 40 min`.
    pub duration: String,
}

/// One thing to heed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CardWarning {
    /// Whether it is a doubtful figure or a usual caution.
    pub weight: CardWeight,
    /// What is the matter.
    pub cause: String,
    /// What to do about it.
    pub remedy: String,
}

/// How much it weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum CardWeight {
    /// A figure that is doubtful or will hold the job up.
    Warning,
    /// A caution that belongs to every such job.
    Usual,
}

/// Something that would help.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Help {
    /// What is changed: `One more raker`.
    pub words: String,
    /// What it saves: `28 min`.
    pub saves: String,
    /// What the job then costs, where there are prices: `$22 more`.
    pub cost: Option<String>,
    /// The change by which it can be tried, as typed: `rakers = 2`; `None` where no one change says it.
    pub change: Option<String>,
}

impl Card {
    /// A card about a job, with what has to be heeded in it.
    pub(crate) fn new(headline: String, job: CardRow, warnings: &Warnings, assumed: &[AssumedLine]) -> Self {
        let of = |weight| {
            move |warning: &Warning| CardWarning {
                weight,
                cause: warning.cause.clone(),
                remedy: warning.remedy.clone(),
            }
        };
        let doubtful = warnings.doubtful.iter().map(of(CardWeight::Warning));
        let usual = warnings.usual.iter().map(of(CardWeight::Usual));
        Self {
            headline,
            job,
            warnings: doubtful.chain(usual).collect(),
            assumed: assumed.to_vec(),
            ..Self::default()
        }
    }

    /// With one more line.
    pub(crate) fn row(&mut self, label: impl Into<String>, words: impl Into<String>) -> &mut Self {
        self.rows.push(row(label, words));
        self
    }

    /// How many of its warnings weigh so much.
    pub(crate) fn count(&self, weight: CardWeight) -> usize {
        self.warnings.iter().filter(|warning| warning.weight == weight).count()
    }
}

/// A line.
pub(crate) fn row(label: impl Into<String>, words: impl Into<String>) -> CardRow {
    CardRow { label: label.into(), words: words.into() }
}
