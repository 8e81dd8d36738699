//! Which points lie in an outline, and where sides meet.

use crate::outline::{Outline, sides};
use crate::point::{Point, distance_to_side};

/// What touches or overlaps by no more than this is let pass: a millimetre, finer than anybody measures \[m\].
pub(crate) const TOUCH: f64 = 1e-3;

/// Whether a point lies in an outline and not in its holes; of points on the rim nothing is promised.
pub(crate) fn is_in(point: Point, outline: &Outline) -> bool {
    outline.rings().filter(|ring| is_in_ring(point, ring)).count() == 1
}

/// Whether a ring goes round a point: an odd number of its sides pass to the right of it.
pub(crate) fn is_in_ring(point: Point, ring: &[Point]) -> bool {
    let passes = |&(from, to): &(Point, Point)| {
        (from.y > point.y) != (to.y > point.y) && ((to - from).cross(point - from) > 0.0) == (to.y > from.y)
    };
    sides(ring).filter(passes).count() % 2 == 1
}

/// How far a point lies from the rim of an outline, holes included \[m\].
pub(crate) fn distance_to_rim(point: Point, outline: &Outline) -> f64 {
    let sides = outline.rings().flat_map(sides);
    sides.map(|(from, to)| distance_to_side(point, from, to)).fold(f64::INFINITY, f64::min)
}

/// Whether a point lies in an outline, not just at its rim.
pub(crate) fn is_well_in(point: Point, outline: &Outline) -> bool {
    is_in(point, outline) && distance_to_rim(point, outline) > TOUCH
}

/// Whether a point lies outside of an outline, not just at its rim.
pub(crate) fn is_well_out(point: Point, outline: &Outline) -> bool {
    !is_in(point, outline) && distance_to_rim(point, outline) > TOUCH
}

/// Where a side, from 0 at its beginning to 1 at its end, meets another. Sides along each other meet at the ends of what they share.
pub(crate) fn meetings(from: Point, to: Point, other: (Point, Point)) -> impl Iterator<Item = f64> {
    let (along, across) = (to - from, other.1 - other.0);
    let turn = along.cross(across);
    let parallel = turn.abs() <= 1e-12 * along.length() * across.length();
    let shares = if parallel {
        let square = along.dot(along);
        let near = |p: Point| distance_to_side(p, from, to) <= 1e-9;
        [other.0, other.1].map(|p| if near(p) { (p - from).dot(along) / square } else { f64::NAN })
    } else {
        let share = (other.0 - from).cross(across) / turn;
        let of_other = (other.0 - from).cross(along) / turn;
        // A ten-thousandth of a millimetre beyond an end still meets it.
        let slack = 1e-7 / across.length();
        [if (-slack..=1.0 + slack).contains(&of_other) { share } else { f64::NAN }, f64::NAN]
    };
    shares.into_iter().filter(|share| (0.0..=1.0).contains(share))
}

/// The pieces into which the rim of an outline cuts a side: from 0 at its beginning to 1 at its end, in order, none of no length.
pub(crate) fn pieces(from: Point, to: Point, outline: &Outline) -> Vec<(f64, f64)> {
    let mut cuts = vec![0.0, 1.0];
    for other in outline.rings().flat_map(sides) {
        cuts.extend(meetings(from, to, other));
    }
    cuts.sort_by(f64::total_cmp);
    cuts.windows(2).filter(|cut| cut[1] > cut[0]).map(|cut| (cut[0], cut[1])).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const P: fn(f64, f64) -> Point = Point::new;

    #[test]
    fn a_point_in_a_hole_is_not_in_the_outline() {
        let square = Outline::rectangle(P(0.0, 0.0), 4.0, 4.0, 0.0);
        let holed = square.with_hole(vec![P(1.0, 1.0), P(1.0, 3.0), P(3.0, 3.0), P(3.0, 1.0)]);
        assert!(is_in(P(0.5, 2.0), &holed) && is_in(P(3.5, 1.0), &holed));
        assert!(!is_in(P(2.0, 2.0), &holed) && !is_in(P(5.0, 2.0), &holed) && !is_in(P(-1.0, 4.0), &holed));
        assert!(is_well_in(P(0.5, 0.5), &holed) && !is_well_in(P(0.0005, 2.0), &holed));
        assert!(is_well_out(P(2.0, 2.0), &holed) && !is_well_out(P(-0.0005, 2.0), &holed));
    }

    #[test]
    fn a_side_is_cut_where_it_passes_the_rim() {
        let square = Outline::rectangle(P(0.0, 0.0), 4.0, 4.0, 0.0);
        assert_eq!(pieces(P(-2.0, 1.0), P(6.0, 1.0), &square), [(0.0, 0.25), (0.25, 0.75), (0.75, 1.0)]);
        assert_eq!(pieces(P(-4.0, 0.0), P(12.0, 0.0), &square), [(0.0, 0.25), (0.25, 0.5), (0.5, 1.0)]);
        assert_eq!(pieces(P(1.0, 1.0), P(2.0, 3.0), &square), [(0.0, 1.0)]);
    }
}
