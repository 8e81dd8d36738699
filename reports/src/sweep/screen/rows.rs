//! The points of one thing as a table.

use super::{legend, thinned};
use crate::findings::about_duration;
use crate::render::screen::lines;
use crate::sweep::findings::{PointFindings, SweepFindings};

/// Rows that the screen has room for.
const MOST: usize = 14;
/// Points whose waiting is told.
const MOST_WAITS: usize = 6;

pub(super) fn lines_of(findings: &SweepFindings, width: u16) -> Vec<String> {
    let priced = findings.money.is_some();
    let asked = findings.by.is_some();
    let thing = findings.things.first().map_or("", |thing| thing.key.as_str());
    let mut header = vec!["", short(thing), "takes (h:min)", "P80 by", "sim. error"];
    if asked {
        header.push("in time");
    }
    header.push("saves");
    if priced {
        header.push("cost P50");
    }
    let shown = thinned(findings.points.len(), MOST, |point| !findings.letters(point).is_empty());
    let row = |point: &usize| {
        let told = &findings.points[*point];
        let mut row = vec![
            findings.letters(*point),
            told.values[0].label.clone(),
            told.range.clone(),
            told.done_by[2].clone(),
            told.known.clone(),
        ];
        if asked {
            row.push(told.chance_words.clone().unwrap_or_default());
        }
        row.push(saves(told));
        if priced {
            row.push(told.cost_words.as_ref().map_or_else(String::new, |cost| cost[1].clone()));
        }
        row
    };
    let rows: Vec<Vec<String>> = shown.iter().map(row).collect();
    let mut right: Vec<usize> = vec![1, 3];
    right.extend((5..header.len()).filter(|column| header[*column] != "saves"));
    let mut all = lines(&header, rows, &right, width);
    if shown.len() < findings.points.len() {
        all.push(format!(
            "{} more points are in the report and in sweep.csv; \"saves\" is against the value just before.",
            findings.points.len() - shown.len()
        ));
    }
    all.extend(legend(findings));
    all
}

/// A key of the file by its last piece: the whole of it stands above.
fn short(words: &str) -> &str {
    if words.chars().count() > 14 { words.rsplit('.').next().unwrap_or(words) } else { words }
}

/// In whole minutes from a minute and a half on.
fn saves(told: &PointFindings) -> String {
    let Some(saved) = &told.saved[0] else { return String::new() };
    let size = about_duration(saved.min.abs() * 60.0);
    match saved.words.as_str() {
        "nothing" => saved.words.clone(),
        _ if saved.known == "exactly" && saved.min < 0.0 => format!("{size} lost"),
        _ if saved.known == "exactly" => size,
        _ if saved.min < 0.0 => format!("{size} lost {}", saved.known),
        _ => format!("{size} {}", saved.known),
    }
}

/// Who waits, for the points that matter.
pub(super) fn waits(findings: &SweepFindings, width: u16) -> Vec<String> {
    let shown = thinned(findings.points.len(), MOST_WAITS, |point| !findings.letters(point).is_empty());
    let row = |point: &usize| {
        let told = &findings.points[*point];
        vec![told.values[0].label.clone(), format!("{}.", told.who_waits_in_full)]
    };
    lines(&[], shown.iter().map(row).collect(), &[0], width)
}
