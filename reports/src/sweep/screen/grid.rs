//! The points of two things as a table of two ways.

use super::{legend, thinned};
use crate::findings::hours_and_minutes;
use crate::render::screen::lines;
use crate::sweep::Sweep;
use crate::sweep::findings::{PointFindings, SweepFindings};

/// Rows that the screen has room for.
const MOST_ROWS: usize = 14;
/// The P80 of every point, or the chance of being done in time where that was asked for.
pub(super) fn lines_of(sweep: &Sweep, findings: &SweepFindings, width: u16) -> Vec<String> {
    let [down, across] = findings.things.as_slice() else { return Vec::new() };
    let row_length = sweep.row();
    let is_marked = |point: usize| !findings.letters(point).is_empty();
    let rows =
        thinned(down.labels.len(), MOST_ROWS, |row| (0..row_length).any(|c| is_marked(row * row_length + c)));
    let cell = |point: usize| {
        let (figure, letters) = (figure(&findings.points[point]), findings.letters(point));
        if letters.is_empty() { figure } else { format!("{figure} {letters}") }
    };
    let length = |words: &str| words.chars().count();
    let heads = across.labels.iter().map(|label| length(label));
    let column =
        (0..findings.points.len()).map(|point| length(&cell(point))).chain(heads).max().unwrap_or(0) + 2;
    let first = down.labels.iter().map(|label| length(label)).max().unwrap_or(0) + 2;
    let most = (usize::from(width).saturating_sub(first) / column).max(3);
    let columns = thinned(across.labels.len(), most, |c| {
        (0..down.labels.len()).any(|row| is_marked(row * row_length + c))
    });
    let mut header = vec![String::new()];
    header.extend(columns.iter().map(|column| across.labels[*column].clone()));
    let line = |row: &usize| {
        let cells = columns.iter().map(|column| cell(row * row_length + column));
        std::iter::once(down.labels[*row].clone()).chain(cells).collect::<Vec<String>>()
    };
    let what = match &findings.by {
        Some(by) => format!("Chance of being done by {}", by.clock),
        None => "Time on the job, 8 days in 10 no longer (P80), h:min".to_owned(),
    };
    let mut all = vec![format!("{what}; down: {}, across: {}.", down.words, across.words)];
    let heads: Vec<&str> = header.iter().map(String::as_str).collect();
    all.extend(lines(&heads, rows.iter().map(line).collect(), &[0], width));
    let shown = rows.len() * columns.len();
    if shown < findings.points.len() {
        all.push(format!(
            "{} more points are in the report and in sweep.csv.",
            findings.points.len() - shown
        ));
    }
    all.extend(legend(findings));
    all
}

fn figure(told: &PointFindings) -> String {
    told.chance_words.clone().unwrap_or_else(|| hours_and_minutes(told.finish_working_s[2].value))
}
