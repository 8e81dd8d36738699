//! What the figure of finishing times says, with hand-made runs that start at 8:00.

use super::*;
use crate::chart::fixtures::{dateless, enough, handbook, job, skewed, study};

fn short(runs: usize, of: usize) -> OrderFindings {
    let each = (0..of).map(|run| (run < runs).then_some(2.0));
    crate::findings::order_of(each, &crate::example::scenario(), System::Metric)
}

#[test]
fn the_rising_curve_ends_at_the_runs_that_are_done_and_the_title_says_what_is_missing() {
    let mut study = study(&even());
    study.outcomes.iter_mut().take(51).for_each(|o| o.ends_short = true);
    let data = prepare(&study, &handbook(91.0), &job().shift, &short(51, 101), dateless(System::Metric));
    let top = data.curve.iter().map(|(_, percent)| *percent).fold(0.0, f64::max);
    assert!((top - 100.0 * 50.0 / 101.0).abs() < 1e-9, "{top}");
    assert_eq!(
        data.title,
        "Short of material in 50 % of the runs, so not done: order 1 more truckload (10 m3)"
    );
    // No "8 days in 10" stands beside a curve that never gets there.
    assert!(data.marks.iter().all(|mark| mark.lines.iter().all(|line| !line.contains("days in"))));
    assert_eq!(data.marks.last().map(|mark| mark.lines.as_slice()), Some(&["crew stops".to_owned()][..]));
    assert!(
        data.note.ends_with("the curve ends at the runs that are done: 50 % of the runs"),
        "{}",
        data.note
    );
}

fn prepared(minutes: &[f64], book: f64) -> CompletionData {
    prepare(&study(minutes), &handbook(book), &job().shift, &enough(), dateless(System::Metric))
}

/// From 100 to 200 minutes, one a minute.
fn even() -> Vec<f64> {
    (100..=200).map(f64::from).collect()
}

#[test]
fn the_title_states_the_time_to_plan_on_and_the_handbook_figure() {
    assert_eq!(
        prepared(&even(), 91.0).title,
        "Eight days in ten it is done by 11:00; the handbook figure says 09:30"
    );
}

#[test]
fn the_title_claims_no_odds_from_certain_single_or_few_runs() {
    assert_eq!(
        prepared(&[150.0; 9], 91.0).title,
        "Every run is done by 10:30; the handbook figure says 09:30"
    );
    assert_eq!(
        prepared(&[150.0], 91.0).title,
        "The one run made is done by 10:30; the handbook figure says 09:30"
    );
    assert_eq!(prepared(&[100.0, 140.0], 91.0).title, "Of 2 runs, half are done by 10:00 and all by 10:20");
    assert_eq!(prepared(&[], 91.0).title, "No run was made");
}

#[test]
fn marks_stand_where_the_percentiles_and_the_handbook_figure_are() {
    let marks = prepared(&even(), 110.0).marks;
    let told: Vec<_> =
        marks.iter().map(|m| (m.at, m.name.as_str(), m.when.as_str(), m.lines[0].as_str())).collect();
    assert_eq!(
        told,
        [
            (110.0, "handbook", "09:50", "11 % of the runs"),
            (150.0, "P50", "10:30", "1 day in 2"),
            (180.0, "P80", "11:00", "8 days in 10"),
        ]
    );
}

#[test]
fn the_bars_hold_every_run_shown_and_stand_at_round_clock_times() {
    for minutes in
        [even(), skewed(3_000, 130.0, 90.0), skewed(200, 3.0, 0.5), vec![150.0; 7], vec![90.0, 91.0]]
    {
        let data = prepared(&minutes, 121.0);
        let all: f64 = data.bars.iter().map(|(_, share)| share).sum();
        let shown = minutes.iter().filter(|m| **m <= data.range.1).count() as f64 / minutes.len() as f64;
        assert!((all - 100.0 * shown).abs() < 1e-6, "{all} of {shown}");
        assert!(data.bars.len() <= 40, "{}", data.bars.len());
        if data.bars.len() > 1 {
            let widths = data.bars.iter().map(|(from, _)| (480.0 + from) / data.bar_min);
            assert!(widths.clone().all(|n| (n - n.round()).abs() < 1e-6), "{:?}", widths.collect::<Vec<_>>());
        }
    }
}

#[test]
fn the_curve_rises_from_nought_to_a_hundred() {
    for minutes in [even(), skewed(3_000, 130.0, 90.0), vec![150.0; 7]] {
        let curve = prepared(&minutes, 121.0).curve;
        assert!(curve.windows(2).all(|pair| pair[0].0 <= pair[1].0 && pair[0].1 <= pair[1].1));
        assert!(curve[0].1 < 2.0);
        assert!(curve.last().is_some_and(|(_, percent)| *percent > 99.0));
    }
}

#[test]
fn a_few_runs_far_off_do_not_press_the_rest_together_and_are_told() {
    let mut minutes = skewed(1_000, 130.0, 20.0);
    minutes.extend([900.0, 1_200.0]);
    let data = prepared(&minutes, 121.0);
    assert!(data.range.1 < 300.0, "{:?}", data.range);
    assert_eq!(data.note, "1002 runs; 2 of them end beyond the right edge, the last after 20 h");
    assert!(data.curve.last().is_some_and(|(_, percent)| *percent < 100.0));
}

#[test]
fn the_axis_holds_the_handbook_figure_however_far_off_it_is() {
    for book in [20.0, 400.0] {
        let range = prepared(&even(), book).range;
        assert!(range.0 <= book && book <= range.1);
    }
}

#[test]
fn a_job_over_night_is_told_in_hours_of_work_and_in_days() {
    let mut over_night = study(&even());
    over_night.outcomes.iter_mut().for_each(|o| o.finish.clock += sim::Duration::from_hours(24));
    let data = prepare(&over_night, &handbook(91.0), &job().shift, &enough(), dateless(System::Metric));
    assert_eq!(data.one_day_from_s, None);
    assert_eq!(
        data.title,
        "Eight days in ten it is done by day 2 11:00 (3 h of work); the handbook figure says 1 h 30 min"
    );
}

#[test]
fn a_run_of_minutes_is_told_in_seconds_and_not_by_the_clock() {
    let minutes: Vec<f64> = (0..=100).map(|i| 4.0 + f64::from(i) / 100.0).collect();
    let data = prepared(&minutes, 3.5);
    assert_eq!(data.title, "Eight days in ten it is done after 5 min; the handbook figure says 4 min");
    assert_eq!(data.marks[2].when, "5 min");
}
