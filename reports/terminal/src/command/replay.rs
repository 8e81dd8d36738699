//! `heapcast replay`: one run step by step.

use super::effort::{Effort, OUTCOME, Pace};
use super::{folder, plan, read, selection, show, telling, with_threads};
use crate::cli::{ReplayArgs, RowArgs};
use crate::failure::Failure;
use crate::progress::{Progress, Telling};
use reports::provenance::command_line;
use reports::replay::OneRun;
use scenarios::Scenario;
use sim::Plan;

pub(super) fn run(args: &ReplayArgs) -> Result<(), Failure> {
    let scenario = read(&args.job)?;
    let plan = plan(&scenario)?;
    let folder =
        folder(&args.out, &reports::replay::REPLAY, std::slice::from_ref(&args.job.file), [&scenario])?;
    if let Some(pace) = Pace::of(&plan, args.study.seed) {
        let runs = if args.run.is_some() { 1.0 } else { f64::from(args.study.runs) };
        let option = ("--runs", args.study.runs);
        let effort =
            Effort { pace, least: runs, most: runs, kept: OUTCOME, replayed: 1.0, rows: 0.0, option };
        effort.say(&args.limits, args.study.threads)?;
    }
    let one = with_threads(args.study.threads, || make(args, scenario, &plan))??;
    show(&one, folder, RowArgs::NONE, &args.out, args.say)
}

/// Makes the runs that tell which is nearest the median, and replays it.
fn make(args: &ReplayArgs, scenario: Scenario, plan: &Plan) -> Result<OneRun, Failure> {
    let (seed, runs) = (args.study.seed, args.study.runs);
    let telling = if args.run.is_some() { Telling::Never } else { telling(args.say) };
    let progress = Progress::new(Some(runs.into()), telling);
    let command = |run: u32| {
        command_line("replay", &args.job.file, &selection(&args.job), seed, &[("run", run.to_string())])
    };
    let one = OneRun::new(scenario, plan, (seed, runs, args.run), command, |n| progress.made(n));
    progress.finish();
    Ok(one?)
}
