//! The way from the slow corner of a grid to its knee, by the rule of [`knee`](super::knee).

use super::knee::{Knee, LEAST_OF_BEST, RULE, none};
use super::steps::{Sure, job_s, more_is_better, neighbour, sure, time_saved};
use super::words::{bracketed, point_words};
use crate::sweep::Sweep;
use scenarios::units::duration;

/// A grid and what its best steps save.
struct Grid<'a> {
    sweep: &'a Sweep,
    up: [bool; 2],
    job_s: f64,
    /// Saved in a step of width 1 by the best sure step along each thing \[s\]; 0 where none saves anything.
    best: [f64; 2],
    /// Saved by the best sure step of all \[s\].
    most: f64,
}

/// The knee of a grid.
pub(super) fn knee(sweep: &Sweep) -> Knee {
    let grid = Grid::new(sweep);
    let corner =
        |point: &usize| (0..2).all(|thing| neighbour(sweep, *point, thing, !grid.up[thing]).is_none());
    let Some(start) = (0..sweep.points.len()).find(corner) else { return none(sweep, String::new()) };
    let mut at = start;
    while let Some(next) = grid.step(at) {
        at = next;
    }
    if at == start { none(sweep, String::new()) } else { grid.found(start, at) }
}

impl<'a> Grid<'a> {
    fn new(sweep: &'a Sweep) -> Self {
        let up = [0, 1].map(|thing| more_is_better(sweep, thing));
        let mut grid = Self { sweep, up, job_s: job_s(sweep), best: [0.0; 2], most: 0.0 };
        for thing in 0..2 {
            for from in 0..sweep.points.len() {
                let Some((to, saved)) =
                    grid.next(from, thing).and_then(|to| Some((to, grid.surely(from, to)?)))
                else {
                    continue;
                };
                grid.best[thing] = grid.best[thing].max(saved / grid.width(from, to, thing));
                grid.most = grid.most.max(saved);
            }
        }
        grid
    }

    fn next(&self, from: usize, thing: usize) -> Option<usize> {
        neighbour(self.sweep, from, thing, self.up[thing])
    }

    /// What a step surely saves \[s\].
    fn surely(&self, from: usize, to: usize) -> Option<f64> {
        let saved = time_saved(self.sweep, from, to);
        (sure(saved, self.job_s) == Sure::Saves).then_some(saved.value)
    }

    /// Width of a step, in the units of its axis.
    fn width(&self, from: usize, to: usize, thing: usize) -> f64 {
        let number = |point: usize| {
            let place = self.sweep.points[point].places[thing];
            self.sweep.things[thing].values[place].number(self.sweep.units).0
        };
        (number(to) - number(from)).abs()
    }

    /// A step along one thing, if it is worth taking, with what it saves \[s\].
    fn worth(&self, from: usize, thing: usize) -> Option<(usize, f64)> {
        let to = self.next(from, thing)?;
        let saved = self.surely(from, to)?;
        (saved / self.width(from, to, thing) >= LEAST_OF_BEST * self.best[thing]).then_some((to, saved))
    }

    /// The step along the thing that saves more; along both at once where neither alone is worth it.
    fn step(&self, from: usize) -> Option<usize> {
        let single = (0..2).filter_map(|thing| self.worth(from, thing)).max_by(|a, b| a.1.total_cmp(&b.1));
        let both = || {
            let to = self.next(self.next(from, 0)?, 1)?;
            let saved = self.surely(from, to)?;
            (saved >= LEAST_OF_BEST * self.most).then_some((to, saved))
        };
        single.or_else(both).map(|(to, _)| to)
    }

    fn found(&self, start: usize, at: usize) -> Knee {
        let words = |point: usize| {
            point_words(&self.sweep.things, &self.sweep.points[point].places, self.sweep.units)
        };
        let saved = time_saved(self.sweep, start, at);
        let steps = format!(
            "From {} to {} the job gets {} shorter{}.",
            words(start),
            words(at),
            duration(saved.value),
            bracketed(saved)
        );
        let open = (0..2).all(|thing| self.next(at, thing).is_none());
        let (title, sentence) = if open {
            (
                format!("Every step up to {} still pays", words(at)),
                format!(
                    "Every step up to {} may still pay: the knee lies there or beyond this range.",
                    words(at)
                ),
            )
        } else {
            (
                format!("Beyond {} hardly any time is saved", words(at)),
                format!(
                    "The knee is at {}: from there no step saves a fifth of the best of its kind.",
                    words(at)
                ),
            )
        };
        Knee { at: Some(at), open, title, steps, sentence, rule: RULE }
    }
}
