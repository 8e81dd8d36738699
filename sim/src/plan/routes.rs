//! Which way each loader takes between each pile and zone, and what it costs.

use super::{round_to_us, us};
use crate::activity::Micros;
use crate::job::{Job, Loader, PassOnWay, Way};

/// One loader's way between one pile and one zone.
#[derive(Clone, Debug)]
pub(crate) struct Route {
    pub(crate) pile: usize,
    pub(crate) distance_m: f64,
    out: Drive,
    back: Drive,
}

/// Loaded or empty.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Leg {
    Out,
    Back,
}

/// The drive of one leg.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Drive {
    /// All of the driving, passes left out.
    pub(crate) mean_us: f64,
    /// Its first stretch.
    pub(crate) first: usize,
}

/// From one pass, or the beginning of a leg, to the next pass or the end.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Stretch {
    /// What is at its end.
    pub(crate) reaches: Reaches,
    /// The pass, where it is one.
    pub(crate) pass: usize,
    /// How long it takes to go through.
    pub(crate) passing_us: f64,
    /// How much of the leg's driving lies behind its end.
    share: f64,
}

/// Where a stretch ends: at a pass, or with its leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Reaches {
    PassOut,
    PassBack,
    Zone,
    Pile,
}

impl Reaches {
    pub(crate) fn is_pass(self) -> bool {
        matches!(self, Self::PassOut | Self::PassBack)
    }
}

impl Stretch {
    /// What of this much driving lies behind its end.
    #[inline(always)]
    pub(crate) fn driven(&self, driving: Micros) -> Micros {
        if self.reaches.is_pass() { round_to_us(driving as f64 * self.share) } else { driving }
    }
}

/// All routes: for each loader and zone the reachable piles, nearest first.
#[derive(Clone, Debug)]
pub(crate) struct Routes {
    routes: Vec<Route>,
    /// The stretches of all legs, one after the other; the last of each leads to no pass.
    stretches: Vec<Stretch>,
    /// Where the routes of loader `l` to zone `z` begin, at `l * zones + z`; one more entry at the end.
    begins: Vec<usize>,
    zones: usize,
}

impl Routes {
    pub(crate) fn new(job: &Job) -> Self {
        let mut all =
            Self { routes: Vec::new(), stretches: Vec::new(), begins: Vec::new(), zones: job.zones.len() };
        for loader in &job.loaders {
            for zone in &job.zones {
                all.begins.push(all.routes.len());
                all.add(job, loader, &zone.ways);
            }
        }
        all.begins.push(all.routes.len());
        all
    }

    /// Numbers of the routes of a loader to a zone, nearest pile first (ties: lower pile).
    #[inline]
    pub(crate) fn to(&self, loader: usize, zone: usize) -> std::ops::Range<usize> {
        let at = loader * self.zones + zone;
        self.begins[at]..self.begins[at + 1]
    }

    #[inline]
    pub(crate) fn get(&self, route: usize) -> &Route {
        &self.routes[route]
    }

    #[inline]
    pub(crate) fn stretch(&self, stretch: usize) -> &Stretch {
        &self.stretches[stretch]
    }

    /// The route of a loader between a zone and a pile.
    #[inline]
    pub(crate) fn between(&self, loader: usize, zone: usize, pile: usize) -> Option<usize> {
        self.to(loader, zone).find(|route| self.routes[*route].pile == pile)
    }

    /// Adds a loader's routes to a zone: of several ways from one pile the nearest.
    fn add(&mut self, job: &Job, loader: &Loader, ways: &[Way]) {
        let mut nearest: Vec<&Way> = ways.iter().filter(|way| loader.fits(job, way)).collect();
        nearest.sort_by(|a, b| a.distance_m.total_cmp(&b.distance_m));
        let first = self.routes.len();
        for way in nearest {
            if self.routes[first..].iter().all(|route| route.pile != way.stockpile) {
                let mean_us = |m_per_s| us(way.distance_m / m_per_s + loader.start_stop_s);
                let back = way.passes.iter().rev().map(|p| PassOnWay { share: 1.0 - p.share, ..*p });
                let [loaded, empty] = [loader.loaded_m_per_s, loader.empty_m_per_s].map(mean_us);
                let out = self.drive(job, loaded, way.passes.iter().copied(), Leg::Out);
                let back = self.drive(job, empty, back, Leg::Back);
                self.routes.push(Route { pile: way.stockpile, distance_m: way.distance_m, out, back });
            }
        }
        self.routes[first..].sort_by(|a, b| a.distance_m.total_cmp(&b.distance_m).then(a.pile.cmp(&b.pile)));
    }

    fn drive(&mut self, job: &Job, mean_us: f64, passes: impl Iterator<Item = PassOnWay>, leg: Leg) -> Drive {
        let first = self.stretches.len();
        let (at_a_pass, at_the_end) = match leg {
            Leg::Out => (Reaches::PassOut, Reaches::Zone),
            Leg::Back => (Reaches::PassBack, Reaches::Pile),
        };
        self.stretches.extend(passes.map(|PassOnWay { pass, share }| Stretch {
            reaches: at_a_pass,
            pass,
            passing_us: us(job.passes[pass].passing_s),
            share,
        }));
        self.stretches.push(Stretch { reaches: at_the_end, pass: 0, passing_us: 0.0, share: 1.0 });
        Drive { mean_us, first }
    }
}

impl Route {
    #[inline(always)]
    pub(crate) fn drive(&self, leg: Leg) -> Drive {
        match leg {
            Leg::Out => self.out,
            Leg::Back => self.back,
        }
    }
}
