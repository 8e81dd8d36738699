//! The engine against the same model written a second time, in another language on another library, by somebody who had
//! only the model's text and a list of agreed readings of it (see `README.md` here). Source of every figure: `exact.csv` and `results.csv`, computed by
//! `run.py`; status: computed.

mod from_json;

use crate::comparison::{Comparison, Status};
use sim::*;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

fn file(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/second_opinion").join(name)
}

/// The jobs of one kind, by name.
fn jobs(kind: &str) -> BTreeMap<String, Job> {
    let text = std::fs::read_to_string(file("jobs.json")).unwrap();
    let all: Vec<serde_json::Value> = serde_json::from_str(&text).unwrap();
    let of_kind = all.iter().filter(|j| j["kind"] == kind);
    of_kind.map(|j| (j["name"].as_str().unwrap().to_owned(), from_json::job(&j["job"]))).collect()
}

fn rows(name: &str) -> Vec<csv::StringRecord> {
    csv::Reader::from_path(file(name)).unwrap().records().map(Result::unwrap).collect()
}

fn loader_activity(words: &str) -> Option<LoaderActivity> {
    LoaderActivity::ALL.into_iter().find(|a| format!("{a:?}") == words)
}

fn raker_activity(words: &str) -> Option<RakerActivity> {
    RakerActivity::ALL.into_iter().find(|a| format!("{a:?}") == words)
}

fn us(time: Duration) -> f64 {
    time.as_micros() as f64
}

/// The place in a list of `loader 3`, `raker 1`, `zone 2`.
fn place(who: &str, kind: &str) -> Option<usize> {
    who.strip_prefix(kind)?.trim().parse::<usize>().ok()?.checked_sub(1)
}

/// A figure of one run, by the words of `exact.csv`.
fn exact_figure(run: &Replay, who: &str, figure: &str) -> f64 {
    let o = &run.outcome;
    if let Some(loader) = place(who, "loader") {
        return match figure.strip_suffix("_us").and_then(loader_activity) {
            Some(activity) => us(run.accounts.loaders[loader].time(activity)),
            None if figure == "loads" => run.accounts.loads[loader] as f64,
            None => panic!("no figure {figure} of a loader"),
        };
    }
    if let Some(raker) = place(who, "raker") {
        let activity = figure.strip_suffix("_us").and_then(raker_activity);
        let activity = activity.unwrap_or_else(|| panic!("no figure {figure} of a raker"));
        return us(run.accounts.rakers[raker].time(activity));
    }
    if let Some(zone) = place(who, "zone") {
        let totals = &run.accounts.zones[zone];
        return match figure {
            "loads" => totals.loads as f64,
            "placed_m3" => totals.placed_m3,
            "short_m3" => totals.short_m3,
            _ => panic!("no figure {figure} of a zone"),
        };
    }
    if let Some(part) = figure.strip_prefix("progress_").and_then(|f| f.strip_suffix("_clock_us")) {
        return us(o.progress[part.parse::<usize>().unwrap() - 1]);
    }
    match figure {
        "completion_us" => us(o.completion.working),
        "completion_clock_us" => us(o.completion.clock),
        "finish_us" => us(o.finish.working),
        "finish_clock_us" => us(o.finish.clock),
        _ => outcome_figure(o, figure),
    }
}

fn outcome_figure(o: &Outcome, figure: &str) -> f64 {
    let s = Duration::as_secs_f64;
    match figure {
        "completion_s" => s(o.completion.working),
        "completion_clock_s" => s(o.completion.clock),
        "finish_s" => s(o.finish.working),
        "finish_clock_s" => s(o.finish.clock),
        "progress_half_s" => s(o.progress[PROGRESS_PARTS / 2 - 1]),
        "loads" => f64::from(o.loads),
        "placed_m3" => o.placed_m3,
        "short_m3" => o.short_m3,
        "left_over_m3" => o.left_over_m3,
        "fuel_l" => o.fuel_l,
        "labour_h" => o.labour_h,
        "cost" => o.cost,
        _ => panic!("no figure {figure} of a job"),
    }
}

/// Every figure and every time account of the jobs without chance.
pub(crate) fn without_chance() -> Comparison {
    let mut comparison = Comparison::new(
        "Jobs without chance agree with the second program to the microsecond in every figure and every time account",
        "the model written a second time from its text, in Python on SimPy (second_opinion/README.md, exact.csv)",
        Status::Computed,
        0.0,
    );
    let runs: BTreeMap<String, Replay> = jobs("exact")
        .into_iter()
        .map(|(name, job)| (name, Replay::new(&Plan::new(&job).unwrap(), 1, 0).unwrap()))
        .collect();
    assert!(runs.len() >= 14, "{} jobs", runs.len());
    for row in rows("exact.csv") {
        let (name, who, figure) = (&row[0], &row[1], &row[2]);
        let expected: f64 = row[3].parse().unwrap();
        let got = exact_figure(&runs[name], who, figure);
        // A step may be rounded the other way where the second program multiplies in another order.
        let slack = if figure.ends_with("_us") { 0.5 } else { 1e-6 * expected.abs().max(1.0) };
        comparison.exact(format!("{name}: {who}, {figure}"), got, expected, slack);
    }
    comparison
}

