//! What the figure of relief shows, with hand-made comparisons.

use super::*;
use crate::chart::{Size, legibility};
use crate::findings::relief_of;
use scenarios::units::System;
use sim::{DoneMore, Improvement, Mean, Relief, Share};

fn saves(improvement: Improvement, minutes: f64, half: f64) -> Relief {
    let (value, half) = (minutes * 60.0, half * 60.0);
    let mean = |value: f64| Mean { value, low: value - half, high: value + half, sd: 1.0, n: 100 };
    Relief { improvement, saved_s: mean(value), saved_cost: mean(0.0), done: None }
}

fn prepared(reliefs: &[Relief]) -> ReliefData {
    prepare(&relief_of(reliefs, 7_200.0, None, System::Us))
}

#[test]
fn the_figure_says_what_the_tables_say() {
    let reliefs = [saves(Improvement::AnotherRaker, 34.2, 3.0), saves(Improvement::AnotherLoader, -6.0, 1.0)];
    let findings = relief_of(&reliefs, 7_200.0, None, System::Us);
    let data = prepare(&findings);
    assert_eq!(data.title, findings.title);
    assert_eq!(data.rows[0].words, "34 min (31 min to 37 min)");
    assert_eq!(data.rows[1].words, "6 min lost (5 min to 7 min lost)");
    for (row, line) in data.rows.iter().zip(&findings.lines) {
        assert!(
            row.name == line.what && row.words.contains(&line.saves) && row.words.contains(&line.interval)
        );
    }
}

#[test]
fn one_run_has_no_interval() {
    let data = prepared(&[saves(Improvement::AnotherRaker, 34.0, f64::NAN)]);
    assert_eq!((data.rows[0].interval, data.rows[0].words.as_str()), (None, "34 min"));
}

#[test]
fn the_axis_has_a_unit_that_suits_the_values() {
    let unit = |minutes: f64| prepared(&[saves(Improvement::MoreRoom, minutes, 0.1)]).unit;
    assert_eq!([unit(0.5), unit(34.0), unit(600.0)], ["s", "min", "h"]);
}

#[test]
fn a_truckload_more_is_no_bar_of_minutes() {
    let share = |value| Share { value, low: value - 0.01, high: value + 0.01 };
    let done = DoneMore { before: share(0.6), after: share(0.97), truckload_m3: 6.0 };
    let more = Relief { done: Some(done), ..saves(Improvement::AnotherTruckload, -9.0, 1.0) };
    let data = prepared(&[more, saves(Improvement::AnotherRaker, 34.0, 3.0)]);
    assert_eq!(data.rows.len(), 1);
    assert!(data.title.ends_with("helps most: the job is done in 97 % of the runs"), "{}", data.title);
}

#[test]
fn losses_stand_left_of_zero_and_their_labels_do_not_touch() {
    let reliefs = [
        saves(Improvement::AnotherRaker, 34.0, 3.0),
        saves(Improvement::AnotherLoader, -60.0, 20.0),
        saves(Improvement::MoreRoom, -0.02, 0.01),
    ];
    let data = prepared(&reliefs);
    assert!(data.rows[1].saved < 0.0);
    for size in [Size::PAGE, Size::WIDE, Size::PHONE, Size { width: 300, height: 200 }] {
        let svg = super::draw(&data, size).expect("a figure");
        assert_eq!(legibility::faults(&svg), [""; 0]);
    }
}
