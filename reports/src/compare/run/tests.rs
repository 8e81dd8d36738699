use super::*;
use crate::compare::fixtures::{choice, three, usual};
use crate::example;

fn jobs(change: impl Fn(&mut Scenario)) -> Vec<(String, Scenario)> {
    let mut other = example::scenario();
    change(&mut other);
    vec![("a".into(), example::scenario()), ("b".into(), other)]
}

fn wanted(prefer: Prefer) -> Wanted {
    Wanted { seed: 1, runs: 200, most: 400, confidence: 0.95, prefer, within: None }
}

fn compared(jobs: Vec<(String, Scenario)>, wanted: &Wanted) -> Result<Comparison, Failure> {
    let plans = compiled(&jobs, wanted.prefer)?;
    Comparison::new(jobs, &plans, wanted, String::new(), |_| ())
}

#[test]
fn jobs_of_the_same_hours_are_judged_by_the_time_they_take_and_others_by_the_clock() {
    let by = |change: fn(&mut Scenario)| judged_by(&jobs(change), Prefer::Time);
    assert_eq!(by(|_| ()), Judged::WorkingTime);
    assert_eq!(by(|s| s.job.shift.start_s -= 3_600.0), Judged::ClockTime);
    assert_eq!(by(|s| s.job.shift.end_s = Some(57_600.0)), Judged::ClockTime);
    assert_eq!(judged_by(&jobs(|s| s.job.shift.start_s = 0.0), Prefer::Cost), Judged::Cost);
}

#[test]
fn who_starts_an_hour_earlier_is_the_faster_by_the_clock() {
    // Nothing is left to chance, so both take the same.
    let made = |wanted: &Wanted| compared(jobs(|s| s.job.shift.start_s -= 3_600.0), wanted).unwrap();
    let comparison = made(&wanted(Prefer::Time));
    assert_eq!((comparison.best, comparison.held, comparison.within), (1, true, 0.0));
    assert_eq!(comparison.choices[0].set_aside, Some(200));
}

#[test]
fn costs_that_are_unknown_or_in_two_currencies_are_not_compared() {
    let refused =
        |change: fn(&mut Scenario)| compared(jobs(change), &wanted(Prefer::Cost)).unwrap_err().to_string();
    let unpriced = refused(|s| {
        s.job.prices = sim::Prices { fuel_per_l: 0.0, material: 0.0 };
        (s.job.loaders[0].machine_cost_per_h, s.job.loaders[0].operator_cost_per_h) = (0.0, 0.0);
        s.job.rakers[0].cost_per_h = 0.0;
    });
    assert!(unpriced.contains("the cost of \"b\" is not known"), "{unpriced}");
    let two = refused(|s| s.currency = "EUR".into());
    assert!(two.contains("\"b\" is priced in EUR, the first in $"), "{two}");
}

#[test]
fn a_hundredth_of_the_cost_does_not_matter_unless_a_sum_is_said() {
    let made = |within| {
        let wanted = Wanted { within, ..wanted(Prefer::Cost) };
        let jobs = jobs(|s| s.job.loaders[0].machine_cost_per_h += 5.0);
        compared(jobs, &wanted).unwrap()
    };
    let usual = made(None);
    // Nothing is left to chance, so every run costs the same.
    let cost = usual.choices[0].study.outcomes[0].cost;
    assert!((usual.promise.indifference / cost - 0.01).abs() < 0.0005, "{}", usual.promise.indifference);
    assert_eq!(made(Some(20.0)).promise.indifference, 20.0);
}

#[test]
fn letters_go_on_as_far_as_jobs_are_taken() {
    assert_eq!((Choice::letter(0).as_str(), Choice::letter(MOST_CHOICES - 1).as_str()), ("A", "T"));
}

#[test]
fn a_job_is_known_again_and_every_file_is_named() {
    let mut comparison = three();
    comparison.choices[2] = comparison.choices[0].clone();
    assert_eq!([0, 1, 2].map(|place| comparison.same_as(place)), [None, None, Some(0)]);
    assert!(comparison.made_with().ends_with("scenario 0123456789ab"), "{}", comparison.made_with());
    let mut other = choice("another file", usual, |_| 1.0);
    other.scenario.hash = "f".repeat(64);
    comparison.choices.push(other);
    assert!(comparison.made_with().ends_with("0123456789ab, ffffffffffff"), "{}", comparison.made_with());
}
