//! The nearest place where there is room for the machine.

use super::FreeSpace;
use super::piece::SLACK;
use crate::point::Point;

impl FreeSpace {
    /// The point nearest to another where the machine's middle may be, at most so far off; the point itself if it is free. Nothing is
    /// said of whether a way leads there.
    ///
    /// ```
    /// use site::{Machine, Outline, Point, Site};
    /// let boundary = Some(Outline::rectangle(Point::new(0.0, 0.0), 30.0, 20.0, 0.0));
    /// let site = Site { boundary, ..Site::default() };
    /// let space = site.free_space(&Machine { width: 2.0, clearance: 0.5, ..Machine::WALKER });
    /// let near = space.nearest_free(Point::new(1.0, 7.0), 1.0).unwrap();
    /// assert!(near.distance(Point::new(1.5, 7.0)) < 1e-9);
    /// assert_eq!(space.nearest_free(Point::new(-5.0, 7.0), 1.0), None);
    /// ```
    pub fn nearest_free(&self, to: Point, within: f64) -> Option<Point> {
        let here = to - self.origin;
        if self.is_free_here(here) {
            return Some(to);
        }
        // It lies on the rim of what blocks: off one of its sides, where two of them meet, or at a corner.
        let near = |side: &(Point, Point)| crate::point::distance_to_side(here, side.0, side.1) <= within;
        let rims: Vec<_> = self.pieces.iter().map(|piece| piece.outer).filter(near).collect();
        let mut places: Vec<Point> = Vec::new();
        for (k, (from, to)) in rims.iter().enumerate() {
            let along = *to - *from;
            let share = (here - *from).dot(along) / along.dot(along);
            places.extend((0.0..=1.0).contains(&share).then(|| *from + along * share));
            places.extend([*from, *to]);
            places.extend(rims[..k].iter().filter_map(|other| crossing((*from, *to), *other)));
        }
        let mut places: Vec<(f64, Point)> = places.into_iter().map(|at| (at.distance(here), at)).collect();
        places.retain(|(off, _)| *off <= within + SLACK);
        places.sort_by(|a, b| a.0.total_cmp(&b.0));
        places.into_iter().find(|(_, at)| self.is_free_here(*at)).map(|(_, at)| at + self.origin)
    }
}

/// Where two lines that cross within their ends do so.
pub(crate) fn crossing(a: (Point, Point), b: (Point, Point)) -> Option<Point> {
    let (along, across) = (a.1 - a.0, b.1 - b.0);
    let turn = along.cross(across);
    let share = (b.0 - a.0).cross(across) / turn;
    let of_other = (b.0 - a.0).cross(along) / turn;
    // Of parallel lines both are no numbers.
    ((0.0..=1.0).contains(&share) && (0.0..=1.0).contains(&of_other)).then(|| a.0 + along * share)
}
