//! `heapcast forecast`: the main job.

use super::effort::{Effort, OUTCOME, Pace};
use super::{folder, plan, read, selection, tell, telling, with_threads, write};
use crate::cli::{ForecastArgs, MOST_RUNS};
use crate::failure::Failure;
use crate::output_folder::OutputFolder;
use crate::part_file::{self, PART, Share};
use crate::progress::Progress;
use crate::say;
use reports::failure::Failure as NoAnswer;
use reports::findings::{Estimate, done_by};
use reports::forecast::{Forecast, Wanted, runs_in_all};
use reports::provenance::command_line;
use scenarios::Scenario;
use scenarios::units::{duration, figure};
use sim::{Plan, Runs, Study, StudyPart};

pub(super) fn run(args: &ForecastArgs) -> Result<(), Failure> {
    let scenario = read(&args.job)?;
    let plan = with_threads(args.study.threads, || plan(&scenario))??;
    if let Some(share) = args.part {
        return run_part(args, share, &scenario, &plan);
    }
    let folder =
        folder(&args.out, &reports::forecast::FORECAST, std::slice::from_ref(&args.job.file), [&scenario])?;
    if !args.merge.is_empty() {
        let study = part_file::merge(&args.merge, &plan)?;
        let forecast = with_threads(args.study.threads, || merged(args, scenario, &plan, study))??;
        return finish(args, folder, &forecast);
    }
    if let Some(effort) = effort(args, &scenario, &plan) {
        effort.say(&args.limits, args.study.threads)?;
    }
    let forecast = with_threads(args.study.threads, || make(args, scenario, &plan))??;
    finish(args, folder, &forecast)
}

/// Writes the report and tells what is in it.
fn finish(args: &ForecastArgs, folder: OutputFolder, forecast: &Forecast) -> Result<(), Failure> {
    write(forecast, folder, args.rows, args.say)?;
    let p80 = done_by(forecast).plan.finish_working_s;
    if let Some(words) = args.within.and_then(|within_s| missed(within_s, p80)) {
        say::aside(&words);
    }
    tell(forecast, &args.out, args.say)
}

/// Makes one part of the runs, for a forecast that is merged from all of them.
fn run_part(args: &ForecastArgs, share: Share, scenario: &Scenario, plan: &Plan) -> Result<(), Failure> {
    let (all, runs) = (args.study.runs, share.runs(args.study.runs));
    let folder = folder(&args.out, &[PART], std::slice::from_ref(&args.job.file), [scenario])?;
    let progress = Progress::new(Some(runs.len() as u64), telling(args.say));
    let part = with_threads(args.study.threads, || {
        StudyPart::new(plan, args.study.seed, runs.clone(), |n| progress.made(n))
    })?;
    progress.finish();
    folder.replace(&[part_file::document(part.map_err(NoAnswer::from)?, all)?])?;
    let [made, all] = [runs.len() as u32, all].map(|n| figure(f64::from(n)));
    say::out(&format!(
        "{made} of {all} runs are in {}. When all parts are made, merge them with --merge.\n",
        scenarios::shown_path(&args.out)
    ))
}

/// The forecast of runs that were made in parts.
fn merged(args: &ForecastArgs, scenario: Scenario, plan: &Plan, study: Study) -> Result<Forecast, Failure> {
    let (seed, runs) = (study.seed, Runs::Exactly(study.runs()));
    let progress = Progress::new(runs_in_all(runs, &scenario.job), telling(args.say));
    progress.made(study.runs());
    let forecast = Forecast::of(scenario, plan, study, &wanted(args, seed, runs), again(args, seed), |n| {
        progress.made(n);
    });
    progress.finish();
    Ok(forecast?)
}

fn wanted(args: &ForecastArgs, seed: u64, runs: Runs) -> Wanted {
    Wanted { seed, runs, percentiles: args.percentiles.0.clone(), by_s: args.by }
}

/// The line that gives the same answer again: the same number of runs, however it was arrived at, does.
fn again(args: &ForecastArgs, seed: u64) -> impl FnOnce(u32) -> String {
    let (file, job) = (args.job.file.clone(), selection(&args.job));
    move |runs| command_line("forecast", &file, &job, seed, &[("runs", runs.to_string())])
}

/// What the runs will take, those of the improvements included.
fn effort(args: &ForecastArgs, scenario: &Scenario, plan: &Plan) -> Option<Effort> {
    let pace = Pace::of(plan, args.study.seed)?;
    let runs = match args.within {
        None => args.study.runs,
        Some(within_s) => runs_for(within_s, plan, args.study.seed),
    };
    let all = runs_in_all(Runs::Exactly(runs), &scenario.job)? as f64;
    // How many runs a precision takes is known roughly.
    let (least, most) = if args.within.is_some() { (all / 2.0, all * 1.5) } else { (all, all) };
    let rows = f64::from(runs.min(args.rows.rows));
    Some(Effort { pace, least, most, kept: OUTCOME, replayed: 1.0, rows, option: ("--runs", runs) })
}

/// About how many runs it takes to know the P80 to within a time: four times as many know it twice as well.
fn runs_for(within_s: f64, plan: &Plan, seed: u64) -> u32 {
    let Ok(trial) = Study::new(plan, seed, Runs::Exactly(TRIAL), |_| {}) else { return 1 };
    let p80 = trial.sorted(|o| o.finish.working.as_secs_f64()).percentile(0.8);
    let half = p80.high.zip(p80.low).map_or(f64::INFINITY, |(high, low)| (high - low) / 2.0);
    (f64::from(TRIAL) * (half / within_s).powi(2)).clamp(1_000.0, f64::from(MOST_RUNS)) as u32
}

/// Runs from which it is told how many a precision takes.
const TRIAL: u32 = 200;

/// Makes all runs.
fn make(args: &ForecastArgs, scenario: Scenario, plan: &Plan) -> Result<Forecast, Failure> {
    let runs = match args.within {
        Some(half_width_s) => Runs::UntilP80Within { half_width_s, most: MOST_RUNS },
        None => Runs::Exactly(args.study.runs),
    };
    let seed = args.study.seed;
    let wanted = wanted(args, seed, runs);
    let progress = Progress::new(runs_in_all(runs, &scenario.job), telling(args.say));
    let forecast = Forecast::new(scenario, plan, &wanted, again(args, seed), |n| progress.made(n));
    progress.finish();
    Ok(forecast?)
}

/// What to say where even the most runs do not know the P80 as closely as was wanted.
fn missed(within_s: f64, p80: Estimate) -> Option<String> {
    let reached = p80.high.zip(p80.low).map(|(high, low)| (high - p80.value).max(p80.value - low));
    (reached.is_none_or(|half| half > within_s)).then(|| {
        let reached =
            reached.map_or_else(|| "not at all".to_owned(), |half| format!("to {}", duration(half)));
        format!("heapcast: {MOST_RUNS} runs know the P80 {reached}, not to {}\n", duration(within_s))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_precision_that_is_not_reached_is_said() {
        let p80 = Estimate { value: 7_200.0, low: Some(7_190.0), high: Some(7_212.0) };
        assert_eq!(missed(12.0, p80), None);
        assert_eq!(
            missed(5.0, p80).as_deref(),
            Some("heapcast: 1000000 runs know the P80 to 12 s, not to 5 s\n")
        );
        assert!(
            missed(5.0, Estimate { high: None, ..p80 }).is_some_and(|words| words.contains("not at all"))
        );
    }
}
