//! Which zones no machine gets to.

use super::part;
use crate::error::{PartKind, SiteError};
use crate::machine::{Machine, Pace};
use crate::plane::{Site, Zone};
use crate::point::Point;
use crate::space::FreeSpace;

/// How a way is driven does not matter here.
const ANY_PACE: Pace = Pace { speed: 1.0, start_and_stop: 0.0 };
/// How nearly the widest that could get there is told \[m\].
const TOLD: f64 = 0.01;

impl Site {
    /// The zones that no machine of these can drive to from any pile, each with the widest that could. A machine that finds no room
    /// at a pile or in a zone stands as near as it can, at most half its width and its clearance off. Empty where there is no pile. The
    /// site's shapes are right (see [`Site::errors`]).
    ///
    /// ```
    /// use site::{Fence, Gate, Machine, Outline, Pile, Point, Site, Zone};
    /// let gate = Gate::between("gate", [Point::new(20.0, 8.0), Point::new(20.0, 10.0)], 8.0);
    /// let line = vec![Point::new(20.0, 0.0), Point::new(20.0, 20.0)];
    /// let pen = Outline::rectangle(Point::new(22.0, 2.0), 16.0, 16.0, 0.0);
    /// let site = Site {
    ///     boundary: Some(Outline::rectangle(Point::new(0.0, 0.0), 40.0, 20.0, 0.0)),
    ///     fences: vec![Fence { name: "fence".into(), line, gates: vec![gate] }],
    ///     zones: vec![Zone { name: "pen".into(), outline: pen, depth: 0.1 }],
    ///     piles: vec![Pile { name: "heap".into(), at: Point::new(5.0, 5.0) }],
    ///     ..Site::default()
    /// };
    /// let wide = Machine { width: 2.4, ..Machine::WALKER };
    /// assert_eq!(site.unreachable(&[wide])[0].to_string(), "zone \"pen\": no machine can get there from any pile; the widest that \
    ///     could is 2.00 m with its clearances: look for what is narrower than the machine");
    /// assert_eq!(site.unreachable(&[wide, Machine::WALKER]), []);
    /// ```
    pub fn unreachable(&self, machines: &[Machine]) -> Vec<SiteError> {
        if self.piles.is_empty() || machines.is_empty() {
            return Vec::new();
        }
        let spaces: Vec<FreeSpace> = machines.iter().map(|machine| self.free_space(machine)).collect();
        let cut_off = self.zones.iter().enumerate().filter(|(_, zone)| {
            let places = places(zone);
            !spaces.iter().any(|space| self.is_reached(space, &places))
        });
        let most = machines.iter().map(|machine| 2.0 * machine.growth()).fold(0.0, f64::max);
        let error = |(k, zone): (usize, &Zone)| {
            let part = part(PartKind::Zone, k, &zone.name);
            SiteError::NoWay { part, widest: self.widest(&places(zone), most) }
        };
        cut_off.map(error).collect()
    }

    fn is_reached(&self, space: &FreeSpace, places: &[Point]) -> bool {
        let growth = space.machine().growth();
        let stand = |at: Point| space.nearest_free(at, growth);
        let ends: Vec<Point> = places.iter().filter_map(|at| stand(*at)).collect();
        let mut starts = self.piles.iter().filter_map(|pile| stand(pile.at));
        starts.any(|start| space.times(start, &ends, &ANY_PACE).iter().any(Result::is_ok))
    }

    /// The widest that gets from a pile to one of some places, below a width at which nothing does.
    fn widest(&self, places: &[Point], mut most: f64) -> Option<f64> {
        let gets_there = |width: f64| {
            let machine = Machine { width, ..Machine::WALKER };
            self.is_reached(&self.free_space(&machine), places)
        };
        let mut least = 0.0;
        if !gets_there(least) {
            return None;
        }
        while most - least > TOLD / 4.0 {
            let middle = f64::midpoint(least, most);
            if gets_there(middle) { least = middle } else { most = middle }
        }
        // Just below, to the centimetre: what is told gets there.
        Some(libm::floor((least + TOLD / 4.0) / TOLD) * TOLD)
    }
}

/// Some places of a zone.
fn places(zone: &Zone) -> Vec<Point> {
    let apart = libm::sqrt(zone.outline.area()) / 4.0;
    zone.outline.drop_points(apart).iter().map(|point| point.at).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Outline, Pile};

    #[test]
    fn a_zone_fenced_in_without_a_gate_is_out_of_reach_for_everybody() {
        let p = Point::new;
        let pen = Outline::rectangle(p(10.0, 10.0), 10.0, 10.0, 0.0);
        let line =
            [(8.0, 8.0), (22.0, 8.0), (22.0, 22.0), (8.0, 22.0), (8.0, 8.0)].map(|(x, y)| p(x, y)).to_vec();
        let mut site = Site {
            fences: vec![crate::Fence { name: "fence".into(), line, gates: vec![] }],
            zones: vec![Zone { name: "pen".into(), outline: pen, depth: 0.1 }],
            piles: vec![Pile { name: "heap".into(), at: p(0.0, 0.0) }],
            ..Site::default()
        };
        let errors = site.unreachable(&[Machine::WALKER]);
        assert!(matches!(errors[..], [SiteError::NoWay { widest: None, .. }]), "{errors:?}");
        site.piles[0].at = p(12.0, 12.0);
        assert_eq!(site.unreachable(&[Machine::WALKER]), []);
        site.piles.clear();
        assert_eq!(site.unreachable(&[Machine::WALKER]), []);
    }
}
