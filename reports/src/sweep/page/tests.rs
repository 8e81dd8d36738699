use super::sweep_page;
use crate::chart::Size;
use crate::sweep::figures::sweep_figures;
use crate::sweep::findings::{sweep as findings, tests::made};
use crate::sweep::{Deadline, Sweep};

fn drawn(sweep: &Sweep) -> String {
    let findings = findings(sweep);
    let figures = |size| sweep_figures(sweep, &findings, size).unwrap();
    sweep_page(sweep, &findings, &figures(Size::PAGE), &figures(Size::PHONE))
}

fn rakers() -> Sweep {
    let minutes = |point: usize, run: u32| 100.0 + 60.0 / (1.0 + point as f64) + f64::from(run % 9);
    let mut sweep = made(&["rakers 1..4"], 60, minutes, Some(&|point| 500.0 + 20.0 * point as f64));
    sweep.deadline = Some(Deadline { by_s: 10.5 * 3600.0, chance: 0.8 });
    sweep
}

fn grid() -> Sweep {
    made(
        &["rakers 1..3", "room 1..2"],
        30,
        |point, run| 150.0 - 5.0 * point as f64 + f64::from(run % 9),
        None,
    )
}

#[test]
fn the_page_of_a_sweep_stands_alone_and_calls_nothing_safe() {
    for sweep in [rakers(), grid()] {
        let html = drawn(&sweep);
        crate::example::assert_stands_alone(&html);
        let body = html.split("<body>").nth(1).unwrap().to_lowercase();
        assert!(!body.contains("safe"));
        assert_eq!(html.matches("id=\"points\"").count(), 1);
    }
}

#[test]
fn the_answers_every_point_cautions_and_provenance_are_on_the_page() {
    let sweep = rakers();
    let (html, findings) = (drawn(&sweep), findings(&sweep));
    let flat = html.replace('\u{a0}', " ");
    let by = findings.by.as_ref().unwrap();
    for words in [
        &by.sentence,
        &findings.knee.steps,
        &findings.knee.sentence,
        &findings.money.as_ref().unwrap().sentence,
    ] {
        assert!(flat.contains(words.as_str()), "{words}");
    }
    for told in &findings.points {
        assert!(flat.contains(&told.done_by[2]) && flat.contains(&told.cost_words.as_ref().unwrap()[1]));
    }
    for caution in &sweep.base.cautions {
        assert!(flat.contains(&caution.cause[1..]), "{}", caution.cause);
    }
    assert!(flat.contains(&sweep.provenance.scenario_hash) && flat.contains(&sweep.provenance.command));
}

#[test]
fn what_a_scenario_says_cannot_become_part_of_the_page() {
    const EVIL: &str = "<script>alert(\"1\")</script></style><img onerror='x'>&";
    let mut sweep = rakers();
    sweep.base.title = EVIL.into();
    sweep.base.currency = EVIL.into();
    sweep.things = vec!["raker.<img>.count = 1..4".parse().unwrap()];
    sweep.provenance.command = EVIL.into();
    let html = drawn(&sweep);
    for markup in ["<script", "<img", "</style><img"] {
        assert!(!html.contains(markup), "{markup}");
    }
}

#[test]
fn a_grid_has_a_table_for_each_value_of_the_first_thing() {
    let html = drawn(&grid());
    assert_eq!(html.matches("<caption>Rakers: ").count(), 3);
    assert!(html.contains("The cost is not known: the job names no prices."));
}
