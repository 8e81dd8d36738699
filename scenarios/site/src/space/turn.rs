//! What a bend of a way costs: turning on the spot, an arc round the corner, or a reversal.

use crate::arcs::turned_in_place;
use crate::machine::Turning;
use crate::point::Point;
use std::f64::consts::{FRAC_PI_2, PI};

/// Straight pieces that stand for half an arc when it is tried whether there is room for it.
const PIECES_OF_HALF_AN_ARC: usize = 6;
/// Bends of less than this are none \[rad\].
const STRAIGHT: f64 = 1e-9;

/// How a machine gets round a bend.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BendKind {
    /// It turns on the spot.
    OnTheSpot,
    /// It swings round outside of the corner, in an arc that touches it: longer than the corner's two sides. For two bends in a row
    /// each has half of the straight stretch between them; that its ends do not quite meet in direction is left aside.
    Arc,
    /// It turns in place by a reversal, where an arc has no room or takes longer. Whether there is room for that is not asked.
    Reversal,
}

/// A bend of a way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bend {
    /// Where.
    pub at: Point,
    /// By how much the direction changes, above 0, at most pi.
    pub angle: f64,
    /// How it is driven.
    pub kind: BendKind,
    /// What it takes beyond the straight stretches \[s\].
    pub time: f64,
}

impl Turning {
    /// The most that any bend costs at a speed \[s\].
    pub(crate) fn most(self, speed: f64) -> f64 {
        match self {
            Self::OnTheSpot { quarter_turn } => 2.0 * quarter_turn,
            Self::Radius { radius, reversal } => turned_in_place(radius, PI) / speed + reversal,
        }
    }
}

/// A bend to be driven: the corner, and from where and to where the machine may swing for it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Corner {
    pub(crate) before: Point,
    pub(crate) at: Point,
    pub(crate) after: Point,
    /// Speed there \[m/s\].
    pub(crate) speed: f64,
}

impl Corner {
    fn angle(&self) -> f64 {
        (self.at - self.before).angle(self.after - self.at)
    }

    /// What the bend costs; `None` where the way goes straight on. `is_free` says whether nothing lies in a track; it
    /// is not asked about arcs that take `at_most` or longer, of which nobody wants to know.
    pub(crate) fn bend(
        &self,
        turning: Turning,
        at_most: f64,
        is_free: &dyn Fn(&[Point]) -> bool,
    ) -> Option<Bend> {
        let angle = self.angle();
        if angle < STRAIGHT {
            return None;
        }
        let bend = |kind, time| Some(Bend { at: self.at, angle, kind, time });
        match turning {
            Turning::OnTheSpot { quarter_turn } => {
                bend(BendKind::OnTheSpot, quarter_turn * angle / FRAC_PI_2)
            }
            Turning::Radius { radius, reversal } => {
                let by_reversal = turned_in_place(radius, angle) / self.speed + reversal;
                let swing = self.swing(radius).map(|swing| (swing.longer() / self.speed, swing));
                match swing {
                    Some((time, swing))
                        if time <= by_reversal && (time >= at_most || swing.is_free(is_free)) =>
                    {
                        bend(BendKind::Arc, time)
                    }
                    _ => bend(BendKind::Reversal, by_reversal),
                }
            }
        }
    }

    /// The arc of the radius that touches the corner from inside the bend, with tangents from where the machine comes and to
    /// where it goes; `None` where one of them is so near that it lies inside the arc's circle.
    fn swing(&self, radius: f64) -> Option<Swing> {
        let (back, on) = ((self.before - self.at).unit(), (self.after - self.at).unit());
        let inside = back + on;
        // Half a turn has no inside.
        if inside.length() < 1e-9 || self.angle() > PI - 1e-6 {
            return None;
        }
        let centre = self.at + inside.unit() * radius;
        let halves = [self.before, self.after].map(|end| Half::new(end, self.at, centre, radius));
        match halves {
            [Some(before), Some(after)] => Some(Swing { centre, halves: [before, after] }),
            _ => None,
        }
    }
}

/// Half of a swing: a tangent, and the arc from it to the corner.
struct Half {
    end: Point,
    at: Point,
    /// Of the arc, with its sense.
    angle: f64,
    longer: f64,
}

