//! What a command will take in time and memory, told from a few runs before the others are made.

use crate::cli::{LimitArgs, RowArgs};
use crate::failure::Failure;
use crate::say;
use reports::ask::Load;
use scenarios::units::{duration, figure};
use sim::{Entry, Plan, Runs, Study};
use std::time::Instant;

/// Time spent on finding out \[s\].
const LOOK_S: f64 = 0.03;
/// Runs tried for it at the most; the first tells most where a run takes long.
const MOST_TRIED: u32 = 200;
/// Times it is tried at the least.
const LEAST_TIMES: u32 = 3;
/// What would take longer is said beforehand \[s\].
const SAID_S: f64 = 180.0;
/// What would need more is said beforehand \[bytes\].
const SAID_BYTES: f64 = 300e6;
/// Entries of the event log that a load makes, and what a chart makes of them, about.
const ENTRIES: f64 = 14.0;
/// A row of a table of runs, about \[bytes\].
const ROW: f64 = 220.0;

/// What a run of a job takes.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Pace {
    /// Time on one thread \[s\].
    run_s: f64,
    /// Loads of a run.
    loads: f64,
}

/// What is about to be done, in runs of such a job.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Effort {
    /// What a run takes.
    pace: Pace,
    /// Runs that are surely made.
    least: f64,
    /// Runs that may be made.
    most: f64,
    /// Bytes kept of each.
    kept: f64,
    /// Runs whose every step is kept.
    replayed: f64,
    /// Rows written of single runs.
    rows: f64,
    /// The option that makes it smaller, and its value.
    option: (&'static str, u32),
}

impl Pace {
    /// Makes a few runs. A job that gets stuck says so when its runs are made.
    fn of(plan: &Plan, seed: u64) -> Option<Self> {
        let begun = Instant::now();
        let (mut tried, mut run_s, mut times) = (1, f64::INFINITY, 0);
        loop {
            let one = Instant::now();
            let study = Study::new(plan, seed, Runs::Exactly(tried), |_| {}).ok()?;
            // The quickest of several: another program may have had the processor meanwhile.
            run_s = run_s.min(one.elapsed().as_secs_f64() / f64::from(tried));
            times += 1;
            let is_enough = times >= LEAST_TIMES && begun.elapsed().as_secs_f64() > LOOK_S;
            if tried >= MOST_TRIED || is_enough {
                let loads: u64 = study.outcomes.iter().map(|o| u64::from(o.loads)).sum();
                return Some(Self { run_s, loads: loads as f64 / f64::from(tried) });
            }
            tried *= 2;
        }
    }

    /// The mean of several.
    fn mean(paces: &[Self]) -> Option<Self> {
        let n = paces.len() as f64;
        let mean = |of: fn(&Self) -> f64| paces.iter().map(of).sum::<f64>() / n;
        (!paces.is_empty()).then(|| Self { run_s: mean(|p| p.run_s), loads: mean(|p| p.loads) })
    }
}

impl Effort {
    /// What there is to do, measured; `None` where a job gets stuck, which is said when its runs are made.
    pub(super) fn of(load: &Load<'_>, rows: RowArgs) -> Option<Self> {
        let paces: Option<Vec<Pace>> = load.plans.iter().map(|plan| Pace::of(plan, load.seed)).collect();
        let (jobs, runs) = load.rows;
        Some(Self {
            pace: Pace::mean(&paces?)?,
            least: load.least,
            most: load.most,
            kept: load.kept,
            replayed: load.replayed,
            rows: jobs * f64::from(runs.min(rows.rows)),
            option: load.option,
        })
    }

    /// Says what will take long or much, and refuses what takes longer or more than is allowed.
    ///
    /// # Errors
    /// If it is too much, with the option that makes it less and the one that allows it.
    pub(super) fn say(&self, limits: &LimitArgs, threads: Option<u16>) -> Result<(), Failure> {
        let threads = threads.map_or_else(rayon::current_num_threads, usize::from);
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        match self.judge(limits, threads.min(cores).max(1) as f64) {
            Verdict::Small => Ok(()),
            Verdict::Said(words) => {
                say::aside(&format!("heapcast: {words}\n"));
                Ok(())
            }
            Verdict::TooMuch(words) => Err(Failure::asked(format!("{words}; nothing was written"))),
        }
    }

    fn judge(&self, limits: &LimitArgs, threads: f64) -> Verdict {
        let time = |runs: f64| runs * self.pace.run_s / threads;
        let (least, most) = (time(self.least), time(self.most));
        let memory =
            self.most * self.kept + self.replayed * self.pace.loads * ENTRIES * size_of::<Entry>() as f64;
        let written = self.rows * ROW;
        let smaller = |now: f64, limit: f64| self.smaller(now, limit);
        let about = self.about();
        if least > limits.max_time {
            return Verdict::TooMuch(format!(
                "this would take about {} ({about}), and --max-time allows {}: {}, or allow it with --max-time \"{}\"",
                duration(rounded(least)),
                duration(limits.max_time),
                smaller(least, limits.max_time),
                allowing(least)
            ));
        }
        if memory.max(written) > limits.max_size {
            let much = memory.max(written);
            return Verdict::TooMuch(format!(
                "this would need about {} ({about}), and --max-size allows {}: {}, or allow it with --max-size \"{} GB\"",
                bytes(much),
                bytes(limits.max_size),
                smaller(much, limits.max_size),
                (much / 1e9).ceil().max(1.0)
            ));
        }
        let mut said = Vec::new();
        if most > SAID_S {
            let range = if most > 1.5 * least {
                format!("may take up to about {}", duration(rounded(most)))
            } else {
                format!("will take about {}", duration(rounded(most)))
            };
            said.push(format!("this {range} ({about}); for less, {}", smaller(most, SAID_S)));
        }
        if memory > SAID_BYTES {
            said.push(format!(
                "this needs about {} of memory; for less, {}",
                bytes(memory),
                smaller(memory, SAID_BYTES)
            ));
        }
        if written > SAID_BYTES {
            said.push(format!(
                "runs.csv will be about {}; for less, fewer --rows or --compress",
                bytes(written)
            ));
        }
        if said.is_empty() { Verdict::Small } else { Verdict::Said(said.join("\nheapcast: ")) }
    }

