//! What is wrong with one ring, line or outline of its own accord.

use crate::error::ShapeError;
use crate::inside::is_in_ring;
use crate::outline::{Outline, sides};
use crate::point::{Point, distance_to_side};

/// Corners nearer to each other than this are in one place \[m\].
const ONE_PLACE: f64 = 1e-6;
/// No figure of a corner reaches this \[m\].
const FAR: f64 = 1e6;

impl Outline {
    /// What is wrong with it: corners that are no places or in one place, sides that cross, holes outside or meeting. Of crossings
    /// only the first of each ring is told, since one wrong corner makes many.
    ///
    /// ```
    /// use site::{Outline, Point, ShapeError};
    /// let p = Point::new;
    /// let bow = Outline::from_corners(vec![p(0.0, 0.0), p(2.0, 2.0), p(2.0, 0.0), p(0.0, 2.0)]);
    /// assert!(matches!(bow.errors()[..], [ShapeError::Crossing { first: 1, second: 3, .. }]));
    /// ```
    pub fn errors(&self) -> Vec<ShapeError> {
        let mut errors = ring_errors(&self.ring);
        for (k, hole) in self.holes.iter().enumerate() {
            let wrap = |error| ShapeError::Hole { hole: k + 1, error: Box::new(error) };
            errors.extend(ring_errors(hole).into_iter().map(wrap));
        }
        if errors.is_empty() {
            errors.extend(self.holes_misplaced());
        }
        errors
    }

    fn holes_misplaced(&self) -> Vec<ShapeError> {
        let mut errors = Vec::new();
        for (k, hole) in self.holes.iter().enumerate() {
            let outside = hole.iter().position(|corner| !is_in_ring(*corner, &self.ring));
            let others = self.holes[..k].iter().enumerate().map(|(j, other)| (Some(j + 1), other));
            let nested = |other: &[Point]| is_in_ring(hole[0], other) || is_in_ring(other[0], hole);
            let meets = |(j, other): (Option<usize>, &Vec<Point>)| {
                let at = rings_meet(hole, other).or((j.is_some() && nested(other)).then_some(hole[0]));
                at.map(|at| ShapeError::HolesMeet { hole: k + 1, other: j, at })
            };
            if let Some(corner) = outside {
                errors.push(ShapeError::HoleOutside { hole: k + 1, corner: corner + 1 });
            } else {
                errors.extend(std::iter::once((None, &self.ring)).chain(others).find_map(meets));
            }
        }
        errors
    }
}

fn rings_meet(one: &[Point], other: &[Point]) -> Option<Point> {
    sides(one).find_map(|side| sides(other).find_map(|other| meeting(side, other)))
}

fn ring_errors(ring: &[Point]) -> Vec<ShapeError> {
    let mut errors = corner_errors(ring, 3, true);
    if errors.is_empty() {
        errors.extend(crossing(ring, true));
    }
    if errors.is_empty() && lies_in_one_line(ring) {
        errors.push(ShapeError::NoArea);
    }
    errors
}

/// What is wrong with an open line, such as a fence: it may touch itself at its ends alone.
pub(crate) fn line_errors(line: &[Point]) -> Vec<ShapeError> {
    let mut errors = corner_errors(line, 2, false);
    if errors.is_empty() {
        errors.extend(crossing(line, false));
    }
    errors
}

fn corner_errors(corners: &[Point], least: usize, is_ring: bool) -> Vec<ShapeError> {
    let is_place = |p: &Point| p.is_finite() && p.x.abs() < FAR && p.y.abs() < FAR;
    let nowhere = corners.iter().enumerate().filter(|(_, corner)| !is_place(corner));
    let mut errors: Vec<_> = nowhere.map(|(k, _)| ShapeError::NoPlace { corner: k + 1 }).collect();
    if corners.len() < least {
        errors.push(ShapeError::TooFewCorners { count: corners.len(), least });
    }
    if errors.is_empty() {
        let closes =
            |first: usize, second: usize| !is_ring && first == 0 && second == corners.len() - 1 && second > 2;
        let pairs = (0..corners.len()).flat_map(|a| (a + 1..corners.len()).map(move |b| (a, b)));
        let same = pairs.filter(|&(a, b)| corners[a].distance(corners[b]) < ONE_PLACE && !closes(a, b));
        errors.extend(same.take(8).map(|(a, b)| ShapeError::OnePlace { first: a + 1, second: b + 1 }));
    }
    errors
}

/// The first two sides that meet elsewhere than at the corner they share.
fn crossing(corners: &[Point], is_ring: bool) -> Option<ShapeError> {
    let count = if is_ring { corners.len() } else { corners.len() - 1 };
    let side = |k: usize| (corners[k], corners[(k + 1) % corners.len()]);
    for first in 0..count {
        for second in first + 1..count {
            let (a, b) = (side(first), side(second));
            let at = if second == first + 1 {
                folded(a, b)
            } else if (second + 1) % count == first && a.0.distance(b.1) < ONE_PLACE {
                folded(b, a)
            } else {
                meeting(a, b)
            };
            if let Some(at) = at {
                return Some(ShapeError::Crossing { first: first + 1, second: second + 1, at });
            }
        }
    }
    None
}

/// Where a side runs back over the one before it.
fn folded(before: (Point, Point), after: (Point, Point)) -> Option<Point> {
    let (back, on) = (before.0 - before.1, after.1 - after.0);
    let over = back.dot(on) > 0.0 && back.cross(on).abs() <= 1e-9 * back.length() * on.length();
    over.then_some(after.0)
}

