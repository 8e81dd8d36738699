//! What would help most.

use super::{about_duration, about_money, percent, share_of_runs};
use crate::forecast::run::Forecast;
use scenarios::units::{System, volume};
use serde::Serialize;
use sim::{DoneMore, Improvement, LEVEL, Mean, Relief};

/// What would help: a truckload more where runs end short, then most minutes first.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ReliefFindings {
    /// The finding in one short sentence, fit for a title.
    pub title: String,
    /// What was compared, in a sentence.
    pub how: String,
    /// One for each improvement that applies.
    pub lines: Vec<ReliefLine>,
}

/// What one improvement saves: mean of the paired differences over the same runs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ReliefLine {
    /// Stable name for files.
    pub key: &'static str,
    /// What is improved, in words.
    pub what: String,
    /// Whether it surely saves or costs time that is worth naming; of a truckload more, whether the job gets done more often.
    pub helps: bool,
    /// What it saves in words: `28 min`, `nothing`, `2 min lost`; of a truckload more how often the job gets done.
    pub saves: String,
    /// The 95 % interval in words.
    pub interval: String,
    /// Half of it in words: `± 36 s`; of a truckload more the whole of it.
    pub give_or_take: String,
    /// Cost saved in words, where there are prices; of a truckload more its price is not known.
    pub cost: Option<String>,
    /// Working time to the finish saved \[min\].
    pub saved_min: f64,
    /// Lower end of its 95 % interval \[min\].
    pub saved_min_low: Option<f64>,
    /// Upper end of its 95 % interval \[min\].
    pub saved_min_high: Option<f64>,
    /// Cost saved, below 0 where it costs more \[money\]; `None` without prices.
    pub saved_cost: Option<f64>,
    /// Of a truckload more: the chance that no zone ends short, without it \[0 to 1\].
    pub done_before: Option<f64>,
    /// The same with it.
    pub done_after: Option<f64>,
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
        Improvement::EarlierDeliveries => ("earlier_deliveries", "deliveries half an hour earlier"),
        Improvement::AllThere => ("all_there", "all material there at the start"),
        Improvement::AnotherTruckload => ("another_truckload", "one more truckload"),
    }
}

/// What would help: a truckload more where runs end short, then most minutes first.
pub fn relief(forecast: &Forecast) -> ReliefFindings {
    let currency = super::is_priced(&forecast.scenario.job).then_some(forecast.scenario.currency.as_str());
    let median_s = forecast.study.sorted(|o| o.finish.working.as_secs_f64()).percentile(0.5).value;
    relief_of(&forecast.relief, median_s, currency, forecast.units)
}

/// The same of any tries on a job that takes about so long \[s\]; without prices there is no currency.
pub(crate) fn relief_of(
    all: &[Relief],
    median_s: f64,
    currency: Option<&str>,
    units: System,
) -> ReliefFindings {
    let context = Context { median_s, currency, units };
    let lines: Vec<ReliefLine> = all.iter().map(|relief| line(relief, &context)).collect();
    ReliefFindings { title: title(&lines), how: how(all), lines }
}

/// What is needed to say it.
struct Context<'a> {
    median_s: f64,
    currency: Option<&'a str>,
    units: System,
}

fn how(all: &[Relief]) -> String {
    let runs = |n: usize| scenarios::units::figure(n as f64);
    let tried = all.iter().map(|relief| relief.saved_s.n);
    let span = match (tried.clone().min(), tried.max()) {
        (Some(1), Some(1)) => "run".into(),
        (Some(fewest), Some(most)) if fewest < most => format!("{} to {} runs", runs(fewest), runs(most)),
        (Some(fewest), _) => format!("{} runs", runs(fewest)),
        _ => return "Nothing was tried.".into(),
    };
    format!(
        "Each tried alone in the same {span} as the job as it stands: mean saved, with its 95 % interval."
    )
}

fn line(relief: &Relief, context: &Context<'_>) -> ReliefLine {
    if let Some(done) = &relief.done {
        return truckload(relief, done, context);
    }
    let (key, what) = improvement_words(relief.improvement);
    let saved_s = relief.saved_s;
    let (median_s, currency) = (context.median_s, context.currency);
    let minutes = |s: f64| Some(s / 60.0).filter(|m| m.is_finite());
    ReliefLine {
        key,
        what: what.to_owned(),
        helps: worth_naming(saved_s.value, median_s) && !(saved_s.low <= 0.0 && saved_s.high >= 0.0),
        saves: saved(saved_s.value),
        interval: interval(saved_s),
        give_or_take: give_or_take(saved_s),
        cost: currency.map(|currency| money_saved(relief.saved_cost.value, currency)),
        saved_min: saved_s.value / 60.0,
        saved_min_low: minutes(saved_s.low),
        saved_min_high: minutes(saved_s.high),
        saved_cost: currency.map(|_| relief.saved_cost.value),
        done_before: None,
        done_after: None,
    }
}

/// A truckload more saves no minutes: the job gets done more often.
fn truckload(relief: &Relief, done: &DoneMore, context: &Context<'_>) -> ReliefLine {
    let (key, what) = improvement_words(relief.improvement);
    let span = format!("{} to {}", percent(done.after.low), percent(done.after.high));
    let minutes = |s: f64| Some(s / 60.0).filter(|m| m.is_finite());
    ReliefLine {
        key,
        what: format!("{what} ({})", volume(done.truckload_m3, context.units)),
        helps: done.after.value - done.before.value >= LEAST_DONE,
        saves: done_words(done),
        interval: format!("share of the runs done: {span}"),
        give_or_take: span,
        cost: context.currency.map(|_| "the truckload's price more".into()),
        saved_min: relief.saved_s.value / 60.0,
        saved_min_low: minutes(relief.saved_s.low),
        saved_min_high: minutes(relief.saved_s.high),
        saved_cost: None,
        done_before: Some(done.before.value),
        done_after: Some(done.after.value),
    }
}

