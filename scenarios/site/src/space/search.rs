//! The quickest ways from one point: Dijkstra's search over straight ways, since what a bend costs depends on the two that meet
//! there.

use super::FreeSpace;
use super::graph::Past;
use super::ground::worth;
use super::turn::{Bend, Corner};
use crate::machine::Pace;
use crate::point::Point;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// How a corner was reached: straight from the start, or by one of the graph's ways.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Step {
    Start { to: usize },
    Edge(usize),
}

/// A time that can be sorted.
#[derive(Clone, Copy, PartialEq)]
struct Time(f64);

impl Eq for Time {}
impl PartialOrd for Time {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Time {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.0.total_cmp(&other.0)
    }
}

/// What was found from one start.
pub(crate) struct Search<'a> {
    space: &'a FreeSpace,
    pace: Pace,
    start: Point,
    /// Of each way of the graph, the time at its end and the step before it; infinite where it was not reached.
    times: Vec<f64>,
    before: Vec<Option<Step>>,
    /// Of each corner, whether it is seen from the start, with time and side.
    seen: Vec<Option<(f64, Past)>>,
    /// Of each corner, the least time at it.
    least: Vec<f64>,
    /// Of each corner, the steps that reach it.
    arriving: Vec<Vec<Step>>,
}

/// The end of a way found: its time, starting and stopping not included, and the step before the last straight stretch.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Found {
    pub(crate) time: f64,
    pub(crate) last: Option<Step>,
}

impl<'a> Search<'a> {
    pub(crate) fn new(space: &'a FreeSpace, start: Point, pace: Pace) -> Self {
        let (edges, nodes) = (space.graph.edges.len(), space.nodes.len());
        let mut search = Self {
            space,
            pace,
            start,
            times: vec![f64::INFINITY; edges],
            before: vec![None; edges],
            seen: vec![None; nodes],
            least: vec![f64::INFINITY; nodes],
            arriving: vec![Vec::new(); nodes],
        };
        search.look_round();
        search.run();
        search.sum_up();
        search
    }

    fn straight(&self, from: Point, to: Point) -> f64 {
        worth(from, to, &self.space.surfaces) / self.pace.speed + self.space.passing(from, to)
    }

    fn look_round(&mut self) {
        for (k, node) in self.space.nodes.iter().enumerate() {
            let past = node.past(node.at - self.start);
            if let Some(past) = past.filter(|_| self.space.is_clear(self.start, node.at)) {
                self.seen[k] = Some((self.straight(self.start, node.at), past));
            }
        }
    }

    fn run(&mut self) {
        let mut queue = BinaryHeap::new();
        // Who comes to a corner so much later than the first could have turned there into any direction.
        let most = self.space.machine.turning.most(self.pace.speed);
        let mut first = vec![f64::INFINITY; self.space.nodes.len()];
        for (to, seen) in self.seen.iter().enumerate() {
            queue.extend(seen.map(|(time, _)| Reverse((Time(time), Step::Start { to }))));
        }
        while let Some(Reverse((Time(time), step))) = queue.pop() {
            if matches!(step, Step::Edge(edge) if time > self.times[edge]) {
                continue;
            }
            let space = self.space;
            let end = self.end(step);
            first[end] = f64::min(first[end], time);
            if space.nodes[end].arms.is_none() && time > first[end] + most {
                continue;
            }
            for next in space.graph.leaving(end) {
                let edge = &space.graph.edges[next];
                let arrival = time + edge.worth / self.pace.speed + edge.passing;
                // What the bend costs is asked only where it matters.
                if arrival >= self.times[next] {
                    continue;
                }
                let to = space.nodes[edge.to].at;
                let at_most = self.times[next] - arrival;
                let Some(bend) = self.bend(step, to, edge.past_from, true, at_most) else { continue };
                let turn = bend.map_or(0.0, |bend| bend.time);
                if turn < at_most {
                    let arrival = arrival + turn;
                    (self.times[next], self.before[next]) = (arrival, Some(step));
                    queue.push(Reverse((Time(arrival), Step::Edge(next))));
                }
            }
        }
    }