    fn about(&self) -> String {
        let runs = if self.most > self.least {
            format!("{} to {} runs", figure(self.least), figure(self.most))
        } else {
            format!("{} runs", figure(self.least))
        };
        format!("{runs} of about {} loads", figure(two_digits(self.pace.loads)))
    }

    /// The option with a value that brings it below a limit.
    fn smaller(&self, now: f64, limit: f64) -> String {
        let (option, value) = self.option;
        let fitting = two_digits_below(f64::from(value) * limit / now);
        if fitting >= 1.0 { format!("ask for {option} {fitting}") } else { "make the job smaller".to_owned() }
    }
}

#[derive(Clone, Debug, PartialEq, Eq)]
enum Verdict {
    Small,
    Said(String),
    TooMuch(String),
}

/// A time as roughly as it is known.
fn rounded(seconds: f64) -> f64 {
    let unit = if seconds > 7_200.0 {
        1_800.0
    } else if seconds > 600.0 {
        300.0
    } else {
        60.0
    };
    (seconds / unit).ceil() * unit
}

/// A limit as it can be typed that allows so much time.
fn allowing(seconds: f64) -> String {
    format!("{} h", (seconds * 1.2 / 3_600.0).ceil())
}

fn two_digits(value: f64) -> f64 {
    let unit = 10f64.powf(value.max(1.0).log10().floor() - 1.0).max(1.0);
    (value / unit).round() * unit
}

fn two_digits_below(value: f64) -> f64 {
    let unit = 10f64.powf(value.max(1.0).log10().floor() - 1.0).max(1.0);
    (value / unit).floor() * unit
}

fn bytes(size: f64) -> String {
    if size >= 1e9 { format!("{:.1} GB", size / 1e9) } else { format!("{:.0} MB", size / 1e6) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use sim::Outcome;

    const LIMITS: LimitArgs = LimitArgs { max_time: 3_600.0, max_size: 2e9 };

    fn effort(run_s: f64, loads: f64, runs: u32) -> Effort {
        let runs_made = f64::from(runs);
        Effort {
            pace: Pace { run_s, loads },
            least: runs_made,
            most: runs_made,
            kept: size_of::<Outcome>() as f64,
            replayed: 1.0,
            rows: runs_made.min(10_000.0),
            option: ("--runs", runs),
        }
    }

    #[test]
    fn what_is_quick_is_not_talked_about() {
        assert_eq!(effort(1e-3, 80.0, 10_000).judge(&LIMITS, 2.0), Verdict::Small);
    }

    #[test]
    fn some_minutes_are_said_with_the_option_that_makes_them_fewer() {
        let Verdict::Said(words) = effort(0.12, 40_000.0, 10_000).judge(&LIMITS, 2.0) else { panic!("said") };
        assert!(words.contains("about 10 min") && words.contains("ask for --runs 3000"), "{words}");
        assert!(words.contains("10,000 runs of about 40,000 loads"), "{words}");
    }

    #[test]
    fn hours_are_refused_with_what_would_be_allowed_and_what_allows_them() {
        let Verdict::TooMuch(words) = effort(3.0, 90_000.0, 10_000).judge(&LIMITS, 2.0) else {
            panic!("refused")
        };
        assert!(words.contains("--runs 2400") && words.contains("--max-time \"5 h\""), "{words}");
        let raised = LimitArgs { max_time: 5.0 * 3_600.0, ..LIMITS };
        assert!(matches!(effort(3.0, 90_000.0, 10_000).judge(&raised, 2.0), Verdict::Said(_)));
    }

    #[test]
    fn gigabytes_are_refused_whether_they_are_kept_or_written() {
        let kept = Effort { most: 2e7, least: 1e6, ..effort(1e-6, 20.0, 1_000_000) };
        let Verdict::TooMuch(words) = kept.judge(&LIMITS, 2.0) else { panic!("refused") };
        assert!(words.contains("--max-size"), "{words}");
        let written = Effort { rows: 2e7, kept: 0.0, ..effort(1e-6, 20.0, 1_000) };
        assert!(matches!(written.judge(&LIMITS, 2.0), Verdict::TooMuch(_)));
    }

    #[test]
    fn the_pace_is_that_of_the_runs_made() {
        let text = scenarios::starter(&scenarios::Answers::default());
        let job =
            scenarios::read_text(&text, "", scenarios::Texts::default(), &scenarios::Selection::default());
        let job = job.unwrap().job;
        let plan = Plan::new(&job).unwrap();
        let pace = Pace::of(&plan, 1).unwrap();
        let study = Study::new(&plan, 1, Runs::Exactly(50), |_| {}).unwrap();
        let loads = study.outcomes.iter().map(|o| f64::from(o.loads)).sum::<f64>() / 50.0;
        assert!((pace.loads - loads).abs() < 0.2 * loads, "{pace:?}, {loads} loads");
        assert!(pace.run_s > 0.0 && pace.run_s < 1.0);
    }
}
