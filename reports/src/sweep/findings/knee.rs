//! The knee: the point after which going on hardly pays, by the rule of [`left`](super::left), in words.

use super::left::{Field, Found, Gain};
use super::steps::{Sure, job_s, more_is_better, neighbour, sure, time_saved};
use super::words::{Saying, bracketed, point_words, step_words};
use crate::findings::about_duration;
use crate::findings::capital;
use crate::sweep::Sweep;
use scenarios::units::money;
use serde::Serialize;
use sim::Mean;

/// Steps told one by one; of more, only the least and the greatest saving is told.
const TOLD: usize = 4;

/// Where going on stops to pay.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Knee {
    /// The knee, by its place in the list; `None` where nothing is gained.
    pub at: Option<usize>,
    /// Whether it is the last point of the range, so that more may be gained beyond it.
    pub open: bool,
    /// The finding in one short sentence, fit for a title.
    pub title: String,
    /// What the steps save, in a sentence.
    pub steps: String,
    /// Where the knee is, in a sentence.
    pub sentence: String,
    /// The rule, in a sentence.
    pub rule: &'static str,
}

const RULE: &str = "The knee is the first point, in steps from the slow end, from which little is left to gain: at most a tenth of \
                    what the whole range saves and 3 % of the job. Where there are prices, time that costs more for each hour \
                    saved than an hour of the whole crew is not counted.";

/// The knee of a sweep.
pub(super) fn knee(sweep: &Sweep) -> Knee {
    let (found, whole) = Field::new(sweep).knee();
    let line = (sweep.things.len() == 1).then(|| Line::new(sweep));
    match whole {
        Some(_) => Says { sweep, found, line }.knee(),
        None => Says { sweep, found, line }.none(),
    }
}

/// What is needed to say it.
struct Says<'a> {
    sweep: &'a Sweep,
    found: Found,
    line: Option<Line<'a>>,
}

impl Says<'_> {
    fn words(&self, point: usize) -> String {
        point_words(&self.sweep.things, &self.sweep.points[point].places, self.sweep.units)
    }

    fn none(&self) -> Knee {
        let too_dear = self.found.dear.map(|dear| self.too_dear(dear));
        let sentence = too_dear.map_or_else(
            || "Nothing in this range surely saves time that is worth naming: there is no knee.".to_owned(),
            |dear| {
                format!("Nothing in this range saves time that is worth its price: there is no knee. {dear}")
            },
        );
        let title = match self.found.dear {
            Some(_) => "Nothing here saves time that is worth its price",
            None => "Nothing here surely saves time",
        };
        let steps = self.line.as_ref().map_or_else(String::new, |line| line.told(None));
        Knee { at: None, open: false, title: title.to_owned(), steps, sentence, rule: RULE }
    }

    fn knee(&self) -> Knee {
        let at = self.found.at;
        let quickest =
            |thing: usize| neighbour(self.sweep, at, thing, more_is_better(self.sweep, thing)).is_none();
        let open = (0..self.sweep.things.len()).all(quickest);
        let (steps, title) = match &self.line {
            Some(line) => (line.told(Some(at)), line.title(at)),
            None => (self.way(), None),
        };
        let sentence = if open {
            format!(
                "Every step up to {} may still pay: the knee lies there or beyond this range.",
                self.words(at)
            )
        } else {
            let doubt =
                if self.found.doubtful { " It may lie further on: more runs would tell." } else { "" };
            let dear = self.found.dear.map(|dear| format!(" {}", self.too_dear(dear))).unwrap_or_default();
            format!("The knee is at {}: beyond it {}.{dear}{doubt}", self.words(at), self.left())
        };
        let title = title.unwrap_or_else(|| {
            if open {
                format!("Every step up to {} still pays", self.words(at))
            } else {
                format!("Beyond {} {}", self.words(at), self.left())
            }
        });
        Knee { at: Some(at), open, title, steps, sentence, rule: RULE }
    }

    /// `at most 4 min more is saved`.
    fn left(&self) -> String {
        match (self.found.left, self.found.dear) {
            (Some(left), _) => format!("at most {} more is saved", about_duration(left.saved.value)),
            (None, Some(_)) => "what time is saved costs too much".into(),
            (None, None) => "no more time is surely saved".into(),
        }
    }

    /// A point that saves time for too much money.
    fn too_dear(&self, dear: Gain) -> String {
        let sum = if dear.more < 10.0 { dear.more } else { dear.more.round() };
        let sum = money(sum, &self.sweep.base.currency);
        format!(
            "With {} it takes {} less and costs {sum} more: each hour saved would cost more than an hour of the whole crew.",
            self.words(dear.to),
            about_duration(dear.saved.value)
        )
    }

    /// The way through a grid to the knee.
    fn way(&self) -> String {
        let Some(start) = Field::new(self.sweep).order().first().copied() else { return String::new() };
        let saved = time_saved(self.sweep, start, self.found.at);
        format!(
            "From {} to {} the job gets {} shorter{}.",
            self.words(start),
            self.words(self.found.at),
            about_duration(saved.value),
            bracketed(saved)
        )
    }
}

