//! Rings and lines grown by a distance, with mitred corners, as convex pieces; and the corners at which a shortest way can bend.

use super::piece::Piece;
use crate::area::moments;
use crate::point::Point;

/// A mitre sticks out at most so many times the distance grown by; beyond it is cut off square: a corner of less than 11.5 degrees.
const LONGEST_MITRE: f64 = 10.0;

/// A corner of what blocks, where a way can bend.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Node {
    pub(crate) at: Point,
    /// The directions in which the rim goes on from it; none at a corner of a surface, where a way may bend either way.
    pub(crate) arms: Option<[Point; 2]>,
}

/// What has been grown so far.
#[derive(Clone, Debug, Default)]
pub(crate) struct Grown {
    pub(crate) pieces: Vec<Piece>,
    pub(crate) nodes: Vec<Node>,
}

/// Which side of a ring is closed to machines.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Closed {
    Inside,
    Outside,
}

impl Grown {
    /// A ring grown into its open side.
    pub(crate) fn ring(&mut self, ring: &[Point], closed: Closed, by: f64) {
        let is_left = (moments(ring).0 > 0.0) == (closed == Closed::Inside);
        if is_left {
            self.run(ring, by, LONGEST_MITRE);
        } else {
            self.run(&ring.iter().rev().copied().collect::<Vec<_>>(), by, LONGEST_MITRE);
        }
    }

    /// A line grown to both sides and, square, beyond its ends; closed if its last corner is where the first is.
    pub(crate) fn line(&mut self, line: &[Point], by: f64) {
        let back = line.iter().rev().copied();
        if line.len() > 3 && line.first() == line.last() {
            self.run(&line[1..], by, LONGEST_MITRE);
            self.run(&back.skip(1).collect::<Vec<_>>(), by, LONGEST_MITRE);
        } else {
            let there_and_back: Vec<Point> =
                line.iter().copied().chain(back.skip(1).take(line.len() - 2)).collect();
            self.run(&there_and_back, by, LONGEST_MITRE);
        }
    }

    /// A closed run of corners with what is closed on its left.
    fn run(&mut self, corners: &[Point], by: f64, longest: f64) {
        let count = corners.len();
        let at = |k: usize| corners[k % count];
        let turns: Vec<Turn> =
            (0..count).map(|k| Turn::new(at(k + count - 1), at(k), at(k + 1), by, longest)).collect();
        for k in 0..count {
            let (from, to) = (&turns[k], &turns[(k + 1) % count]);
            self.pieces.push(Piece::new(&[from.after, to.before, to.at, from.at]));
            if from.before != from.after && from.is_cut {
                self.pieces.push(Piece::new(&[from.before, from.after, from.at]));
            }
            self.nodes.extend(from.nodes());
        }
    }
}

/// A corner and what it grows into.
struct Turn {
    at: Point,
    /// The direction of the side before it and of that after it.
    into: Point,
    out: Point,
    /// Where the grown side before it ends, and the one after it begins: one point at a mitre.
    before: Point,
    after: Point,
    /// The mitre was cut off: what is grown ends in a side between the two.
    is_cut: bool,
    bends: bool,
}

impl Turn {
    fn new(previous: Point, at: Point, next: Point, by: f64, longest: f64) -> Self {
        let (into, out) = ((at - previous).unit(), (next - at).unit());
        let normals = [into.right(), out.right()];
        let is_end = into.dot(out) < -1.0 + 1e-14 && previous == next;
        let turn = into.cross(out);
        let square = 1.0 + normals[0].dot(normals[1]);
        let plain = |before, after, bends| Self { at, into, out, before, after, is_cut: false, bends };
        if !is_end && turn <= 0.0 {
            // A corner that is open beyond half a turn: the two sides' strips overlap.
            return plain(at + normals[0] * by, at + normals[1] * by, false);
        }
        // One over half the angle's cosine, squared, is two over this.
        if !is_end && 2.0 <= square * longest * longest {
            let mitre = at + (normals[0] + normals[1]) * (by / square);
            return plain(mitre, mitre, turn > 1e-12);
        }
        let out_of = if is_end { into } else { (normals[0] + normals[1]).unit() };
        let reach = if is_end { by } else { by * longest };
        let beyond = (reach - by * normals[0].dot(out_of)) / into.dot(out_of);
        let before = at + normals[0] * by + into * beyond;
        let after = at + normals[1] * by - out * beyond;
        Self { at, into, out, before, after, is_cut: true, bends: true }
    }

