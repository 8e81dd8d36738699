//! What is wrong with a place: each shape by itself, its figures, and how its parts lie to each other.

mod gates;
mod lie;
mod reach;
mod shape;

pub(crate) use gates::{side_of, stretch};
pub(crate) use shape::{line_errors, meeting};

use crate::error::{Part, PartKind, SiteError};
use crate::outline::Outline;
use crate::plane::{Site, TippingShape};
use crate::point::Point;

/// A part by its kind, place and name.
pub(crate) fn part(kind: PartKind, index: usize, name: &str) -> Part {
    Part { kind, index, name: name.to_owned() }
}

impl Site {
    /// Everything that is wrong with it: shapes first; only where all shapes are right, how they lie to each other as well. Whether
    /// a machine gets to a zone is asked with the machines at hand: [`Site::unreachable`].
    ///
    /// ```
    /// use site::{Outline, Point, Site, Zone};
    /// let at = |x| Outline::rectangle(Point::new(x, 0.0), 10.0, 10.0, 0.0);
    /// let zone = Zone { name: "pen".into(), outline: at(5.0), depth: 0.1 };
    /// let site = Site { boundary: Some(at(0.0)), zones: vec![zone], ..Site::default() };
    /// assert_eq!(site.errors()[0].to_string(), "zone \"pen\": corner 2 lies 5.00 m outside the boundary; move it inside, \
    ///     or the boundary further out");
    /// ```
    pub fn errors(&self) -> Vec<SiteError> {
        let mut errors = self.shape_errors();
        errors.extend(self.figure_errors());
        if errors.is_empty() {
            errors.extend(gates::errors(self));
            errors.extend(lie::errors(self));
        }
        errors
    }

    fn shape_errors(&self) -> Vec<SiteError> {
        let mut errors = Vec::new();
        for (part, outline) in self.outlines() {
            let wrap = |error| SiteError::Shape { part: part.clone(), error };
            errors.extend(outline.errors().into_iter().map(wrap));
        }
        for (part, line) in self.lines() {
            let wrap = |error| SiteError::Shape { part: part.clone(), error };
            errors.extend(line_errors(line).into_iter().map(wrap));
        }
        for (part, point) in self.points() {
            if !point.is_finite() {
                let error = crate::ShapeError::NoPlace { corner: 1 };
                errors.push(SiteError::Shape { part, error });
            }
        }
        errors
    }

    fn outlines(&self) -> Vec<(Part, &Outline)> {
        let boundary = self.boundary.iter().map(|outline| (part(PartKind::Boundary, 0, ""), outline));
        let obstacles = self.obstacles.iter().enumerate();
        let obstacles = obstacles.map(|(k, o)| (part(PartKind::Obstacle, k, &o.name), &o.outline));
        let surfaces = self.surfaces.iter().enumerate();
        let surfaces = surfaces.map(|(k, s)| (part(PartKind::Surface, k, &s.name), &s.outline));
        let zones = self.zones.iter().enumerate();
        let zones = zones.map(|(k, z)| (part(PartKind::Zone, k, &z.name), &z.outline));
        boundary.chain(obstacles).chain(surfaces).chain(zones).collect()
    }

    fn lines(&self) -> Vec<(Part, &[Point])> {
        let fences = self.fences.iter().enumerate();
        let fences = fences.map(|(k, f)| (part(PartKind::Fence, k, &f.name), &f.line[..]));
        let along = self.tipping.iter().enumerate().filter_map(|(k, t)| match &t.shape {
            TippingShape::Along(line) => Some((part(PartKind::TippingPlace, k, &t.name), &line[..])),
            TippingShape::Point(_) => None,
        });
        fences.chain(along).collect()
    }

    /// Piles and tipping points.
    fn points(&self) -> Vec<(Part, Point)> {
        let piles = self.piles.iter().enumerate().map(|(k, p)| (part(PartKind::Pile, k, &p.name), p.at));
        let tipping = self.tipping.iter().enumerate().filter_map(|(k, t)| match t.shape {
            TippingShape::Point(at) => Some((part(PartKind::TippingPlace, k, &t.name), at)),
            TippingShape::Along(_) => None,
        });
        piles.chain(tipping).collect()
    }

    fn figure_errors(&self) -> Vec<SiteError> {
        let mut errors = Vec::new();
        let mut check = |part: Part, what, value: f64, right: bool, wanted| {
            if !(value.is_finite() && right) {
                errors.push(SiteError::Figure { part, what, value, wanted });
            }
        };
        for (k, zone) in self.zones.iter().enumerate() {
            let zone_part = part(PartKind::Zone, k, &zone.name);
            check(zone_part, "depth", zone.depth, zone.depth > 0.0, "above 0 m");
        }
        for (k, surface) in self.surfaces.iter().enumerate() {
            let right = surface.share > 0.0 && surface.share <= 2.0;
            let surface_part = part(PartKind::Surface, k, &surface.name);
            check(surface_part, "share of speed", surface.share, right, "above 0 and at most 2");
        }
        for (k, place) in self.tipping.iter().enumerate() {
            let room = place.room.unwrap_or(1.0);
            let place_part = part(PartKind::TippingPlace, k, &place.name);
            check(place_part, "room", room, room > 0.0, "above 0 m3");
        }
        for (k, gate) in self.fences.iter().flat_map(|fence| fence.gates.iter().enumerate()) {
            let gate_part = || part(PartKind::Gate, k, &gate.name);
            let apart = gate.posts[0].distance(gate.posts[1]);
            let right = gate.width > 0.0 && gate.width <= apart + crate::inside::TOUCH;
            check(gate_part(), "width", gate.width, right, "above 0 m and at most the distance of its posts");
            check(gate_part(), "passing time", gate.passing, gate.passing >= 0.0, "0 s or more");
        }
        errors
    }
}

#[cfg(test)]
mod tests;
