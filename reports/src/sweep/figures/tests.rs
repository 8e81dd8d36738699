use super::*;
use crate::chart::legibility::faults;
use crate::sweep::Deadline;
use crate::sweep::findings::{sweep as findings, tests::made};
use scenarios::units::System;
use std::path::Path;

const SIZES: [(&str, Size); 3] = [("page", Size::PAGE), ("wide", Size::WIDE), ("phone", Size::PHONE)];

/// Draws at every size, keeps the figures if asked to, and says what is wrong with them.
fn preview(name: &str, sweep: &Sweep) -> Vec<String> {
    let mut wrong = Vec::new();
    for (at, size) in SIZES {
        for figure in sweep_figures(sweep, &findings(sweep), size).expect("figures") {
            if let Some(folder) = std::env::var_os("HEAPCAST_PREVIEW") {
                let file = format!("{}-{name}-{at}.svg", figure.name);
                std::fs::write(Path::new(&folder).join(file), &figure.svg).expect("a folder to write to");
            }
            wrong
                .extend(faults(&figure.svg).into_iter().map(|f| format!("{} {name} {at}: {f}", figure.name)));
        }
    }
    wrong
}

fn line(what: &str, least: f64, fall: f64, spread: f64) -> Sweep {
    let minutes = |point: usize, run: u32| {
        let draw = f64::from(run * 37 % 101) / 101.0;
        least + fall / (1.0 + point as f64) + spread * draw
    };
    let cost = |point: usize| 1_850.0 - 60.0 / (1.0 + point as f64) + 22.0 * point as f64;
    made(&[what], 200, minutes, Some(&cost))
}

#[test]
fn curves_over_one_thing_are_drawn_without_fault() {
    let mut asked = line("rakers 1..4", 200.0, 120.0, 60.0);
    asked.deadline = Some(Deadline { by_s: 12.5 * 3600.0, chance: 0.8 });
    let mut far = line("bucket 8..20 ft3 by 1", 200.0, 120.0, 60.0);
    far.deadline = Some(Deadline { by_s: 20.0 * 3600.0, chance: 0.8 });
    let mut metric = line("haul 10..80 m by 10", 200.0, 120.0, 60.0);
    metric.units = System::Metric;
    let all = [
        ("rakers", asked),
        ("far", far),
        ("haul", metric),
        ("many", line("rakers 1..40", 200.0, 300.0, 60.0)),
        (
            "days",
            line(
                "loader.the long-armed loader from the upper orchard.heaped = 8..20 ft3",
                2_000.0,
                900.0,
                400.0,
            ),
        ),
        ("certain", line("rakers 1..4", 100.0, 50.0, 0.0)),
        ("one", line("rakers 2", 100.0, 50.0, 20.0)),
        ("minutes", line("room 1..6", 3.0, 2.0, 0.5)),
    ];
    let wrong: Vec<String> = all.iter().flat_map(|(name, sweep)| preview(name, sweep)).collect();
    assert_eq!(wrong, [""; 0]);
}

fn grid(things: [&str; 2], base: f64) -> Sweep {
    let row = things[1].parse::<scenarios::Vary>().unwrap().values.len();
    let minutes = |point: usize, run: u32| {
        let (r, c) = ((point / row) as f64, (point % row) as f64);
        base * (1.0 + 0.6 / (1.0 + r) + 0.3 / (1.0 + c)) + f64::from(run * 37 % 101) / 3.0
    };
    made(&things, 40, minutes, Some(&|point| 1_800.0 + 7.0 * point as f64))
}

#[test]
fn fields_over_two_things_are_drawn_without_fault() {
    let mut asked = grid(["rakers 1..4", "haul 10..80 yd by 10"], 150.0);
    asked.deadline = Some(Deadline { by_s: 12.0 * 3600.0, chance: 0.8 });
    let all = [
        ("grid", grid(["rakers 1..4", "bucket 9..21 ft3 by 2"], 150.0)),
        ("asked", asked),
        ("large", grid(["rakers 1..20", "haul 1..20 yd by 1"], 150.0)),
        ("long", grid(["room 1..10", "haul 1..40 yd by 1"], 3_000.0)),
        (
            "small",
            grid(["rakers 1, 2", "raker.somebody with a very long name indeed.rate = 10, 20 m3/h"], 100.0),
        ),
    ];
    let wrong: Vec<String> = all.iter().flat_map(|(name, sweep)| preview(name, sweep)).collect();
    assert_eq!(wrong, [""; 0]);
}

#[test]
fn a_sweep_without_prices_has_no_figure_of_the_cost() {
    let sweep = made(&["rakers 1..3"], 20, |point, _| 100.0 - point as f64, None);
    let figures = sweep_figures(&sweep, &findings(&sweep), Size::PAGE).unwrap();
    assert_eq!(figures.iter().map(|figure| figure.name).collect::<Vec<_>>(), ["sweep"]);
}

#[test]
fn nearly_never_and_nearly_always_are_not_called_0_and_100() {
    let mut sweep = made(
        &["rakers 1..2", "room 1..2"],
        1_000,
        |point, run| if point == 0 || run == 0 && point < 3 { 300.0 } else { 100.0 },
        None,
    );
    sweep.deadline = Some(Deadline { by_s: 10.0 * 3600.0, chance: 0.8 });
    let findings = findings(&sweep);
    let words: Vec<String> = time_heat(&findings).cells.into_iter().map(|cell| cell.words).collect();
    assert_eq!(words, ["0", "99", "99", "100"]);
}