/// `done in 97 % of the runs`. How often it is done without stands with the order, from all runs and not only those tried.
fn done_words(done: &DoneMore) -> String {
    let (before, after) = (percent(done.before.value), percent(done.after.value));
    if before == after {
        return "done no more often".into();
    }
    format!("done in {}", share_of_runs(done.after.value))
}

/// A smaller gain in the chance of being done is not worth naming (our own choice).
const LEAST_DONE: f64 = 0.01;

/// Less than this, or less than this share of the job, is not worth naming (our own choice).
const LEAST_S: f64 = 30.0;
const LEAST_SHARE: f64 = 0.005;

/// From how much time saved or lost on it is worth naming for a job that takes about so long \[s\].
pub(crate) fn worth_naming_from(job_s: f64) -> f64 {
    LEAST_S.min(job_s * LEAST_SHARE)
}

/// Whether so much time saved or lost is worth naming for a job that takes about so long \[s\].
pub(crate) fn worth_naming(saved_s: f64, job_s: f64) -> bool {
    saved_s.abs() >= worth_naming_from(job_s)
}

pub(crate) fn saved(seconds: f64) -> String {
    if seconds.abs() < 0.5 {
        "nothing".into()
    } else if seconds > 0.0 {
        about_duration(seconds)
    } else {
        format!("{} lost", about_duration(-seconds))
    }
}

/// The interval in the same sense as the saving: of a loss, from the least to the most that is lost.
fn interval(saved: Mean) -> String {
    let lost = saved.high <= 0.0;
    let (low, high) = if lost { (-saved.high, -saved.low) } else { (saved.low, saved.high) };
    if !low.is_finite() || !high.is_finite() {
        return format!("too few runs for {:.0} %", LEVEL * 100.0);
    }
    if low < 0.0 {
        // A loss never bears a sign beside one in words.
        return format!("{} to {}", self::saved(low), self::saved(high));
    }
    let (low, high) = (about_duration(low), about_duration(high));
    let span = if low == high { low } else { format!("{low} to {high}") };
    if lost && saved.low < 0.0 { format!("{span} lost") } else { span }
}

fn give_or_take(saved: Mean) -> String {
    let half = (saved.high - saved.low) / 2.0;
    if half.is_finite() { format!("± {}", about_duration(half)) } else { "too few runs".into() }
}

fn money_saved(cost: f64, currency: &str) -> String {
    let sum = about_money(cost.abs(), currency);
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
        Some(best) if best.helps && best.done_after.is_some() => {
            format!("{} helps most: the job is {}", super::capital(&best.what), best.saves)
        }
        Some(best) if best.helps && best.saved_min_low.is_some_and(|low| low > 0.0) => {
            let verb = if lines.len() > 1 { "helps most: it saves" } else { "saves" };
            format!("{} {verb} about {}", super::capital(&best.what), best.saves)
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
        let (saved_s, saved_cost) = (mean(saved_s, half), mean(saved_cost, 0.0));
        let relief = Relief { improvement, saved_s, saved_cost, done: None };
        line(&relief, &Context { median_s: 8_000.0, currency: Some("$"), units: System::Us })
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
            ("27 min to 29 min", "± 1 min")
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
        assert_eq!(either.interval, "5 min lost to 2 min");
    }
}

#[cfg(test)]
mod few_or_many {
    use super::*;
    use scenarios::{JobFile, Selection, Texts, shipped};
    use sim::{Plan, Runs, Study, Tries};

    #[test]
    #[ignore = "makes 2,000 runs of every change to every shipped scenario"]
    fn few_runs_name_the_same_as_many_and_know_it_as_closely_as_they_say() {
        for (name, text) in shipped() {
            let file = JobFile::of_text(text, name, Texts::shipped()).unwrap();
            let scenario = file.scenario(&Selection::default()).unwrap();
            let job = &scenario.job;
            let plan = Plan::new(job).unwrap();
            let study = Study::new(&plan, 1, Runs::Exactly(2_000), |_| {}).unwrap();
            let job_s = study.sorted(|o| o.finish.working.as_secs_f64()).percentile(0.5).value;
            let tried =
                |tries| sim::relief(job, &plan, &study, scenario.stated.truckload_m3, tries, |_| {}).unwrap();
            let (few, many) = (tried(crate::findings::tries(&study)), tried(Tries::exactly(2_000)));
            // A saving near the middle of two round figures may be told by either.
            let title = |all: &[Relief]| {
                let title = relief_of(all, job_s, None, scenario.units).title;
                title.split(" about ").next().unwrap_or_default().to_owned()
            };
            let pace = |all: &[Relief]| crate::findings::who_waits_with(job, &study, all).title;
            assert_eq!((title(&few), pace(&few)), (title(&many), pace(&many)), "{name}");
            for relief in &few {
                let other = many.iter().find(|other| other.improvement == relief.improvement).unwrap();
                let off = (relief.saved_s.value - other.saved_s.value).abs();
                let half = (relief.saved_s.high - relief.saved_s.low) / 2.0;
                assert!(off <= 1.5 * half + 1e-9, "{name}: {relief:?}, {other:?}");
            }
        }
    }
}
