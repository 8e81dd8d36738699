//! The single guess of handbook arithmetic, to be shown beside the range.

use crate::job::{FinishRule, Job, Loader, Way};

/// Minutes really worked in an hour, by the usual rule of the trade (common practice, no source).
pub(crate) const MINUTES_WORKED_IN_AN_HOUR: f64 = 50.0;

/// What handbook arithmetic gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Handbook {
    /// Volume to move \[loose m3\].
    pub volume_m3: f64,
    /// Loads, not rounded.
    pub loads: f64,
    /// Mean cycle of each loader, without waiting \[s\]; `None` for a loader that can reach no zone.
    pub cycle_s: Vec<Option<f64>>,
    /// Loads times cycle, all loaders together \[s\].
    pub plain_s: f64,
    /// The same for the 50-minute hour: the handbook figure \[s\].
    pub time_s: f64,
}

impl Handbook {
    /// Works it out: volume over mean load, times the mean cycle over zones by need from the nearest pile; no waiting,
    /// no rakers, no chance, no set-up; loaders add up. The volume is what the zones need and the piles hold, or,
    /// where the pile is to be cleared, all that is delivered.
    pub fn new(job: &Job) -> Self {
        let ordered: f64 = job
            .stockpiles
            .iter()
            .map(|p| p.on_hand_m3 + p.deliveries.iter().map(|d| d.volume_m3).sum::<f64>())
            .sum();
        let need: f64 = job.zones.iter().map(|z| z.need_m3).sum();
        let volume_m3 = match job.finish {
            FinishRule::AreaCovered => need.min(ordered),
            FinishRule::PileCleared { .. } => ordered,
        };
        let cycle_s: Vec<_> = job.loaders.iter().map(|l| mean_cycle_s(job, l)).collect();
        let rates = job.loaders.iter().zip(&cycle_s).filter_map(|(l, cycle)| {
            let load = mean_load_m3(job, l);
            cycle.map(|c| (load / c, 1.0 / c))
        });
        let (m3_per_s, loads_per_s) = rates.fold((0.0, 0.0), |(v, n), (dv, dn)| (v + dv, n + dn));
        let plain_s = volume_m3 / m3_per_s;
        Self {
            volume_m3,
            loads: if volume_m3 > 0.0 { plain_s * loads_per_s } else { 0.0 },
            cycle_s,
            plain_s,
            time_s: plain_s * 60.0 / MINUTES_WORKED_IN_AN_HOUR,
        }
    }
}

/// What a mean bucket holds, lift limit respected \[m3\].
fn mean_load_m3(job: &Job, loader: &Loader) -> f64 {
    let lift = loader.lift_kg.map_or(f64::INFINITY, |kg| kg / job.material.density_kg_per_m3);
    (job.material.fill_factor * loader.heaped_m3).min(lift)
}

/// The loader's cycle, averaged over the zones it reaches by what they need (evenly if none needs anything) \[s\].
fn mean_cycle_s(job: &Job, loader: &Loader) -> Option<f64> {
    let spread_s = job.raking.spread_share * mean_load_m3(job, loader) * loader.spread_s_per_m3;
    let reached: Vec<(f64, f64)> = job
        .zones
        .iter()
        .filter_map(|zone| {
            let ways = zone.ways.iter().filter(|way| loader.fits(job, way));
            let nearest = ways.min_by(|a, b| a.distance_m.total_cmp(&b.distance_m))?;
            let passing: f64 = nearest.passes.iter().map(|p| job.passes[p.pass].passing_s).sum();
            let driving =
                nearest.distance_m / loader.loaded_m_per_s + nearest.distance_m / loader.empty_m_per_s;
            let legs = driving + 2.0 * (loader.start_stop_s + passing);
            Some((zone.need_m3, loader.load_s + legs + loader.dump_s + spread_s))
        })
        .collect();
    let need: f64 = reached.iter().map(|(need, _)| need).sum();
    if need > 0.0 {
        Some(reached.iter().map(|(need, cycle)| need * cycle).sum::<f64>() / need)
    } else {
        (!reached.is_empty())
            .then(|| reached.iter().map(|(_, cycle)| cycle).sum::<f64>() / reached.len() as f64)
    }
}

impl Loader {
    /// Whether every pass on the way is at least as wide as the loader.
    pub fn fits(&self, job: &Job, way: &Way) -> bool {
        way.passes.iter().all(|p| job.passes[p.pass].width_m >= self.width_m)
    }
}
