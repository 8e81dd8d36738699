//! The tables: how long a load takes, and whether the answers agree.

use crate::contest::Series;
use crate::{Row, heapcast};
use comfy_table::{CellAlignment, Table, presets};

/// Nanoseconds a load takes, and how many times heapcast's time that is.
pub fn times(rows: &[Row], markdown: bool) -> Table {
    let mut table = table(
        markdown,
        &["", "one and one, ns a load", "times heapcast", "a yard, ns a load", "times heapcast"],
    );
    for row in rows {
        let mut cells = vec![row.name.clone()];
        for (shown, own) in row.shown.iter().zip(&rows[heapcast::ROW].shown) {
            let ratios = shown.ns_per_load.iter().zip(&own.ns_per_load).map(|(theirs, own)| theirs / own);
            cells.push(two_digits(median(shown.ns_per_load.clone())));
            cells.push(two_digits(median(ratios.collect())));
        }
        table.add_row(cells);
    }
    table
}

/// The means with their standard errors, and how many standard errors of the difference they lie from heapcast's.
pub fn answers(rows: &[Row], markdown: bool) -> Table {
    let headings = ["", "one and one, done after s", "apart", "loads", "apart"];
    let more = ["a yard, done after s", "apart", "loads", "apart"];
    let mut table = table(markdown, &[&headings[..], &more[..]].concat());
    for row in rows.iter().filter(|row| row.shown.iter().any(|shown| shown.answers.is_some())) {
        let mut cells = vec![row.name.clone()];
        for (shown, own) in row.shown.iter().zip(&rows[heapcast::ROW].shown) {
            let (Some(theirs), Some(own)) = (shown.answers, own.answers) else { continue };
            cells.extend(figure(&theirs.completion_s, &own.completion_s, 1));
            cells.extend(figure(&theirs.loads, &own.loads, 3));
        }
        table.add_row(cells);
    }
    table
}

fn figure(theirs: &Series, own: &Series, decimals: usize) -> [String; 2] {
    let mean = format!("{:.decimals$} ± {:.decimals$}", theirs.mean(), theirs.standard_error());
    let is_own = theirs.mean() == own.mean();
    [mean, if is_own { String::new() } else { format!("{:+.1}", theirs.errors_apart(own)) }]
}

fn table(markdown: bool, headings: &[&str]) -> Table {
    let mut table = Table::new();
    table.load_style(if markdown { presets::ASCII_MARKDOWN } else { presets::UTF8_BORDERS_ONLY });
    table.set_header(headings.iter().copied());
    for column in table.column_iter_mut().skip(1) {
        column.set_cell_alignment(CellAlignment::Right);
    }
    table
}

fn median(mut figures: Vec<f64>) -> f64 {
    figures.sort_by(f64::total_cmp);
    let (low, high) = ((figures.len() - 1) / 2, figures.len() / 2);
    (figures[low] + figures[high]) / 2.0
}

/// The two digits that count, thousands set off by commas.
fn two_digits(figure: f64) -> String {
    if figure < 0.995 {
        return format!("{figure:.2}");
    }
    if figure < 9.95 {
        return format!("{figure:.1}");
    }
    let step = 10_f64.powf(figure.log10().floor() - 1.0).max(1.0);
    let whole = ((figure / step).round() * step).to_string();
    let mut grouped = String::new();
    for (nth, digit) in whole.chars().enumerate() {
        if nth > 0 && (whole.len() - nth).is_multiple_of(3) {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    grouped
}
