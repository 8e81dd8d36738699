//! What must change nothing: names, the order of what has no order, the day on which it is done, and the size of units. Over
//! thousands of jobs; a failure names the job's number.
//!
//! Where order matters, and so is not changed here: zones (fill order, ties), piles (ties, and each delivery has the bulk of
//! its number), loaders and rakers (who goes first at one instant; each loader has stoppages of its own), ways of one length.

use super::any_job::{Numbers, some_job};
use sim::*;

/// Two runs each of `jobs` jobs, as they are and changed by `change`, which says no where there is nothing to change; `same`
/// says whether the second is what it should be.
fn compare(
    jobs: std::ops::Range<u64>,
    change: impl Fn(&mut Job, &mut Numbers) -> bool,
    same: impl Fn(&Replay, &Replay) -> bool,
) -> u32 {
    let mut compared = 0;
    for number in jobs {
        let job = some_job(number);
        let mut changed = job.clone();
        if !change(&mut changed, &mut Numbers(!number)) {
            continue;
        }
        let (plan, changed) = (Plan::new(&job).unwrap(), Plan::new(&changed).unwrap());
        for run in 0..2 {
            let [before, after] = [&plan, &changed].map(|plan| Replay::new(plan, number, run).unwrap());
            assert!(same(&before, &after), "job {number}, run {run}:\n{before:?}\n\n{after:?}");
            compared += 1;
        }
    }
    compared
}

#[test]
fn names_change_nothing() {
    let change = |job: &mut Job, _: &mut Numbers| {
        job.material.name = "renamed".into();
        job.zones.iter_mut().rev().enumerate().for_each(|(i, zone)| zone.name = format!("{i}"));
        job.stockpiles.iter_mut().rev().enumerate().for_each(|(i, pile)| pile.name = format!("{i}"));
        job.passes.iter_mut().rev().enumerate().for_each(|(i, pass)| pass.name = format!("{i}"));
        job.loaders.iter_mut().rev().enumerate().for_each(|(i, loader)| loader.name = format!("{i}"));
        job.rakers.iter_mut().rev().enumerate().for_each(|(i, raker)| raker.name = format!("{i}"));
        true
    };
    assert_eq!(compare(0..1_000, change, |before, after| before == after), 2_000);
}

#[test]
fn the_order_in_which_gates_are_listed_changes_nothing() {
    let turned = |job: &mut Job, _: &mut Numbers| {
        let last = job.passes.len().saturating_sub(1);
        job.passes.reverse();
        let on_ways = job.zones.iter_mut().flat_map(|zone| &mut zone.ways).flat_map(|way| &mut way.passes);
        on_ways.for_each(|on_way| on_way.pass = last - on_way.pass);
        last > 0
    };
    let compared = compare(0..2_000, turned, |before, after| {
        (&before.outcome, &before.accounts) == (&after.outcome, &after.accounts)
    });
    assert!(compared > 1_000, "{compared}");
}

#[test]
fn the_order_in_which_ways_of_different_length_are_listed_changes_nothing() {
    let turned = |job: &mut Job, _: &mut Numbers| {
        let differ = |zone: &Zone| {
            let mut metres: Vec<f64> = zone.ways.iter().map(|way| way.distance_m).collect();
            metres.sort_unstable_by(f64::total_cmp);
            metres.windows(2).all(|pair| pair[0] < pair[1])
        };
        let any = job.zones.iter().any(|zone| zone.ways.len() > 1 && differ(zone));
        job.zones.iter_mut().filter(|zone| differ(zone)).for_each(|zone| zone.ways.reverse());
        any
    };
    let compared = compare(0..2_000, turned, |before, after| before == after);
    assert!(compared > 800, "{compared}");
}

#[test]
fn prices_change_costs_and_nothing_else() {
    let dearer = |job: &mut Job, _: &mut Numbers| {
        job.prices = Prices { fuel_per_l: 9.0, material: 1e4 };
        job.loaders.iter_mut().for_each(|loader| loader.machine_cost_per_h += 5.0);
        job.rakers.iter_mut().for_each(|raker| raker.cost_per_h += 5.0);
        true
    };
    compare(0..1_000, dearer, |before, after| {
        let cost_apart = Outcome { cost: before.outcome.cost, ..after.outcome.clone() };
        before.log == after.log && before.outcome == cost_apart && after.outcome.cost > before.outcome.cost
    });
}

#[test]
fn a_job_that_starts_an_hour_later_takes_as_long() {
    let later = |job: &mut Job, _: &mut Numbers| {
        let hour = 3_600.0;
        job.shift.start_s += hour;
        job.shift.end_s.iter_mut().for_each(|end| *end += hour);
        job.shift.breaks.iter_mut().for_each(|b| (b.start_s, b.end_s) = (b.start_s + hour, b.end_s + hour));
        let deliveries = job.stockpiles.iter_mut().flat_map(|pile| &mut pile.deliveries);
        deliveries.for_each(|delivery| delivery.at_s += hour);
        true
    };
    compare(0..2_000, later, |before, after| before == after);
}

#[test]
fn a_unit_of_volume_half_as_large_changes_no_time() {
    // All figures twice as large, to the last bit: every volume, every rate in volumes, every time for a volume.
    let halved = |job: &mut Job, _: &mut Numbers| {
        job.zones.iter_mut().for_each(|zone| zone.need_m3 *= 2.0);
        for pile in &mut job.stockpiles {
            pile.on_hand_m3 *= 2.0;
            pile.deliveries.iter_mut().for_each(|delivery| delivery.volume_m3 *= 2.0);
        }
        for loader in &mut job.loaders {
            (loader.heaped_m3, loader.spread_s_per_m3) =
                (loader.heaped_m3 * 2.0, loader.spread_s_per_m3 / 2.0);
        }
        job.rakers.iter_mut().for_each(|raker| raker.rate_m3_per_h *= 2.0);
        job.material.density_kg_per_m3 /= 2.0;
        true
    };
    compare(0..2_000, halved, |before, after| {
        let (one, two) = (&before.outcome, &after.outcome);
        (one.finish, one.completion, one.loads) == (two.finish, two.completion, two.loads)
            && (one.loaders, one.rakers, one.progress) == (two.loaders, two.rakers, two.progress)
            && (2.0 * one.placed_m3, 2.0 * one.left_over_m3) == (two.placed_m3, two.left_over_m3)
            && 2.0 * one.short_m3 == two.short_m3
            && before.accounts.loads == after.accounts.loads
    });
}

#[test]
fn a_unit_of_length_half_as_large_changes_nothing() {
    let halved = |job: &mut Job, _: &mut Numbers| {
        for zone in &mut job.zones {
            zone.ways.iter_mut().for_each(|way| way.distance_m *= 2.0);
            zone.walks_m.iter_mut().for_each(|metres| *metres *= 2.0);
        }
        for loader in &mut job.loaders {
            (loader.loaded_m_per_s, loader.empty_m_per_s) =
                (2.0 * loader.loaded_m_per_s, 2.0 * loader.empty_m_per_s);
        }
        job.rakers.iter_mut().for_each(|raker| raker.walking_m_per_s *= 2.0);
        true
    };
    compare(0..2_000, halved, |before, after| before == after);
}
