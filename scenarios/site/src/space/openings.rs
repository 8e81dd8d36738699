//! A fence as one machine meets it: what is closed to it, and the gates it goes through.

use crate::check::{side_of, stretch};
use crate::machine::Machine;
use crate::plane::{Fence, Gate};
use crate::point::Point;

/// A gate that the machine goes through.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Opening {
    /// Fence and gate, by their places in their lists.
    pub(crate) gate: (usize, usize),
    /// The ends of the opening, on the fence's line.
    pub(crate) ends: [Point; 2],
    pub(crate) passing: f64,
}

impl Opening {
    /// Whether a straight way goes through.
    pub(crate) fn is_passed(&self, from: Point, to: Point) -> bool {
        let [a, b] = self.ends;
        let across = b - a;
        let side = |p: Point| across.cross(p - a) > 0.0;
        let of = |end: Point| (to - from).cross(end - from) > 0.0;
        side(from) != side(to) && of(a) != of(b)
    }
}

/// The lines of a fence that stay closed to a machine, and the gates open to it.
pub(crate) fn opened(index: usize, fence: &Fence, machine: &Machine) -> (Vec<Vec<Point>>, Vec<Opening>) {
    let fits = |gate: &&(usize, &Gate)| machine.fits(gate.1.width);
    let wide: Vec<(usize, &Gate)> = fence.gates.iter().enumerate().filter(|gate| fits(&gate)).collect();
    let (mut lines, mut openings) = (Vec::new(), Vec::new());
    let mut line: Vec<Point> = Vec::new();
    for (side, ends) in fence.line.windows(2).enumerate() {
        let along = (ends[1] - ends[0]).unit();
        let length = ends[0].distance(ends[1]);
        line.push(ends[0]);
        let mut here: Vec<(f64, f64, usize)> = Vec::new();
        for (k, gate) in wide.iter().filter(|(_, gate)| side_of(gate, fence).0 == side) {
            let (first, last) = stretch(gate, fence, side);
            let taken_off = f64::max(0.0, (last - first - gate.width) / 2.0);
            here.push((f64::max(0.0, first + taken_off), f64::min(length, last - taken_off), *k));
        }
        here.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (first, last, k) in here {
            let posts = [ends[0] + along * first, ends[0] + along * last];
            line.push(posts[0]);
            lines.push(std::mem::replace(&mut line, vec![posts[1]]));
            openings.push(Opening { gate: (index, k), ends: posts, passing: fence.gates[k].passing });
        }
    }
    line.extend(fence.line.last());
    lines.push(line);
    (joined(lines, fence).into_iter().map(without_repeats).filter(|line| line.len() > 1).collect(), openings)
}

/// Of a closed fence with an opening, the last line goes on as the first.
fn joined(mut lines: Vec<Vec<Point>>, fence: &Fence) -> Vec<Vec<Point>> {
    let is_closed = fence.line.len() > 3 && fence.line.first() == fence.line.last();
    if is_closed && lines.len() > 1 {
        let first = lines.remove(0);
        if let Some(last) = lines.last_mut() {
            last.extend(first.into_iter().skip(1));
        }
    }
    lines
}

/// A gate right at a corner leaves no fence between.
fn without_repeats(mut line: Vec<Point>) -> Vec<Point> {
    line.dedup_by(|b, a| a.distance(*b) < 1e-9);
    line
}

#[cfg(test)]
mod tests {
    use super::*;

    const P: fn(f64, f64) -> Point = Point::new;

    fn fence(line: &[Point], gates: &[(f64, f64)]) -> Fence {
        let gates = gates.iter().map(|&(a, b)| Gate::between("gate", [P(a, 0.0), P(b, 0.0)], 4.0));
        Fence { name: "fence".into(), line: line.to_vec(), gates: gates.collect() }
    }

    fn of_width(width: f64) -> Machine {
        Machine { width, ..Machine::WALKER }
    }

    #[test]
    fn only_gates_wide_enough_open_a_fence() {
        let two = fence(&[P(0.0, 0.0), P(20.0, 0.0)], &[(12.0, 15.0), (2.0, 4.0)]);
        let (lines, openings) = opened(0, &two, &of_width(2.5));
        assert_eq!(lines, [vec![P(0.0, 0.0), P(12.0, 0.0)], vec![P(15.0, 0.0), P(20.0, 0.0)]]);
        assert_eq!(openings.iter().map(|o| o.gate).collect::<Vec<_>>(), [(0, 0)]);
        assert_eq!(opened(0, &two, &of_width(2.0)).0.len(), 3);
        assert_eq!(opened(0, &two, &of_width(3.1)).0, [vec![P(0.0, 0.0), P(20.0, 0.0)]]);
    }

    #[test]
    fn a_gate_narrower_than_its_posts_opens_in_their_middle() {
        let mut narrow = fence(&[P(0.0, 0.0), P(20.0, 0.0)], &[(4.0, 8.0)]);
        narrow.gates[0].width = 3.0;
        let (lines, _) = opened(0, &narrow, &of_width(3.0));
        assert_eq!(lines, [vec![P(0.0, 0.0), P(4.5, 0.0)], vec![P(7.5, 0.0), P(20.0, 0.0)]]);
    }

    #[test]
    fn a_closed_fence_with_one_gate_stays_one_line_from_post_to_post() {
        let ring = [P(0.0, 0.0), P(9.0, 0.0), P(9.0, 9.0), P(0.0, 0.0)];
        let (lines, _) = opened(0, &fence(&ring, &[(3.0, 6.0)]), &of_width(1.0));
        assert_eq!(lines, [vec![P(6.0, 0.0), P(9.0, 0.0), P(9.0, 9.0), P(0.0, 0.0), P(3.0, 0.0)]]);
        // Right at the corner.
        let (lines, _) = opened(0, &fence(&ring, &[(0.0, 3.0)]), &of_width(1.0));
        assert_eq!(lines, [vec![P(3.0, 0.0), P(9.0, 0.0), P(9.0, 9.0), P(0.0, 0.0)]]);
    }

    #[test]
    fn a_way_passes_an_opening_once_however_it_is_cut() {
        let opening = Opening { gate: (0, 0), ends: [P(3.0, 0.0), P(6.0, 0.0)], passing: 1.0 };
        let count = |way: &[Point]| way.windows(2).filter(|leg| opening.is_passed(leg[0], leg[1])).count();
        assert_eq!(count(&[P(4.0, -2.0), P(5.0, 2.0)]), 1);
        assert_eq!(count(&[P(4.0, -2.0), P(4.0, 0.0), P(5.0, 2.0)]), 1);
        assert_eq!(count(&[P(1.0, -2.0), P(1.0, 2.0)]), 0);
        assert_eq!(count(&[P(1.0, 2.0), P(9.0, 2.0)]), 0);
    }
}
