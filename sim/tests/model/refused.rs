//! What the model has no meaning for is refused, at the limit and not before it.

use super::jobs::*;
use sim::*;

fn refused(job: &Job) -> bool {
    let new = Plan::new(job).err().map(|error| error.to_string());
    assert_eq!(Plan::check(job).err().map(|error| error.to_string()), new);
    new.is_some()
}

/// A sound job with something of everything.
fn sound() -> Job {
    let mut job =
        with_zones(one_and_one(), vec![zone("north", 5.0, 0, 20.0), zone("south", 5.0, 0, 30.0)], 5.0);
    job.passes = vec![gate()];
    job.zones[0].ways[0].passes = vec![PassOnWay { pass: 0, share: 0.2 }, PassOnWay { pass: 0, share: 0.6 }];
    job.loaders[0].lift_kg = Some(200.0);
    job.loaders[0].stoppages = Some(Stoppages { mean_gap_s: 900.0, length_s: Distribution::Constant(60.0) });
    let late_s = Distribution::Constant(0.0);
    job.stockpiles[0].deliveries = vec![Delivery { at_s: 9.0 * 3600.0, late_s, volume_m3: 5.0 }];
    job.raking.together = Some(0.9);
    job.raking.fatigue = Some(Fatigue { share_per_h: 0.1, floor: 0.5 });
    job.shift.end_s = Some(17.0 * 3600.0);
    job.shift.breaks = vec![
        Break { start_s: 10.0 * 3600.0, end_s: 10.5 * 3600.0 },
        Break { start_s: 12.0 * 3600.0, end_s: 13.0 * 3600.0 },
    ];
    job
}

#[test]
fn figures_below_zero_or_without_a_value_are_refused_and_zero_where_it_makes_no_sense() {
    type Figure = fn(&mut Job) -> &mut f64;
    let may_be_0: [(&str, Figure); 17] = [
        ("need", |j| &mut j.zones[1].need_m3),
        ("walk", |j| &mut j.zones[0].walks_m[1]),
        ("distance", |j| &mut j.zones[1].ways[0].distance_m),
        ("stock", |j| &mut j.stockpiles[0].on_hand_m3),
        ("delivery", |j| &mut j.stockpiles[0].deliveries[0].volume_m3),
        ("delivery time", |j| &mut j.stockpiles[0].deliveries[0].at_s),
        ("passing", |j| &mut j.passes[0].passing_s),
        ("loading", |j| &mut j.loaders[0].load_s),
        ("dumping", |j| &mut j.loaders[0].dump_s),
        ("start and stop", |j| &mut j.loaders[0].start_stop_s),
        ("spreading", |j| &mut j.loaders[0].spread_s_per_m3),
        ("machine", |j| &mut j.loaders[0].machine_cost_per_h),
        ("operator", |j| &mut j.loaders[0].operator_cost_per_h),
        ("fuel working", |j| &mut j.loaders[0].fuel_working_l_per_h),
        ("fuel idling", |j| &mut j.loaders[0].fuel_idling_l_per_h),
        ("raker's cost", |j| &mut j.rakers[0].cost_per_h),
        ("fuel", |j| &mut j.prices.fuel_per_l),
    ];
    let above_0: [(&str, Figure); 7] = [
        ("density", |j| &mut j.material.density_kg_per_m3),
        ("fill", |j| &mut j.material.fill_factor),
        ("heaped", |j| &mut j.loaders[0].heaped_m3),
        ("loaded speed", |j| &mut j.loaders[0].loaded_m_per_s),
        ("empty speed", |j| &mut j.loaders[0].empty_m_per_s),
        ("rate", |j| &mut j.rakers[0].rate_m3_per_h),
        ("walking", |j| &mut j.rakers[0].walking_m_per_s),
    ];
    assert!(!refused(&sound()));
    for (all, zero_is_refused) in [(&may_be_0[..], false), (&above_0[..], true)] {
        for (what, figure) in all {
            for (value, wrong) in [(0.0, zero_is_refused), (-1e-9, true), (f64::NAN, true), (1e-3, false)] {
                let mut job = sound();
                *figure(&mut job) = value;
                assert_eq!(refused(&job), wrong, "{what} of {value}");
            }
        }
    }
}

