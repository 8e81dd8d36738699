//! Every figure with ordinary and extreme jobs, at every size: no text cut off, none touching another, nothing fetched,
//! bounded in size. With `HEAPCAST_PREVIEW` set to a folder the figures are left there to be looked at.

use super::fixtures::{crew, dateless, days, enough, handbook, job, replay, runs, skewed, study};
use super::legibility::faults;
use super::{ChartError, Size, completion, progress, relief, risk, rivals, saved, timeline, waiting};
use crate::compare::figures::{rivals as of_rivals, saved as of_savings};
use crate::compare::findings::comparison;
use crate::compare::fixtures::three;
use crate::quote::figures::{parts, risk as of_risk};
use scenarios::units::System;
use sim::{Handbook, Job, Study};
use std::path::Path;

const SIZES: [(&str, Size); 3] = [("page", Size::PAGE), ("wide", Size::WIDE), ("phone", Size::PHONE)];

/// Draws at every size, keeps the figures if asked to, and says what is wrong with them.
fn preview(name: &str, draw: impl Fn(Size) -> Result<String, ChartError>) -> Vec<String> {
    let mut wrong = Vec::new();
    for (at, size) in SIZES {
        let svg = draw(size).expect("a figure");
        if let Some(folder) = std::env::var_os("HEAPCAST_PREVIEW") {
            std::fs::write(Path::new(&folder).join(format!("{name}-{at}.svg")), &svg)
                .expect("a folder to write to");
        }
        wrong.extend(faults(&svg).into_iter().map(|fault| format!("{name} {at}: {fault}")));
    }
    wrong
}

fn preview_completion(
    name: &str,
    study: &Study,
    handbook: &Handbook,
    job: &Job,
    units: System,
) -> Vec<String> {
    let data = completion::prepare(study, handbook, &job.shift, &enough(), dateless(units));
    preview(&format!("completion-{name}"), |size| completion::draw(&data, size))
}

fn hang_all(name: &str, job: &Job, many: u32, units: System) -> Vec<String> {
    let (study, handbook) = runs(job, many);
    let mut wrong = preview_completion(name, &study, &handbook, job, units);
    let data = progress::prepare(&study, job, dateless(units));
    wrong.extend(preview(&format!("progress-{name}"), |size| progress::draw(&data, size)));
    let data = waiting::prepare("Who waits for whom".into(), job, &study.accounts);
    wrong.extend(preview(&format!("waiting-{name}"), |size| waiting::draw(&data, size)));
    let tries = sim::Tries::exactly(many);
    let plan = sim::Plan::new(job).expect("jobs that can be run");
    let reliefs = sim::relief(job, &plan, &study, 10.0, tries, |_| ()).expect("jobs that can be run");
    let data = relief::prepare(&crate::findings::relief_of(&reliefs, 7_200.0, Some("$"), System::Us));
    wrong.extend(preview(&format!("relief-{name}"), |size| relief::draw(&data, size)));
    let data = timeline::prepare(job, &replay(job), dateless(units));
    wrong.extend(preview(&format!("timeline-{name}"), |size| timeline::draw(&data, size)));
    wrong
}

#[test]
fn an_ordinary_morning_is_drawn_without_fault() {
    assert_eq!(hang_all("morning", &job(), 2_000, System::Us), [""; 0]);
}

#[test]
fn a_job_of_several_days_with_deliveries_is_drawn_without_fault() {
    assert_eq!(hang_all("days", &days(250.0), 400, System::Metric), [""; 0]);
    assert_eq!(hang_all("week", &days(460.0), 100, System::Us), [""; 0]);
}

#[test]
fn twelve_loaders_and_ten_rakers_with_long_names_are_drawn_without_fault() {
    assert_eq!(hang_all("crew", &crew(12, 10, 250.0), 50, System::Us), [""; 0]);
    assert_eq!(hang_all("crew-days", &crew(12, 10, 2_200.0), 10, System::Metric), [""; 0]);
}

#[test]
fn a_crew_without_rakers_is_drawn_without_fault() {
    assert_eq!(hang_all("no-rakers", &crew(2, 0, 30.0), 200, System::Metric), [""; 0]);
    assert_eq!(hang_all("alone", &crew(1, 0, 30.0), 200, System::Metric), [""; 0]);
}

#[test]
fn three_minutes_are_drawn_without_fault() {
    let mut short = crate::example::job();
    short.zones[0].need_m3 = 1.0;
    assert_eq!(hang_all("three-minutes", &short, 10, System::Us), [""; 0]);
    let mut varied = job();
    varied.zones[0].need_m3 = 1.0;
    varied.shift.set_up_s = sim::Distribution::Constant(0.0);
    varied.shift.clean_up_s = sim::Distribution::Constant(0.0);
    assert_eq!(hang_all("three-minutes-varied", &varied, 500, System::Us), [""; 0]);
}

