//! The promise of a selection, kept by repetition: jobs whose true means are known exactly are put against one another again
//! and again, each time with another seed, and the one chosen is compared with the truth.
//!
//! Sources: means of exponential loads by arithmetic (`loads x mean`); `tandem_makespan.csv`, status computed. Means are exact,
//! so "chosen right" is counted, not estimated. A choice that is worse by the whole indifference counts as wrong.

use super::comparison::{Comparison, Status};
use super::theory::*;
use sim::{Distribution, Job, Outcome, Plan, Promise, RandomNumbers, select};

/// The confidence that is promised.
const CONFIDENCE: f64 = 0.95;

/// Jobs with their true means of the finish, in units of time.
pub(super) struct Case {
    what: String,
    jobs: Vec<Job>,
    means: Vec<f64>,
    numbers: RandomNumbers,
    indifference: f64,
    first: u32,
}

/// What came of many selections among the same jobs.
#[derive(Default)]
struct Tally {
    repeats: u32,
    /// The promise was said to hold.
    held: u32,
    /// The one chosen is worse than the best by less than the indifference.
    right: u32,
    /// The one chosen is the best.
    best: u32,
    /// No other is better by more than was said.
    within: u32,
    runs: u64,
}

fn finish(o: &Outcome) -> f64 {
    o.finish.working.as_secs_f64() / UNIT_S
}

impl Case {
    fn repeat(&self, repeats: u32) -> Tally {
        let plans: Vec<Plan> = self.jobs.iter().map(|job| Plan::new(job).unwrap()).collect();
        let least = self.means.iter().copied().fold(f64::INFINITY, f64::min);
        let (indifference, first) = (self.indifference, self.first);
        let promise = Promise { indifference, confidence: CONFIDENCE, first, most: 1_000_000 };
        let mut tally = Tally { repeats, ..Tally::default() };
        for repeat in 0..repeats {
            let seed = 0x5e1e_c700_0000 + u64::from(repeat);
            let selected = select(&plans, seed, self.numbers, &promise, |_, o| finish(o), |_| {}).unwrap();
            let worse = self.means[selected.best] - least;
            let alike = 1e-9 * least;
            tally.held += u32::from(selected.held);
            tally.right += u32::from(worse < indifference - alike);
            tally.best += u32::from(worse < alike);
            tally.within += u32::from(worse <= selected.within + alike);
            tally.runs += selected.runs();
        }
        tally
    }
}

/// A law of one load, by the step of the loader's cycle whose draw it takes: jobs whose steps differ have nothing in common
/// even where they have the same random numbers.
#[derive(Clone, Copy, Debug)]
enum Step {
    Loading,
    Hauling,
    Dumping,
    /// Nothing is left to chance.
    Constant,
}

/// So many loads whose cycle takes one unit on average, and `late` units of set-up before.
fn cycles(step: Step, loads: u32, late: f64) -> Job {
    let job = job(loads, 1);
    let mut job = match step {
        Step::Loading => loading(job, 1.0, exponential()),
        Step::Hauling => travel(job, 1.0, exponential()),
        Step::Dumping => {
            let mut job = job;
            job.loaders[0].dump_s = UNIT_S;
            job.chance.loads.dump = exponential();
            job
        }
        Step::Constant => loading(job, 1.0, Distribution::Constant(1.0)),
    };
    job.shift.set_up_s = Distribution::Constant(late * UNIT_S);
    job
}

/// How far behind the best each is, in indifferences.
#[derive(Clone, Copy, Debug)]
enum Field {
    /// All others behind by exactly the indifference: the least favourable of cases in which only the best will do.
    AllJustWorse,
    /// Each a little worse than the one before it, by less than the indifference.
    Chain,
    /// All alike.
    Ties,
    /// One far ahead.
    OneClear,
}

impl Field {
    const ALL: [Self; 4] = [Self::AllJustWorse, Self::Chain, Self::Ties, Self::OneClear];

