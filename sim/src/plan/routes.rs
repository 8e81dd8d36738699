//! Which way each loader takes between each pile and zone, and what it costs.

use super::us;
use crate::job::{Job, Loader, Way};

/// One loader's way between one pile and one zone.
#[derive(Clone, Debug)]
pub(crate) struct Route {
    pub(crate) pile: usize,
    pub(crate) distance_m: f64,
    pub(crate) haul_us: f64,
    pub(crate) return_us: f64,
    /// Pass and share of the way out, in the order met.
    pub(crate) passes: Vec<(usize, f64)>,
    /// The same for the way back.
    pub(crate) passes_back: Vec<(usize, f64)>,
}

/// All routes: for each loader and zone the reachable piles, nearest first.
#[derive(Clone, Debug)]
pub(crate) struct Routes {
    routes: Vec<Route>,
    /// Where the routes of loader `l` to zone `z` begin, at `l * zones + z`; one more entry at the end.
    begins: Vec<usize>,
    zones: usize,
}

impl Routes {
    pub(crate) fn new(job: &Job) -> Self {
        let mut all = Self { routes: Vec::new(), begins: Vec::new(), zones: job.zones.len() };
        for loader in &job.loaders {
            for zone in &job.zones {
                all.begins.push(all.routes.len());
                all.routes.extend(routes(job, loader, &zone.ways));
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

    pub(crate) fn all(&self) -> &[Route] {
        &self.routes
    }

    #[inline]
    pub(crate) fn get(&self, route: usize) -> &Route {
        &self.routes[route]
    }

    /// The route of a loader between a zone and a pile.
    #[inline]
    pub(crate) fn between(&self, loader: usize, zone: usize, pile: usize) -> Option<usize> {
        self.to(loader, zone).find(|route| self.routes[*route].pile == pile)
    }
}

fn routes(job: &Job, loader: &Loader, ways: &[Way]) -> Vec<Route> {
    let mut nearest: Vec<&Way> = ways.iter().filter(|way| loader.fits(job, way)).collect();
    nearest.sort_by(|a, b| a.distance_m.total_cmp(&b.distance_m));
    let mut routes: Vec<Route> = Vec::new();
    for way in nearest {
        if routes.iter().all(|route| route.pile != way.stockpile) {
            routes.push(Route {
                pile: way.stockpile,
                distance_m: way.distance_m,
                haul_us: us(way.distance_m / loader.loaded_m_per_s + loader.start_stop_s),
                return_us: us(way.distance_m / loader.empty_m_per_s + loader.start_stop_s),
                passes: way.passes.iter().map(|p| (p.pass, p.share)).collect(),
                passes_back: way.passes.iter().rev().map(|p| (p.pass, 1.0 - p.share)).collect(),
            });
        }
    }
    routes.sort_by(|a, b| a.distance_m.total_cmp(&b.distance_m).then(a.pile.cmp(&b.pile)));
    routes
}
