//! What else tells: what the best costs where time was judged, how long it takes where cost was, and on which day it is done.

use super::difference::between;
use super::words::{quoted, sentence};
use crate::compare::{Choice, Comparison, Judged};
use crate::findings::Unit;
use crate::findings::share_of_runs;
use scenarios::calendar;
use sim::Sorted;

/// The other side of the bargain, and the days.
pub(super) fn besides(comparison: &Comparison) -> Vec<String> {
    let mut all = Vec::new();
    match comparison.judged {
        Judged::Cost => all.extend(other_side(comparison, comparison.time())),
        Judged::WorkingTime | Judged::ClockTime => all.extend(other_side(comparison, Judged::Cost)),
    }
    if comparison.has_nights() {
        all.extend(by_day(comparison));
    }
    all
}

/// How a figure is spoken of.
struct Words {
    more: &'static str,
    less: &'static str,
    least: &'static str,
    about: &'static str,
}

const COST: Words = Words {
    more: "costs {} more",
    less: "costs {} less",
    least: "the cheapest",
    about: "costs about the same",
};
const TIME: Words = Words {
    more: "takes {} longer",
    less: "takes {} less",
    least: "the fastest",
    about: "takes about as long",
};

/// What the best costs (or takes) against the first, and which is the best in that.
fn other_side(comparison: &Comparison, by: Judged) -> Option<String> {
    let known = |place: usize| by != Judged::Cost || comparison.priced_alike(0, place);
    let best = comparison.best;
    if !known(0) || !known(best) {
        return None;
    }
    let (words, unit) = match by {
        Judged::Cost => (COST, Unit::Money(&comparison.first().scenario.currency)),
        Judged::WorkingTime | Judged::ClockTime => (TIME, Unit::Time),
    };
    let mut parts = Vec::new();
    if best > 0 {
        let saved = between(comparison, by, 0, best).mean;
        let first = quoted(comparison, 0);
        let words = match (saved.low > 0.0, saved.high < 0.0) {
            (true, _) => format!("{} than {first}", fill(words.less, unit, saved.low, saved.high)),
            (_, true) => format!("{} than {first}", fill(words.more, unit, -saved.high, -saved.low)),
            _ => format!("{} as {first}", words.about),
        };
        parts.push(format!("on average it {words}"));
    }
    let mean = |place: usize| -between(comparison, by, 0, place).mean.value;
    let places = (0..comparison.choices.len()).filter(|place| known(*place));
    let least = places.min_by(|a, b| mean(*a).total_cmp(&mean(*b)))?;
    let ahead = between(comparison, by, best, least).mean;
    if least == best || comparison.choices[least].scenario.job == comparison.choices[best].scenario.job {
        parts.push(format!("it is {}", words.least));
    } else if ahead.low > 0.0 && least == 0 {
        parts.iter_mut().for_each(|part| *part += &format!(", which is {}", words.least));
    } else if ahead.low > 0.0 {
        let less = fill(words.less, unit, ahead.low, ahead.high);
        parts.push(format!("{} is {}: it {less} than that", quoted(comparison, least), words.least));
    }
    (!parts.is_empty()).then(|| sentence(parts.join("; ")))
}

fn fill(words: &str, unit: Unit<'_>, low: f64, high: f64) -> String {
    words.replace("{}", &unit.span(low, high))
}

/// Most days that are looked through.
const MOST_DAYS: u32 = 60;

/// How often each is done by the end of the day that parts the jobs most; nothing where none parts them.
fn by_day(comparison: &Comparison) -> Option<String> {
    let finish = |choice: &Choice| {
        let start = choice.scenario.job.shift.start_s;
        // A run that ends short of material is not done on any day.
        choice.study.sorted(|o| o.done().map_or(f64::INFINITY, |_| Judged::ClockTime.of(start, o)))
    };
    let each: Vec<Sorted> = comparison.choices.iter().map(finish).collect();
    let by_the_end = |day: u32| f64::from(day) * 86_400.0;
    let on = |day: u32| each.iter().map(|s| s.share_up_to(by_the_end(day)).value).collect::<Vec<f64>>();
    let apart = |shares: &[f64]| {
        let ends = shares.iter().fold((1.0_f64, 0.0_f64), |(low, high), s| (low.min(*s), high.max(*s)));
        ends.1 - ends.0
    };
    let days = (1..=MOST_DAYS).map(|day| (day, on(day)));
    // The first of several that part them alike.
    let (day, shares) = days.reduce(|a, b| if apart(&b.1) > apart(&a.1) { b } else { a })?;
    if apart(&shares) < 0.005 {
        return None;
    }
    let each: Vec<String> = (shares.iter().enumerate())
        .map(|(place, share)| format!("{} in {}", Choice::letter(place), share_of_runs(*share)))
        .collect();
    let date = (comparison.first().scenario.date)
        .and_then(|first| calendar::later(first, i64::from(day) - 1))
        .map_or_else(|| format!("day {day}"), calendar::short);
    let when = if day == 1 { format!("on {date}") } else { format!("by the end of {date}") };
    Some(format!("Done {when}: {}.", each.join(", ")))
}
