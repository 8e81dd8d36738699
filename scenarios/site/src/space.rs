//! The free space of a machine: where its middle may be, and the ways through it.

mod cells;
mod graph;
mod ground;
mod grow;
mod nearest;
mod openings;
mod piece;
mod search;
mod turn;
mod way;

pub use ground::Stretch;
pub use turn::{Bend, BendKind};
pub use way::{Way, WayError};

use crate::inside::{is_in, is_in_ring};
use crate::machine::Machine;
use crate::outline::Outline;
use crate::plane::{Site, Surface};
use crate::point::Point;
use cells::Cells;
use graph::Graph;
use grow::{Closed, Grown, Node};
use openings::Opening;
use piece::Piece;

/// The least that anything is grown by, so that lines of no width block as well \[m\].
const LEAST_GROWTH: f64 = 1e-9;
/// Ways round a slow surface, and along a quick one, keep so far off its rim \[m\].
const OFF_A_SURFACE: f64 = 1e-8;

/// Where one machine's middle may be, and the graph of what is seen from where in it. Made by [`Site::free_space`].
///
/// Obstacles and fences are grown by half the machine's width and its clearance, the boundary is shrunk by it, with mitred corners
/// (cut off square at ten times the distance). The only ways through a fence are gates wide enough. A hole in an obstacle is
/// nothing that can be got at.
///
/// Ways are the quickest of those that are straight between corners: of what blocks, of surfaces, and where the rims of these meet. What could
/// be saved by bending in the middle of a surface's rim, as light does, is left aside.
#[derive(Clone, Debug)]
pub struct FreeSpace {
    machine: Machine,
    /// Kept near the origin, where figures have the most digits.
    origin: Point,
    pieces: Vec<Piece>,
    cells: Cells,
    solids: Vec<Vec<Point>>,
    boundary: Option<Outline>,
    openings: Vec<Opening>,
    surfaces: Vec<Surface>,
    quickest: f64,
    nodes: Vec<Node>,
    graph: Graph,
}

impl Site {
    /// The free space of a machine. The site's shapes are right (see [`Site::errors`]).
    ///
    /// ```
    /// use site::{Machine, Obstacle, Outline, Pace, Point, Site, Turning};
    /// let shed = Outline::rectangle(Point::new(-2.0, -2.0), 4.0, 4.0, 0.0);
    /// let site = Site { obstacles: vec![Obstacle { name: "shed".into(), outline: shed }], ..Site::default() };
    /// let loader = Machine { width: 1.6, clearance: 0.2, turning: Turning::OnTheSpot { quarter_turn: 4.0 } };
    /// let pace = Pace { speed: 1.5, start_and_stop: 6.0 };
    /// let way = site.free_space(&loader).way(Point::new(-10.0, 0.0), Point::new(10.0, 0.0), &pace).unwrap();
    /// assert!((way.length - (6.0 + 2.0 * 58.0_f64.sqrt())).abs() < 1e-6);
    /// ```
    pub fn free_space(&self, machine: &Machine) -> FreeSpace {
        let mut space = self.closed_to(machine);
        space.see();
        space
    }

    /// What is closed to a machine, before anything is seen in it.
    pub(crate) fn closed_to(&self, machine: &Machine) -> FreeSpace {
        let origin = self.origin();
        let by = f64::max(machine.growth(), LEAST_GROWTH);
        let shift = |ring: &[Point]| ring.iter().map(|p| *p - origin).collect::<Vec<_>>();
        let shifted = |outline: &Outline| Outline {
            ring: shift(&outline.ring),
            holes: outline.holes.iter().map(|hole| shift(hole)).collect(),
        };
        let mut grown = Grown::default();
        let solids: Vec<Vec<Point>> = self.obstacles.iter().map(|o| shift(&o.outline.ring)).collect();
        solids.iter().for_each(|ring| grown.ring(ring, Closed::Inside, by));
        let boundary = self.boundary.as_ref().map(shifted);
        if let Some(boundary) = &boundary {
            grown.ring(&boundary.ring, Closed::Outside, by);
            boundary.holes.iter().for_each(|hole| grown.ring(hole, Closed::Inside, by));
        }
        let mut openings = Vec::new();
        for (k, fence) in self.fences.iter().enumerate() {
            let mut fence = fence.clone();
            fence.line = shift(&fence.line);
            fence.gates.iter_mut().for_each(|gate| gate.posts = gate.posts.map(|post| post - origin));
            let (lines, open) = openings::opened(k, &fence, machine);
            lines.iter().for_each(|line| grown.line(line, by));
            openings.extend(open);
        }
        let surfaces: Vec<Surface> =
            self.surfaces.iter().map(|s| Surface { outline: shifted(&s.outline), ..s.clone() }).collect();
        let bends = corners(&surfaces, &grown.pieces);
        if !surfaces.is_empty() {
            // Where the ground differs a quickest way is no taut string: it may bend at any corner either way.
            grown.nodes.iter_mut().for_each(|node| node.arms = None);
        }
        grown.nodes.extend(bends);
        let quickest = surfaces.iter().map(|surface| surface.share).fold(1.0, f64::max);
        let (machine, Grown { pieces, nodes }) = (*machine, grown);
        let (cells, graph) = (Cells::new(&pieces), Graph::default());
        FreeSpace {
            machine,
            origin,
            pieces,
            cells,
            solids,
            boundary,
            openings,
            surfaces,
            quickest,
            nodes,
            graph,
        }
    }