    fn behind(self, place: usize) -> f64 {
        match self {
            _ if place == 0 => 0.0,
            Self::AllJustWorse => 1.0,
            Self::Chain => 0.4 * place as f64,
            Self::Ties => 0.0,
            Self::OneClear => 6.0,
        }
    }
}

/// `jobs` alike but for how late they begin, the best in the middle of the list, each with independent random numbers.
fn each_independent(field: Field, jobs: usize, loads: u32, indifference: f64) -> Case {
    let behind = |i: usize| field.behind((i + jobs / 2) % jobs) * indifference;
    Case {
        what: format!("{field:?}, {jobs} jobs of {loads} exponential loads, independent random numbers"),
        jobs: (0..jobs).map(|i| cycles(Step::Loading, loads, behind(i))).collect(),
        means: (0..jobs).map(|i| f64::from(loads) + behind(i)).collect(),
        numbers: RandomNumbers::Independent,
        indifference,
        first: 200,
    }
}

/// Jobs whose chance lies in different steps of the cycle, with common random numbers; the first the best.
fn common_random_numbers(field: Field, steps: &[Step], loads: u32, indifference: f64) -> Case {
    let behind = |i: usize| field.behind(i) * indifference;
    Case {
        what: format!("{field:?}, {steps:?}, {loads} loads, common random numbers"),
        jobs: steps.iter().enumerate().map(|(i, step)| cycles(*step, loads, behind(i))).collect(),
        means: (0..steps.len()).map(|i| f64::from(loads) + behind(i)).collect(),
        numbers: RandomNumbers::Common,
        indifference,
        first: 200,
    }
}

/// The line of a loader and its rakers, whose means are those of the table, ten loads, with common random numbers.
fn lines(indifference: f64) -> Case {
    let table = Table::read("tandem_makespan.csv");
    let rows: Vec<_> = table.rows.iter().filter(|row| table.number(row, "N_loads") == 10.0).collect();
    let job = |row: &&csv::StringRecord| {
        let f = |heading| table.number(row, heading);
        let rakers = f("c_rakers");
        let mut job =
            raking(loading(job(10, 1), 1.0 / f("mu1"), exponential()), rakers as usize, f("mu2_each"));
        job.zones[0].room = Some((f("b_room") + rakers) as u32);
        job
    };
    Case {
        what: format!(
            "a loader and its rakers, {} lines of tandem_makespan.csv, common random numbers",
            rows.len()
        ),
        jobs: rows.iter().map(job).collect(),
        means: rows.iter().map(|row| table.number(row, "mean")).collect(),
        numbers: RandomNumbers::Common,
        indifference,
        first: 200,
    }
}

/// Something that happens once in so many runs and then takes as many units, against a job without it.
fn rare(once_in: usize, late: Late, indifference: f64, first: u32) -> Case {
    let mut values = vec![0.0; once_in];
    values[0] = once_in as f64 * UNIT_S;
    let mut troubled = cycles(Step::Constant, 1, 0.0);
    troubled.shift.set_up_s = Distribution::Observed(values.into());
    let (late_if_not, late_if) = match late {
        Late::Trouble => (0.0, indifference),
        Late::NoTrouble => (indifference, 0.0),
    };
    troubled.loaders[0].load_s = (1.0 + late_if) * UNIT_S;
    Case {
        what: format!("trouble once in {once_in} runs, {late:?} the worse, {first} runs at first"),
        jobs: vec![troubled, cycles(Step::Constant, 1, 1.0 + late_if_not)],
        means: vec![2.0 + late_if, 2.0 + late_if_not],
        numbers: RandomNumbers::Common,
        indifference,
        first,
    }
}

#[derive(Clone, Copy, Debug)]
enum Late {
    Trouble,
    NoTrouble,
}

