//! What would help most.

use crate::forecast::{Forecast, seconds};
use scenarios::units::duration;
use serde::Serialize;
use sim::{Improvement, LEVEL, Mean, Relief};

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
    /// Whether it saves time, or costs it, that is worth naming.
    pub helps: bool,
    /// Minutes saved in words: `28 min`, `nothing`, `2 min lost`.
    pub saves: String,
    /// The 95 % interval in words.
    pub interval: String,
    /// Half of it in words: `± 36 s`.
    pub give_or_take: String,
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
    let median_s = forecast.study.sorted(|o| seconds(o.finish.working)).percentile(0.5).value;
    let lines: Vec<ReliefLine> =
        forecast.relief.iter().map(|r| line(r, median_s, priced.then_some(currency.as_str()))).collect();
    let how = format!(
        "Each tried alone in {} runs with the same luck: mean saved, with its 95 % interval.",
        scenarios::units::figure(f64::from(forecast.relief_runs))
    );
    ReliefSays { title: title(&lines), how, lines }
}

fn line(relief: &Relief, median_s: f64, currency: Option<&str>) -> ReliefLine {
    let (key, what) = improvement_words(relief.improvement);
    let saved_s = relief.saved_s;
    let minutes = |s: f64| Some(s / 60.0).filter(|m| m.is_finite());
    ReliefLine {
        key,
        what,
        helps: worth_naming(saved_s.value, median_s),
        saves: saved(saved_s.value),
        interval: interval(saved_s),
        give_or_take: give_or_take(saved_s),
        cost: currency.map(|currency| money_saved(relief.saved_cost.value, currency)),
        saved_min: saved_s.value / 60.0,
        saved_min_low: minutes(saved_s.low),
        saved_min_high: minutes(saved_s.high),
        saved_cost: currency.map(|_| relief.saved_cost.value),
    }
}

/// Less than this, or less than this share of the job, is not worth naming (our own choice).
const LEAST_S: f64 = 30.0;
const LEAST_SHARE: f64 = 0.005;

/// Whether so much time saved or lost is worth naming for a job that takes about so long \[s\].
pub(crate) fn worth_naming(saved_s: f64, job_s: f64) -> bool {
    saved_s.abs() >= LEAST_S.min(job_s * LEAST_SHARE)
}

pub(crate) fn saved(seconds: f64) -> String {
    if seconds.abs() < 0.5 {
        "nothing".into()
    } else if seconds > 0.0 {
        duration(seconds)
    } else {
        format!("{} lost", duration(-seconds))
    }
}

/// The interval in the same sense as the saving: of a loss, from the least to the most that is lost.
fn interval(saved: Mean) -> String {
    let lost = saved.high <= 0.0;
    let (low, high) = if lost { (-saved.high, -saved.low) } else { (saved.low, saved.high) };
    if !low.is_finite() || !high.is_finite() {
        return format!("too few runs for {:.0} %", LEVEL * 100.0);
    }
    let (low, high) = (duration(low), duration(high));
    let span = if low == high { low } else { format!("{low} to {high}") };
    if lost && saved.low < 0.0 { format!("{span} lost") } else { span }
}

fn give_or_take(saved: Mean) -> String {
    let half = (saved.high - saved.low) / 2.0;
    if half.is_finite() { format!("± {}", super::roughly(half)) } else { "too few runs".into() }
}

fn money_saved(cost: f64, currency: &str) -> String {
    // Small change is told only where there is nothing larger.
    let sum = if cost.abs() < 10.0 { cost.abs() } else { cost.abs().round() };
    let sum = scenarios::units::money(sum, currency);
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
        Some(best) if best.helps && best.saved_min_low.is_some_and(|low| low > 0.0) => {
            let verb = if lines.len() > 1 { "helps most: it saves" } else { "saves" };
            format!("{} {verb} about {}", super::capital(best.what), best.saves)
        }
        Some(_) => "Nothing that was tried helps much".into(),
        None => "Nothing was tried".into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tried(improvement: Improvement, saved_s: f64, half: f64, saved_cost: f64) -> ReliefLine {
        let mean =
            |value: f64, half: f64| Mean { value, low: value - half, high: value + half, sd: 1.0, n: 100 };
        let relief = Relief { improvement, saved_s: mean(saved_s, half), saved_cost: mean(saved_cost, 0.0) };
        line(&relief, 8_000.0, Some("$"))
    }

    #[test]
    fn the_best_improvement_is_named_with_its_minutes() {
        let lines = [
            tried(Improvement::AnotherRaker, 1_680.0, 60.0, -22.4),
            tried(Improvement::MoreRoom, 0.2, 0.3, 0.2),
        ];
        assert_eq!(title(&lines), "One more raker helps most: it saves about 28 min");
        assert_eq!(
            (lines[0].interval.as_str(), lines[0].give_or_take.as_str()),
            ("27 min to 29 min", "± 60 s")
        );
        assert_eq!(lines[0].cost.as_deref(), Some("$22 more"));
        assert_eq!((lines[1].saves.as_str(), lines[1].cost.as_deref()), ("nothing", Some("the same")));
    }

    #[test]
    fn a_saving_that_may_be_none_or_is_tiny_is_not_praised() {
        let doubtful = tried(Improvement::MoreRoom, 50.0, 60.0, 0.0);
        assert_eq!(title(&[doubtful]), "Nothing that was tried helps much");
        let tiny = tried(Improvement::ShorterWays, 12.0, 1.0, 0.0);
        assert!(!tiny.helps);
        assert_eq!(title(&[tiny]), "Nothing that was tried helps much");
    }

    #[test]
    fn what_is_lost_is_told_as_a_loss() {
        let lost = tried(Improvement::AnotherLoader, -1_200.0, 60.0, -30.0);
        assert_eq!((lost.saves.as_str(), lost.interval.as_str()), ("20 min lost", "19 min to 21 min lost"));
        let either = tried(Improvement::AnotherLoader, -100.0, 200.0, -30.0);
        assert_eq!(either.interval, "-5 min to 1 min 40 s");
    }
}
