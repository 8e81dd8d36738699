//! What handbook arithmetic says and why it differs.

use super::{capital, share_of_runs};
use crate::findings::about_duration;
use crate::forecast::run::Forecast;
use serde::Serialize;
use sim::Duration;

/// The handbook figure beside the range.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HandbookFindings {
    /// The figure and the chance of keeping it, in a sentence.
    pub sentence: String,
    /// Why it differs, in a sentence.
    pub why: String,
    /// The figure, for the 50-minute hour \[s\].
    pub time_s: f64,
    /// The same for a full hour \[s\].
    pub plain_s: f64,
    /// Loads, not rounded.
    pub loads: f64,
    /// Mean cycle of each loader without waiting \[s\]; `None` for one that no way lets through.
    pub cycle_s: Vec<Option<f64>>,
    /// Volume \[loose m3\].
    pub volume_m3: f64,
    /// Chance that the work takes no longer than the figure \[0 to 1\].
    pub chance: f64,
}

/// What handbook arithmetic says and why it differs.
pub fn handbook(forecast: &Forecast) -> HandbookFindings {
    let handbook = &forecast.handbook;
    let finish = forecast.study.sorted(|o| o.finish.working.as_secs_f64());
    let done = forecast.study.sorted(|o| o.done().map_or(f64::INFINITY, |done| done.working.as_secs_f64()));
    let chance = done.share_up_to(handbook.time_s).value;
    let median = finish.percentile(0.5).value;
    let sentence = format!(
        "Handbook arithmetic says {}: {:.0} loads, nobody waiting, 50 minutes worked in the hour. {}",
        about_duration(handbook.time_s),
        handbook.loads,
        format_args!("{} kept it.", capital(&share_of_runs(chance)))
    );
    HandbookFindings {
        sentence,
        why: why(forecast, median),
        time_s: handbook.time_s,
        plain_s: handbook.plain_s,
        loads: handbook.loads,
        cycle_s: handbook.cycle_s.clone(),
        volume_m3: handbook.volume_m3,
        chance,
    }
}

/// Names what the single guess leaves out, largest first, from the mean times of the runs.
fn why(forecast: &Forecast, median_s: f64) -> String {
    let runs = f64::from(forecast.study.runs().max(1));
    let loaders = forecast.scenario.job.loaders.len().max(1) as f64;
    let total = |columns: &[sim::LoaderActivity]| {
        let of_run = |o: &sim::Outcome| columns.iter().map(|a| o.loaders.time(*a)).sum::<sim::Duration>();
        forecast.study.outcomes.iter().map(of_run).sum::<Duration>().as_secs_f64() / runs / loaders
    };
    use sim::LoaderActivity as A;
    let mut left_out = vec![
        (total(&[A::WaitingForRoom]), "waiting for the rake"),
        (total(&[A::WaitingForFace]), "queueing at the pile"),
        (total(&[A::WaitingForPass]), "queueing at gates"),
        (total(&[A::WaitingForDelivery]), "waiting for deliveries"),
        (total(&[A::OnBreak]), "breaks"),
        (total(&[A::SetUp, A::CleanUp]), "set-up and clean-up"),
        (total(&[A::Stopped]), "stoppages"),
        (total(&[A::Done]), "raking after the last load"),
    ];
    left_out.retain(|(s, _)| *s >= 60.0);
    left_out.sort_by(|a, b| b.0.total_cmp(&a.0));
    let named: Vec<String> =
        left_out.iter().take(3).map(|(s, what)| format!("{what} ({})", about_duration(*s))).collect();
    let handbook = &forecast.handbook;
    let allowance = about_duration(handbook.time_s - handbook.plain_s);
    let gap = median_s - handbook.time_s;
    let lead = if gap.abs() < 60.0 {
        "It meets the middle of the range".to_owned()
    } else if gap > 0.0 {
        format!("It is {} short of the middle of the range", about_duration(gap))
    } else {
        format!("It is {} over the middle of the range", about_duration(-gap))
    };
    let named = named.join(", ");
    match (named.is_empty(), gap > 0.0) {
        (true, _) => format!("{lead}; its ten idle minutes an hour come to {allowance}."),
        (false, true) => {
            format!("{lead}: it leaves out {named}; its ten idle minutes an hour come to {allowance}.")
        }
        (false, false) => format!(
            "{lead}: its ten idle minutes an hour, {allowance} in all, make up for what it leaves out: {named}."
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn the_figure_comes_with_its_chance_and_its_reasons() {
        // The example's runs take 2 h to 2 h 49 min 30 s; a third of that the loader waits for room.
        let findings = handbook(&example::forecast());
        assert_eq!(
            findings.sentence,
            "Handbook arithmetic says 1 h 55 min: 71 loads, nobody waiting, 50 minutes worked in the hour. No run kept it."
        );
        assert_eq!(
            findings.why,
            "It is 28 min short of the middle of the range: it leaves out waiting for the rake (48 min); its ten idle \
             minutes an hour come to 19 min."
        );
    }

    #[test]
    fn a_figure_over_the_range_is_not_said_to_leave_time_out() {
        let mut forecast = example::forecast();
        forecast.handbook.time_s = 11_000.0;
        let findings = handbook(&forecast);
        // One in ten of the example's runs ends short of material, and so keeps nothing.
        assert!(findings.sentence.ends_with("90 % of the runs kept it."), "{}", findings.sentence);
        assert!(
            findings.why.contains("over the middle of the range: its ten idle minutes"),
            "{}",
            findings.why
        );
    }
}
