//! Lines told apart by their dashes, so that they stay apart without colour.

use super::ChartError;
use super::paper::Paper;
use plotters::style::RGBColor;

/// How a line is broken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Stroke {
    /// Not at all.
    Solid,
    /// Into long dashes.
    Long,
    /// Into short dashes.
    Short,
    /// Into dots.
    Dots,
    /// Into long and short dashes alternately.
    LongShort,
    /// Into long dashes with two dots between.
    LongDots,
}

impl Stroke {
    pub(super) const ALL: [Self; 6] =
        [Self::Solid, Self::Long, Self::Short, Self::Dots, Self::LongShort, Self::LongDots];

    /// Lengths of dash, gap, dash, gap .. in widths of the line.
    fn pattern(self) -> &'static [f64] {
        match self {
            Self::Solid => &[],
            Self::Long => &[5.5, 2.5],
            Self::Short => &[2.4, 1.8],
            Self::Dots => &[0.9, 1.7],
            Self::LongShort => &[5.5, 1.8, 1.8, 1.8],
            Self::LongDots => &[5.5, 1.7, 0.9, 1.7, 0.9, 1.7],
        }
    }

    /// Draws a line through points.
    pub(super) fn draw(
        self,
        paper: &Paper<'_>,
        points: &[(f64, f64)],
        colour: RGBColor,
        px: f64,
    ) -> Result<(), ChartError> {
        match self {
            Self::Solid => paper.line(points, colour, px),
            _ => dashes(points, self.pattern(), px).iter().try_for_each(|dash| paper.line(dash, colour, px)),
        }
    }
}

/// Cuts a line into dashes of a pattern that goes on round its corners.
fn dashes(points: &[(f64, f64)], pattern: &[f64], px: f64) -> Vec<Vec<(f64, f64)>> {
    let mut all = Vec::new();
    let (mut piece, mut left) = (0, pattern[0] * px);
    let mut dash: Vec<(f64, f64)> = points.first().copied().into_iter().collect();
    for pair in points.windows(2) {
        let (mut from, to) = (pair[0], pair[1]);
        let mut length = (to.0 - from.0).hypot(to.1 - from.1);
        while length > left {
            let share = left / length;
            from = (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share);
            length -= left;
            if piece % 2 == 0 {
                dash.push(from);
                all.push(std::mem::take(&mut dash));
            } else {
                dash = vec![from];
            }
            piece = (piece + 1) % pattern.len();
            left = pattern[piece] * px;
        }
        left -= length;
        if piece % 2 == 0 {
            dash.push(to);
        }
    }
    if dash.len() > 1 {
        all.push(dash);
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(line: &[(f64, f64)]) -> f64 {
        line.windows(2).map(|p| (p[1].0 - p[0].0).hypot(p[1].1 - p[0].1)).sum()
    }

    #[test]
    fn dashes_are_as_long_as_their_pattern_says_round_corners_too() {
        let corner = [(0.0, 0.0), (7.0, 0.0), (7.0, 13.0)];
        let cut = dashes(&corner, &[3.0, 2.0], 1.0);
        assert_eq!(cut.iter().map(|dash| length(dash).round()).collect::<Vec<_>>(), [3.0; 4]);
        assert_eq!(cut[1], [(5.0, 0.0), (7.0, 0.0), (7.0, 1.0)]);
    }

    #[test]
    fn no_two_strokes_are_alike() {
        for (i, a) in Stroke::ALL.iter().enumerate() {
            assert!(Stroke::ALL[..i].iter().all(|b| a.pattern() != b.pattern()));
        }
    }
}
