//! Buckets: struck and heaped, and what a full one weighs.

use super::comparison::{Comparison, Status};
use super::table::Table;
use super::{job, read, warnings};
use scenarios::{Selection, Texts, read_text};

const YD3: f64 = 0.764_554_857_984;
const POUND: f64 = 0.453_592_37;
const ZONE: &str = "volume = \"100 yd3\"";
const CHIPS: &str = "name = \"wood chips, green\"";

pub(super) fn struck_and_heaped() -> Comparison {
    let mut comparison = Comparison::new(
        "Struck and heaped capacities of real proportions are accepted, and read alike in both units; doubtful ones draw a \
         warning (heapcast does not calculate one from the other)",
        "heaped at 2 : 1 after the definition of ISO 7546 and SAE J742, V_T = W b^2 / 8 - b^3 / 24 (bucket_geometry.csv); \
         the doubtful pair is invented",
        Status::Computed,
        0.0,
    );
    let table = Table::read("bucket_geometry.csv");
    for row in &table.rows {
        let f = |heading| table.number(row, heading);
        let case = table.text(row, "case");
        let heaped = f("struck_V_S_m3") + f("top_V_T_m3");
        let loader =
            |heaped: String| format!("heaped = \"{heaped}\"\nstruck = \"{} m3\"", f("struck_V_S_m3"));
        let metric = read(&job(CHIPS, ZONE, &loader(format!("{heaped} m3"))));
        let yards = read(&job(CHIPS, ZONE, &loader(format!("{} yd3", f("rated_yd3")))));
        comparison.exact(
            format!("{case}: m3 heaped"),
            metric.job.loaders[0].heaped_m3,
            f("rated_V_R_m3"),
            1e-9,
        );
        comparison.exact(
            format!("{case}: m3 heaped, from yd3"),
            yards.job.loaders[0].heaped_m3,
            f("rated_V_R_m3"),
            1e-9,
        );
        comparison.exact(format!("{case}: warnings"), warnings(&metric, "bucket-figures"), 0.0, 0.0);
    }
    let doubtful = read(&job(CHIPS, ZONE, "heaped = \"0.8 m3\"\nstruck = \"0.4 m3\""));
    comparison.exact("heaped twice the struck: warnings", warnings(&doubtful, "bucket-figures"), 1.0, 0.0);
    comparison
}

/// A job with a material of this weight in a bucket filled to its heaped capacity.
fn full_bucket(pounds_a_yard: f64, heaped_yd3: f64, lift: &str) -> scenarios::Scenario {
    let material = format!("name = \"own\"\ndensity = \"{pounds_a_yard} lb/yd3\"\nfill_factor = \"100 %\"");
    read(&job(&material, ZONE, &format!("heaped = \"{heaped_yd3} yd3\"\n{lift}")))
}

fn pounds(scenario: &scenarios::Scenario) -> f64 {
    let job = &scenario.job;
    job.loaders[0].heaped_m3 * job.material.fill_factor * job.material.density_kg_per_m3 / POUND
}

pub(super) fn weights() -> Comparison {
    let mut comparison = Comparison::new(
        "A full body weighs what the printed table of volume times density says",
        "US Army TM 9-2320-366-10-1, table 2-15: level 5.19 yd3 and heaped 7.78 yd3 of dry loose earth, 2025 lb a yd3, \
         10,510 and 15,755 lb, rounded to 5 lb (worked_examples.csv, T1)",
        Status::Seen,
        0.0,
    );
    let level = pounds(&full_bucket(2025.0, 5.19, ""));
    comparison.exact("level full: lb", level, 10_510.0, 2.5);
    comparison.exact("heaped: lb", pounds(&full_bucket(2025.0, 7.78, "")), 15_755.0, 2.5);
    let metric = "name = \"own\"\ndensity = \"1201.4 kg/m3\"\nfill_factor = \"100 %\"";
    let same = read(&job(metric, ZONE, &format!("heaped = \"{} m3\"", 7.78 * YD3)));
    comparison.exact("heaped, given in m3 and kg: lb", pounds(&same), 15_755.0, 2.5);
    comparison
}

pub(super) fn limits() -> Comparison {
    let mut comparison = Comparison::new(
        "A bucket a pound over half the tipping load draws a warning, one a pound under none",
        "Peurifoy et al., Construction Planning, Equipment, and Methods, stability check: 4 yd3 x 0.85 x 3100 lb = 10,540 lb \
         against half of the static tipping load (worked_examples.csv, P1b)",
        Status::Memory,
        0.0,
    );
    let of = |tipping: f64| full_bucket(3100.0, 3.4, &format!("tipping_load = \"{tipping} lb\""));
    comparison.exact("the bucket: lb", pounds(&of(21_082.0)), 10_540.0, 1e-6);
    for (tipping, drawn) in [(25_000.0, 0.0), (21_082.0, 0.0), (21_078.0, 1.0), (15_000.0, 1.0)] {
        let what = format!("tipping load {tipping} lb: warnings");
        comparison.exact(what, warnings(&of(tipping), "bucket-over-lift"), drawn, 0.0);
    }
    comparison
}

#[test]
fn struck_and_heaped_capacities_of_real_proportions_are_accepted() {
    struck_and_heaped().judge(10);
}

#[test]
fn a_bucket_that_holds_more_struck_than_heaped_is_refused() {
    let text = job(CHIPS, ZONE, "heaped = \"0.352 m3\"\nstruck = \"0.415 m3\"");
    assert!(read_text(&text, "job.toml", Texts::default(), &Selection::default()).is_err());
}

#[test]
fn a_full_bucket_weighs_what_the_tables_say_and_is_held_against_the_lift() {
    weights().judge(3);
    limits().judge(5);
}
