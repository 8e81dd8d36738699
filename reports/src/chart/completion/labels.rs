//! The labels above the curve: each stands over its mark as far as there is room, tied to it by a line.

use super::{Mark, MarkKind};
use crate::chart::axis::MARGIN;
use crate::chart::paper::{Area, Paper, Side, Type};
use crate::chart::spread::{Wanted, spread};
use crate::chart::{ChartError, Size, ink};
use plotters::style::RGBColor;

/// A label in its place.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::chart) struct Label {
    /// Name and time, in one line or two.
    head: Vec<String>,
    /// Where it stands.
    area: Area,
}

/// All labels, in the order of their marks.
pub(in crate::chart) struct Labels {
    places: Vec<Label>,
    /// Where the last row of them ends \[px\].
    pub(in crate::chart) bottom: f64,
    rows: usize,
    size: Size,
}

pub(in crate::chart) fn colour(kind: MarkKind) -> RGBColor {
    match kind {
        MarkKind::Percentile => ink::TEXT,
        MarkKind::Handbook | MarkKind::Quote => ink::AGAINST,
    }
}

/// How name and time are set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Head {
    OneLine,
    TwoLines,
}

impl Head {
    fn of(self, mark: &Mark) -> Vec<String> {
        match self {
            Self::OneLine => vec![format!("{}: {}", mark.name, mark.when)],
            Self::TwoLines => vec![mark.name.clone(), mark.when.clone()],
        }
    }

    fn width(self, mark: &Mark, size: Size) -> f64 {
        let (strong, soft) = (Type::strong(size), Type::soft(size));
        let head = self.of(mark).into_iter().map(|line| strong.width(&line));
        head.chain(mark.lines.iter().map(|line| soft.width(line))).fold(0.0, f64::max)
    }
}

impl Labels {
    /// Places the labels from `top` downwards; `at` says where a mark stands \[px\].
    pub(in crate::chart) fn new(marks: &[Mark], at: impl Fn(&Mark) -> f64, top: f64, size: Size) -> Self {
        let strong = Type::strong(size);
        let (from, to, gap) = (MARGIN, f64::from(size.width) - MARGIN, strong.px * 0.7);
        let fits = |head: Head| {
            marks.iter().map(|mark| head.width(mark, size) + gap).sum::<f64>() - gap <= to - from
        };
        let head = if fits(Head::OneLine) { Head::OneLine } else { Head::TwoLines };
        let wanted: Vec<Wanted> =
            marks.iter().map(|mark| Wanted { centre: at(mark), width: head.width(mark, size) }).collect();
        let placed = spread(&wanted, from, to, gap);
        let rows = 1 + placed.iter().map(|place| place.row).max().unwrap_or(0);
        let lines = |mark: &Mark| head.of(mark).len() + mark.lines.len();
        let height = marks.iter().map(lines).max().unwrap_or(0) as f64 * strong.line() + strong.px * 0.3;
        let label = |mark: &Mark, width: f64, left: f64, row: usize| {
            let top = top + row as f64 * height;
            let bottom = top + lines(mark) as f64 * strong.line();
            Label { head: head.of(mark), area: Area { left, right: left + width, top, bottom } }
        };
        let each = marks.iter().zip(&wanted).zip(&placed);
        let places = each.map(|((mark, w), place)| label(mark, w.width, place.left, place.row)).collect();
        Self { places, bottom: top + rows as f64 * height, rows, size }
    }

    /// Draws the labels and the lines that tie them to their marks; `foot` says where such a line ends.
    pub(in crate::chart) fn draw(
        &self,
        paper: &Paper<'_>,
        marks: &[Mark],
        foot: impl Fn(&Mark) -> (f64, f64),
    ) -> Result<(), ChartError> {
        for (mark, label) in marks.iter().zip(&self.places) {
            let middle = f64::midpoint(label.area.left, label.area.right);
            let tie = [(middle, label.area.bottom), (middle, self.bottom), foot(mark)];
            paper.line(&tie, colour(mark.kind), 1.2)?;
        }
        let (strong, soft) = (Type::strong(self.size), Type::soft(self.size));
        for (mark, label) in marks.iter().zip(&self.places) {
            if self.rows > 1 {
                paper.fill(label.area, ink::PAPER)?;
            }
            let middle = f64::midpoint(label.area.left, label.area.right);
            let head = strong.coloured(colour(mark.kind));
            let below = paper.lines(&label.head, (middle, label.area.top), Side::Around, head)?;
            paper.lines(&mark.lines, (middle, below), Side::Around, soft)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn marks(at: [f64; 3]) -> Vec<Mark> {
        let mark = |(at, name): (f64, &str)| Mark {
            at,
            chance: 50.0,
            kind: MarkKind::Percentile,
            name: name.into(),
            when: "24 h 18 min".into(),
            lines: vec!["8 days in 10".into()],
        };
        at.into_iter().zip(["handbook", "P50", "P80"]).map(mark).collect()
    }

    #[test]
    fn labels_of_close_percentiles_do_not_overlap() {
        for size in [Size::PAGE, Size::WIDE, Size::PHONE, Size { width: 300, height: 300 }] {
            for at in [[150.0, 150.0, 150.0], [0.0, 1.0, 2.0], [299.0, 300.0, 300.0], [10.0, 150.0, 290.0]] {
                let labels = Labels::new(&marks(at), |mark| mark.at, 50.0, size);
                for (i, a) in labels.places.iter().enumerate() {
                    assert!(a.area.left >= 0.0 && a.area.right <= f64::from(size.width), "{a:?}");
                    for b in &labels.places[..i] {
                        let (a, b) = (a.area, b.area);
                        let beside = a.left >= b.right || b.left >= a.right;
                        assert!(beside || a.top >= b.bottom || b.top >= a.bottom, "{a:?} {b:?}");
                    }
                }
            }
        }
    }

    #[test]
    fn a_narrow_figure_breaks_names_and_times_rather_than_stacking_the_labels() {
        let wide = Labels::new(&marks([100.0, 200.0, 300.0]), |mark| mark.at, 0.0, Size::WIDE);
        assert_eq!(wide.places[1].head, ["P50: 24 h 18 min"]);
        let narrow = Labels::new(&marks([100.0, 200.0, 300.0]), |mark| mark.at, 0.0, Size::PHONE);
        assert_eq!(narrow.places[1].head, ["P50", "24 h 18 min"]);
        assert_eq!(narrow.rows, 1);
    }
}
