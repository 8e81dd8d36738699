//! What the figure of relief says, with hand-made comparisons.

use super::*;
use crate::chart::{Size, look};
use sim::Improvement;

fn saves(improvement: Improvement, minutes: f64, half: f64) -> Relief {
    let (value, half) = (minutes * 60.0, half * 60.0);
    let mean = |value: f64| Mean { value, low: value - half, high: value + half, sd: 1.0, n: 100 };
    Relief { improvement, saved_s: mean(value), saved_cost: mean(0.0) }
}

#[test]
fn the_title_names_what_surely_saves_most() {
    let reliefs = [saves(Improvement::AnotherRaker, 34.0, 3.0), saves(Improvement::MoreRoom, 5.0, 1.0)];
    assert_eq!(
        prepare(&reliefs, 100).title,
        "One more raker helps most: it saves 34 min (between 31 min and 37 min)"
    );
    assert_eq!(prepare(&reliefs[1..], 100).title, "Room for one more heap saves 5 min");
}

#[test]
fn the_title_names_two_that_cannot_be_told_apart() {
    let reliefs = [saves(Improvement::AnotherRaker, 34.0, 3.0), saves(Improvement::LargerBucket, 32.0, 2.0)];
    assert_eq!(
        prepare(&reliefs, 100).title,
        "One more raker and a bucket a tenth larger save most: 34 min and 32 min"
    );
}

#[test]
fn a_saving_that_may_be_none_is_not_praised() {
    let reliefs = [saves(Improvement::AnotherRaker, 3.0, 4.0), saves(Improvement::AnotherLoader, -6.0, 1.0)];
    assert_eq!(prepare(&reliefs, 100).title, "None of these changes surely saves time");
    assert_eq!(prepare(&[], 0).title, "There was nothing to improve");
}

#[test]
fn one_run_has_no_interval_and_says_so() {
    let reliefs = [saves(Improvement::AnotherRaker, 34.0, f64::NAN)];
    let data = prepare(&reliefs, 1);
    assert_eq!(data.title, "In the one run compared, one more raker saves 34 min");
    assert_eq!((data.rows[0].interval, data.rows[0].words.as_str()), (None, "34 min"));
}

#[test]
fn values_are_printed_in_one_unit_that_suits_them() {
    let words = |minutes: f64, half: f64| {
        let data = prepare(&[saves(Improvement::MoreRoom, minutes, half)], 100);
        (data.unit, data.rows[0].words.clone())
    };
    assert_eq!(words(34.2, 3.0), ("min", "34 min (31 to 37)".into()));
    assert_eq!(words(0.5, 0.1), ("s", "30 s (24 to 36)".into()));
    assert_eq!(words(600.0, 60.0), ("h", "10.0 h (9.0 to 11.0)".into()));
    assert_eq!(words(-6.0, 1.5), ("min", "−6.0 min (−7.5 to −4.5)".into()));
    assert_eq!(words(0.0, 0.0), ("s", "0 s".into()));
}

#[test]
fn losses_stand_left_of_nought_and_their_labels_do_not_touch() {
    let reliefs = [
        saves(Improvement::AnotherRaker, 34.0, 3.0),
        saves(Improvement::AnotherLoader, -60.0, 20.0),
        saves(Improvement::MoreRoom, -0.02, 0.01),
    ];
    let data = prepare(&reliefs, 100);
    for size in [Size::PAGE, Size::WIDE, Size::PHONE, Size { width: 300, height: 200 }] {
        let svg = super::draw(&data, size).expect("a figure");
        assert_eq!(look::faults(&svg), [""; 0]);
        assert!(look::texts(&svg).iter().any(|seen| seen.text.starts_with('−')));
    }
}
