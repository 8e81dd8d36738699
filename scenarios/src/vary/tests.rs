use super::*;
use crate::Texts;
use crate::testing::SOUND;
use crate::units::System;

fn values(text: &str) -> Vec<String> {
    let vary: Vary = text.parse().unwrap_or_else(|said| panic!("{text}: {said}"));
    vary.values.iter().map(ToString::to_string).collect()
}

fn file() -> JobFile {
    JobFile::of_text(SOUND, "job.toml", Texts::default()).unwrap()
}

#[test]
fn a_range_of_counts_steps_by_one_and_any_other_by_what_is_said_or_in_five_steps() {
    assert_eq!(values("rakers 1..4"), ["1", "2", "3", "4"]);
    assert_eq!(values("raker.helper.count = 1 to 3"), ["1", "2", "3"]);
    assert_eq!(values("bucket 0.2..0.6 m3 by 0.1"), ["0.2 m3", "0.3 m3", "0.4 m3", "0.5 m3", "0.6 m3"]);
    assert_eq!(values("haul 10..60 yd"), ["10 yd", "20 yd", "30 yd", "40 yd", "50 yd", "60 yd"]);
    assert_eq!(values("loader.tractor.heaped = 10..15 ft3 by 2 ft3"), ["10 ft3", "12 ft3", "14 ft3"]);
    assert_eq!(values("loader.tractor.operator_cost = $20..40/h by 10"), ["$20/h", "$30/h", "$40/h"]);
    assert_eq!(values("material.fill_factor = 80..100 % by 10"), ["80 %", "90 %", "100 %"]);
    assert_eq!(values("room = 1..2"), ["1", "2"]);
}

#[test]
fn a_list_takes_the_unit_named_last_and_is_put_in_order() {
    assert_eq!(values("bucket 8.5, 11, 14 ft3"), ["8.5 ft3", "11 ft3", "14 ft3"]);
    assert_eq!(values("bucket 14 ft3, 8.5 ft3"), ["8.5 ft3", "14 ft3"]);
    assert_eq!(values("rakers 2"), ["2"]);
    let vary: Vary = "loader.tractor.heaped = 8, 12 ft3".parse().unwrap();
    assert_eq!(vary.to_string(), "loader.tractor.heaped = 8 ft3, 12 ft3");
    assert_eq!(vary.to_string().parse::<Vary>().unwrap(), vary);
}

#[test]
fn what_is_no_sweep_is_told_in_words() {
    for (text, words) in [
        ("", "what is to vary"),
        ("rakers", "no values"),
        ("rakers 4..1", "does not rise"),
        ("rakers 2..2", "does not rise"),
        ("rakers 1..4.5", "not a count"),
        ("rakers 1.5", "not a count"),
        ("rakers 1-4", "two dots"),
        ("rakrs 1..4", "the nearest is \"rakers\""),
        ("loader.tractor.heaped 8..12 ft3", "not known here"),
        ("bucket 8..20", "a share or plain number; a volume is wanted"),
        ("bucket 8..20 ft", "a length; a volume is wanted"),
        ("haul 8..20 ft3", "a length is wanted"),
        ("bucket 8 ft3..0.6 m3", "give all values in one unit"),
        ("bucket 8, 8.0 ft3", "stands there twice"),
        ("bucket 8..20 ft3 by 0.1", "at most 40"),
        ("bucket 8..20 ft3 by 0", "leads nowhere"),
        ("bucket 8..20 ft3 by -1", "leads nowhere"),
        ("bucket 8..20 furlongs", "not known"),
        ("fill_order = as listed, in turn", "not a number"),
        ("rakers 1..nan", "not a number"),
    ] {
        let said = text.parse::<Vary>().map(|vary| vary.to_string()).unwrap_err();
        assert!(said.contains(words), "{text}: {said}");
    }
    let long = format!("bucket {}8 ft3", "9, ".repeat(400));
    assert!(long.parse::<Vary>().is_err());
}

#[test]
fn values_are_shown_in_the_units_of_the_trade() {
    let value = |text: &str| text.parse::<Vary>().unwrap().values[0].clone();
    assert_eq!(value("haul 10 m").label(System::Us), "10.9 yd");
    assert_eq!(value("haul 10 m").number(System::Metric), (10.0, "m".to_owned()));
    assert_eq!(
        (value("rakers 3").label(System::Us), value("rakers 3").number(System::Us)),
        ("3".into(), (3.0, String::new()))
    );
    assert_eq!(value("loader.x.operator_cost = $20/h").number(System::Us), (20.0, "$/h".to_owned()));
}

#[test]
fn a_sweep_agrees_with_single_runs_to_the_last_bit() {
    let vary: Vary = "haul 10..40 yd by 10".parse().unwrap();
    let swept = vary.scenarios(&file(), &Selection::default()).unwrap();
    for (scenario, value) in swept.iter().zip(&vary.values) {
        let changes = vec![format!("haul = {value}").parse().unwrap()];
        let single = file().scenario(&Selection { changes, ..Selection::default() }).unwrap();
        assert_eq!(*scenario, single);
    }
}

#[test]
fn two_things_make_a_grid_with_the_last_changing_fastest() {
    let varies: Vec<Vary> = ["rakers 1..2", "bucket 8, 18 ft3"].map(|text| text.parse().unwrap()).into();
    let selection = Selection { changes: vec!["room = 3".parse().unwrap()], ..Selection::default() };
    let names: Vec<String> =
        grid(&varies, &file(), &selection).unwrap().iter().map(crate::Scenario::name).collect();
    let expected = [
        "room = 3; rakers = 1; bucket = 8 ft3",
        "room = 3; rakers = 1; bucket = 18 ft3",
        "room = 3; rakers = 2; bucket = 8 ft3",
        "room = 3; rakers = 2; bucket = 18 ft3",
    ];
    assert_eq!(names, expected);
    assert_eq!(grid(&[], &file(), &selection).unwrap().len(), 1);
}

#[test]
fn every_value_that_the_job_refuses_is_named() {
    let said = |texts: &[&str]| -> Vec<String> {
        let varies: Vec<Vary> = texts.iter().map(|text| text.parse().unwrap()).collect();
        let refusal = grid(&varies, &file(), &Selection::default()).unwrap_err();
        refusal.problems.iter().map(ToString::to_string).collect()
    };
    let zero = said(&["rakers 0..3"]);
    assert!(
        zero.len() == 1 && zero[0].starts_with("job.toml: rakers = 0: nobody is left to rake"),
        "{zero:#?}"
    );
    let both = said(&["rakers 0..2", "room 0..3"]);
    assert_eq!(both.len(), 2, "{both:#?}");
    assert!(both[1].starts_with("job.toml: room = 0: none at all is not a count"), "{both:#?}");
    let key = said(&["loader.tractor.loading = 1..3 ft by 1"]);
    assert!(key.len() == 3 && key[2].contains("loader.tractor.loading = 3 ft: this is a length"), "{key:#?}");
}

#[test]
fn a_number_may_have_an_exponent() {
    let vary: Vary = "haul 1e1..8e1 m by 1e1".parse().unwrap();
    assert_eq!(vary.to_string(), "haul 10 m, 20 m, 30 m, 40 m, 50 m, 60 m, 70 m, 80 m");
    let vary: Vary = "bucket 2.5E-1, 0.5 m3".parse().unwrap();
    assert_eq!(vary.to_string(), "bucket 0.25 m3, 0.5 m3");
}
