//! Which job to take, and how sure that is.

use super::difference::between;
use super::money;
use super::words::quoted;
use crate::compare::{Choice, Comparison, Judged};
use crate::findings::Unit;
use crate::findings::{Estimate, OrderFindings, order, percent, share_of_runs};
use scenarios::units::figure;
use serde::Serialize;
use sim::Paired;

/// Which job to take.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Verdict {
    /// The answer in a sentence.
    pub take: String,
    /// How sure it is, or what is missing.
    pub sure: String,
    /// What else a person would want to know before taking it.
    pub besides: Vec<String>,
    /// Letter of the best.
    pub best: String,
    /// Its name.
    pub best_name: String,
    /// Whether the promise holds.
    pub held: bool,
    /// What the jobs were judged by.
    pub judged_by: Judged,
    /// The same in words.
    pub judged_by_words: &'static str,
    /// A difference that was said not to matter \[s, or money\].
    pub within: f64,
    /// None of the others is better by more than this on average, with the confidence promised \[s, or money\].
    pub others_better_by_at_most: f64,
    /// The confidence promised \[0 to 1\].
    pub confidence: f64,
    /// What the best saves against the first on average \[s, or money\]; `None` where it is the first.
    pub saved_against_first: Option<Estimate>,
    /// Letters of those that come so near the best that nobody set them apart.
    pub as_good: Vec<String>,
}

/// Which job to take.
pub(super) fn verdict(comparison: &Comparison) -> Verdict {
    let context = Context { comparison, unit: unit(comparison) };
    let best = comparison.best;
    let letter = crate::compare::Choice::letter;
    let saved = (best > 0).then(|| between(comparison, comparison.judged, 0, best));
    Verdict {
        take: context.in_full(),
        sure: context.sure(),
        besides: money::besides(comparison),
        best: letter(best),
        best_name: comparison.choices[best].name.clone(),
        held: comparison.held,
        judged_by: comparison.judged,
        judged_by_words: judged_words(comparison.judged),
        within: comparison.promise.indifference,
        others_better_by_at_most: comparison.within,
        confidence: comparison.promise.confidence,
        saved_against_first: saved.map(|paired| Estimate::from(paired.mean)),
        as_good: context.left().map(letter).collect(),
    }
}

fn unit(comparison: &Comparison) -> Unit<'_> {
    match comparison.judged {
        Judged::Cost => Unit::Money(&comparison.first().scenario.currency),
        Judged::WorkingTime | Judged::ClockTime => Unit::Time,
    }
}

fn judged_words(judged: Judged) -> &'static str {
    match judged {
        Judged::WorkingTime => "time on the job from its start to the end of clean-up, nights left out",
        Judged::ClockTime => {
            "the clock time of the finish, nights included, because the jobs keep different hours"
        }
        Judged::Cost => "what the job costs",
    }
}

struct Context<'a> {
    comparison: &'a Comparison,
    unit: Unit<'a>,
}

