//! How the parts of a place lie to each other: inside the boundary, outside of obstacles.

use super::part;
use crate::error::{Part, PartKind, SiteError};
use crate::inside::{distance_to_rim, is_well_in, is_well_out, pieces};
use crate::outline::{Outline, sides};
use crate::plane::Site;
use crate::point::Point;

pub(super) fn errors(site: &Site) -> Vec<SiteError> {
    let mut errors = Vec::new();
    for (k, zone) in site.zones.iter().enumerate() {
        let zone_part = part(PartKind::Zone, k, &zone.name);
        errors
            .extend(site.boundary.as_ref().and_then(|boundary| leaves(&zone_part, &zone.outline, boundary)));
        for (j, obstacle) in site.obstacles.iter().enumerate() {
            let over = part(PartKind::Obstacle, j, &obstacle.name);
            errors.extend(covered(&zone_part, &zone.outline, over, &obstacle.outline));
        }
    }
    for (part_of, at) in site.points() {
        errors.extend(point_errors(site, &part_of, at));
    }
    errors
}

fn point_errors(site: &Site, part_of: &Part, at: Point) -> Option<SiteError> {
    let boundary = site.boundary.as_ref().filter(|boundary| is_well_out(at, boundary));
    if let Some(boundary) = boundary {
        let off = distance_to_rim(at, boundary);
        return Some(SiteError::OutsideBoundary { part: part_of.clone(), corner: 1, off });
    }
    let (j, obstacle) = site.obstacles.iter().enumerate().find(|(_, o)| is_well_in(at, &o.outline))?;
    let obstacle = part(PartKind::Obstacle, j, &obstacle.name);
    Some(SiteError::InsideObstacle { part: part_of.clone(), corner: 1, obstacle })
}

fn leaves(zone: &Part, outline: &Outline, boundary: &Outline) -> Option<SiteError> {
    if let Some(k) = outline.ring.iter().position(|corner| is_well_out(*corner, boundary)) {
        let off = distance_to_rim(outline.ring[k], boundary);
        return Some(SiteError::OutsideBoundary { part: zone.clone(), corner: k + 1, off });
    }
    sides(&outline.ring).enumerate().find_map(|(k, (from, to))| {
        let middles =
            pieces(from, to, boundary).into_iter().map(|(a, b)| from + (to - from) * ((a + b) / 2.0));
        let at = middles.into_iter().find(|middle| is_well_out(*middle, boundary))?;
        Some(SiteError::LeavesBoundary { part: zone.clone(), side: k + 1, at })
    })
}

fn covered(zone: &Part, outline: &Outline, obstacle: Part, over: &Outline) -> Option<SiteError> {
    if let Some(k) = outline.ring.iter().position(|corner| is_well_in(*corner, over)) {
        return Some(SiteError::InsideObstacle { part: zone.clone(), corner: k + 1, obstacle });
    }
    let at = side_within(outline, over).or_else(|| {
        // The whole of the obstacle in the zone, or one over the other rim on rim.
        middle_of(over).filter(|at| is_well_in(*at, outline))
    })?;
    Some(SiteError::UnderObstacle { part: zone.clone(), obstacle, at })
}

/// A point of the rim of one outline inside another.
fn side_within(of: &Outline, other: &Outline) -> Option<Point> {
    of.rings().flat_map(sides).find_map(|(from, to)| {
        let mut middles =
            pieces(from, to, other).into_iter().map(|(a, b)| from + (to - from) * ((a + b) / 2.0));
        middles.find(|middle| is_well_in(*middle, other))
    })
}

/// A point well inside an outline: the middle of a diagonal that lies in it.
fn middle_of(outline: &Outline) -> Option<Point> {
    let ring = &outline.ring;
    let count = ring.len();
    let ears = (0..count).map(|k| ring[k].middle(ring[(k + 2) % count]));
    let thirds = (0..count).map(|k| (ring[k] + ring[(k + 1) % count] + ring[(k + 2) % count]) * (1.0 / 3.0));
    thirds.chain(ears).find(|middle| is_well_in(*middle, outline))
}
