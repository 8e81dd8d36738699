//! What is delivered against what the ground needs.

use super::entry::Caution;
use crate::units::{System, figure, volume};
use sim::{Distribution, FinishRule, Job};

/// Cases drawn.
const CASES: usize = 20_000;
/// Values of each law that are drawn from, equally likely.
const VALUES: usize = 1_000;
/// Chance of running short from which on it is worth a warning.
const WORTH_SAYING: f64 = 0.1;
/// Delivered over needed from which on much is left over.
const FAR_TOO_MUCH: f64 = 1.5;

pub(super) fn cautions(job: &Job, ordered_m3: f64, truckload_m3: f64, system: System) -> Vec<Caution> {
    let need: f64 = job.zones.iter().map(|zone| zone.need_m3).sum();
    let shortages = shortages(job, need);
    let nothing = counts_as_nothing_m3(job, need);
    let chance = shortages.iter().filter(|short| **short > nothing).count() as f64 / shortages.len() as f64;
    let face_value = need - ordered_m3 > nothing;
    let cleared = matches!(job.finish, FinishRule::PileCleared { .. });
    let show = |m3| volume(m3, system);
    if face_value || chance >= WORTH_SAYING && !cleared {
        let ninth = shortages[CASES * 9 / 10].max(0.0);
        let trucks = (ninth / truckload_m3).ceil().max(1.0);
        let short =
            if face_value { format!(", {} too little", show(need - ordered_m3)) } else { String::new() };
        let cause = format!(
            "The ground needs {} and {} is ordered{short}. As ground and trucks differ, it runs short about {} times in \
             100, and one time in ten by {} or more.",
            show(need),
            show(ordered_m3),
            figure((chance * 100.0).round()),
            show(ninth)
        );
        let plural = if trucks > 1.0 { "s" } else { "" };
        let remedy = format!(
            "To have enough nine times in ten order {} more: {} truckload{plural} of {}.",
            show(ninth),
            figure(trucks),
            show(truckload_m3)
        );
        return vec![Caution::warning("short-of-need", cause, remedy)];
    }
    if !cleared && need > 0.0 && ordered_m3 > FAR_TOO_MUCH * need {
        let cause = format!(
            "{} is ordered but the ground needs {}; some {} stays at the pile.",
            show(ordered_m3),
            show(need),
            show(ordered_m3 - need)
        );
        let remedy =
            "Order less, or write rule = \"pile cleared\" under [finish] if all of it is to be placed.";
        return vec![Caution::warning("far-more-than-needed", cause, remedy)];
    }
    Vec::new()
}

/// What may be missing of all that is needed before it runs short \[m3\]: crumbs, but rounding alone where a whole zone could
/// be as small.
fn counts_as_nothing_m3(job: &Job, need: f64) -> f64 {
    let crumbs = job.negligible_m3();
    let has_small_zones = job.zones.iter().any(|zone| zone.need_m3 > 0.0 && zone.need_m3 < crumbs);
    if has_small_zones { 1e-9 * need } else { crumbs }
}

/// Need less supply in many cases \[m3\], rising. The same cases every time: equally likely values of each law, shuffled by
/// a counter-based mix.
pub(super) fn shortages(job: &Job, need_m3: f64) -> Vec<f64> {
    let needs = values(&job.chance.days.need);
    let bulks = values(&job.chance.days.bulk);
    let volumes: Vec<f64> = job
        .stockpiles
        .iter()
        .flat_map(|pile| std::iter::once(pile.on_hand_m3).chain(pile.deliveries.iter().map(|d| d.volume_m3)))
        .filter(|volume| *volume > 0.0)
        .collect();
    let mut all: Vec<f64> = (0..CASES)
        .map(|case| {
            let draw = |i: usize| (mixed((case * 1024 + i) as u64) % VALUES as u64) as usize;
            let supply: f64 = volumes.iter().enumerate().map(|(i, v)| v * bulks[draw(i + 1)]).sum();
            need_m3 * needs[draw(0)] - supply
        })
        .collect();
    all.sort_by(f64::total_cmp);
    all
}

fn values(law: &Distribution) -> Vec<f64> {
    (0..VALUES).map(|i| law.quantile((i as f64 + 0.5) / VALUES as f64)).collect()
}

/// The finaliser of SplitMix64 (Steele, Lea and Flood, 2014).
fn mixed(counter: u64) -> u64 {
    let mut z = counter.wrapping_add(1).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}
