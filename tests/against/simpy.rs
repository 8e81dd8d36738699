//! The two jobs in SimPy: `against.py`, in a process of its own, which takes the time itself.

use crate::contest::{Answers, Contestant, Pass, Series, Work};
use anyhow::{Context, ensure};
use serde::Deserialize;
use std::path::{Path, PathBuf};
use std::process::Command;

/// What `against.py` prints.
#[derive(Deserialize)]
struct Printed {
    runs: u32,
    loads_mean: f64,
    loads_se: f64,
    completion_s: f64,
    completion_se_s: f64,
    seconds_per_load: f64,
}

/// SimPy, or why it cannot take part.
pub fn contestant(python: &Path) -> anyhow::Result<Result<Contestant, String>> {
    let ask = "import numpy, simpy, sys; print(simpy.__version__, sys.version.split()[0])";
    let asked = match Command::new(python).args(["-c", ask]).output() {
        Ok(asked) => asked,
        Err(error) => return Ok(Err(format!("{} cannot be started ({error}).", python.display()))),
    };
    if !asked.status.success() {
        let needs = "has no simpy and numpy; see tests/against/requirements.txt.";
        return Ok(Err(format!("{} {needs}", python.display())));
    }
    let versions = String::from_utf8(asked.stdout)?;
    let (simpy, python_version) =
        versions.trim().split_once(' ').context("Python did not say its version")?;
    let python: PathBuf = python.into();
    Ok(Ok(Contestant {
        name: format!("SimPy {simpy} on Python {python_version}"),
        runs: [200, 30],
        pass: Box::new(move |work, runs, seed| pass(&python, work, runs, seed)),
    }))
}

fn pass(python: &Path, work: Work, runs: u32, seed: u64) -> anyhow::Result<Pass> {
    let job = if work == Work::Yard { "yard" } else { "one-and-one" };
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/against.py");
    let done = Command::new(python).args([script, job, &runs.to_string(), &seed.to_string()]).output()?;
    ensure!(done.status.success(), "against.py failed: {}", String::from_utf8_lossy(&done.stderr));
    let printed: Printed =
        serde_json::from_slice(&done.stdout).context("against.py printed something else")?;
    let answers = Answers {
        completion_s: Series::known(printed.runs, printed.completion_s, printed.completion_se_s),
        loads: Series::known(printed.runs, printed.loads_mean, printed.loads_se),
    };
    Ok(Pass { ns_per_load: printed.seconds_per_load * 1e9, answers: Some(answers) })
}
