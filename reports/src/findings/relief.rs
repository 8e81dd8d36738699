//! What would help most.

use crate::forecast::Forecast;
use scenarios::units::duration;
use serde::Serialize;
use sim::{Improvement, LEVEL, Mean};

/// What would help, most minutes first.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ReliefSays {
    /// The finding in one short sentence, fit for a title.
    pub title: String,
    /// What was compared, in a sentence.
    pub how: String,
    /// One for each improvement that applies.
    pub lines: Vec<ReliefLine>,
}

/// What one improvement saves: mean of the paired differences over the same luck.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ReliefLine {
    /// Stable name for files.
    pub key: &'static str,
    /// What is improved, in words.
    pub what: &'static str,
    /// Minutes saved in words: `28 min`, `nothing`, `2 min lost`.
    pub saves: String,
    /// The 95 % interval in words.
    pub interval: String,
    /// Cost saved in words, where there are prices.
    pub cost: Option<String>,
    /// Working time to the finish saved \[min\].
    pub saved_min: f64,
    /// Lower end of its 95 % interval \[min\].
    pub saved_min_low: Option<f64>,
    /// Upper end of its 95 % interval \[min\].
    pub saved_min_high: Option<f64>,
    /// Cost saved, below 0 where it costs more \[money\]; `None` without prices.
    pub saved_cost: Option<f64>,
}

/// An improvement as a person says it, and its stable name.
pub fn improvement_words(improvement: Improvement) -> (&'static str, &'static str) {
    match improvement {
        Improvement::AnotherRaker => ("another_raker", "one more raker"),
        Improvement::FasterRaking => ("faster_raking", "raking a tenth faster"),
        Improvement::LargerBucket => ("larger_bucket", "a bucket a tenth larger"),
        Improvement::ShorterWays => ("shorter_ways", "hauls a tenth shorter"),
        Improvement::AnotherLoader => ("another_loader", "one more loader"),
        Improvement::MoreRoom => ("more_room", "room for one more heap"),
    }
}

/// What would help, most minutes first.
pub fn relief(forecast: &Forecast) -> ReliefSays {
    let currency = &forecast.scenario.currency;
    let priced = super::is_priced(&forecast.scenario.job);
    let lines: Vec<ReliefLine> = forecast
        .relief
        .iter()
        .map(|r| line(r.improvement, r.saved_s, Some(r.saved_cost.value).filter(|_| priced), currency))
        .collect();
    let how = format!(
        "Each tried alone in {} runs with the same luck: mean saved, with its 95 % interval.",
        scenarios::units::figure(f64::from(forecast.relief_runs))
    );
    ReliefSays { title: title(&lines), how, lines }
}

fn line(improvement: Improvement, saved_s: Mean, saved_cost: Option<f64>, currency: &str) -> ReliefLine {
    let (key, what) = improvement_words(improvement);
    let minutes = |s: f64| Some(s / 60.0).filter(|m| m.is_finite());
    ReliefLine {
        key,
        what,
        saves: saved(saved_s.value),
        interval: interval(saved_s),
        cost: saved_cost.map(|cost| money_saved(cost, currency)),
        saved_min: saved_s.value / 60.0,
        saved_min_low: minutes(saved_s.low),
        saved_min_high: minutes(saved_s.high),
        saved_cost,
    }
}

/// Under this a saving is not told as one \[s\].
const NOTHING_S: f64 = 5.0;

fn saved(seconds: f64) -> String {
    if seconds.abs() < NOTHING_S {
        "nothing".into()
    } else if seconds > 0.0 {
        duration(seconds)
    } else {
        format!("{} lost", duration(-seconds))
    }
}

fn interval(saved: Mean) -> String {
    if saved.low.is_finite() && saved.high.is_finite() {
        let (low, high) = (duration(saved.low), duration(saved.high));
        if low == high { low } else { format!("{low} to {high}") }
    } else {
        format!("too few runs for {:.0} %", LEVEL * 100.0)
    }
}

fn money_saved(cost: f64, currency: &str) -> String {
    let sum = scenarios::units::money(cost.abs(), currency);
    if cost.abs() < 0.5 {
        "the same".into()
    } else if cost > 0.0 {
        format!("{sum} less")
    } else {
        format!("{sum} more")
    }
}

fn title(lines: &[ReliefLine]) -> String {
    match lines.first() {
        Some(best)
            if best.saved_min * 60.0 >= NOTHING_S && best.saved_min_low.is_some_and(|low| low > 0.0) =>
        {
            let verb = if lines.len() > 1 { "helps most: it saves" } else { "saves" };
            format!("{} {verb} about {}", super::capital(best.what), best.saves)
        }
        Some(_) => "Nothing that was tried helps".into(),
        None => "Nothing was tried".into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mean(value: f64, half: f64) -> Mean {
        Mean { value, low: value - half, high: value + half, sd: 1.0, n: 100 }
    }

    #[test]
    fn the_best_improvement_is_named_with_its_minutes() {
        let lines = [
            line(Improvement::AnotherRaker, mean(1_680.0, 60.0), Some(-22.4), "$"),
            line(Improvement::MoreRoom, mean(2.0, 3.0), Some(0.2), "$"),
        ];
        assert_eq!(title(&lines), "One more raker helps most: it saves about 28 min");
        assert_eq!(lines[0].interval, "27 min to 29 min");
        assert_eq!(lines[0].cost.as_deref(), Some("$22.40 more"));
        assert_eq!((lines[1].saves.as_str(), lines[1].cost.as_deref()), ("nothing", Some("the same")));
    }

    #[test]
    fn a_saving_that_may_be_none_is_not_praised() {
        assert_eq!(
            title(&[line(Improvement::MoreRoom, mean(20.0, 30.0), None, "")]),
            "Nothing that was tried helps"
        );
        assert_eq!(saved(-1_200.0), "20 min lost");
    }
}
