//! `heapcast forecast`: the main job.

use super::{plan, read, with_threads};
use crate::cli::{ForecastArgs, MOST_RUNS};
use crate::failure::Failure;
use crate::findings::{done_by, warnings};
use crate::forecast::{Forecast, Provenance};
use crate::interrupt::Interrupt;
use crate::output_folder::OutputFolder;
use crate::progress::{Progress, Telling};
use crate::provenance::command_line;
use crate::{documents, say, text};
use scenarios::Scenario;
use sim::{Handbook, Improvement, Plan, Replay, Runs, Study};

/// Runs each improvement is tried in, at the most.
const RELIEF_RUNS: u32 = 2_000;

pub(super) fn run(args: &ForecastArgs) -> Result<(), Failure> {
    let scenario = read(&args.job)?;
    let plan = plan(&scenario)?;
    let folder = OutputFolder::open(&args.out, &documents::FORECAST, Interrupt::listen())?;
    let forecast = with_threads(args.luck.threads, || make(args, scenario, &plan))??;
    let documents = documents::of_forecast(&forecast)?;
    folder.replace(&documents)?;
    tell(args, &forecast)
}

/// Makes all runs.
fn make(args: &ForecastArgs, scenario: Scenario, plan: &Plan) -> Result<Forecast, Failure> {
    let runs = match args.within {
        Some(half_width_s) => Runs::UntilP80Within { half_width_s, most: MOST_RUNS },
        None => Runs::Exactly(args.luck.runs),
    };
    let job = &scenario.job;
    let telling = if args.say.quiet { Telling::Never } else { Telling::OnTerminal };
    let progress = Progress::new(expected_runs(runs, job), telling);
    let made = |n| progress.made(n);
    let study = Study::new(plan, args.luck.seed, runs, made)?;
    let relief_runs = RELIEF_RUNS.min(study.runs());
    let relief = sim::relief(job, &study, relief_runs, made)?;
    let typical = Replay::new(plan, args.luck.seed, study.run_nearest_median().unwrap_or_default())?;
    progress.finish();
    Ok(Forecast {
        handbook: Handbook::new(job),
        relief,
        relief_runs,
        typical,
        percentiles: args.percentiles.0.clone(),
        by_s: args.by,
        units: scenario.units,
        provenance: provenance(args, &scenario, study.runs()),
        study,
        scenario,
    })
}

fn expected_runs(runs: Runs, job: &sim::Job) -> Option<u64> {
    let Runs::Exactly(n) = runs else { return None };
    let tried = Improvement::ALL.iter().filter(|i| i.of(job).is_some()).count() as u64;
    Some(u64::from(n) + tried * u64::from(n.min(RELIEF_RUNS)))
}

fn provenance(args: &ForecastArgs, scenario: &Scenario, runs: u32) -> Provenance {
    Provenance {
        version: env!("CARGO_PKG_VERSION").to_owned(),
        seed: args.luck.seed,
        runs,
        file: scenario.file.clone(),
        scenario_hash: scenario.hash.clone(),
        alternative: scenario.alternative.clone(),
        // The same number of runs, however it was arrived at, gives the same answer.
        command: command_line("forecast", &args.job, &args.luck, &[("runs", runs.to_string())]),
    }
}

fn tell(args: &ForecastArgs, forecast: &Forecast) -> Result<(), Failure> {
    if args.say.quiet {
        return say::out(&format!("{}\n", done_by(forecast).plan_on));
    }
    if args.say.json {
        for warning in warnings(&forecast.scenario.cautions).doubtful {
            say::aside(&format!("warning: {} {}\n", warning.cause, warning.remedy));
        }
        return say::out_bytes(&documents::summary(forecast)?);
    }
    let width = say::width();
    say::out(&text::summary(forecast, width))?;
    say::out(&text::files(forecast, &args.out, width))
}
