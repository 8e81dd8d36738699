//! Area, centroid and mean straight distance of an outline, its holes left out: all closed forms, exact but for the last digits.

use crate::outline::{Outline, sides};
use crate::point::Point;

impl Outline {
    /// Its area, holes left out \[m2\].
    ///
    /// ```
    /// use site::{Outline, Point};
    /// let yard = Outline::rectangle(Point::new(0.0, 0.0), 30.0, 20.0, 0.0);
    /// let bed = Outline::rectangle(Point::new(5.0, 5.0), 4.0, 3.0, 0.0);
    /// assert_eq!(yard.with_hole(bed.ring).area(), 588.0);
    /// ```
    pub fn area(&self) -> f64 {
        signed_rings(self).map(|(ring, sign)| sign * moments(ring).0.abs()).sum()
    }

    /// The middle of its area; it may lie in a hole or outside of a bent outline. The outline has an area.
    pub fn centroid(&self) -> Point {
        let (mut area, mut moment) = (0.0, Point::default());
        let base = self.ring.first().copied().unwrap_or_default();
        for (ring, sign) in signed_rings(self) {
            let (own, about_first) = moments(ring);
            let sign = sign * own.signum();
            area += sign * own;
            let first = ring.first().copied().unwrap_or_default();
            moment = moment + (about_first + (first - base) * own) * sign;
        }
        base + moment * (1.0 / area)
    }

    /// The mean straight distance from a point, in it or not, to its area \[m\]: the sum over the sides of
    /// `h^3/6 [t sqrt(1 + t^2) + asinh t]` between the tangents `t` of their ends as seen from the point, `h` off the side's line,
    /// divided by the area.
    ///
    /// ```
    /// use site::{Outline, Point};
    /// let square = Outline::rectangle(Point::new(0.0, 0.0), 1.0, 1.0, 0.0);
    /// assert!((square.mean_distance(Point::new(0.5, 0.5)) - 0.382_597_858_2).abs() < 1e-10);
    /// ```
    pub fn mean_distance(&self, from: Point) -> f64 {
        let whole = |ring: &[Point]| sides(ring).map(|side| of_triangle(from, side)).sum::<f64>();
        let sum: f64 =
            signed_rings(self).map(|(ring, sign)| sign * moments(ring).0.signum() * whole(ring)).sum();
        sum / self.area()
    }
}

/// The outer ring counted once, holes taken off.
fn signed_rings(outline: &Outline) -> impl Iterator<Item = (&[Point], f64)> {
    outline.rings().zip(std::iter::once(1.0).chain(std::iter::repeat(-1.0)))
}

/// The area of a ring, above 0 if it runs anticlockwise, and its first moments about its first corner.
pub(crate) fn moments(ring: &[Point]) -> (f64, Point) {
    let (mut double, mut moment) = (0.0, Point::default());
    for (from, to) in sides(ring) {
        let (a, b) = (from - ring[0], to - ring[0]);
        let cross = a.cross(b);
        double += cross;
        moment = moment + (a + b) * cross;
    }
    (double / 2.0, moment * (1.0 / 6.0))
}

/// The integral of the distance over the triangle from a point to a side, below 0 if the side runs clockwise about the point.
fn of_triangle(from: Point, (a, b): (Point, Point)) -> f64 {
    let (a, b) = (a - from, b - from);
    let along = (b - a).unit();
    let off = a.cross(along);
    if off == 0.0 {
        return 0.0;
    }
    // h^3 t sqrt(1 + t^2) is written as h s r, which stays exact where the point is almost in line with the side.
    let part = |p: Point| {
        let s = p.dot(along);
        s * p.length() + off * off * libm::asinh(s / off.abs())
    };
    off / 6.0 * (part(b) - part(a))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{Draw, L_SHAPE, close, outline};

    const P: fn(f64, f64) -> Point = Point::new;

    #[test]
    fn area_and_middle_are_those_of_the_parts_whichever_way_the_rings_run() {
        let mut shape = outline(&L_SHAPE);
        close(shape.area(), 600.0, 1e-12);
        // 400 m2 about (20 5) and 200 m2 about (5 20).
        close(shape.centroid().x, 15.0, 1e-12);
        close(shape.centroid().y, 10.0, 1e-12);
        shape = shape.with_hole(outline(&[(10.0, 2.0), (10.0, 6.0), (20.0, 6.0), (20.0, 2.0)]).ring);
        shape.ring.reverse();
        close(shape.area(), 560.0, 1e-12);
        close(shape.centroid().x, (600.0 * 15.0 - 40.0 * 15.0) / 560.0, 1e-12);
        close(shape.centroid().y, (600.0 * 10.0 - 40.0 * 4.0) / 560.0, 1e-12);
    }

    #[test]
    fn far_from_the_origin_no_digits_are_lost() {
        let far = P(700_000.0, -900_000.0);
        let moved = Outline::from_corners(outline(&L_SHAPE).ring.iter().map(|p| *p + far).collect());
        close(moved.area(), 600.0, 1e-9);
        close(moved.centroid().distance(far + P(15.0, 10.0)), 0.0, 1e-9);
    }

    #[test]
    fn a_disc_has_its_own_area_and_mean_distances_within_what_its_sides_leave_out() {
        use std::f64::consts::PI;
        for (sides, within) in [(64, 2e-5), (2_000, 2e-11)] {
            let disc = Outline::disc_of_sides(P(3.0, -2.0), 2.0, sides);
            close(disc.area(), PI, 1e-12);
            close(disc.mean_distance(P(3.0, -2.0)), 2.0 / 3.0, within);
        }
        // From the rim, 32 R / (9 pi).
        close(Outline::disc(P(0.0, 0.0), 2.0).mean_distance(P(1.0, 0.0)), 32.0 / (9.0 * PI), 5e-5);
    }

    #[test]
    fn a_mean_distance_is_the_mean_of_drawn_ones_and_holes_are_left_out() {
        let holed = outline(&L_SHAPE).with_hole(vec![P(12.0, 2.0), P(30.0, 3.0), P(20.0, 8.0)]);
        let mut draw = Draw::new(7);
        for from in [P(5.0, 25.0), P(20.0, 5.0), P(60.0, -30.0)] {
            let (mut sum, mut squares, mut count) = (0.0, 0.0, 0.0);
            while count < 200_000.0 {
                let at = P(draw.between(0.0, 40.0), draw.between(0.0, 30.0));
                if crate::inside::is_in(at, &holed) {
                    let distance = at.distance(from);
                    (sum, squares, count) = (sum + distance, squares + distance * distance, count + 1.0);
                }
            }
            let mean = sum / count;
            let error = libm::sqrt((squares / count - mean * mean) / count);
            close(holed.mean_distance(from), mean, 4.5 * error);
        }
    }

    #[test]
    fn a_point_in_line_with_a_side_is_no_exception() {
        let square = outline(&[(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)]);
        let on_line = square.mean_distance(P(3.0, 0.0));
        for off in [1e-3, 1e-6, 1e-9, 1e-12] {
            close(square.mean_distance(P(3.0, off)), on_line, off);
        }
    }
}
