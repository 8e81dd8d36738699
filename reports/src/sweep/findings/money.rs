//! Where money turns: the cheapest point and what the others cost more.

use super::steps::paired;
use super::words::{EXACT, and_list, half, point_words};
use crate::findings::about_money;
use crate::sweep::Sweep;
use serde::Serialize;
use sim::Mean;

/// The cheapest point.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Money {
    /// The point with the least median cost, by its place in the list.
    pub at: usize,
    /// Points that cannot be told from it: the 95 % interval of the mean of the paired differences does not lie above 0.
    pub as_cheap: Vec<usize>,
    /// Where money turns, in a sentence or two.
    pub sentence: String,
}

/// The cheapest point and its neighbours; only for jobs with prices.
pub(super) fn cheapest(sweep: &Sweep) -> Option<Money> {
    let medians: Vec<f64> =
        sweep.points.iter().map(|point| point.sorted(|run| run.cost).percentile(0.5).value).collect();
    let at = (0..medians.len()).min_by(|a, b| medians[*a].total_cmp(&medians[*b]))?;
    let more = |point: usize| paired(sweep, point, at, |run| run.cost);
    // One run alone knows no interval and tells nothing apart.
    let surely_dearer = |point: &usize| more(*point).low > 0.0;
    let as_cheap: Vec<usize> = (0..medians.len()).filter(|p| *p != at && !surely_dearer(p)).collect();
    let words = |point: usize| point_words(&sweep.things, &sweep.points[point].places, sweep.units);
    let sum = |sum: f64| about_money(sum, &sweep.base.currency);
    let cost = sweep.points[at].sorted(|run| run.cost);
    let share = |share: f64| sum(cost.percentile(share).value);
    let mut sentence = if share(0.1) == share(0.9) {
        format!("Cheapest: {}, at {}.", words(at), share(0.5))
    } else {
        format!("Cheapest: {}, at {} to {}, {} in the middle.", words(at), share(0.1), share(0.9), share(0.5))
    };
    if !as_cheap.is_empty() {
        sentence += &not_told_apart(&as_cheap.iter().map(|point| words(*point)).collect::<Vec<_>>());
    }
    let others = neighbours(sweep, at).into_iter().filter(|point| !as_cheap.contains(point));
    let others: Vec<String> = others
        .enumerate()
        .map(|(i, point)| {
            let more = more(point);
            let costs = if i == 0 { "it costs " } else { "" };
            format!("with {} {costs}{} more{}", words(point), rounded(sweep, more.value), known(sweep, more))
        })
        .collect();
    if !others.is_empty() {
        sentence += &format!(" On average, {}.", others.join(", "));
    }
    Some(Money { at, as_cheap, sentence })
}

/// Points told by name before they are only counted.
const NAMED: usize = 2;

fn not_told_apart(words: &[String]) -> String {
    match words.len() {
        n if n <= NAMED => format!(" These runs cannot tell {} from it.", and_list(words)),
        n => format!(" These runs cannot tell {n} other points from it."),
    }
}

/// The points beside it in the list of a line, or in the grid.
fn neighbours(sweep: &Sweep, at: usize) -> Vec<usize> {
    let beside = |thing| [false, true].map(|up| super::steps::neighbour(sweep, at, thing, up));
    (0..sweep.things.len()).flat_map(beside).flatten().collect()
}

/// Small change is told only where there is nothing larger.
fn rounded(sweep: &Sweep, sum: f64) -> String {
    about_money(if sum.abs() < 10.0 { sum } else { sum.round() }, &sweep.base.currency)
}

/// How closely a sum is known; nothing where it is exact.
fn known(sweep: &Sweep, mean: Mean) -> String {
    match half(mean) {
        half if !half.is_finite() => " (too few runs to say how sure)".into(),
        half if half < EXACT => String::new(),
        half if half < 1.0 => format!(" (± {})", rounded(sweep, half)),
        half => format!(" (± {})", rounded(sweep, half.round())),
    }
}
