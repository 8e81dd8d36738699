//! The programs in `sim/examples`: what they print, beside what it must be.

#![allow(dead_code, unreachable_pub, reason = "the programs' own beginnings")]

#[path = "../../examples/one_and_one.rs"]
mod one_and_one;
#[path = "../../examples/two_crews.rs"]
mod two_crews;
#[path = "../../examples/yard_with_a_gate.rs"]
mod yard_with_a_gate;

use sim::*;

/// The first number of the line that begins with this.
fn number(text: &str, begins: &str) -> f64 {
    let line = text
        .lines()
        .find_map(|line| line.trim().strip_prefix(begins))
        .unwrap_or_else(|| panic!("{begins}: {text}"));
    let figures: String =
        line.chars().skip_while(|c| !c.is_ascii_digit()).take_while(|c| "0123456789.".contains(*c)).collect();
    figures.parse().unwrap()
}

#[test]
fn one_loader_and_one_raker_take_what_can_be_worked_out_by_hand() {
    let text = one_and_one::report().unwrap();
    // The first heap lies at 25 + 20 + 10 = 55 s; the loader's cycle is 70 s, a heap takes 90 s to rake: 55 + 18 x 90 s.
    assert_eq!(text.lines().next(), Some("18 loads, without chance 27 min 55 s"));
    // The raker sets the pace. The sum of 18 raking times has a standard deviation of 90 s x 0.3 x sqrt 18 = 1.91 min; now
    // and then the raker waits, and then it takes longer than the sum.
    let [p10, p50, p80] = ["P10:", "P50:", "P80:"].map(|begins| number(&text, begins));
    assert!((25.4..26.6).contains(&p10), "{text}");
    assert!((27.7..29.0).contains(&p50), "{text}");
    assert!((29.3..30.8).contains(&p80), "{text}");
    // 18 x 25 s of loading in some 28 min.
    assert!((25.0..=28.0).contains(&number(&text, "loader loading:")), "{text}");
    let shares: f64 =
        text.lines().filter(|line| line.starts_with("loader ")).map(|line| number(line, "loader ")).sum();
    assert!((98.0..=102.0).contains(&shares), "{text}");
}

#[test]
fn a_gate_for_one_sets_the_pace_of_a_yard_and_a_gate_for_all_holds_nobody_up() {
    let text = yard_with_a_gate::report().unwrap();
    // 50 loads go through the gate and all but the last of each loader come back: 97 passings of 15 s = 24.25 min at the least.
    let [one, three] = ["1 at once: done by", "3 at once: done by"].map(|begins| number(&text, begins));
    assert!(one >= 24.25 && three < one, "{text}");
    let study = yard_with_a_gate::study(1).unwrap();
    assert!(study.outcomes.iter().all(|o| o.loads == 50 && o.finish.working >= Duration::from_secs(97 * 15)));
    assert_eq!(text.lines().count(), 8);
    assert!(text.lines().filter(|line| line.ends_with("waits 0.0 min at the gate")).count() == 3, "{text}");
}

#[test]
fn common_random_numbers_know_what_a_second_raker_saves_more_closely() {
    let (common, own) = (two_crews::compare(5, 5).unwrap(), two_crews::compare(5, 6).unwrap());
    // Good and bad days fall on both crews alike and drop out of most of the difference.
    assert!(common.mean.sd < 0.6 * own.mean.sd, "{} and {}", common.mean.sd, own.mean.sd);
    // Both measure the same thing: the intervals meet.
    assert!(common.mean.low < own.mean.high && own.mean.low < common.mean.high);
    // One raker takes 50 heaps x 120 s = 100 min; two no longer hold the loader up, whose cycle is 22 + 20.8 + 9 + 15.6 s: 50 loads
    // in 56 min. On the average day some 43 min are saved, and one raker is never the quicker crew.
    assert!((40.0..47.0).contains(&common.mean.value), "{:?}", common.mean);
    assert_eq!(common.smaller.value, 1.0);
    let text = two_crews::report().unwrap();
    assert_eq!(
        number(&text, "common random numbers: a second raker saves"),
        (common.mean.value * 10.0).round() / 10.0
    );
}
