//! What marked points are: labels in a row above the curve, tied to them.

use super::{CurveData, Spot};
use crate::chart::axis::MARGIN;
use crate::chart::paper::{Area, Paper, Side, Type};
use crate::chart::spread::{Placed, Wanted, spread};
use crate::chart::{ChartError, Size, ink};

/// A marked point with its label.
struct Marked<'a> {
    spot: &'a Spot,
    label: String,
    place: Placed,
    width: f64,
}

/// Places the labels; `x` says where a point stands \[px\].
fn placed<'a>(data: &'a CurveData, size: Size, x: impl Fn(&Spot) -> f64) -> Vec<Marked<'a>> {
    let strong = Type::strong(size);
    let (from, to) = (MARGIN, f64::from(size.width) - MARGIN);
    let spots: Vec<&Spot> = data.spots.iter().filter(|spot| !spot.marks.is_empty()).collect();
    let labels = spots.iter().map(|spot| strong.shorten(&spot.marks, to - from));
    let labelled: Vec<(&Spot, String)> = spots.iter().copied().zip(labels).collect();
    let wanted: Vec<Wanted> =
        labelled.iter().map(|(spot, label)| Wanted { centre: x(spot), width: strong.width(label) }).collect();
    let places = spread(&wanted, from, to, strong.px * 0.7);
    let both = labelled.into_iter().zip(wanted.iter().zip(places));
    both.map(|((spot, label), (wanted, place))| Marked { spot, label, place, width: wanted.width }).collect()
}

/// Rows the labels take.
pub(super) fn rows(data: &CurveData, size: Size) -> f64 {
    let highest = placed(data, size, |_| 0.0).iter().map(|marked| marked.place.row).max();
    highest.map_or(0.0, |row| row as f64 + 1.0)
}

/// Draws the labels from `top` downwards and their ties, which bend at `bend` and end where `at` says.
pub(super) fn draw(
    paper: &Paper<'_>,
    data: &CurveData,
    (top, bend): (f64, f64),
    size: Size,
    at: impl Fn(&Spot) -> (f64, f64),
) -> Result<(), ChartError> {
    let strong = Type::strong(size);
    let all = placed(data, size, |spot| at(spot).0);
    let line = |marked: &Marked<'_>| top + marked.place.row as f64 * strong.line();
    for marked in &all {
        let (foot, middle) = (at(marked.spot), marked.place.left + marked.width / 2.0);
        let tie = [(middle, line(marked) + strong.px * 1.05), (foot.0, bend - strong.px * 0.1), foot];
        paper.line(&tie, ink::TEXT, 1.2)?;
    }
    for marked in &all {
        let (left, top) = (marked.place.left, line(marked));
        let area =
            Area { left: left - 2.0, right: left + marked.width + 2.0, top, bottom: top + strong.px * 1.02 };
        paper.fill(area, ink::PAPER)?;
        paper.text(&marked.label, (left, top), Side::RightOf, strong)?;
    }
    Ok(())
}
