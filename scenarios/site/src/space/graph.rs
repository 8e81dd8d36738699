//! What is seen from where: the straight ways between corners that a shortest way can use.

use super::FreeSpace;
use super::ground::worth;
use super::grow::Node;
use crate::point::Point;

/// So far a way may seem to enter what it only touches: the sine of the angle.
const TOUCHES: f64 = 1e-9;

/// On which side of a way past a corner that which blocks lies; both where it bends at nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Past {
    pub(crate) left: bool,
    pub(crate) right: bool,
}

impl Node {
    /// How a way in this direction passes the corner; `None` where it would run into it, before or beyond.
    pub(crate) fn past(&self, along: Point) -> Option<Past> {
        let Some(arms) = self.arms else { return Some(Past { left: true, right: true }) };
        let along = along.unit();
        let [first, second] = arms.map(|arm| along.cross(arm));
        let left = first >= -TOUCHES && second >= -TOUCHES;
        let right = first <= TOUCHES && second <= TOUCHES;
        (left || right).then_some(Past { left, right })
    }
}

/// A straight way from one corner to another.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Edge {
    pub(crate) from: usize,
    pub(crate) to: usize,
    /// Metres of ordinary ground that take as long.
    pub(crate) worth: f64,
    /// Passing its gates \[s\].
    pub(crate) passing: f64,
    pub(crate) past_from: Past,
    pub(crate) past_to: Past,
}

/// All straight ways, sorted by the corner they leave.
#[derive(Clone, Debug, Default)]
pub(crate) struct Graph {
    pub(crate) edges: Vec<Edge>,
    /// Of each corner, where its ways begin; one more at the end.
    first: Vec<usize>,
}

impl Graph {
    pub(crate) fn new(space: &FreeSpace) -> Self {
        let count = space.nodes.len();
        let mut leaving: Vec<Vec<Edge>> = vec![Vec::new(); count];
        for from in 0..count {
            for to in from + 1..count {
                if let Some(edge) = seen(space, from, to) {
                    let back =
                        Edge { from: to, to: from, past_from: edge.past_to, past_to: edge.past_from, ..edge };
                    leaving[from].push(edge);
                    leaving[to].push(back.turned());
                }
            }
        }
        let mut graph = Self::default();
        for edges in leaving {
            graph.first.push(graph.edges.len());
            graph.edges.extend(edges);
        }
        graph.first.push(graph.edges.len());
        graph
    }

    /// The places of the straight ways that leave a corner.
    pub(crate) fn leaving(&self, node: usize) -> std::ops::Range<usize> {
        self.first[node]..self.first[node + 1]
    }
}

impl Edge {
    /// Driven the other way, left is right.
    fn turned(self) -> Self {
        let swap = |past: Past| Past { left: past.right, right: past.left };
        Self { past_from: swap(self.past_from), past_to: swap(self.past_to), ..self }
    }
}

fn seen(space: &FreeSpace, from: usize, to: usize) -> Option<Edge> {
    let (a, b) = (&space.nodes[from], &space.nodes[to]);
    let along = b.at - a.at;
    if along.length() < 1e-9 {
        return None;
    }
    let (past_from, past_to) = (a.past(along)?, b.past(along)?);
    if !space.is_clear(a.at, b.at) {
        return None;
    }
    let worth = worth(a.at, b.at, &space.surfaces);
    Some(Edge { from, to, worth, passing: space.passing(a.at, b.at), past_from, past_to })
}

impl FreeSpace {
    /// What the gates in a straight way take \[s\].
    pub(crate) fn passing(&self, from: Point, to: Point) -> f64 {
        self.openings
            .iter()
            .filter(|opening| opening.is_passed(from, to))
            .map(|opening| opening.passing)
            .sum()
    }
}
