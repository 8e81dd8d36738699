//! Every shipped scenario, from file to forecast; the one checked by hand; and the trade check.

use crate::program::Bench;
use scenarios::{Scenario, Selection};
use sim::*;
use std::path::{Path, PathBuf};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../scenarios/scenarios")
}

fn files() -> Vec<PathBuf> {
    let all = std::fs::read_dir(folder()).unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<_> = all.filter(|path| path.extension().is_some_and(|e| e == "toml")).collect();
    files.sort();
    files
}

fn read(name: &str, alternative: Option<&str>) -> Scenario {
    let selection = Selection { alternative: alternative.map(str::to_owned), ..Selection::default() };
    scenarios::read(&folder().join(name), &selection).unwrap_or_else(|refusal| panic!("{refusal}"))
}

fn study(name: &str, alternative: Option<&str>, runs: u32) -> Study {
    let scenario = read(name, alternative);
    Study::new(&Plan::new(&scenario.job).unwrap(), 1, Runs::Exactly(runs), |_| {}).unwrap()
}

#[test]
fn every_shipped_scenario_and_each_of_its_alternatives_makes_a_whole_forecast() {
    assert!(files().len() >= 6, "{} scenarios", files().len());
    for file in files() {
        let name = file.file_name().unwrap().to_str().unwrap().to_owned();
        let alternatives = read(&name, None).alternatives;
        for alternative in std::iter::once(None).chain(alternatives.iter().map(Some)) {
            let bench = Bench::empty();
            let mut words = vec!["forecast", file.to_str().unwrap(), "--runs", "60"];
            words.extend(alternative.iter().flat_map(|a| ["--alternative", a.as_str()]));
            let said = bench.heapcast(words);
            assert_eq!(said.code, Some(0), "{name}, {alternative:?}: {}", said.err);
            for output in ["report.html", "summary.json", "percentiles.csv", "runs.csv", "timeline.svg"] {
                assert!(!bench.read(&format!("forecast/{output}")).is_empty(), "{name}: {output} is empty");
            }
        }
    }
}

#[test]
fn every_shipped_scenario_keeps_its_books_in_every_run() {
    for file in files() {
        let name = file.file_name().unwrap().to_str().unwrap();
        let scenario = read(name, None);
        let study = study(name, None, 40);
        for o in &study.outcomes {
            let (loaders, rakers) = (scenario.job.loaders.len() as i64, scenario.job.rakers.len() as i64);
            assert_eq!(o.loaders.iter().sum::<i64>(), loaders * o.finish.working, "{name}, run {}", o.run);
            assert_eq!(o.rakers.iter().sum::<i64>(), rakers * o.finish.working, "{name}, run {}", o.run);
            assert!(o.placed_m3 > 0.0 && o.completion.working <= o.finish.working, "{name}, run {}", o.run);
        }
    }
}

#[test]
fn the_allotment_comes_out_as_its_comment_reckons_by_hand() {
    let study = study("allotment-barrow.toml", None, 3);
    let second = |time: i64| time as f64 / SECOND as f64;
    for o in &study.outcomes {
        assert_eq!((second(o.completion.clock), second(o.finish.clock)), (1124.0, 1244.0));
        assert_eq!(o.loads, 4);
        let waits =
            [LoaderActivity::WaitingForRoom, LoaderActivity::Done].map(|a| second(o.loaders[a as usize]));
        assert_eq!(waits, [152.0, 180.0]);
        let raking = [RakerActivity::Raking, RakerActivity::Walking, RakerActivity::Waiting];
        assert_eq!(raking.map(|a| second(o.rakers[a as usize])), [700.0, 20.0, 104.0]);
    }
}

#[test]
fn with_the_shipped_defaults_44_cubic_yards_take_about_two_hours() {
    // Common practice, no source: a compact loader with a 17.5 ft3 heaped bucket (13.7 struck), one operator and one
    // raker, short hauls on flat ground, placed 44 yd3 of wood chips in 2 h 1 min.
    let job = read("round-pen.toml", None).job;
    assert!((job.loaders[0].heaped_m3 - 17.5 * 0.3048_f64.powi(3)).abs() < 1e-12);
    assert!((job.stockpiles[0].on_hand_m3 - 44.0 * 0.764_554_857_984).abs() < 1e-9);
    let minutes =
        study("round-pen.toml", None, 10_000).sorted(|o| o.completion.working as f64 / (60 * SECOND) as f64);
    let (p10, p90) = (minutes.percentile(0.1).value, minutes.percentile(0.9).value);
    assert!(p10 < 121.0 && 121.0 < p90, "P10 {p10:.0} min, P90 {p90:.0} min");
    // An honest range is neither a point nor a shrug.
    assert!(p90 / p10 > 1.15 && p90 / p10 < 2.5, "P10 {p10:.0} min, P90 {p90:.0} min");
}

#[test]
fn a_bucket_of_half_the_size_takes_about_twice_the_loads() {
    // Common practice, no source: a 9 to 9.5 ft3 bucket would take up to about double. 17.5 / 9.25 = 1.89.
    let loads =
        |alternative| study("round-pen.toml", alternative, 2_000).sorted(|o| f64::from(o.loads)).mean().value;
    let ratio = loads(Some("half-size bucket")) / loads(None);
    assert!((ratio - 17.5 / 9.25).abs() < 0.05, "{ratio:.2} times the loads");
}