    /// Some point of the site.
    fn origin(&self) -> Point {
        let outlines = self.boundary.iter().chain(self.zones.iter().map(|zone| &zone.outline));
        let outlines = outlines.chain(self.obstacles.iter().map(|obstacle| &obstacle.outline));
        let corners = outlines.flat_map(|outline| outline.ring.first());
        corners
            .chain(self.fences.iter().flat_map(|fence| fence.line.first()))
            .next()
            .copied()
            .unwrap_or_default()
    }
}

/// Where it can pay to bend for the ground's sake: at the corners of surfaces, just outside of a slow and just inside of a quick one, and
/// where their rims meet each other or what blocks.
fn corners(surfaces: &[Surface], pieces: &[Piece]) -> Vec<Node> {
    let mut nodes: Vec<Node> = Vec::new();
    let mut sides: Vec<(Point, Point)> = pieces.iter().map(|piece| piece.outer).collect();
    for surface in surfaces {
        let mut rim = Grown::default();
        let is_slow = surface.share < 1.0;
        let holes = std::iter::once(false).chain(std::iter::repeat(true));
        for (ring, is_hole) in surface.outline.rings().zip(holes) {
            let closed = if is_slow != is_hole { Closed::Inside } else { Closed::Outside };
            rim.ring(ring, closed, OFF_A_SURFACE);
        }
        nodes.extend(rim.nodes.iter().map(|node| Node { arms: None, ..*node }));
        let own: Vec<_> = rim.pieces.iter().map(|piece| piece.outer).collect();
        let meets = own.iter().flat_map(|a| sides.iter().filter_map(|b| nearest::crossing(*a, *b)));
        nodes.extend(meets.map(|at| Node { at, arms: None }));
        sides.extend(own);
    }
    nodes
}

impl FreeSpace {
    /// The machine it is for.
    pub fn machine(&self) -> &Machine {
        &self.machine
    }

    /// Whether the machine's middle may be at a point.
    pub fn is_free(&self, at: Point) -> bool {
        self.is_free_here(at - self.origin)
    }

    /// The gates it goes through, each by the place of its fence among the fences and its own place among the fence's gates.
    pub fn open_gates(&self) -> Vec<(usize, usize)> {
        self.openings.iter().map(|opening| opening.gate).collect()
    }

    fn is_free_here(&self, at: Point) -> bool {
        !self.pieces.iter().any(|piece| piece.holds(at))
            && !self.solids.iter().any(|ring| is_in_ring(at, ring))
            && self.boundary.as_ref().is_none_or(|boundary| is_in(at, boundary))
    }

    /// Whether nothing lies in a straight way between two free points.
    fn is_clear(&self, from: Point, to: Point) -> bool {
        !self.cells.any_near(from, to, &mut |piece| self.pieces[piece].blocks(from, to))
    }

    /// The same of a track of several straight pieces.
    fn is_clear_along(&self, track: &[Point]) -> bool {
        track.windows(2).all(|leg| self.is_clear(leg[0], leg[1]))
    }

    /// Leaves out the corners that lie in something else, and finds what is seen from where.
    fn see(&mut self) {
        let nodes = std::mem::take(&mut self.nodes);
        self.nodes = nodes.into_iter().filter(|node| self.is_free_here(node.at)).collect();
        self.graph = Graph::new(self);
    }
}

#[cfg(test)]
mod every_way;
#[cfg(test)]
mod tests;
