//! What the figure of several jobs says, with runs made by hand that start at 8:00.

use super::*;
use crate::chart::{Size, legibility};
use crate::compare::fixtures::{alternately, choice, comparison, three, usual};

/// Nine jobs with long names; the fifth is the best.
pub(crate) fn nine() -> Comparison {
    let names =
        ["as it stands", "x", "a second raker and the wide bucket from the upper orchard & <new> tines"];
    let one = |n: u32| {
        let name = format!("{} {n}", names[n as usize % 3]);
        choice(
            &name,
            move |k| usual(k) + 12.0 * f64::from(n.abs_diff(4)) + alternately(k, 0.0, 3.0),
            |_| 1_000.0,
        )
    };
    comparison((0..9).map(one).collect(), 4, 0.0)
}

#[test]
fn the_title_names_the_best_and_the_first_with_their_time_to_plan_on() {
    // Type 7 P80 of a hundred runs from 120 min in steps of half a minute: 120 + 79.2 / 2 = 159.6 min.
    assert_eq!(
        prepare(&three()).title,
        "Eight days in ten \"a second raker\" is done by 10:10 am, \"as it stands\" by 10:40 am"
    );
    let mut first = three();
    first.best = 0;
    assert!(
        prepare(&first)
            .title
            .starts_with("Eight days in ten \"as it stands\" is done by 10:40 am, \"a second")
    );
}

#[test]
fn no_more_curves_are_drawn_than_can_be_told_apart_and_the_rest_is_counted() {
    let data = prepare(&nine());
    let letters: Vec<&str> = data.curves.iter().map(|curve| curve.letter.as_str()).collect();
    // The first, the best, and the four next to the best.
    assert_eq!(letters, ["A", "C", "D", "E", "F", "G"]);
    assert_eq!(data.note, "100 runs each; 3 slower jobs are left out");
}

#[test]
fn curves_rise_and_jobs_over_a_night_are_told_in_hours_of_work() {
    let data = prepare(&nine());
    for curve in &data.curves {
        assert!(curve.points.windows(2).all(|p| p[0].0 <= p[1].0 && p[0].1 <= p[1].1), "{}", curve.letter);
    }
    let mut night = three();
    night.choices[0].study.outcomes[99].finish.clock += sim::Duration::from_hours(24);
    let data = prepare(&night);
    assert_eq!(data.one_day_from_s, None);
    assert!(data.curves[0].when.ends_with("of work"), "{}", data.curves[0].when);
}

#[test]
fn by_the_clock_a_later_start_moves_the_curve() {
    let mut late = three();
    late.judged = Judged::ClockTime;
    late.choices[1].scenario.job.shift.start_s += 3_600.0;
    let data = prepare(&late);
    let moved = data.curves[1].p80 - prepare(&three()).curves[1].p80;
    assert!((moved - 60.0).abs() < 1e-9, "{moved}");
    assert_eq!(data.curves[1].when, "11:10 am");
}

#[test]
fn the_figure_is_drawn_without_fault_however_many_jobs_and_however_close() {
    let same = comparison((0..6).map(|_| choice("alike", usual, |_| 1.0)).collect(), 0, 0.0);
    let certain = comparison((0..2).map(|_| choice("certain", |_| 90.0, |_| 1.0)).collect(), 0, 0.0);
    for data in [three(), nine(), same, certain].map(|comparison| prepare(&comparison)) {
        for size in [Size::PAGE, Size::WIDE, Size::PHONE, Size { width: 300, height: 200 }] {
            let svg = crate::chart::rivals::draw(&data, size).expect("a figure");
            assert_eq!(legibility::faults(&svg), [""; 0], "{size:?}");
        }
    }
}

#[test]
fn a_far_slower_job_does_not_squash_the_others_and_is_said_to_lie_beyond_the_picture() {
    for best in [0, 1] {
        let mut far = three();
        for outcome in &mut far.choices[1 - best].study.outcomes {
            for at in [&mut outcome.finish.clock, &mut outcome.finish.working] {
                *at += sim::Duration::from_hours(42);
            }
        }
        far.best = best;
        let data = prepare(&far);
        assert!(data.range.1 < 300.0, "{:?}", data.range);
        let svg = crate::chart::rivals::draw(&data, Size::PAGE).expect("a figure");
        assert_eq!(svg.matches("(beyond the picture)</text>").count(), 1);
        assert_eq!(legibility::faults(&svg), [""; 0]);
    }
}