    fn sum_up(&mut self) {
        for (k, seen) in self.seen.iter().enumerate() {
            if let Some((time, _)) = seen {
                self.least[k] = *time;
                self.arriving[k].push(Step::Start { to: k });
            }
        }
        for (k, edge) in self.space.graph.edges.iter().enumerate() {
            if self.times[k].is_finite() {
                self.least[edge.to] = f64::min(self.least[edge.to], self.times[k]);
                self.arriving[edge.to].push(Step::Edge(k));
            }
        }
        let mut arriving = std::mem::take(&mut self.arriving);
        for steps in &mut arriving {
            steps.sort_by(|a, b| self.time(*a).total_cmp(&self.time(*b)).then(a.cmp(b)));
        }
        self.arriving = arriving;
    }

    /// The corner a step comes to.
    pub(crate) fn end(&self, step: Step) -> usize {
        match step {
            Step::Start { to } => to,
            Step::Edge(edge) => self.space.graph.edges[edge].to,
        }
    }

    /// The step before one.
    pub(crate) fn before(&self, step: Step) -> Option<Step> {
        match step {
            Step::Start { .. } => None,
            Step::Edge(edge) => self.before[edge],
        }
    }

    fn time(&self, step: Step) -> f64 {
        match step {
            Step::Start { to } => self.seen[to].map_or(f64::INFINITY, |seen| seen.0),
            Step::Edge(edge) => self.times[edge],
        }
    }

    /// The bend from a step to a next point; the outer `None` where a way that bends so is never a shortest one. A bend that takes
    /// `at_most` or longer need not be right.
    pub(crate) fn bend(
        &self,
        step: Step,
        next: Point,
        past: Past,
        goes_on: bool,
        at_most: f64,
    ) -> Option<Option<Bend>> {
        let at = self.space.nodes[self.end(step)].at;
        let (from, came) = match step {
            Step::Start { to } => (self.start, self.seen[to]?.1),
            Step::Edge(edge) => {
                let edge = &self.space.graph.edges[edge];
                (self.space.nodes[edge.from].at, edge.past_to)
            }
        };
        let turn = (at - from).cross(next - at);
        let slight = turn.abs() <= 1e-9 * from.distance(at) * at.distance(next);
        let wraps = if turn > 0.0 { came.left && past.left } else { came.right && past.right };
        if !slight && !wraps {
            return None;
        }
        // Two bends share the straight stretch between them.
        let before = if matches!(step, Step::Start { .. }) { from } else { from.middle(at) };
        let after = if goes_on { at.middle(next) } else { next };
        let corner = Corner { before, at, after, speed: self.pace.speed };
        Some(corner.bend(self.space.machine.turning, at_most, &|track| self.space.is_clear_along(track)))
    }

    /// The quickest way to a free point, if there is one.
    pub(crate) fn to(&self, end: Point) -> Option<Found> {
        let mut best: Option<Found> = None;
        if self.space.is_clear(self.start, end) {
            best = Some(Found { time: self.straight(self.start, end), last: None });
        }
        let quickest = self.pace.speed * self.space.quickest;
        let nodes = &self.space.nodes;
        let mut near: Vec<(f64, usize)> = (0..nodes.len())
            .filter(|k| self.least[*k].is_finite())
            .map(|k| (self.least[k] + nodes[k].at.distance(end) / quickest, k))
            .collect();
        near.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        for (at_least, k) in near {
            if best.is_some_and(|best| at_least >= best.time) {
                break;
            }
            let node = &nodes[k];
            let Some(past) = node.past(end - node.at) else { continue };
            if !self.space.is_clear(node.at, end) {
                continue;
            }
            let straight = self.straight(node.at, end);
            for step in &self.arriving[k] {
                let so_far = self.time(*step) + straight;
                if best.is_some_and(|best| so_far >= best.time) {
                    break;
                }
                let at_most = best.map_or(f64::INFINITY, |best| best.time - so_far);
                let Some(bend) = self.bend(*step, end, past, false, at_most) else { continue };
                let turn = bend.map_or(0.0, |bend| bend.time);
                if turn < at_most {
                    best = Some(Found { time: so_far + turn, last: Some(*step) });
                }
            }
        }
        best
    }

    pub(crate) fn start(&self) -> Point {
        self.start
    }
}