/// A step along a thing.
struct Step {
    from: usize,
    to: usize,
    saved: Mean,
    sure: Sure,
}

/// Whether an interval is told.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Known {
    Said,
    Untold,
}

/// One thing from its slow end to its quick one.
struct Line<'a> {
    sweep: &'a Sweep,
    steps: Vec<Step>,
}

impl<'a> Line<'a> {
    fn new(sweep: &'a Sweep) -> Self {
        let mut order: Vec<usize> = (0..sweep.points.len()).collect();
        if !more_is_better(sweep, 0) {
            order.reverse();
        }
        let job_s = job_s(sweep);
        let step = |pair: &[usize]| {
            let (from, to) = (pair[0], pair[1]);
            let saved = time_saved(sweep, from, to);
            Step { from, to, saved, sure: sure(saved, job_s) }
        };
        Self { sweep, steps: order.windows(2).map(step).collect() }
    }

    /// The step that leads to a point.
    fn leading_to(&self, point: usize) -> Option<usize> {
        self.steps.iter().position(|step| step.to == point)
    }

    fn words(&self, point: usize) -> String {
        point_words(&self.sweep.things, &self.sweep.points[point].places, self.sweep.units)
    }

    /// What the steps save: one by one, or from the least to the greatest on each side of the knee.
    fn told(&self, knee: Option<usize>) -> String {
        let last = knee.and_then(|knee| self.leading_to(knee));
        let first_of_rest = last.map_or(0, |last| last + 1);
        // What comes after the knee is told by its first step.
        let told = last.map_or(self.steps.len(), |last| self.steps.len().min(last + 2));
        if told <= TOLD {
            let each: Vec<String> = self.steps[..told]
                .iter()
                .enumerate()
                .map(|(i, step)| self.step(i, step, Known::Said))
                .collect();
            return capital(&format!("{}.", each.join(", ")));
        }
        let (to_knee, rest) = self.steps.split_at(first_of_rest);
        let range = |steps: &[Step]| {
            let values = || steps.iter().map(|step| step.saved.value);
            (values().fold(f64::INFINITY, f64::min), values().fold(f64::NEG_INFINITY, f64::max))
        };
        let mut sentences = Vec::new();
        if let (Some(first), Some(end)) = (to_knee.first(), to_knee.last()) {
            let (least, most) = range(to_knee);
            let between = if least <= 0.0 {
                format!("up to {}", about_duration(most))
            } else {
                format!("{} to {}", about_duration(least), about_duration(most))
            };
            sentences.push(format!(
                "From {} to {} each step saves {between}.",
                self.words(first.from),
                self.words(end.to)
            ));
        }
        if let Some(first) = rest.first() {
            let most = range(rest).1;
            let saves = if most < 0.5 {
                "none saves anything".into()
            } else {
                format!("none saves more than {}", about_duration(most))
            };
            sentences.push(format!("From {} on {saves}.", self.words(first.from)));
        }
        sentences.join(" ")
    }

    /// The steps up to the knee and the one after, without their intervals; `None` of many.
    fn title(&self, knee: usize) -> Option<String> {
        let last = self.leading_to(knee)?;
        let told = self.steps.len().min(last + 2);
        if told <= TOLD {
            let each =
                self.steps[..told].iter().enumerate().map(|(i, step)| self.step(i, step, Known::Untold));
            return Some(capital(&each.collect::<Vec<_>>().join(", ")));
        }
        None
    }

    fn step(&self, number: usize, step: &Step, known: Known) -> String {
        let saying = if number == 0 { Saying::InFull } else { Saying::Short };
        let place = |point: usize| self.sweep.points[point].places[0];
        let what =
            step_words(&self.sweep.things[0], place(step.from), place(step.to), self.sweep.units, saying);
        let verb = if number == 0 { "saves " } else { "" };
        match step.sure {
            Sure::Saves if known == Known::Said => {
                format!("{what} {verb}{}{}", about_duration(step.saved.value), bracketed(step.saved))
            }
            Sure::Saves => format!("{what} {verb}{}", about_duration(step.saved.value)),
            Sure::Loses => format!("{what} loses {}", about_duration(-step.saved.value)),
            Sure::Neither => format!("{what} {verb}nothing to speak of"),
        }
    }
}