impl Context<'_> {
    /// Those but the best that were never set aside.
    fn left(&self) -> impl Iterator<Item = usize> + '_ {
        let choices = self.comparison.choices.iter().enumerate();
        choices.filter(|(i, c)| *i != self.comparison.best && c.set_aside.is_none()).map(|(i, _)| i)
    }

    /// What to take, after what has to be ordered first. One that is ahead because it ends short is not to be taken.
    fn in_full(&self) -> String {
        let comparison = self.comparison;
        let of = |choice: &Choice| order(&choice.study, &choice.scenario, comparison.units);
        let orders: Vec<OrderFindings> = comparison.choices.iter().map(of).collect();
        match self.short(&orders) {
            Some(first) if !orders[comparison.best].enough && orders.iter().any(|order| order.enough) => {
                format!(
                    "{first} It ends first because it does less: as it is, take one of those that are done."
                )
            }
            Some(first) => format!("{first} {}", self.take()),
            None => self.take(),
        }
    }

    /// Which of them run out of material, and what to order.
    fn short(&self, orders: &[OrderFindings]) -> Option<String> {
        let comparison = self.comparison;
        let short: Vec<usize> = (0..orders.len()).filter(|place| !orders[*place].enough).collect();
        let best = comparison.best;
        let worst = short.iter().copied().max_by_key(|place| orders[*place].truckloads_more)?;
        if short.len() == orders.len() {
            let context =
                if orders[best].truckloads_more == orders[worst].truckloads_more { best } else { worst };
            return Some(format!("All of them run out of material. {}", orders[context].sentence));
        }
        let context = if short.contains(&best) { best } else { worst };
        let others = match short.len() - 1 {
            0 => String::new(),
            1 => " (and one other)".to_owned(),
            n => format!(" (and {n} others)"),
        };
        Some(format!("{}{others} runs out of material. {}", self.name(context), orders[context].sentence))
    }

    fn name(&self, place: usize) -> String {
        quoted(self.comparison, place)
    }

    /// `it finishes 29 to 35 min sooner`.
    fn gains(&self, low: f64, high: f64) -> String {
        let span = self.unit.span(low, high);
        match self.unit {
            Unit::Time => format!("it finishes {span} sooner"),
            Unit::Money(_) => format!("it costs {span} less"),
        }
    }

    fn take(&self) -> String {
        let comparison = self.comparison;
        let best = comparison.best;
        if (1..comparison.choices.len()).all(|place| comparison.same_as(place) == Some(0)) {
            return format!("There is nothing to choose: all of them are the same job as {}.", self.name(0));
        }
        if best > 0 {
            return self.ahead("Take", &self.name(0), &between(comparison, comparison.judged, 0, best));
        }
        let against = |place: usize| (place, between(comparison, comparison.judged, place, 0));
        let others = (1..comparison.choices.len()).filter(|place| comparison.same_as(*place) != Some(0));
        let next = others.map(against).min_by(|(_, a), (_, b)| a.mean.value.total_cmp(&b.mean.value));
        next.map_or_else(String::new, |(place, saved)| {
            self.ahead("Stay with", &format!("the next best, {}", self.name(place)), &saved)
        })
    }

    /// How far the best is ahead of another, and what that means.
    fn ahead(&self, verb: &str, other: &str, saved: &Paired) -> String {
        let (best, mean) = (self.name(self.comparison.best), saved.mean);
        let matters = self.comparison.promise.indifference;
        let chance = share_of_runs(saved.smaller.value);
        let ahead = match self.unit {
            Unit::Time => format!("is the faster in {chance}"),
            Unit::Money(_) => format!("is the cheaper in {chance}"),
        };
        let gains = self.gains(mean.low, mean.high);
        match mean {
            m if m.low > 0.0 && !self.comparison.held => {
                format!("So far {best} leads: on average {gains} than {other}, and it {ahead}.")
            }
            m if m.low > 0.0 && m.value > matters => {
                format!("{verb} {best}: on average {gains} than {other}, and it {ahead}.")
            }
            m if m.low > 0.0 => {
                format!(
                    "{best} is ahead, but it hardly matters: on average {gains} than {other}, and it {ahead}."
                )
            }
            m if m.high <= matters => {
                format!("It hardly matters: {best} is hardly ahead of {other} and {ahead}.")
            }
            _ => {
                format!(
                    "{best} is ahead as far as can be told: on average {gains} than {other}, and it {ahead}."
                )
            }
        }
    }

    fn sure(&self) -> String {
        let comparison = self.comparison;
        let confidence = percent(comparison.promise.confidence);
        let better = match self.unit {
            Unit::Time => "faster",
            Unit::Money(_) => "cheaper",
        };
        let left = self.left().count();
        if !comparison.held {
            let runs = comparison.choices[comparison.best].study.runs();
            return format!(
                "This is not settled: after {} runs another could still be {better} by {} on average, and {} was wanted, {confidence} \
                 sure. Allow more runs with --most, or more to spare with --within.",
                figure(f64::from(runs)),
                self.unit.say(comparison.within),
                self.unit.say(comparison.promise.indifference)
            );
        }
        if left == 0 || comparison.within <= 0.0 {
            return format!("No other is {better} on average, {confidence} sure.");
        }
        let within = self.unit.say(comparison.promise.indifference);
        format!("No other is {better} by more than {within} on average, {confidence} sure.")
    }
}
