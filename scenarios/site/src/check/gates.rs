//! Whether gates stand on their fences, apart from each other.

use super::part;
use crate::error::{PartKind, SiteError};
use crate::inside::TOUCH;
use crate::plane::{Fence, Gate, Site};
use crate::point::distance_to_side;

/// Gates are drawn by finger and tape: so far off a fence a post still stands on it \[m\].
const ON_FENCE: f64 = 0.05;

/// The side of a fence nearest to both posts of a gate, and how far the farther one is from it \[m\]. The fence has two corners or more.
pub(crate) fn side_of(gate: &Gate, fence: &Fence) -> (usize, f64) {
    let off = |k: usize| {
        let (from, to) = (fence.line[k], fence.line[k + 1]);
        gate.posts.iter().map(|post| distance_to_side(*post, from, to)).fold(0.0, f64::max)
    };
    let sides = (0..fence.line.len() - 1).map(|k| (k, off(k)));
    sides.fold((0, f64::INFINITY), |best, side| if side.1 < best.1 { side } else { best })
}

/// The stretch of its side that a gate takes up, in metres from the side's beginning.
pub(crate) fn stretch(gate: &Gate, fence: &Fence, side: usize) -> (f64, f64) {
    let (from, to) = (fence.line[side], fence.line[side + 1]);
    let along = (to - from).unit();
    let [a, b] = gate.posts.map(|post| (post - from).dot(along));
    (a.min(b), a.max(b))
}

pub(super) fn errors(site: &Site) -> Vec<SiteError> {
    let mut errors = Vec::new();
    for (k, fence) in site.fences.iter().enumerate() {
        let fence_part = || part(PartKind::Fence, k, &fence.name);
        let gate_part = |j: usize| part(PartKind::Gate, j, &fence.gates[j].name);
        for (j, gate) in fence.gates.iter().enumerate() {
            let (side, off) = side_of(gate, fence);
            if off > ON_FENCE {
                let (from, to) = (fence.line[side], fence.line[side + 1]);
                let first = distance_to_side(gate.posts[0], from, to) > ON_FENCE;
                let post = if first { 1 } else { 2 };
                let off = distance_to_side(gate.posts[post - 1], from, to);
                errors.push(SiteError::PostOffFence { gate: gate_part(j), fence: fence_part(), post, off });
                continue;
            }
            let own = stretch(gate, fence, side);
            for (i, other) in fence.gates[..j].iter().enumerate() {
                let there = side_of(other, fence);
                let other = stretch(other, fence, there.0);
                let overlap = own.1.min(other.1) - own.0.max(other.0);
                if there.0 == side && there.1 <= ON_FENCE && overlap > TOUCH {
                    let (first, second) = (gate_part(i), gate_part(j));
                    errors.push(SiteError::GatesOverlap { fence: fence_part(), first, second });
                }
            }
        }
    }
    errors
}
