//! A way that a machine can drive, with what it is made of.

use super::FreeSpace;
use super::ground::{Stretch, join, stretches};
use super::search::{Found, Search, Step};
use super::turn::Bend;
use crate::machine::Pace;
use crate::point::Point;

/// The quickest way from one point to another.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// Its corners, start and end included \[m\].
    pub points: Vec<Point>,
    /// The sum of its straight stretches \[m\].
    pub length: f64,
    /// What it takes: stretches by their ground, bends, gates, starting and stopping once \[s\].
    pub time: f64,
    /// Its bends in order, each with what it takes.
    pub bends: Vec<Bend>,
    /// The gates passed, in order, each by the place of its fence and its own place among the fence's gates.
    pub gates: Vec<(usize, usize)>,
    /// Its stretches by what they lie on, in order.
    pub stretches: Vec<Stretch>,
}

/// Why there is no way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum WayError {
    /// The machine cannot stand where the way begins.
    #[error("there is no room for the machine where the way begins")]
    StartTaken,
    /// The machine cannot stand where the way ends.
    #[error("there is no room for the machine where the way ends")]
    EndTaken,
    /// Everything between is closed to it.
    #[error("no way between them is wide enough for the machine")]
    NoWay,
}

impl FreeSpace {
    /// The quickest way from one point to another.
    ///
    /// # Errors
    ///
    /// Where there is no room for the machine at one of them (see [`FreeSpace::nearest_free`]), or no way.
    pub fn way(&self, from: Point, to: Point, pace: &Pace) -> Result<Way, WayError> {
        let mut ways = self.ways(from, &[to], pace);
        ways.pop().unwrap_or(Err(WayError::NoWay))
    }

    /// The quickest way from one point to each of many: the search is made once. Way k belongs to point k.
    pub fn ways(&self, from: Point, to: &[Point], pace: &Pace) -> Vec<Result<Way, WayError>> {
        let start = from - self.origin;
        if !self.is_free_here(start) {
            return to.iter().map(|_| Err(WayError::StartTaken)).collect();
        }
        let search = Search::new(self, start, *pace);
        to.iter().map(|to| self.way_to(&search, *to - self.origin, pace)).collect()
    }

    /// What the quickest ways from one point to each of many take \[s\], without the ways themselves.
    pub fn times(&self, from: Point, to: &[Point], pace: &Pace) -> Vec<Result<f64, WayError>> {
        let start = from - self.origin;
        if !self.is_free_here(start) {
            return to.iter().map(|_| Err(WayError::StartTaken)).collect();
        }
        let search = Search::new(self, start, *pace);
        let time = |to: &Point| Ok(self.found(&search, *to - self.origin)?.time + pace.start_and_stop);
        to.iter().map(time).collect()
    }

    fn found(&self, search: &Search<'_>, end: Point) -> Result<Found, WayError> {
        if !self.is_free_here(end) {
            return Err(WayError::EndTaken);
        }
        search.to(end).ok_or(WayError::NoWay)
    }

    fn way_to(&self, search: &Search<'_>, end: Point, pace: &Pace) -> Result<Way, WayError> {
        let found = self.found(search, end)?;
        let mut steps: Vec<Step> = Vec::new();
        let mut step = found.last;
        while let Some(this) = step {
            steps.push(this);
            step = search.before(this);
        }
        steps.reverse();
        let mut points = vec![search.start()];
        points.extend(steps.iter().map(|step| self.nodes[search.end(*step)].at));
        points.push(end);
        let bends = steps.iter().enumerate().filter_map(|(k, step)| {
            let (node, next) = (&self.nodes[search.end(*step)], points[k + 2]);
            let past = node.past(next - node.at)?;
            let goes_on = k + 1 < steps.len();
            let bend = search.bend(*step, next, past, goes_on, f64::INFINITY)??;
            Some(Bend { at: bend.at + self.origin, ..bend })
        });
        let bends = bends.collect();
        Ok(Way {
            length: points.windows(2).map(|leg| leg[0].distance(leg[1])).sum(),
            time: found.time + pace.start_and_stop,
            bends,
            gates: points.windows(2).flat_map(|leg| self.gates_passed(leg[0], leg[1])).collect(),
            stretches: self.stretches(&points),
            points: points.iter().map(|point| *point + self.origin).collect(),
        })
    }

    fn gates_passed(&self, from: Point, to: Point) -> Vec<(usize, usize)> {
        let mut passed: Vec<_> = self.openings.iter().filter(|opening| opening.is_passed(from, to)).collect();
        let along = to - from;
        passed.sort_by(|a, b| a.ends[0].dot(along).total_cmp(&b.ends[0].dot(along)));
        passed.iter().map(|opening| opening.gate).collect()
    }

    fn stretches(&self, points: &[Point]) -> Vec<Stretch> {
        let mut all = Vec::new();
        for leg in points.windows(2) {
            stretches(leg[0], leg[1], &self.surfaces).into_iter().for_each(|next| join(&mut all, next));
        }
        all
    }
}