#[test]
fn one_run_and_a_hundred_thousand_are_drawn_without_fault() {
    assert_eq!(hang_all("one-run", &job(), 1, System::Metric), [""; 0]);
    let many = study(&skewed(100_000, 130.0, 90.0));
    assert_eq!(preview_completion("hundred-thousand", &many, &handbook(121.0), &job(), System::Us), [""; 0]);
    let data = progress::prepare(&many, &job(), dateless(System::Us));
    assert_eq!(preview("progress-hundred-thousand", |size| progress::draw(&data, size)), [""; 0]);
}

#[test]
fn finishing_times_of_any_shape_are_drawn_without_fault() {
    let mut tail = skewed(2_000, 130.0, 20.0);
    tail.extend([500.0, 700.0]);
    let shapes: [(&str, Vec<f64>, f64); 8] = [
        ("constant", vec![150.0; 40], 121.0),
        ("constant-as-handbook", vec![121.0; 40], 121.0),
        ("narrow", skewed(500, 150.0, 1.0), 150.2),
        ("two-runs", vec![100.0, 140.0], 121.0),
        ("tail", tail, 121.0),
        ("far-below", skewed(500, 150.0, 30.0), 20.0),
        ("far-above", skewed(500, 150.0, 30.0), 400.0),
        ("close", skewed(500, 119.0, 4.0), 121.0),
    ];
    for (name, minutes, book) in shapes {
        for (clock, units) in [("us", System::Us), ("metric", System::Metric)] {
            let name = format!("{name}-{clock}");
            assert_eq!(preview_completion(&name, &study(&minutes), &handbook(book), &job(), units), [""; 0]);
        }
    }
}

#[test]
fn jobs_compared_with_one_another_are_drawn_without_fault() {
    for (name, jobs) in [("three", three()), ("nine", of_rivals::nine())] {
        let (data, findings) = (of_rivals::prepare(&jobs), comparison(&jobs));
        assert_eq!(preview(&format!("rivals-{name}"), |size| rivals::draw(&data, size)), [""; 0]);
        for data in [of_savings::prepare_time(&findings), of_savings::prepare_money(&findings)] {
            let name = format!("saved-{}-{name}", data.figure);
            assert_eq!(preview(&name, |size| saved::draw(&data, size)), [""; 0]);
        }
    }
}

#[test]
fn risk_and_parts_of_a_quote_are_drawn_without_fault() {
    let quote = crate::example::quote();
    let data = of_risk::prepare(&quote.costs.total(), &quote.findings.offer, "$");
    assert_eq!(preview("risk", |size| risk::draw(&data, size)), [""; 0]);
    let data = parts::prepare(&quote.findings.cost, 100, "EUR");
    assert_eq!(preview("parts", |size| parts::draw(&data, size)), [""; 0]);
}

#[test]
fn a_figure_without_anything_to_show_is_refused() {
    let nobody = study(&[]);
    let data = completion::prepare(&nobody, &handbook(121.0), &job().shift, &enough(), dateless(System::Us));
    assert!(matches!(completion::draw(&data, Size::PAGE), Err(ChartError::Nothing(_))));
    let data = progress::prepare(&nobody, &job(), dateless(System::Us));
    assert!(matches!(progress::draw(&data, Size::PAGE), Err(ChartError::Nothing(_))));
    assert!(matches!(
        relief::draw(
            &relief::prepare(&crate::findings::relief_of(&[], 7_200.0, None, System::Us)),
            Size::PAGE
        ),
        Err(ChartError::Nothing(_))
    ));
    let data = waiting::prepare(String::new(), &job(), &nobody.accounts);
    assert!(matches!(waiting::draw(&data, Size::PAGE), Err(ChartError::Nothing(_))));
}

#[test]
fn a_size_without_room_is_refused() {
    let data = completion::prepare(
        &study(&[100.0, 120.0]),
        &handbook(90.0),
        &job().shift,
        &enough(),
        dateless(System::Us),
    );
    let drawn = completion::draw(&data, Size { width: 120, height: 100 });
    assert_eq!(drawn, Err(ChartError::TooSmall { width: 120, height: 100 }));
}

#[test]
fn the_same_numbers_give_the_same_figure() {
    let (study, handbook) = runs(&job(), 50);
    let draw = || {
        completion::draw(
            &completion::prepare(&study, &handbook, &job().shift, &enough(), dateless(System::Us)),
            Size::PAGE,
        )
    };
    assert_eq!(draw(), draw());
}