#[test]
fn jobs_without_chance_agree_to_the_microsecond_in_every_figure_and_every_time_account() {
    without_chance().judge(1_001);
}

/// Runs of each job with chance on our side.
const RUNS: u32 = 20_000;
/// Over a thousand figures are compared: chance alone takes one past this many standard errors in a hundred such tests.
const MOST_STANDARD_ERRORS: f64 = 4.5;

/// A figure of many runs, by the words of `results.csv`: the figure of a job with `.mean`, `.sd`, `.P10` and so on; of all
/// loaders or rakers, the mean time on something with `_s.mean`, or its share of the time on the job with `.share`.
/// With it its standard error, where our own sample tells it.
fn study_figure(study: &Study, figure: &str) -> (f64, Option<f64>) {
    let (what, of) = figure.split_once('.').unwrap();
    if matches!(what, "loaders" | "rakers") {
        return (accounts_figure(study, what, of), None);
    }
    let sample = study.sorted(|o| outcome_figure(o, what));
    let mean = sample.mean();
    match of {
        "mean" => (mean.value, Some(mean.sd / (mean.n as f64).sqrt())),
        "sd" => {
            let fourth =
                sample.values().iter().map(|x| (x - mean.value).powi(4)).sum::<f64>() / mean.n as f64;
            let variance = mean.sd * mean.sd;
            let error = ((fourth - variance * variance) / (4.0 * variance * mean.n as f64)).sqrt();
            (mean.sd, Some(error).filter(|e| e.is_finite()))
        }
        percentile => (sample.percentile(percentile[1..].parse::<f64>().unwrap() / 100.0).value, None),
    }
}

fn accounts_figure(study: &Study, who: &str, of: &str) -> f64 {
    let spent = |activity: &str| -> f64 {
        let in_run = |o: &Outcome| match who {
            "loaders" => o.loaders.time(loader_activity(activity).unwrap()),
            _ => o.rakers.time(raker_activity(activity).unwrap()),
        };
        study.outcomes.iter().map(|o| us(in_run(o))).sum()
    };
    if let Some(activity) = of.strip_suffix(".share") {
        let all: f64 = match who {
            "loaders" => study.outcomes.iter().map(|o| us(o.loaders.total())).sum(),
            _ => study.outcomes.iter().map(|o| us(o.rakers.total())).sum(),
        };
        return spent(activity) / all;
    }
    let activity = of.strip_suffix("_s.mean").unwrap_or_else(|| panic!("no figure {of}"));
    spent(activity) / 1e6 / f64::from(study.runs())
}

/// Means, spreads, percentiles and shares of the jobs with chance.
pub(crate) fn with_chance() -> Comparison {
    let mut comparison = Comparison::new(
        "Jobs with chance agree with the second program in means, spreads, percentiles and shares of time",
        "the same second program (results.csv): 40,000 runs a job there, 20,000 here",
        Status::Computed,
        MOST_STANDARD_ERRORS,
    );
    let studies: BTreeMap<String, Study> = jobs("random")
        .into_iter()
        .map(|(name, job)| {
            let plan = Plan::new(&job).unwrap();
            (name, Study::new(&plan, 20_260_418, Runs::Exactly(RUNS), |_| {}).unwrap())
        })
        .collect();
    assert!(studies.len() >= 10, "{} jobs", studies.len());
    for row in rows("results.csv") {
        let (name, figure) = (&row[0], &row[1]);
        // Whole loads jump from one number to the next: their means and spreads are compared, not their percentiles.
        if figure.starts_with("loads.P") {
            continue;
        }
        let [theirs, their_error, their_runs] = [2, 3, 4].map(|i| row[i].parse::<f64>().unwrap());
        let (ours, our_error) = study_figure(&studies[name], figure);
        // What hardly ever happens may not have happened there: then our own sample knows the error better.
        let our_error = our_error.unwrap_or(0.0).max(their_error * (their_runs / f64::from(RUNS)).sqrt());
        // A figure that hardly varies is compared to six digits.
        let digits = 1e-6 * theirs.abs() + 1e-9;
        comparison.compare(format!("{name}: {figure}"), ours, their_error.hypot(our_error), theirs, digits);
    }
    comparison
}

#[test]
fn jobs_with_chance_agree_within_sampling_error_in_means_spreads_percentiles_and_shares() {
    let comparison = with_chance();
    comparison.judge(1_001);
    // The typical distance must be that of chance: many small shifts to one side would show here.
    let distances =
        comparison.figures.iter().map(|f| (f.obtained - f.expected).abs() / (f.error + f.rounding));
    let typical = (distances.map(|off| off * off).sum::<f64>() / comparison.figures.len() as f64).sqrt();
    assert!(typical < 1.25, "typical distance {typical:.2} standard errors");
}