#[test]
fn shares_are_from_zero_to_one_and_some_are_not_zero() {
    type Share = fn(&mut Job, f64);
    let shares: [(&str, Share, bool); 3] = [
        ("spreading", |j, share| j.raking.spread_share = share, false),
        ("floor", |j, share| j.raking.fatigue = Some(Fatigue { share_per_h: 0.1, floor: share }), true),
        ("place of a pass", |j, share| j.zones[0].ways[0].passes[1].share = share, false),
    ];
    for (what, set, zero_is_refused) in shares {
        for (value, wrong) in [(-0.1, true), (0.0, zero_is_refused), (1.0, false), (1.1, true)] {
            let mut job = sound();
            job.zones[0].ways[0].passes[0].share = 0.0;
            set(&mut job, value);
            assert_eq!(refused(&job), wrong, "{what} of {value}");
        }
    }
}

#[test]
fn what_points_nowhere_or_has_no_place_is_refused() {
    type Fault = fn(&mut Job);
    let faults: [(&str, Fault); 15] = [
        ("no loader", |j| j.loaders.clear()),
        ("too many loaders", |j| j.loaders = vec![loader("one more"); MOST_LOADERS + 1]),
        ("too many rakers", |j| j.rakers = vec![raker("one more", 0); MOST_RAKERS + 1]),
        ("no zone", |j| j.zones.clear()),
        ("no pile", |j| j.stockpiles.clear()),
        ("no room", |j| j.zones[0].room = Some(0)),
        ("no way", |j| j.zones[0].ways.clear()),
        ("walks missing", |j| j.zones[0].walks_m.truncate(1)),
        ("unknown pile", |j| j.zones[0].ways[0].stockpile = 1),
        ("unknown pass", |j| j.zones[0].ways[0].passes[0].pass = 1),
        ("passes out of order", |j| j.zones[0].ways[0].passes[0].share = 0.7),
        ("no face", |j| j.stockpiles[0].face = 0),
        ("nobody passes", |j| j.passes[0].at_once = 0),
        ("unknown start", |j| j.rakers[0].start_zone = 2),
        ("unknown surplus zone", |j| j.finish = FinishRule::PileCleared { surplus_zone: 2 }),
    ];
    for (what, fault) in faults {
        let mut job = sound();
        fault(&mut job);
        assert!(refused(&job), "{what}");
    }
    let mut all = sound();
    all.loaders = (0..MOST_LOADERS).map(|n| loader(&format!("loader {n}"))).collect();
    all.rakers = (0..MOST_RAKERS).map(|n| raker(&format!("raker {n}"), 1)).collect();
    all.zones[0].room = Some(1);
    all.finish = FinishRule::PileCleared { surplus_zone: 1 };
    assert!(!refused(&all));
}

#[test]
fn the_hours_of_a_day_are_in_order() {
    let hours = |start: f64, end: Option<f64>, breaks: &[(f64, f64)]| {
        let mut job = sound();
        (job.shift.start_s, job.shift.end_s) = (start * 3600.0, end.map(|h| h * 3600.0));
        let pause = |&(from, to): &(f64, f64)| Break { start_s: from * 3600.0, end_s: to * 3600.0 };
        job.shift.breaks = breaks.iter().map(pause).collect();
        refused(&job)
    };
    assert!(!hours(0.0, Some(24.0), &[(0.0, 1.0), (1.0, 2.0), (23.0, 24.0)]));
    assert!(!hours(8.0, None, &[(30.0, 32.0)]));
    assert!(hours(24.0, None, &[]) && hours(-1.0, None, &[]));
    assert!(hours(8.0, Some(8.0), &[]) && hours(8.0, Some(24.1), &[]));
    assert!(hours(8.0, Some(17.0), &[(7.0, 9.0)]), "before the day");
    assert!(hours(8.0, Some(17.0), &[(16.0, 17.1)]), "after the day");
    assert!(hours(8.0, Some(17.0), &[(10.0, 10.0)]), "of no length");
    assert!(hours(8.0, Some(17.0), &[(10.0, 12.0), (11.0, 13.0)]), "two at once");
    assert!(hours(8.0, None, &[(31.0, 32.1)]), "after the first day");
}

