//! What the figures of time and money saved say, with runs made by hand.

use super::*;
use crate::chart::{ChartError, Size, legibility};
use crate::compare::figures::rivals::nine;
use crate::compare::findings::comparison;
use crate::compare::fixtures::three;

#[test]
fn the_title_names_what_surely_saves_most_on_average() {
    let data = prepare_time(&comparison(&three()));
    assert_eq!(
        data.title,
        "\"a second raker\" saves 30 min on average against \"as it stands\" and is the faster in every run"
    );
    let row = &data.rows[0];
    assert_eq!(
        (row.name.as_str(), row.band, row.median, row.mean),
        ("B a second raker", (20.0, 40.0), 30.0, 30.0)
    );
    assert_eq!(row.words, "30 min, faster in 100 %");
    assert_eq!(data.rows[1].words, "−10 min, faster in 0 %");
}

#[test]
fn money_is_told_with_its_currency_and_only_where_it_is_known() {
    let mut jobs = three();
    let data = prepare_money(&comparison(&jobs));
    assert_eq!(
        data.title,
        "\"a smaller bucket\" saves $10 on average against \"as it stands\" and is the cheaper in every run"
    );
    assert_eq!(data.rows[0].words, "−$21, cheaper in 0 %");
    jobs.choices.iter_mut().for_each(|choice| choice.scenario.currency = "EUR".into());
    assert_eq!(prepare_money(&comparison(&jobs)).rows[0].words, "−21 EUR, cheaper in 0 %");
    jobs.choices[0].scenario.currency = "$".into();
    let none = prepare_money(&comparison(&jobs));
    assert!(matches!(crate::chart::saved::draw(&none, Size::PAGE), Err(ChartError::Nothing(_))));
}

#[test]
fn where_all_lose_that_is_said() {
    let mut jobs = three();
    jobs.choices.remove(1);
    jobs.best = 0;
    assert_eq!(prepare_time(&comparison(&jobs)).title, "None of them saves time against \"as it stands\"");
}

#[test]
fn the_figures_are_drawn_without_fault_at_every_size() {
    for findings in [three(), nine()].map(|jobs| comparison(&jobs)) {
        for data in [prepare_time(&findings), prepare_money(&findings)] {
            for size in [Size::PAGE, Size::WIDE, Size::PHONE, Size { width: 300, height: 200 }] {
                let svg = crate::chart::saved::draw(&data, size).expect("a figure");
                assert_eq!(legibility::faults(&svg), [""; 0], "{size:?}");
            }
        }
    }
}

fn with(bands: &[(f64, f64)]) -> SavedData {
    let mut data = prepare_time(&comparison(&three()));
    let usual = data.rows[0].clone();
    data.rows = bands
        .iter()
        .enumerate()
        .map(|(i, (low, high))| {
            let middle = f64::midpoint(*low, *high);
            let interval = Some((middle - 0.5, middle + 0.5));
            SavedRow {
                name: format!("row {i}"),
                band: (*low, *high),
                median: middle,
                mean: middle,
                interval,
                ..usual.clone()
            }
        })
        .collect();
    data
}

#[test]
fn a_loss_that_would_squash_the_gains_goes_on_beyond_the_picture_and_that_is_said() {
    let data = with(&[(20.0, 50.0), (-60.0, -10.0), (-2_600.0, -2_500.0)]);
    assert_eq!(data.edge(), Some(-75.0));
    for size in [Size::PAGE, Size::PHONE, Size { width: 300, height: 200 }] {
        let svg = crate::chart::saved::draw(&data, size).expect("a figure");
        assert!(svg.replace('\n', " ").contains("beyond"), "the note says what an arrow means");
        assert_eq!(svg.matches("<polygon").count(), 1, "one arrow, for the last row");
        assert!(!svg.contains("=\"-"), "nothing is drawn outside the picture");
        assert_eq!(legibility::faults(&svg), [""; 0], "{size:?}");
    }
}

#[test]
fn losses_like_the_gains_or_like_each_other_are_drawn_in_full() {
    for bands in [&[(20.0, 50.0), (-70.0, -40.0)][..], &[(-300.0, -200.0), (-500.0, -400.0)], &[(3.0, 5.0)]] {
        assert_eq!(with(bands).edge(), None, "{bands:?}");
        assert!(!crate::chart::saved::draw(&with(bands), Size::PAGE).expect("a figure").contains("<polygon"));
    }
    assert_eq!(with(&[(-12.0, -10.0), (-2_600.0, -2_500.0)]).edge(), Some(-48.0));
}