/// Where two sides meet, their ends included.
pub(crate) fn meeting(a: (Point, Point), b: (Point, Point)) -> Option<Point> {
    let (along, across) = (a.1 - a.0, b.1 - b.0);
    let turn = along.cross(across);
    if turn != 0.0 {
        let share = (b.0 - a.0).cross(across) / turn;
        let of_other = (b.0 - a.0).cross(along) / turn;
        if (0.0..=1.0).contains(&share) && (0.0..=1.0).contains(&of_other) {
            return Some(a.0 + along * share);
        }
    }
    let touches = |p: &Point, side: (Point, Point)| distance_to_side(*p, side.0, side.1) < 1e-9;
    [b.0, b.1].into_iter().find(|p| touches(p, a)).or([a.0, a.1].into_iter().find(|p| touches(p, b)))
}

fn lies_in_one_line(ring: &[Point]) -> bool {
    let far = ring
        .iter()
        .fold(ring[0], |far, p| if p.distance(ring[0]) > far.distance(ring[0]) { *p } else { far });
    ring.iter().all(|p| distance_to_side(*p, ring[0], far) < ONE_PLACE)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outline(corners: &[(f64, f64)]) -> Outline {
        Outline::from_corners(corners.iter().map(|&(x, y)| Point::new(x, y)).collect())
    }

    fn said(outline: &Outline) -> Vec<String> {
        outline.errors().iter().map(ToString::to_string).collect()
    }

    const SQUARE: [(f64, f64); 4] = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)];

    fn hole(corners: &[(f64, f64)]) -> Vec<Point> {
        corners.iter().map(|&(x, y)| Point::new(x, y)).collect()
    }

    #[test]
    fn a_ring_either_way_round_closed_or_not_is_right() {
        let mut back = SQUARE;
        back.reverse();
        let closed = [&SQUARE[..], &SQUARE[..1]].concat();
        for corners in [&SQUARE[..], &back, &closed] {
            assert_eq!(said(&outline(corners)), Vec::<String>::new());
        }
    }

    #[test]
    fn corners_that_are_too_few_or_nowhere_or_in_one_place_are_told_by_number() {
        let few = outline(&SQUARE[..2]);
        assert_eq!(few.errors(), [ShapeError::TooFewCorners { count: 2, least: 3 }]);
        let nowhere = outline(&[(0.0, 0.0), (f64::NAN, 1.0), (2.0, f64::INFINITY), (2e6, 3.0)]);
        assert_eq!(nowhere.errors(), [2, 3, 4].map(|corner| ShapeError::NoPlace { corner }));
        let twice = outline(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (4.0, 1e-7), (0.0, 4.0)]);
        assert_eq!(said(&twice), ["corners 2 and 4 are in one place; leave one of them out, or move it"]);
    }

    #[test]
    fn sides_that_cross_or_touch_or_fold_back_are_told() {
        let at = |corners: &[(f64, f64)]| match outline(corners).errors()[..] {
            [ShapeError::Crossing { first, second, .. }] => (first, second),
            ref other => panic!("{other:?}"),
        };
        assert_eq!(at(&[(0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)]), (1, 3));
        // A corner on another side.
        assert_eq!(at(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (2.0, 0.0), (0.0, 4.0)]), (1, 3));
        // A spike of no width.
        assert_eq!(at(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (4.0, 9.0), (4.0, 5.0), (0.0, 4.0)]), (3, 4));
        assert_eq!(at(&[(0.0, 0.0), (4.0, 0.0), (6.0, 0.0), (1.0, 0.0)]), (1, 3));
    }

    #[test]
    fn corners_in_one_line_have_no_area() {
        assert_eq!(outline(&[(0.0, 0.0), (4.0, 2.0), (2.0, 1.0)]).errors().len(), 1);
        let flat = outline(&[(0.0, 0.0), (8.0, 0.0), (4.0, 1e-8)]);
        assert_eq!(flat.errors(), [ShapeError::NoArea]);
    }

    #[test]
    fn holes_have_to_lie_inside_and_apart() {
        let square = || outline(&SQUARE);
        let small = [(1.0, 1.0), (2.0, 1.0), (2.0, 2.0)];
        assert_eq!(said(&square().with_hole(hole(&small))), Vec::<String>::new());
        let out = square().with_hole(hole(&[(1.0, 1.0), (5.0, 1.0), (2.0, 2.0)]));
        assert_eq!(out.errors(), [ShapeError::HoleOutside { hole: 1, corner: 2 }]);
        let nested = square().with_hole(hole(&[(0.5, 0.5), (3.0, 0.5), (3.0, 3.0)])).with_hole(hole(&small));
        assert!(matches!(nested.errors()[..], [ShapeError::HolesMeet { hole: 2, other: Some(1), .. }]));
        let few = square().with_hole(hole(&small[..2]));
        assert_eq!(said(&few), ["hole 1: it has 2 corners; give at least 3"]);
    }

    #[test]
    fn a_line_may_close_but_not_cross_itself() {
        let line = |corners: &[(f64, f64)]| line_errors(&hole(corners)).len();
        assert_eq!(line(&[(0.0, 0.0), (5.0, 0.0)]), 0);
        assert_eq!(line(&[(0.0, 0.0), (5.0, 0.0), (5.0, 5.0), (0.0, 0.0)]), 0);
        assert_eq!(line(&[(0.0, 0.0), (5.0, 0.0), (5.0, 5.0), (3.0, -1.0)]), 1);
        assert_eq!(line(&[(0.0, 0.0)]), 1);
    }
}
