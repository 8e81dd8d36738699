//! The trade check: with nothing but the built-in figures a job of common practice comes out as it did. Common practice, no
//! source. Its figures stand here and in `common_practice/` alone, see `own_figures.rs`.

use scenarios::{Scenario, Selection};
use sim::*;
use std::path::Path;

fn read(alternative: Option<&str>) -> Scenario {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/common_practice/job.toml");
    let selection = Selection { alternative: alternative.map(str::to_owned), ..Selection::default() };
    crate::files::job_file(&file)
        .and_then(|file| file.scenario(&selection))
        .unwrap_or_else(|refusal| panic!("{refusal}"))
}

fn study(alternative: Option<&str>, runs: u32) -> Study {
    Study::new(&Plan::new(&read(alternative).job).unwrap(), 1, Runs::Exactly(runs), |_| {}).unwrap()
}

#[test]
fn with_the_built_in_figures_44_cubic_yards_take_about_two_hours() {
    // Common practice, no source: a compact loader with a 17.5 ft3 heaped bucket (13.7 struck), one operator and one
    // raker, short hauls on flat ground, placed 44 yd3 of wood chips in 2 h 1 min.
    let job = read(None).job;
    assert!((job.loaders[0].heaped_m3 - 17.5 * 0.3048_f64.powi(3)).abs() < 1e-12);
    assert!((job.stockpiles[0].on_hand_m3 - 44.0 * 0.764_554_857_984).abs() < 1e-9);
    let minutes = study(None, 10_000).sorted(|o| o.completion.working.as_mins_f64());
    let (p10, p90) = (minutes.percentile(0.1).value, minutes.percentile(0.9).value);
    assert!(p10 < 121.0 && 121.0 < p90, "P10 {p10:.0} min, P90 {p90:.0} min");
    // An honest range is neither a point nor a shrug.
    assert!(p90 / p10 > 1.15 && p90 / p10 < 2.5, "P10 {p10:.0} min, P90 {p90:.0} min");
}

#[test]
fn a_bucket_of_half_the_size_takes_about_twice_the_loads() {
    // Common practice, no source: a 9 to 9.5 ft3 bucket would take up to about double. 17.5 / 9.25 = 1.89.
    let loads = |alternative| study(alternative, 2_000).sorted(|o| f64::from(o.loads)).mean().value;
    let ratio = loads(Some("half-size bucket")) / loads(None);
    assert!((ratio - 17.5 / 9.25).abs() < 0.05, "{ratio:.2} times the loads");
}