#[test]
fn a_refusal_says_in_words_and_as_data_whose_figure_is_wrong() {
    let says = |change: &dyn Fn(&mut Job)| {
        let mut job = sound();
        change(&mut job);
        Plan::check(&job).unwrap_err().to_string()
    };
    assert_eq!(
        says(&|j| j.rakers = vec![raker("a", 0); 65]),
        "there are 65 rakers; from 0 to 64 are possible"
    );
    assert_eq!(says(&|j| j.material.fill_factor = 0.0), "fill factor is 0; it must be above 0");
    assert_eq!(says(&|j| j.zones[1].room = Some(0)), "south has room for no heap");
    assert_eq!(says(&|j| j.zones[1].walks_m.truncate(1)), "south needs a walk to every zone");
    assert_eq!(says(&|j| j.zones[0].walks_m[1] = -2.5), "a walk from north is -2.5; it must be 0 or more");
    assert_eq!(says(&|j| j.zones[0].ways[0].stockpile = 4), "a way to north starts at no stockpile");
    assert_eq!(
        says(&|j| j.zones[0].ways[0].passes[1].pass = 4),
        "a way to north leads through no known pass"
    );
    let share = says(&|j| j.zones[0].ways[0].passes[1].share = 1.5);
    assert_eq!(share, "place of a pass on the way to north is 1.5; it must be from 0 to 1");
    let back = says(&|j| j.zones[0].ways[0].passes[1].share = 0.1);
    assert_eq!(back, "passes on the way to north are not in order");
    assert_eq!(says(&|j| j.stockpiles[0].face = 0), "pile: nobody can load at a face of 0");
    assert_eq!(says(&|j| j.passes[0].at_once = 0), "gate: no machine can pass");
    assert_eq!(
        says(&|j| j.loaders[0].lift_kg = Some(-1.0)),
        "what loader may lift is -1; it must be above 0"
    );
    assert_eq!(says(&|j| j.rakers[0].start_zone = 2), "raker starts in a zone that does not exist");
    let nobody = "there is nobody to rake, and the loaders do not spread all of it themselves";
    assert_eq!(says(&|j| j.rakers.clear()), nobody);
    let nowhere = says(&|j| j.finish = FinishRule::PileCleared { surplus_zone: 2 });
    assert_eq!(nowhere, "the surplus goes to a zone that does not exist");
    assert_eq!(says(&|j| j.shift.start_s = 86_400.0), "the day must start within the first 24 hours");
    assert_eq!(says(&|j| j.shift.end_s = Some(60.0)), "the day must end after its start and by midnight");
    let overlapping = says(&|j| j.shift.breaks[1].start_s = 10.25 * 3600.0);
    assert_eq!(overlapping, "breaks must be in order, apart, and within the day");
    let wide = Distribution::Normal { mean: 1.0, sd: 0.5 };
    let wide = says(&|j| j.chance.loads.haul = wide.clone());
    assert_eq!(wide, "spread of haul: the standard deviation is more than 0.3 of the mean");
    let mean = says(&|j| j.chance.days.bulk = Distribution::Constant(1.5));
    assert_eq!(mean, "spread of bulk: its mean is 1.5, not 1");
    let mut job = sound();
    job.zones[1].need_m3 = -3.0;
    let Err(JobError::BelowZero { figure: Figure { of: Some(part), .. }, value }) = Plan::check(&job) else {
        panic!("not refused")
    };
    assert_eq!((part.kind, part.index, part.name.as_str(), value), (PartKind::Zone, 1, "south", -3.0));
}
