//! Which pieces lie near a straight way: a grid of square cells, each with the pieces that reach into it.

use super::piece::{Piece, extent};
use crate::point::Point;

/// Beyond the last digits of where a way passes from cell to cell \[m\].
const MARGIN: f64 = 1e-6;
/// Cells to a piece, about: fewer hold many pieces each, more are many to look into.
const CELLS_TO_A_PIECE: f64 = 1.0;
/// The most cells along one side.
const MOST: f64 = 256.0;

/// The grid.
#[derive(Clone, Debug, Default)]
pub(crate) struct Cells {
    low: Point,
    size: f64,
    columns: usize,
    rows: usize,
    /// Of each cell, row by row, where its pieces begin; one more at the end.
    first: Vec<usize>,
    pieces: Vec<usize>,
}

impl Cells {
    pub(crate) fn new(pieces: &[Piece]) -> Self {
        let corners: Vec<Point> = pieces.iter().flat_map(Piece::extent).collect();
        if corners.is_empty() {
            return Self::default();
        }
        let (low, high) = extent(&corners);
        let side = f64::max(high.x - low.x, high.y - low.y) + MARGIN;
        let across = libm::sqrt(CELLS_TO_A_PIECE * pieces.len() as f64).min(MOST);
        let size = side / libm::ceil(across);
        let count = |length: f64| libm::floor(length / size) as usize + 1;
        let mut cells = Self {
            low,
            size,
            columns: count(high.x - low.x),
            rows: count(high.y - low.y),
            ..Self::default()
        };
        let mut inside: Vec<Vec<usize>> = vec![Vec::new(); cells.columns * cells.rows];
        for (k, piece) in pieces.iter().enumerate() {
            let [low, high] = piece.extent();
            for row in cells.row(low.y)..=cells.row(high.y) {
                for column in cells.column(low.x)..=cells.column(high.x) {
                    inside[row * cells.columns + column].push(k);
                }
            }
        }
        for here in inside {
            cells.first.push(cells.pieces.len());
            cells.pieces.extend(here);
        }
        cells.first.push(cells.pieces.len());
        cells
    }

    /// The column of a figure; beyond the grid the outermost: a figure below 0 becomes 0.
    fn column(&self, x: f64) -> usize {
        (((x - self.low.x) / self.size) as usize).min(self.columns - 1)
    }

    fn row(&self, y: f64) -> usize {
        (((y - self.low.y) / self.size) as usize).min(self.rows - 1)
    }

    /// Whether something holds of one of the pieces that a straight way comes near. Each may be asked about more than once.
    pub(crate) fn any_near(&self, from: Point, to: Point, holds: &mut dyn FnMut(usize) -> bool) -> bool {
        if self.pieces.is_empty() {
            return false;
        }
        let (below, above) = if from.y <= to.y { (from, to) } else { (to, from) };
        let (first, last) = (self.row(below.y - MARGIN), self.row(above.y + MARGIN));
        let slope = (above.x - below.x) / (above.y - below.y);
        for row in first..=last {
            // The part of the way in this row.
            let at = |y: f64| below.x + (y - below.y) * slope;
            let edge = |row: usize| self.low.y + row as f64 * self.size;
            let start = if row == first || !slope.is_finite() { below.x } else { at(edge(row)) };
            let end = if row == last || !slope.is_finite() { above.x } else { at(edge(row + 1)) };
            let columns = self.column(start.min(end) - MARGIN)..=self.column(start.max(end) + MARGIN);
            for cell in columns.map(|column| row * self.columns + column) {
                if self.pieces[self.first[cell]..self.first[cell + 1]].iter().any(|piece| holds(*piece)) {
                    return true;
                }
            }
        }
        false
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::Draw;

    #[test]
    fn no_piece_that_blocks_a_way_is_overlooked() {
        let mut draw = Draw::new(91);
        let mut blocked = 0;
        for round in 0..20 {
            let pieces: Vec<Piece> = (0..1 + round * 9)
                .map(|_| {
                    let at = Point::new(draw.between(-40.0, 90.0), draw.between(0.0, 30.0));
                    let (x, y) =
                        (Point::new(draw.between(0.1, 9.0), 0.0), Point::new(0.0, draw.between(0.1, 9.0)));
                    Piece::new(&[at, at + x, at + x + y, at + y])
                })
                .collect();
            let cells = Cells::new(&pieces);
            for k in 0..400 {
                let mut point = || Point::new(draw.between(-60.0, 110.0), draw.between(-20.0, 50.0));
                let (from, mut to) = (point(), point());
                // Level and upright ones too.
                match k % 10 {
                    0 => to.y = from.y,
                    1 => to.x = from.x,
                    2 => to = from + (to - from) * 1e-9,
                    _ => {}
                }
                let all: Vec<usize> = (0..pieces.len()).filter(|k| pieces[*k].blocks(from, to)).collect();
                let mut found = Vec::new();
                cells.any_near(from, to, &mut |k| {
                    found.extend(pieces[k].blocks(from, to).then_some(k));
                    false
                });
                found.sort_unstable();
                found.dedup();
                assert_eq!(found, all);
                blocked += all.len();
            }
        }
        assert!(blocked > 1_000, "{blocked}");
    }
}
