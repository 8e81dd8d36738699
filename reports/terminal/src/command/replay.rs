//! `heapcast replay`: one run step by step.

use super::effort::{Effort, OUTCOME, Pace};
use super::{folder, plan, read, selection, telling, with_threads, write};
use crate::cli::ReplayArgs;
use crate::failure::Failure;
use crate::progress::Progress;
use crate::say;
use reports::failure::Failure as NoAnswer;
use reports::forecast::Provenance;
use reports::provenance::command_line;
use reports::{documents, export, text};
use sim::{Plan, Replay, Runs, Study};

pub(super) fn run(args: &ReplayArgs) -> Result<(), Failure> {
    let scenario = read(&args.job)?;
    let plan = plan(&scenario)?;
    let folder = folder(&args.out, &documents::REPLAY, std::slice::from_ref(&args.job.file), [&scenario])?;
    if let Some(pace) = Pace::of(&plan, args.luck.seed) {
        let runs = if args.run.is_some() { 1.0 } else { f64::from(args.luck.runs) };
        let option = ("--runs", args.luck.runs);
        let effort =
            Effort { pace, least: runs, most: runs, kept: OUTCOME, replayed: 1.0, rows: 0.0, option };
        effort.say(&args.limits, args.luck.threads)?;
    }
    let number = match args.run {
        Some(run) => run,
        None => with_threads(args.luck.threads, || nearest_median(args, &plan))??,
    };
    let replay = Replay::new(&plan, args.luck.seed, number).map_err(NoAnswer::from)?;
    let command = command_line(
        "replay",
        &args.job.file,
        &selection(&args.job),
        args.luck.seed,
        &[("run", number.to_string())],
    );
    let provenance = Provenance::new(&scenario, args.luck.seed, 1, command);
    write(folder, args.say, || documents::of_replay(&scenario, &replay, &provenance))?;
    let units = scenario.units;
    if args.say.json {
        let json = export::replay_json(&scenario, units, &replay, &provenance);
        return say::out_bytes(&json.map_err(|e| documents::failed("replay.json", &e))?);
    }
    if args.say.quiet {
        return say::out(&format!("{}\n", text::one_run(&scenario, units, &replay)));
    }
    let width = say::width();
    say::out(&text::replay(&scenario, units, &replay, args.say.full, width))?;
    say::out(&text::replay_files(&provenance, &args.out, width))
}

fn nearest_median(args: &ReplayArgs, plan: &Plan) -> Result<u32, Failure> {
    let progress = Progress::new(Some(u64::from(args.luck.runs)), telling(args.say));
    let study = Study::new(plan, args.luck.seed, Runs::Exactly(args.luck.runs), |n| progress.made(n))
        .map_err(NoAnswer::from)?;
    progress.finish();
    Ok(study.run_nearest_median().unwrap_or_default())
}
