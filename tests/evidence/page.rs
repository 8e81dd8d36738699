//! The page of evidence, `tests/EVIDENCE.md`, and its table of all figures, `tests/evidence/figures.csv`: made from the same
//! comparisons that the tests judge, and from the words of `page.md`. DEVELOPERS.md has the command.

use super::comparison::{Against, Comparison, Figure};
use super::kept::{asked_for, at_home, comparisons_of, digits, root, write};
use super::*;
use crate::second_opinion;
use std::fmt::Write;

/// The subject of what a practitioner can calculate on paper.
const TRADE: &str = "Arithmetic of the trade";

/// The comparisons by subject, in the order of the page.
fn subjects() -> Vec<(&'static str, Vec<Comparison>)> {
    let trade = std::fs::read_to_string(at_home().join("evidence/trade_figures.csv")).unwrap();
    vec![
        ("Percentiles of finite jobs", finite_jobs()),
        ("Waiting in long jobs", long_jobs()),
        ("A second program", vec![second_opinion::without_chance(), second_opinion::with_chance()]),
        ("Chance", draws()),
        ("Percentiles, intervals, comparisons", statistics()),
        ("The place", the_place()),
        (TRADE, [trade_arithmetic(), comparisons_of(&trade)].concat()),
    ]
}

fn finite_jobs() -> Vec<Comparison> {
    vec![
        sum_of_cycles::exponential_cycles(),
        line::finite_job(),
        chains::line::limited_room(),
        chains::line::standing_clear(),
        chains::line::stoppages(),
        chains::pair::two_loaders(),
        chains::zones::two_zones(),
        chains::zones::two_loaders_two_zones(),
        chains::crew::together_and_spreading(),
        chains::loads::loads_needed(),
        chains::delivery::late_truck(),
        chains::largest::larger_of_two(),
        chains::layers::two_layers(),
        chains::same_random_numbers::same_random_numbers(),
    ]
}

fn long_jobs() -> Vec<Comparison> {
    vec![
        line::long_job(),
        unlimited_room::heaps_that_wait(),
        face::one_face(),
        face::printed_table(),
        face::closed_network(),
        answers::machines_in_repair(),
        answers::cars_in_repair(),
        answers::interactive_networks(),
    ]
}

fn draws() -> Vec<Comparison> {
    let mut comparisons = vec![laws::lognormal(), laws::pert_and_triangular()];
    comparisons.extend(chance::families::families());
    comparisons.extend([
        chance::families::observed(),
        chance::families::small_studies(),
        chance::fits::fitted(),
        chance::fits::fitted_and_drawn(),
        chance::streams::correlations(),
        chance::streams::pairs(),
        chance::streams::stoppages(),
    ]);
    comparisons
}

fn statistics() -> Vec<Comparison> {
    use chance::coverage::*;
    vec![
        percentiles::definition(),
        percentiles::intervals(),
        percentiles::conover(),
        fixed_runs(STUDIES),
        loader_and_raker(STUDIES),
        until_precise(STUDIES),
        relief_of_a_loader(STUDIES),
        common_random_numbers::what_common_random_numbers_saves(),
        paired::coverage(1_000),
        paired::percentiles_saved(),
        selection::kept(selection::ordinary(), 500),
        payback::against_a_library(),
    ]
}

fn the_place() -> Vec<Comparison> {
    vec![
        place::mean_distances(),
        place::shortest(),
        place::with_a_radius(),
        place::round_corners(),
        place::drop_points_degrees_and_tapes(),
        place::least_driving(),
    ]
}

fn trade_arithmetic() -> Vec<Comparison> {
    vec![handbook::production(), handbook::hauls(), handbook::payload()]
}

/// A figure as the page writes it.
fn shown(number: f64) -> String {
    // Whole numbers keep all their digits.
    if number == number.trunc() && number.abs() < 1e12 { number.to_string() } else { digits(number, 5) }
}

/// How far a figure is off, in standard errors, in words of the page.
fn apart(figure: &Figure) -> String {
    match figure.against {
        Against::Band => "within".into(),
        Against::Figure if figure.error > 0.0 => format!("{:.1}", figure.off()),
        Against::Figure => "none".into(),
    }
}

fn expected(figure: &Figure) -> String {
    match figure.against {
        Against::Band => {
            let ends = [figure.expected - figure.rounding, figure.expected + figure.rounding];
            format!("{} to {}", digits(ends[0], 5), digits(ends[1], 5))
        }
        Against::Figure => shown(figure.expected),
    }
}

/// The figure farthest off; of several equally near, the one in the middle of the comparison.
fn farthest(comparison: &Comparison) -> &Figure {
    let middle = &comparison.figures[comparison.figures.len() / 2];
    comparison.figures.iter().fold(middle, |far, figure| if figure.off() > far.off() { figure } else { far })
}

/// A line a comparison: what is claimed, on whose word, how many figures, how far the farthest.
fn at_a_glance(subjects: &[(&str, Vec<Comparison>)]) -> String {
    let mut text = String::from(
        "| | claim | compared with | status | figures | farthest | allowed |\n|---:|---|---|---|---:|---:|---:|\n",
    );
    let mut number = 0;
    for (subject, comparisons) in subjects {
        writeln!(text, "| | **{subject}** | | | | | |").unwrap();
        for comparison in comparisons {
            number += 1;
            let drawn = comparison.figures.iter().any(|figure| figure.error > 0.0);
            let far = apart(farthest(comparison));
            let allowed = if drawn { digits(comparison.most, 2) } else { String::new() };
            let (claim, source, status) = (&comparison.claim, &comparison.source, comparison.status.words());
            let figures = comparison.figures.len();
            writeln!(text, "| {number} | {claim} | {source} | {status} | {figures} | {far} | {allowed} |")
                .unwrap();
        }
    }
    text
}

