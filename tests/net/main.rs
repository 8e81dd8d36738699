//! A net under the engine: what every run comes to, to the last bit, kept before a change of the engine and compared after it.
//!
//! What is kept is no evidence, only what an earlier engine said; it stays out of the repository (`target/net`).
//!
//! ```sh
//! cargo run --release -p heapcast-scenarios --example net -- save target/net/before.txt
//! cargo run --release -p heapcast-scenarios --example net -- compare target/net/before.txt
//! ```
//!
//! `net runs JOB N` only makes N runs of one job and tells their loads, so that the instructions a load takes can be counted:
//! the difference between two counts with different N.

#![allow(dead_code, unreachable_pub, reason = "shared with the tests of the model")]
#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "a tool that cannot go on says where and ends")]

#[path = "../../sim/tests/model/any_job.rs"]
mod any_job;
#[path = "../../sim/tests/model/jobs.rs"]
mod jobs;
#[path = "../../sim/benches/engine/jobs.rs"]
mod timed;

use any_job::{crowd, line, some_job, yard};
use scenarios::{Scenario, Selection};
use sim::{Accounts, Job, Outcome, Plan, Replay, Runs, Study};
use std::collections::hash_map::DefaultHasher;
use std::fmt::{Debug, Write as _};
use std::hash::{Hash as _, Hasher as _};
use std::process::ExitCode;

const SEEDS: [u64; 3] = [1, 20_261_125, u64::MAX - 6];
/// Random jobs of each kind.
const JOBS: u64 = 2_000;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match words[..] {
        ["save", file] => {
            std::fs::create_dir_all(std::path::Path::new(file).parent().unwrap()).unwrap();
            std::fs::write(file, all_lines()).unwrap();
            ExitCode::SUCCESS
        }
        ["compare", file] => compare(&std::fs::read_to_string(file).unwrap(), &all_lines()),
        ["runs", name, runs] => {
            let study =
                Study::new(&Plan::new(&job(name)).unwrap(), 1, Runs::Exactly(runs.parse().unwrap()), |_| {});
            println!("{}", study.unwrap().outcomes.iter().map(|o| u64::from(o.loads)).sum::<u64>());
            ExitCode::SUCCESS
        }
        _ => {
            println!("net save FILE, net compare FILE, or net runs JOB N");
            ExitCode::from(2)
        }
    }
}

fn compare(before: &str, after: &str) -> ExitCode {
    let differ: Vec<_> =
        before.lines().zip(after.lines()).filter(|(before, after)| before != after).collect();
    let (kept, made) = (before.lines().count(), after.lines().count());
    println!("{made} studies, {kept} kept, {} differ", differ.len());
    differ.iter().take(40).for_each(|(before, after)| println!("- {before}\n+ {after}"));
    if differ.is_empty() && kept == made { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

/// A shipped job, or one of the two that are timed.
fn job(name: &str) -> Job {
    match scenarios::shipped().iter().find(|(shipped, _)| *shipped == name) {
        Some((_, text)) => read(name, text, None).job,
        None if name == "yard" => timed::yard(),
        None => timed::one_and_one(),
    }
}

fn read(name: &str, text: &str, alternative: Option<&String>) -> Scenario {
    let selection = Selection { alternative: alternative.cloned(), ..Selection::default() };
    scenarios::read_text(text, name, scenarios::Texts::shipped(), &selection).unwrap()
}

/// One line for each study: its name, and what it comes to as one number.
fn all_lines() -> String {
    let mut lines = String::new();
    for (name, text) in scenarios::shipped() {
        let alternatives = read(name, text, None).alternatives;
        for alternative in std::iter::once(None).chain(alternatives.iter().map(Some)) {
            let what = format!("{name} {}", alternative.map_or("", String::as_str));
            add(&mut lines, &what, &read(name, text, alternative).job, 200, 5);
        }
    }
    type Maker = fn(u64) -> Job;
    let makers: [(&str, Maker); 4] = [("some", some_job), ("line", line), ("yard", yard), ("crowd", crowd)];
    for (kind, maker) in makers {
        (0..JOBS).for_each(|number| add(&mut lines, &format!("{kind} {number}"), &maker(number), 4, 2));
    }
    lines
}

/// Outcomes and time accounts of so many runs under each seed, and the event logs of the first of them.
fn add(lines: &mut String, what: &str, job: &Job, runs: u32, logs: u32) {
    let plan = Plan::new(job).unwrap();
    for seed in SEEDS {
        let former = |e: sim::RunError| RunError { run: e.run, why: e.why.to_string() };
        let kept =
            |study: Study| Kept { seed: study.seed, outcomes: study.outcomes, accounts: study.accounts };
        let study = Study::new(&plan, seed, Runs::Exactly(runs), |_| {}).map(kept).map_err(former);
        let replays: Vec<_> = (0..logs).map(|run| Replay::new(&plan, seed, run).map_err(former)).collect();
        writeln!(lines, "{what} {seed} {:016x} {:016x}", number(&study), number(&replays)).unwrap();
    }
}

/// What is kept of a study.
#[derive(Debug)]
struct Kept {
    seed: u64,
    outcomes: Vec<Outcome>,
    accounts: Accounts,
}

/// As an error was before it had data.
#[derive(Debug)]
struct RunError {
    run: u32,
    why: String,
}

fn number(of: &impl Debug) -> u64 {
    let mut hasher = DefaultHasher::new();
    former_words(&format!("{of:?}")).hash(&mut hasher);
    hasher.finish()
}

/// The debug text as it was before durations and time accounts were types, so that what was kept then can still be compared.
fn former_words(text: &str) -> String {
    let mut text =
        text.replace("Accounts {", "Books {").replace("accounts:", "books:").replace("Kept {", "Study {");
    for name in ["Duration(", "LoaderTimes(", "RakerTimes("] {
        let mut pieces = text.split(name);
        let first = pieces.next().unwrap_or_default().to_owned();
        text = pieces.fold(first, |all, piece| all + &piece.replacen(')', "", 1));
    }
    text
}
