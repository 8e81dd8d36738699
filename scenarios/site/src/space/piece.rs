//! What blocks: convex pieces that together make up everything a machine's middle must not touch.

use crate::point::Point;

/// So far into a piece a way may come before it is blocked: above the last digits of any site, below anything anybody sees \[m\].
pub(crate) const SLACK: f64 = 1e-10;

/// So far pieces that lie side by side reach into each other, so that no way slips between them by its last digits: less than the slack \[m\].
const OVERLAP: f64 = 2e-12;

/// A side of a piece: the points with `normal . p <= offset` are on its inner side.
#[derive(Clone, Copy, Debug)]
struct Half {
    normal: Point,
    offset: f64,
}

/// A convex piece of three or four sides. Its outer side is free to drive along; at the others more that blocks lies behind.
#[derive(Clone, Debug)]
pub(crate) struct Piece {
    halves: [Half; 4],
    count: usize,
    low: Point,
    high: Point,
    /// The ends of the outer side.
    pub(crate) outer: (Point, Point),
}

impl Piece {
    /// A piece by its corners, anticlockwise, the outer side from the first to the second.
    pub(crate) fn new(corners: &[Point]) -> Self {
        let mut halves = [Half { normal: Point::default(), offset: 0.0 }; 4];
        let mut count = 0;
        for k in 0..corners.len() {
            let (from, to) = (corners[k], corners[(k + 1) % corners.len()]);
            let normal = (to - from).right().unit();
            // A side of no length: what lies on both its sides is next to it.
            if normal == Point::default() {
                continue;
            }
            let slack = if k == 0 { SLACK } else { -OVERLAP };
            halves[count] = Half { normal, offset: normal.dot(from) - slack };
            count += 1;
        }
        let (low, high) = extent(corners);
        Self { halves, count, low, high, outer: (corners[0], corners[1]) }
    }

    /// Whether a point lies in it.
    pub(crate) fn holds(&self, at: Point) -> bool {
        self.halves[..self.count].iter().all(|half| half.normal.dot(at) <= half.offset)
    }

    /// Its lowest and its highest figures.
    pub(crate) fn extent(&self) -> [Point; 2] {
        [self.low, self.high]
    }

    /// Whether it comes near to what lies between a lowest and a highest point.
    pub(crate) fn is_near(&self, low: Point, high: Point) -> bool {
        high.x >= self.low.x && low.x <= self.high.x && high.y >= self.low.y && low.y <= self.high.y
    }

    /// Whether a straight way passes it.
    pub(crate) fn blocks(&self, from: Point, to: Point) -> bool {
        if !self.is_near(
            Point::new(from.x.min(to.x), from.y.min(to.y)),
            Point::new(from.x.max(to.x), from.y.max(to.y)),
        ) {
            return false;
        }
        let (mut first, mut last) = (0.0, 1.0);
        for half in &self.halves[..self.count] {
            let over = half.normal.dot(from) - half.offset;
            let over_then = half.normal.dot(to) - half.offset;
            if over > 0.0 && over_then > 0.0 {
                return false;
            }
            if over > 0.0 {
                first = f64::max(first, over / (over - over_then));
            } else if over_then > 0.0 {
                last = f64::min(last, over / (over - over_then));
            }
        }
        first <= last
    }
}

/// The lowest and the highest of some points' figures.
pub(crate) fn extent(points: &[Point]) -> (Point, Point) {
    let low = points.iter().fold(points[0], |a, b| Point::new(a.x.min(b.x), a.y.min(b.y)));
    let high = points.iter().fold(points[0], |a, b| Point::new(a.x.max(b.x), a.y.max(b.y)));
    (low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    const P: fn(f64, f64) -> Point = Point::new;

    #[test]
    fn a_piece_blocks_what_passes_it_but_not_what_runs_along_its_outer_side() {
        let piece = Piece::new(&[P(4.0, 2.0), P(0.0, 2.0), P(0.0, 0.0), P(4.0, 0.0)]);
        assert!(piece.blocks(P(1.0, 5.0), P(1.0, -5.0)) && piece.blocks(P(-1.0, 1.0), P(1.0, 1.0)));
        assert!(!piece.blocks(P(-3.0, 2.0), P(9.0, 2.0)) && !piece.blocks(P(2.0, 5.0), P(2.0, 2.0)));
        assert!(piece.blocks(P(-3.0, 0.0), P(9.0, 0.0)) && piece.blocks(P(-1.0, 2.5), P(5.0, 1.5)));
        assert!(!piece.blocks(P(-1.0, 1.0), P(1.0, 5.0)));
        assert!(piece.holds(P(2.0, 1.0)) && !piece.holds(P(2.0, 2.0)) && !piece.holds(P(2.0, 2.1)));
    }
}
