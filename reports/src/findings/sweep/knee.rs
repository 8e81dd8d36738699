//! The knee: the point after which going on hardly pays in time.
//!
//! The rule is our own. A step is *worth taking* when its saving is surely above nothing (the 95 % interval of the paired
//! differences leaves out 0), worth naming, and at least a fifth of what the best step of its kind saves. Along one thing
//! the steps are read from the slow end of the range to the quick one, each saving for the width of its step, and the knee
//! is where the last step worth taking leads: none after it is. Where two things vary, one goes from the slow corner, each
//! time along the thing whose step saves more, along both at once where neither alone is worth it, and the knee is
//! where no step is worth taking any more ([`walk`]).

use super::steps::{Sure, job_s, more_is_better, sure, time_saved};
use super::walk;
use super::words::{Saying, bracketed, point_words, step_words};
use crate::findings::{capital, roughly};
use crate::sweep::Sweep;
use scenarios::units::duration;
use serde::Serialize;
use sim::Mean;

/// A step that saves less than this share of the best one is not worth taking (our own choice).
pub const LEAST_OF_BEST: f64 = 0.2;
/// Steps told one by one; of more, only the least and the greatest saving is told.
const TOLD: usize = 4;

/// Where going on stops to pay in time.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Knee {
    /// The knee, by its place in the list; `None` where no step is worth taking.
    pub at: Option<usize>,
    /// Whether the last step of the range is still worth taking, so that the knee may lie beyond it.
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

pub(super) const RULE: &str = "The knee is where going on stops to pay: every step after it saves less than a fifth of what the best \
                    step of its kind saves, or nothing that is certain.";

/// The knee of a sweep.
pub(super) fn knee(sweep: &Sweep) -> Knee {
    match sweep.things.len() {
        1 => Line::new(sweep).knee(),
        _ => walk::knee(sweep),
    }
}

pub(super) fn none(sweep: &Sweep, steps: String) -> Knee {
    let which = if sweep.things.len() > 1 { "Neither of the two" } else { "No step" };
    let sentence = format!("{which} surely saves time that is worth naming in this range: there is no knee.");
    let title = "Nothing here surely saves time".to_owned();
    Knee { at: None, open: false, title, steps, sentence, rule: RULE }
}

/// A step along a thing.
struct Step {
    from: usize,
    to: usize,
    saved: Mean,
    /// Its width, in the units of the axis.
    width: f64,
    sure: Sure,
}

/// Whether an interval is told.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Known {
    Told,
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
        let number = |point: usize| sweep.things[0].values[point].number(sweep.units).0;
        let step = |pair: &[usize]| {
            let (from, to) = (pair[0], pair[1]);
            let saved = time_saved(sweep, from, to);
            Step { from, to, saved, width: (number(to) - number(from)).abs(), sure: sure(saved, job_s) }
        };
        Self { sweep, steps: order.windows(2).map(step).collect() }
    }

    /// Saved in a step of width 1 by the best sure step \[s\].
    fn best(&self) -> Option<f64> {
        let sure = self.steps.iter().filter(|step| step.sure == Sure::Saves);
        sure.map(|step| step.saved.value / step.width).max_by(f64::total_cmp)
    }

    fn knee(&self) -> Knee {
        let worth = |step: &Step, best: f64| {
            step.sure == Sure::Saves && step.saved.value / step.width >= LEAST_OF_BEST * best
        };
        let last = self.best().and_then(|best| self.steps.iter().rposition(|step| worth(step, best)));
        let (Some(last), Some(best)) = (last, self.best()) else { return none(self.sweep, self.told(None)) };
        let at = self.steps[last].to;
        let open = last + 1 == self.steps.len();
        let words = self.words(at);
        let sentence = match self.steps.get(last + 1) {
            None => {
                format!("Every step up to {words} may still pay: the knee lies there or beyond this range.")
            }
            Some(next) => {
                let perhaps = next.saved.high / next.width >= LEAST_OF_BEST * best && next.saved.high > 0.0;
                let beyond = self.words(next.to);
                let doubt = if perhaps {
                    format!(" Perhaps it is {beyond}: more runs would tell.")
                } else {
                    String::new()
                };
                format!("The knee is at {words}: beyond it no step saves a fifth of the best one.{doubt}")
            }
        };
        let title = self.title(last);
        Knee { at: Some(at), open, title, steps: self.told(Some(last)), sentence, rule: RULE }
    }

    fn words(&self, point: usize) -> String {
        point_words(&self.sweep.things, &self.sweep.points[point].places, self.sweep.units)
    }

    /// What the steps save: one by one, or from the least to the greatest on each side of the last one worth taking.
    fn told(&self, last: Option<usize>) -> String {
        let first_of_rest = last.map_or(0, |last| last + 1);
        // What comes after the knee is told by its first step.
        let told = last.map_or(self.steps.len(), |last| self.steps.len().min(last + 2));
        if told <= TOLD {
            let each: Vec<String> = self.steps[..told]
                .iter()
                .enumerate()
                .map(|(i, step)| self.step(i, step, Known::Told))
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
                format!("up to {}", roughly(most))
            } else {
                format!("{} to {}", roughly(least), roughly(most))
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
                format!("none saves more than {}", roughly(most))
            };
            sentences.push(format!("From {} on {saves}.", self.words(first.from)));
        }
        sentences.join(" ")
    }

    /// The steps up to the last one worth taking and the one after, without their intervals; of many, where the knee is.
    fn title(&self, last: usize) -> String {
        let told = self.steps.len().min(last + 2);
        if told <= TOLD {
            let each =
                self.steps[..told].iter().enumerate().map(|(i, step)| self.step(i, step, Known::Untold));
            return capital(&each.collect::<Vec<_>>().join(", "));
        }
        match self.steps.get(last + 1) {
            Some(_) => format!("Beyond {} hardly any time is saved", self.words(self.steps[last].to)),
            None => format!("Every step up to {} still pays", self.words(self.steps[last].to)),
        }
    }

    fn step(&self, number: usize, step: &Step, known: Known) -> String {
        let saying = if number == 0 { Saying::InFull } else { Saying::Short };
        let place = |point: usize| self.sweep.points[point].places[0];
        let what =
            step_words(&self.sweep.things[0], place(step.from), place(step.to), self.sweep.units, saying);
        let verb = if number == 0 { "saves " } else { "" };
        match step.sure {
            Sure::Saves if known == Known::Told => {
                format!("{what} {verb}{}{}", duration(step.saved.value), bracketed(step.saved))
            }
            Sure::Saves => format!("{what} {verb}{}", roughly(step.saved.value)),
            Sure::Loses => format!("{what} loses {}", duration(-step.saved.value)),
            Sure::Neither => format!("{what} {verb}nothing to speak of"),
        }
    }
}
