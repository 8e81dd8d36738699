//! How many loads are needed, when fill, need, stock or deliveries are uncertain.
//!
//! Source: `loads.csv`, status computed.

use super::*;
use std::collections::BTreeMap;

fn job_of(kind: &str, volume: f64, cv: f64, later: f64) -> Job {
    let mut job = loading(job(1, 1), 0.01, Distribution::Constant(1.0));
    let law = Distribution::Lognormal { mean: 1.0, cv };
    job.zones[0].need_m3 = volume;
    job.stockpiles[0].on_hand_m3 = 1_000.0;
    match kind {
        "fill of a load, gamma" => job.chance.loads.fill = Distribution::Gamma { mean: 1.0, cv },
        "fill of the job, lognormal" => job.chance.days.fill = law,
        "need, lognormal" => job.chance.days.need = law,
        "stock, lognormal" | "stock and a truckload, lognormal" => {
            job.chance.days.bulk = law;
            job.stockpiles[0].on_hand_m3 = volume;
            job.finish = FinishRule::PileCleared { surplus_zone: 0 };
        }
        _ => panic!("no such kind: {kind}"),
    }
    if later > 0.0 {
        // At the very start, so that no part load is taken before it comes.
        let late_s = Distribution::Constant(0.0);
        job.stockpiles[0].deliveries = vec![Delivery { at_s: 0.0, late_s, volume_m3: later }];
    }
    job
}

/// The chance that so many loads are enough.
pub(crate) fn loads_needed() -> Comparison {
    let mut comparison = Comparison::new(
        "Uncertain fill, need, stock and deliveries give the number of loads its exact law",
        "sums of gamma laws, lognormal tails and their convolution; second: characteristic functions (Gil-Pelaez 1951), other quadrature",
        Status::Computed,
        MOST,
    );
    let table = table("loads.csv");
    let mut samples = BTreeMap::new();
    for row in &table.rows {
        let f = |heading: &str| table.number(row, heading);
        let (kind, volume, cv, later) = (table.text(row, "kind"), f("volume"), f("cv"), f("later"));
        let sample = samples
            .entry((kind, cv.to_bits()))
            .or_insert_with(|| study(&job_of(kind, volume, cv, later), RUNS).sorted(|o| f64::from(o.loads)));
        let (chance, loads) = (f("chance"), f("loads"));
        let variance = chance * (1.0 - chance) / f64::from(RUNS);
        // Of rarer things too few are seen for their share to be near a normal law.
        if variance * f64::from(RUNS).powi(2) < 50.0 {
            continue;
        }
        let got = sample.share_up_to(loads).value;
        let what = format!("{kind}, spread {cv}, {volume} m3 and {later} m3 later: at most {loads} loads");
        comparison.compare(what, got, variance.sqrt(), chance, 1e-9);
    }
    comparison
}

#[test]
fn the_number_of_loads_has_its_exact_law() {
    loads_needed().judge(35);
}
