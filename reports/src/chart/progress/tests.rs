//! What the figure of progress says, with hand-made runs in steady progress from 8:00.

use super::*;
use crate::chart::fixtures::{dateless, days, job, runs, study};
use scenarios::units::System;

#[test]
fn the_title_names_the_range_of_the_half_and_leaves_the_end_to_the_finish() {
    let data =
        prepare(&study(&(100..=200).map(f64::from).collect::<Vec<_>>()), &job(), dateless(System::Metric));
    assert_eq!(data.title, "Half of the volume is raked out between 08:55 and 09:35 in eight runs of ten");
}

#[test]
fn the_title_claims_no_range_where_there_is_none() {
    let title = |minutes: &[f64]| prepare(&study(minutes), &job(), dateless(System::Metric)).title;
    assert_eq!(title(&[150.0; 3]), "Half of the volume is raked out by 09:15 in every run");
    assert_eq!(title(&[150.0]), "Half of the volume is raked out by 09:15 in the one run made");
    assert_eq!(title(&[]), "No run was made");
}

#[test]
fn a_run_of_minutes_is_told_in_seconds_and_not_by_the_clock() {
    let title = |minutes: &[f64]| prepare(&study(minutes), &job(), dateless(System::Metric)).title;
    assert_eq!(title(&[4.0; 30]), "Half of the volume is raked out after 2 min in every run");
    let varied: Vec<f64> = (0..=100).map(|i| 4.0 + f64::from(i) / 100.0).collect();
    assert_eq!(title(&varied), "Half of the volume is raked out after 2 min in nine runs of ten");
}

#[test]
fn the_band_lies_around_the_middle_and_never_goes_back() {
    let job = days(250.0);
    let data = prepare(&runs(&job, 100).0, &job, dateless(System::Metric));
    assert_eq!(data.steps.len(), PROGRESS_PARTS + 1);
    assert!(data.steps.iter().all(|s| s.early <= s.middle && s.middle <= s.late));
    for time in [|s: &Step| s.early, |s: &Step| s.middle, |s: &Step| s.late] {
        assert!(data.steps.windows(2).all(|pair| time(&pair[0]) <= time(&pair[1])));
    }
}

#[test]
fn deliveries_stand_at_their_promised_time_and_only_as_far_as_the_axis_goes() {
    let job = days(250.0);
    let data = prepare(&runs(&job, 50).0, &job, dateless(System::Metric));
    assert_eq!(data.deliveries, [120.0, 26.5 * 60.0, 28.0 * 60.0]);
    let mut late = job.clone();
    late.stockpiles[0].on_hand_m3 = 250.0;
    late.stockpiles[0].deliveries[2].at_s = 30.0 * 86_400.0;
    let data = prepare(&runs(&late, 50).0, &late, dateless(System::Metric));
    assert_eq!(data.deliveries.len(), 2);
}
