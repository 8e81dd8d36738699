//! How many loads go from which pile to which zone, in whole loads that add up.

use crate::findings::load_story::load_stories;
use crate::forecast::Forecast;

/// What a crew is told of the loads.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct LoadPlan {
    /// Zone by zone, in the job's order, and within it pile by pile.
    pub(crate) lines: Vec<Line>,
    /// Loads of each loader.
    pub(crate) by_loader: Vec<u64>,
    /// All loads: the mean over the runs, rounded.
    pub(crate) total: u64,
    /// Mean volume placed \[m3\].
    pub(crate) volume_m3: f64,
}

/// Loads from one pile to one zone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Line {
    /// Index of the zone.
    pub(crate) zone: usize,
    /// Index of the pile; `None` where the typical run took nothing there.
    pub(crate) pile: Option<usize>,
    /// Loads, rounded so that all of them add up to the total.
    pub(crate) loads: u64,
    /// Mean volume placed \[m3\].
    pub(crate) volume_m3: f64,
}

/// Mean loads of all runs for each zone. How a zone's loads divide among several piles is known of the typical run alone
/// and taken from there.
pub(crate) fn load_plan(forecast: &Forecast) -> LoadPlan {
    let accounts = &forecast.study.accounts;
    let runs = f64::from(forecast.study.runs().max(1));
    let means: Vec<f64> = accounts.zones.iter().map(|z| z.loads as f64 / runs).collect();
    let volumes: Vec<f64> = accounts.zones.iter().map(|z| z.placed_m3 / runs).collect();
    let total = means.iter().sum::<f64>().round() as u64;
    let piles = by_pile(forecast, means.len());
    let mut lines = Vec::new();
    for (zone, loads) in apportion(total, &means).into_iter().enumerate() {
        let of_zone = &piles[zone];
        let whole: f64 = of_zone.iter().sum();
        if whole <= 0.0 {
            lines.push(Line { zone, pile: None, loads, volume_m3: volumes[zone] });
            continue;
        }
        let shared =
            apportion(loads, of_zone).into_iter().enumerate().filter(|(pile, _)| of_zone[*pile] > 0.0);
        lines.extend(shared.map(|(pile, loads)| Line {
            zone,
            pile: Some(pile),
            loads,
            volume_m3: volumes[zone] * of_zone[pile] / whole,
        }));
    }
    let each: Vec<f64> = accounts.loads.iter().map(|n| *n as f64 / runs).collect();
    LoadPlan { lines, by_loader: apportion(total, &each), total, volume_m3: volumes.iter().sum() }
}

/// Loads of the typical run by zone and pile. Without a watched run, or with one pile, everything comes from the first.
fn by_pile(forecast: &Forecast, zones: usize) -> Vec<Vec<f64>> {
    let piles = forecast.scenario.job.stockpiles.len();
    let mut counts = vec![vec![0.0; piles]; zones];
    if piles == 1 {
        return vec![vec![1.0]; zones];
    }
    for story in load_stories(&forecast.typical.log) {
        if let (Some(zone), Some(pile)) = (story.zone, story.stockpile)
            && let Some(count) = counts.get_mut(zone).and_then(|of_zone| of_zone.get_mut(pile))
        {
            *count += 1.0;
        }
    }
    counts
}

/// Shares a whole number out in proportion to weights; what rounding down leaves goes to the largest remainders
/// (the lower number first among equals).
fn apportion(total: u64, weights: &[f64]) -> Vec<u64> {
    let whole: f64 = weights.iter().sum();
    if whole <= 0.0 {
        return vec![0; weights.len()];
    }
    let exact: Vec<f64> = weights.iter().map(|w| total as f64 * w / whole).collect();
    let mut shares: Vec<u64> = exact.iter().map(|e| e.floor() as u64).collect();
    let mut order: Vec<usize> = (0..weights.len()).collect();
    order.sort_by(|a, b| (exact[*b] - exact[*b].floor()).total_cmp(&(exact[*a] - exact[*a].floor())));
    let missing = total.saturating_sub(shares.iter().sum()) as usize;
    for i in order.into_iter().take(missing) {
        shares[i] += 1;
    }
    shares
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn shares_add_up_to_the_whole_and_follow_the_weights() {
        assert_eq!(apportion(71, &[23.5, 23.6, 23.4]), [24, 24, 23]);
        assert_eq!(apportion(10, &[1.0, 1.0, 1.0]), [4, 3, 3]);
        assert_eq!(apportion(5, &[0.0, 2.0]), [0, 5]);
        assert_eq!(apportion(5, &[0.0, 0.0]), [0, 0]);
        assert_eq!(apportion(0, &[1.0]), [0]);
    }

    #[test]
    fn the_crew_is_told_the_mean_loads_of_all_runs() {
        let forecast = example::forecast();
        let loads = forecast.study.sorted(|o| f64::from(o.loads));
        let plan = load_plan(&forecast);
        assert_eq!(plan.total, loads.mean().value.round() as u64);
        assert_eq!(plan.lines.iter().map(|line| line.loads).sum::<u64>(), plan.total);
        assert_eq!(plan.by_loader.iter().sum::<u64>(), plan.total);
    }
}