/// Some figures of each comparison: one from its middle and the farthest; of comparisons in which nothing is drawn one, and of those
/// only the arithmetic of the trade.
fn some_figures(subjects: &[(&str, Vec<Comparison>)]) -> String {
    let mut text = String::from(
        "| | figure | expected | obtained | standard error | apart |\n|---:|---|---:|---:|---:|---:|\n",
    );
    let comparisons = subjects
        .iter()
        .flat_map(|(subject, comparisons)| comparisons.iter().map(move |comparison| (subject, comparison)));
    for (number, (subject, comparison)) in (1..).zip(comparisons) {
        let far = farthest(comparison);
        let drawn = far.error > 0.0;
        if !drawn && *subject != TRADE {
            continue;
        }
        let middle = &comparison.figures[comparison.figures.len() / 2];
        let also = Some(middle).filter(|figure| drawn && figure.what != far.what);
        for figure in also.into_iter().chain([far]) {
            let error = if figure.error > 0.0 { digits(figure.error, 2) } else { String::new() };
            let (what, obtained) = (&figure.what, shown(figure.obtained));
            writeln!(
                text,
                "| {number} | {what} | {} | {obtained} | {error} | {} |",
                expected(figure),
                apart(figure)
            )
            .unwrap();
        }
    }
    text
}

/// How distances are spread, beside what chance gives: only figures whose rounding is small beside their standard error.
fn distances(comparisons: &[&Comparison]) -> String {
    let figures = comparisons.iter().flat_map(|comparison| &comparison.figures);
    let drawn = figures.filter(|f| f.error > 0.0 && f.rounding <= 0.1 * f.error);
    let distances: Vec<f64> = drawn.map(|f| (f.obtained - f.expected) / f.error).collect();
    let n = distances.len() as f64;
    let beyond = |k: f64| distances.iter().filter(|d| d.abs() > k).count() as f64 / n * 100.0;
    let above = distances.iter().filter(|d| **d > 0.0).count() as f64 / n * 100.0;
    let typical = (distances.iter().map(|d| d * d).sum::<f64>() / n).sqrt();
    let mut text = format!(
        "| of {} figures | found | by chance alone | if standard errors come from 16 runs |\n|---|---:|---:|---:|\n",
        distances.len()
    );
    for (k, normal, sixteen) in [(1.0, "31.7", "33.3"), (2.0, "4.6", "6.4"), (3.0, "0.3", "0.9")] {
        writeln!(text, "| beyond {k} standard errors | {:.1} % | {normal} % | {sixteen} % |", beyond(k))
            .unwrap();
    }
    writeln!(text, "| above the expected figure | {above:.1} % | 50 % | 50 % |").unwrap();
    writeln!(text, "| typical distance (root mean square) | {typical:.2} | 1.00 | 1.07 |").unwrap();
    text
}

/// Every figure of every comparison, by the comparison's number on the page.
fn all_figures(comparisons: &[&Comparison]) -> String {
    let mut table = csv::Writer::from_writer(Vec::new());
    let headings = [
        "comparison",
        "figure",
        "expected",
        "obtained",
        "standard_error",
        "rounding",
        "apart_in_standard_errors",
    ];
    table.write_record(headings).unwrap();
    for (number, comparison) in (1..).zip(comparisons) {
        for figure in &comparison.figures {
            // Figures in which nothing is drawn may be whole microseconds of a long day.
            let shown = |number| digits(number, if figure.error > 0.0 { 8 } else { 12 });
            let row = [
                i32::to_string(&number),
                figure.what.clone(),
                shown(figure.expected),
                shown(figure.obtained),
                digits(figure.error, 4),
                digits(figure.rounding, 4),
                if figure.off() == 0.0 { "0".to_owned() } else { format!("{:.2}", figure.off()) },
            ];
            table.write_record(row).unwrap();
        }
    }
    String::from_utf8(table.into_inner().unwrap()).unwrap()
}

/// How many tests stand in the files of a folder.
fn tests_in(folder: &str) -> usize {
    let files = std::fs::read_dir(root().join(folder)).unwrap().map(|entry| entry.unwrap().path());
    let texts = files.filter(|path| path.extension().is_some_and(|e| e == "rs"));
    texts.map(|path| std::fs::read_to_string(path).unwrap().matches("#[test]").count()).sum()
}

/// The page, and the table of all figures.
fn page() -> (String, String) {
    let subjects = subjects();
    let comparisons: Vec<&Comparison> = subjects.iter().flat_map(|(_, comparisons)| comparisons).collect();
    comparisons.iter().for_each(|comparison| comparison.judge(1));
    let figures: usize = comparisons.iter().map(|comparison| comparison.figures.len()).sum();
    let page = include_str!("page.md")
        .replace("{comparisons}", &comparisons.len().to_string())
        .replace("{figures}", &figures.to_string())
        .replace("{model tests}", &tests_in("sim/tests/model").to_string())
        .replace("{at a glance}\n", &at_a_glance(&subjects))
        .replace("{distances}\n", &distances(&comparisons))
        .replace("{some figures}\n", &some_figures(&subjects));
    (page, all_figures(&comparisons))
}

#[test]
#[ignore = "heavy: asks every question once more and writes the page, or says that it is out of date"]
fn the_page_says_what_the_tests_found() {
    let (page, figures) = page();
    let files = [("EVIDENCE.md", page), ("evidence/figures.csv", figures)];
    for (file, text) in files {
        if let Some(folder) = asked_for() {
            write(&folder.join(file), &text);
        } else {
            let at_home = std::fs::read_to_string(at_home().join(file)).unwrap();
            assert!(text == at_home, "{file} is out of date: make it again (see DEVELOPERS.md)");
        }
    }
}
