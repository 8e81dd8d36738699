//! `heapcast sweep`: the job over a range of one thing or two.

use super::effort::{Effort, Pace};
use super::{folder, plan, selection, show, telling, with_threads};
use crate::cli::{RowArgs, SweepArgs};
use crate::failure::Failure;
use crate::files;
use crate::progress::Progress;
use reports::provenance::command_line;
use reports::sweep::findings;
use reports::sweep::{Deadline, MOST_POINTS, MOST_RUNS_IN_ALL, Run, Sweep, Wanted, count};
use scenarios::units::figure;
use scenarios::{Scenario, grid};

pub(super) fn run(args: &SweepArgs) -> Result<(), Failure> {
    check(args)?;
    let file = files::job_file(&args.job.file)?;
    let selection = selection(&args.job);
    let base = file.scenario(&selection)?;
    plan(&base)?;
    let scenarios = grid(&args.vary, &file, &selection)?;
    let folder = folder(&args.out, &reports::sweep::FILES, std::slice::from_ref(&args.job.file), [&base])?;
    if let Some(effort) = effort(args, &scenarios)? {
        effort.say(&args.limits, args.threads)?;
    }
    let sweep = with_threads(args.threads, || make(args, base, scenarios))??;
    let says = findings::sweep(&sweep);
    show(&(sweep, says), folder, RowArgs::NONE, &args.out, args.say)
}

/// What the runs of all points will take, told from some of them.
fn effort(args: &SweepArgs, scenarios: &[Scenario]) -> Result<Option<Effort>, Failure> {
    let some = scenarios.iter().step_by(scenarios.len().div_ceil(POINTS_TRIED).max(1));
    let plans = some.map(plan).collect::<Result<Vec<_>, _>>()?;
    let paces: Option<Vec<Pace>> = plans.iter().map(|plan| Pace::of(plan, args.seed)).collect();
    let runs = scenarios.len() as f64 * f64::from(args.runs);
    let (kept, option) = (size_of::<Run>() as f64, ("--runs", args.runs));
    let of = |pace| Effort { pace, least: runs, most: runs, kept, replayed: 0.0, rows: 0.0, option };
    Ok(paces.and_then(|paces| Pace::mean(&paces)).map(of))
}

/// Points from which it is told how long all of them take.
const POINTS_TRIED: usize = 8;

/// What clap cannot know is too much.
fn check(args: &SweepArgs) -> Result<(), Failure> {
    let asked = |words: String| Err(Failure::asked(words));
    match args.vary.as_slice() {
        [_] => {}
        [one, other] if one.knob == other.knob => {
            return asked(format!(
                "--vary \"{}\" is given twice; vary another thing with it, or give one list",
                one.knob
            ));
        }
        [_, _] => {}
        more => return asked(format!("{} things are to vary; at most two are taken", more.len())),
    }
    let points = count(&args.vary);
    if points > MOST_POINTS {
        return asked(format!(
            "this makes {points} points; at most {MOST_POINTS} are taken: name fewer values, or a larger step with \"by\""
        ));
    }
    let runs = points as u64 * u64::from(args.runs);
    if runs > MOST_RUNS_IN_ALL {
        return asked(format!(
            "{points} points of {} runs are {} runs in all; at most {} are taken: ask for {} runs or fewer",
            figure(f64::from(args.runs)),
            figure(runs as f64),
            figure(MOST_RUNS_IN_ALL as f64),
            MOST_RUNS_IN_ALL / points as u64
        ));
    }
    Ok(())
}

fn make(args: &SweepArgs, base: Scenario, scenarios: Vec<Scenario>) -> Result<Sweep, Failure> {
    let deadline = args.by.map(|by_s| Deadline { by_s, chance: args.chance });
    let wanted = Wanted { seed: args.seed, runs: args.runs, deadline };
    let progress = Progress::new(Some(scenarios.len() as u64 * u64::from(args.runs)), telling(args.say));
    let sweep = Sweep::new(base, args.vary.clone(), scenarios, &wanted, command(args), |n| progress.made(n));
    progress.finish();
    Ok(sweep?)
}

fn command(args: &SweepArgs) -> String {
    let mut more: Vec<(&str, String)> = args.vary.iter().map(|vary| ("vary", vary.to_string())).collect();
    if let Some(by_s) = args.by {
        more.push(("by", clock_typed(by_s)));
        more.push(("chance", ((args.chance * 1e6).round() / 1e4).to_string()));
    }
    more.push(("runs", args.runs.to_string()));
    command_line("sweep", &args.job.file, &selection(&args.job), args.seed, &more)
}

/// A time of the clock as it can be typed: `15:00`, `day 2 09:30`.
fn clock_typed(by_s: f64) -> String {
    scenarios::units::clock(by_s, scenarios::units::System::Metric)
}