/// The promise in each case: held, kept, and what was said of the others true.
pub(super) fn kept(cases: impl IntoIterator<Item = Case>, repeats: u32) -> Comparison {
    let mut comparison = Comparison::new(
        "The job chosen is the best, or worse by less than the indifference, at least as often as promised",
        format!(
            "exact means of exponential loads and of tandem_makespan.csv; {repeats} selections a case, 95 % promised"
        ),
        Status::Computed,
        0.0,
    );
    for case in cases {
        let tally = case.repeat(repeats);
        let what = |figure: &str| format!("{}: {figure}", case.what);
        let share = |n: u32| f64::from(n) / f64::from(tally.repeats);
        comparison.exact(what("share of selections that came to a promise"), share(tally.held), 1.0, 0.0);
        comparison.within(what("share of right choices"), share(tally.right), CONFIDENCE, 1.0);
        comparison.within(
            what("share in which no other was better than said"),
            share(tally.within),
            CONFIDENCE,
            1.0,
        );
        // Not promised, but to be seen.
        comparison.within(what("share in which it was the very best"), share(tally.best), 0.0, 1.0);
        comparison.within(
            what("runs of all jobs together"),
            tally.runs as f64 / f64::from(repeats),
            0.0,
            1e9,
        );
    }
    comparison
}

use Step::{Constant, Dumping, Hauling, Loading};

pub(super) fn ordinary() -> Vec<Case> {
    vec![
        each_independent(Field::AllJustWorse, 2, 1, 0.15),
        each_independent(Field::AllJustWorse, 5, 1, 0.15),
        each_independent(Field::Chain, 5, 1, 0.15),
        each_independent(Field::Ties, 2, 1, 0.15),
        each_independent(Field::OneClear, 10, 1, 0.15),
        common_random_numbers(Field::AllJustWorse, &[Loading, Hauling], 10, 0.5),
        common_random_numbers(Field::Chain, &[Loading, Hauling, Dumping], 1, 0.15),
        common_random_numbers(Field::AllJustWorse, &[Loading, Constant], 1, 0.1),
        common_random_numbers(Field::AllJustWorse, &[Constant, Loading], 1, 0.1),
        lines(0.2),
    ]
}

#[test]
fn the_job_chosen_is_the_best_or_near_it_as_often_as_promised() {
    kept(ordinary(), 500).judge(5 * 10);
}

/// A limit, not a promise: what none of the first runs shows cannot be taken into account. Trouble that comes once in 200 runs does not
/// come in any of 200 runs with chance `0.995^200`, 37 %; the job that has it then seems surely the better. The program
/// makes 2,000 runs at first, of which 0.004 % see none.
#[test]
fn trouble_rarer_than_the_first_runs_can_show_is_overlooked_as_often_as_arithmetic_says() {
    let unseen = 0.995_f64.powi(200);
    let tally = rare(200, Late::Trouble, 1.0, 200).repeat(500);
    let wrong = f64::from(tally.repeats - tally.right) / f64::from(tally.repeats);
    let error = (unseen * (1.0 - unseen) / f64::from(tally.repeats)).sqrt();
    assert!(
        wrong > unseen - 4.0 * error && wrong < unseen + 4.0 * error + 0.05,
        "{wrong}, expected {unseen}"
    );
}

#[test]
#[ignore = "heavy: four times the repeats, ten jobs, narrow indifferences"]
fn the_promise_is_kept_among_many_jobs_that_are_hard_to_tell_apart() {
    let mut cases = Vec::new();
    for field in Field::ALL {
        for (jobs, loads) in [(2, 1), (5, 10), (10, 1)] {
            cases.push(each_independent(field, jobs, loads, 0.15 * f64::from(loads).sqrt()));
        }
        cases.push(common_random_numbers(field, &[Loading, Hauling, Dumping, Constant], 1, 0.12));
    }
    for steps in [[Loading, Constant], [Constant, Loading]] {
        cases.push(common_random_numbers(Field::AllJustWorse, &steps, 1, 0.08));
    }
    cases.push(lines(0.1));
    for late in [Late::Trouble, Late::NoTrouble] {
        for (once_in, indifference) in [(20, 0.15), (200, 0.5)] {
            cases.push(rare(once_in, late, indifference, 2_000));
        }
    }
    kept(cases, 2_000).judge(5 * 23);
}