    fn nodes(&self) -> Vec<Node> {
        let back = self.into * -1.0;
        if !self.bends {
            Vec::new()
        } else if self.is_cut {
            let across = (self.after - self.before).unit();
            let first = Node { at: self.before, arms: Some([back, across]) };
            vec![first, Node { at: self.after, arms: Some([across * -1.0, self.out]) }]
        } else {
            vec![Node { at: self.before, arms: Some([back, self.out]) }]
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{L_SHAPE, close, outline};

    const P: fn(f64, f64) -> Point = Point::new;

    fn blocked(grown: &Grown, at: Point) -> bool {
        grown.pieces.iter().any(|piece| piece.holds(at))
    }

    #[test]
    fn a_square_is_grown_with_square_corners() {
        let mut grown = Grown::default();
        grown.ring(&outline(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]).ring, Closed::Inside, 1.0);
        assert!(blocked(&grown, P(-0.99, -0.99)) && blocked(&grown, P(4.99, 2.0)));
        assert!(!blocked(&grown, P(-1.01, -0.5)) && !blocked(&grown, P(2.0, 5.01)));
        let at: Vec<Point> = grown.nodes.iter().map(|node| node.at).collect();
        assert_eq!(at, [P(-1.0, -1.0), P(5.0, -1.0), P(5.0, 5.0), P(-1.0, 5.0)]);
    }

    #[test]
    fn a_boundary_is_shrunk_and_bends_ways_at_its_inner_corners_alone() {
        let mut grown = Grown::default();
        grown.ring(&outline(&L_SHAPE).ring, Closed::Outside, 1.0);
        assert_eq!(grown.nodes.len(), 1);
        assert_eq!(grown.nodes[0].at, P(9.0, 9.0));
        assert!(
            blocked(&grown, P(9.5, 9.5)) && blocked(&grown, P(0.5, 20.0)) && !blocked(&grown, P(8.9, 8.9))
        );
    }

    #[test]
    fn a_line_is_grown_to_both_sides_and_square_beyond_its_ends() {
        let mut grown = Grown::default();
        grown.line(&[P(0.0, 0.0), P(10.0, 0.0), P(10.0, 10.0)], 1.0);
        for at in
            [P(-0.99, 0.99), P(-0.99, -0.99), P(5.0, 0.9), P(5.0, -0.9), P(10.99, -0.99), P(9.01, 10.99)]
        {
            assert!(blocked(&grown, at), "{at:?}");
        }
        for at in [P(-1.01, 0.0), P(5.0, 1.01), P(8.9, 1.1), P(10.0, 11.01), P(11.01, 5.0)] {
            assert!(!blocked(&grown, at), "{at:?}");
        }
        // Two at each end and the outer one of the bend.
        assert_eq!(grown.nodes.len(), 5);
    }

    #[test]
    fn a_mitre_is_cut_off_square_at_ten_times_the_distance() {
        let mut grown = Grown::default();
        grown.ring(&outline(&[(0.0, 0.0), (100.0, -1.0), (100.0, 1.0)]).ring, Closed::Inside, 1.0);
        assert!(blocked(&grown, P(-9.9, 0.0)) && !blocked(&grown, P(-10.1, 0.0)));
        let least = grown.nodes.iter().map(|node| node.at.x).fold(0.0, f64::min);
        close(least, -10.0, 1e-9);
    }

    #[test]
    fn everything_nearer_than_the_distance_is_blocked_also_in_steps_finer_than_it() {
        let stairs =
            [(0.0, 0.0), (9.0, 0.0), (9.0, 5.0), (7.0, 5.0), (7.0, 4.8), (5.0, 4.8), (4.9, 4.0), (0.0, 4.0)];
        let ring = outline(&stairs).ring;
        let mut grown = Grown::default();
        grown.ring(&ring, Closed::Inside, 1.5);
        let mut draw = crate::testing::Draw::new(3);
        for _ in 0..20_000 {
            let at = P(draw.between(-3.0, 12.0), draw.between(-3.0, 8.0));
            let outline = crate::Outline::from_corners(ring.clone());
            let near = crate::inside::distance_to_rim(at, &outline) < 1.5 - 1e-9;
            if near && !crate::inside::is_in(at, &outline) {
                assert!(blocked(&grown, at), "{at:?}");
            }
        }
    }
}
