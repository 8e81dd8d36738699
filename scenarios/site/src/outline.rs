//! The outline of an area: a ring of corners, with holes.

use crate::point::Point;
use std::f64::consts::PI;

/// Sides of the polygon that stands for a disc.
pub(crate) const SIDES_OF_A_DISC: usize = 64;

/// An area by its corners \[m\]. The rings may run either way round; the last corner is not the first again.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outline {
    /// The ring around it, at least three corners.
    pub ring: Vec<Point>,
    /// What is left out of it: rings inside, apart from each other.
    pub holes: Vec<Vec<Point>>,
}

impl Outline {
    /// An area by its corners; a last corner in the place of the first closes the ring and is dropped.
    ///
    /// ```
    /// use site::{Outline, Point};
    /// let p = Point::new;
    /// let closed = Outline::from_corners(vec![p(0.0, 0.0), p(3.0, 0.0), p(0.0, 4.0), p(0.0, 0.0)]);
    /// assert_eq!(closed.ring.len(), 3);
    /// ```
    pub fn from_corners(corners: Vec<Point>) -> Self {
        Self { ring: opened(corners), holes: Vec::new() }
    }

    /// The same with a hole more, its ring closed or not.
    #[must_use]
    pub fn with_hole(mut self, corners: Vec<Point>) -> Self {
        self.holes.push(opened(corners));
        self
    }

    /// A rectangle by one corner: `length` runs from it in the direction \[rad, anticlockwise from the x axis\], `width` to the left
    /// of that.
    pub fn rectangle(corner: Point, length: f64, width: f64, direction: f64) -> Self {
        let along = Point::new(libm::cos(direction), libm::sin(direction));
        let across = Point::new(-along.y, along.x) * width;
        let along = along * length;
        Self::from_corners(vec![corner, corner + along, corner + along + across, corner + across])
    }

    /// A disc, as a polygon of 64 sides and of the disc's own area: no point of its rim is more than 0.1 % of the diameter off the
    /// circle, and a way round it is less than 0.05 % too long.
    pub fn disc(centre: Point, diameter: f64) -> Self {
        Self::disc_of_sides(centre, diameter, SIDES_OF_A_DISC)
    }

    /// The same of as many sides as wanted, at least three: the errors fall with the square of their number.
    pub fn disc_of_sides(centre: Point, diameter: f64, sides: usize) -> Self {
        let part = 2.0 * PI / sides as f64;
        let radius = diameter / 2.0 * libm::sqrt(part / libm::sin(part));
        let corner = |k| {
            let angle = part * f64::from(k);
            centre + Point::new(libm::cos(angle), libm::sin(angle)) * radius
        };
        Self::from_corners((0..sides as u32).map(corner).collect())
    }

    /// The same area elsewhere: by a step, such as the pitch of beds in a row \[m\].
    ///
    /// ```
    /// use site::{Outline, Point};
    /// let bed = Outline::rectangle(Point::new(0.0, 0.0), 3.0, 1.2, 0.0);
    /// let beds: Vec<Outline> = (0..14).map(|k| bed.moved(Point::new(0.0, 1.8) * f64::from(k))).collect();
    /// assert!((beds[13].ring[0].y - 23.4).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn moved(&self, by: Point) -> Self {
        let ring = |ring: &[Point]| ring.iter().map(|corner| *corner + by).collect();
        Self { ring: ring(&self.ring), holes: self.holes.iter().map(|hole| ring(hole)).collect() }
    }

    /// All its rings: the outer one, then the holes.
    pub(crate) fn rings(&self) -> impl Iterator<Item = &[Point]> {
        std::iter::once(&self.ring[..]).chain(self.holes.iter().map(|hole| &hole[..]))
    }
}

/// A ring whose last corner is not the first again.
fn opened(mut corners: Vec<Point>) -> Vec<Point> {
    if corners.len() > 1 && corners.first() == corners.last() {
        corners.pop();
    }
    corners
}

/// The sides of a ring, each from a corner to the next.
pub(crate) fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    (0..ring.len()).map(|k| (ring[k], ring[(k + 1) % ring.len()]))
}