impl Half {
    fn new(end: Point, at: Point, centre: Point, radius: f64) -> Option<Self> {
        let off = end - centre;
        let to_corner = at - centre;
        let away = off.length();
        if away <= radius {
            return None;
        }
        let whole = off.angle(to_corner);
        let angle = whole - libm::acos(radius / away);
        if angle < 0.0 {
            return None;
        }
        let tangent = libm::sqrt(away * away - radius * radius);
        let longer = tangent + radius * angle - end.distance(at);
        let angle = if to_corner.cross(off) > 0.0 { angle } else { -angle };
        Some(Self { end, at, angle, longer })
    }
}

struct Swing {
    centre: Point,
    halves: [Half; 2],
}

impl Swing {
    fn longer(&self) -> f64 {
        f64::max(0.0, self.halves.iter().map(|half| half.longer).sum())
    }

    fn is_free(&self, is_free: &dyn Fn(&[Point]) -> bool) -> bool {
        self.halves.iter().all(|half| {
            let step = half.angle / PIECES_OF_HALF_AN_ARC as f64;
            let mut track = [half.end; PIECES_OF_HALF_AN_ARC + 2];
            for (k, at) in (0..).zip(track[1..].iter_mut().rev()) {
                *at = self.centre + turned(half.at - self.centre, step * f64::from(k));
            }
            is_free(&track)
        })
    }
}

fn turned(step: Point, by: f64) -> Point {
    let (sin, cos) = (libm::sin(by), libm::cos(by));
    Point::new(step.x * cos - step.y * sin, step.x * sin + step.y * cos)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::close;

    const P: fn(f64, f64) -> Point = Point::new;
    const OPEN: &dyn Fn(&[Point]) -> bool = &|_| true;

    fn corner(before: Point, after: Point) -> Corner {
        Corner { before, at: P(0.0, 0.0), after, speed: 2.0 }
    }

    #[test]
    fn turning_on_the_spot_costs_in_proportion_to_the_angle() {
        let turning = Turning::OnTheSpot { quarter_turn: 6.0 };
        let time = |before, after| {
            corner(before, after).bend(turning, f64::INFINITY, OPEN).map_or(0.0, |bend| bend.time)
        };
        close(time(P(-9.0, 0.0), P(0.0, 9.0)), 6.0, 1e-12);
        close(time(P(-9.0, 0.0), P(9.0, 9.0)), 3.0, 1e-12);
        close(time(P(-9.0, 0.0), P(-5.0, 0.0)), 12.0, 1e-12);
        close(time(P(-9.0, 0.0), P(5.0, 0.0)), 0.0, 0.0);
    }

    #[test]
    fn an_arc_of_a_quarter_is_as_much_longer_as_tangents_and_arc_by_hand() {
        let turning = Turning::Radius { radius: 2.0, reversal: 10.0 };
        let bend = corner(P(-20.0, 0.0), P(0.0, 20.0)).bend(turning, f64::INFINITY, OPEN).unwrap();
        // The centre is at (-sqrt 2, sqrt 2), seen from which the corner and (-20, 0) are `whole` apart.
        let root = 2.0_f64.sqrt();
        let away = (404.0 - 40.0 * root).sqrt();
        let whole = ((4.0 - 20.0 * root) / (2.0 * away)).acos();
        let half = 2.0 * (whole - (2.0 / away).acos()) + (away * away - 4.0).sqrt() - 20.0;
        assert_eq!(bend.kind, BendKind::Arc);
        close(bend.time, 2.0 * half / 2.0, 1e-9);
        assert!(bend.time > 0.0);
    }

    #[test]
    fn a_half_turn_a_short_leg_and_a_tight_corner_cost_a_reversal() {
        let turning = Turning::Radius { radius: 2.0, reversal: 10.0 };
        let back = corner(P(-20.0, 0.0), P(-15.0, 0.0)).bend(turning, f64::INFINITY, OPEN).unwrap();
        assert_eq!(back.kind, BendKind::Reversal);
        // Three arcs that come to half a turn, at 2 m/s.
        close(back.time, 2.0 * PI / 2.0 + 10.0, 1e-12);
        let short = corner(P(-2.0, 0.0), P(0.0, 20.0)).bend(turning, f64::INFINITY, OPEN).unwrap();
        assert_eq!(short.kind, BendKind::Reversal);
        let tight = corner(P(-20.0, 0.0), P(0.0, 20.0))
            .bend(turning, f64::INFINITY, &|track| track.iter().all(|at| at.y > -0.2 && at.x < 0.2))
            .unwrap();
        assert_eq!(tight.kind, BendKind::Reversal);
    }
}
