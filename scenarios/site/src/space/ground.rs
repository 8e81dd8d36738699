//! Surfaces under a way: how long its stretches are on each.

use crate::inside::{is_in, pieces};
use crate::plane::Surface;
use crate::point::Point;

/// A stretch of a way on one kind of ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// The surface by its place in [`crate::Site::surfaces`]; `None`: ordinary ground.
    pub surface: Option<usize>,
    /// How long it is \[m\].
    pub length: f64,
}

/// The surface that counts at a point: of several the slowest.
fn surface_at(at: Point, surfaces: &[Surface]) -> Option<usize> {
    let here = surfaces.iter().enumerate().filter(|(_, surface)| is_in(at, &surface.outline));
    here.reduce(|slow, next| if next.1.share < slow.1.share { next } else { slow }).map(|(k, _)| k)
}

/// The stretches of a straight way, in order.
pub(crate) fn stretches(from: Point, to: Point, surfaces: &[Surface]) -> Vec<Stretch> {
    let length = from.distance(to);
    let mut cuts: Vec<f64> = vec![0.0, 1.0];
    for surface in surfaces {
        cuts.extend(pieces(from, to, &surface.outline).iter().map(|piece| piece.0));
    }
    cuts.sort_by(f64::total_cmp);
    let mut stretches: Vec<Stretch> = Vec::new();
    for cut in cuts.windows(2).filter(|cut| cut[1] > cut[0]) {
        let surface = surface_at(from + (to - from) * f64::midpoint(cut[0], cut[1]), surfaces);
        join(&mut stretches, Stretch { surface, length: length * (cut[1] - cut[0]) });
    }
    stretches
}

/// Adds a stretch, as part of the last one where the ground is the same.
pub(crate) fn join(stretches: &mut Vec<Stretch>, next: Stretch) {
    match stretches.last_mut() {
        Some(last) if last.surface == next.surface => last.length += next.length,
        _ => stretches.push(next),
    }
}

/// Whether a straight way comes near a surface at all: most do not.
fn is_near(from: Point, to: Point, surface: &Surface) -> bool {
    let ring = &surface.outline.ring;
    let all = |beyond: &dyn Fn(Point) -> bool| ring.iter().all(|corner| beyond(*corner));
    !(all(&|p| p.x > from.x.max(to.x))
        || all(&|p| p.x < from.x.min(to.x))
        || all(&|p| p.y > from.y.max(to.y))
        || all(&|p| p.y < from.y.min(to.y))
        || all(&|p| (to - from).cross(p - from) > 0.0)
        || all(&|p| (to - from).cross(p - from) < 0.0))
}

/// What a straight way is worth in metres of ordinary ground: each stretch over its share of speed.
pub(crate) fn worth(from: Point, to: Point, surfaces: &[Surface]) -> f64 {
    if !surfaces.iter().any(|surface| is_near(from, to, surface)) {
        return from.distance(to);
    }
    let share = |stretch: &Stretch| stretch.surface.map_or(1.0, |k| surfaces[k].share);
    stretches(from, to, surfaces).iter().map(|stretch| stretch.length / share(stretch)).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{close, outline};

    const P: fn(f64, f64) -> Point = Point::new;

    #[test]
    fn each_stretch_counts_over_its_share_and_of_several_surfaces_the_slowest() {
        let patch = |x: f64, share| Surface {
            name: "patch".into(),
            outline: outline(&[(x, -1.0), (x + 10.0, -1.0), (x + 10.0, 1.0), (x, 1.0)]),
            share,
        };
        let surfaces = [patch(10.0, 0.5), patch(15.0, 0.25)];
        let found = stretches(P(0.0, 0.0), P(30.0, 0.0), &surfaces);
        let lengths: Vec<_> = found.iter().map(|s| (s.surface, s.length)).collect();
        let expected = [(None, 10.0), (Some(0), 5.0), (Some(1), 10.0), (None, 5.0)];
        assert_eq!(lengths.len(), 4);
        for ((surface, length), expected) in lengths.iter().zip(expected) {
            assert_eq!(*surface, expected.0);
            close(*length, expected.1, 1e-12);
        }
        close(worth(P(0.0, 0.0), P(30.0, 0.0), &surfaces), 10.0 + 10.0 + 40.0 + 5.0, 1e-12);
        close(worth(P(0.0, 5.0), P(30.0, 5.0), &surfaces), 30.0, 1e-12);
    }
}
