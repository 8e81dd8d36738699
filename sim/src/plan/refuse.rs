//! What the model has no meaning for. People are told in their own words before it comes to this.

use super::{JobError, MOST_LOADERS, MOST_RAKERS};
use crate::chance::Distribution;
use crate::job::{Delivery, FinishRule, Job, Loader, Raker, Zone};

type Checked = Result<(), JobError>;

const DAY_S: f64 = 86_400.0;
/// Most zones, stockpiles, passes and deliveries of each.
const MOST_PLACES: usize = 1_000;

pub(super) fn check(job: &Job) -> Checked {
    counts(job)?;
    above_0("density", job.material.density_kg_per_m3)?;
    above_0("fill factor", job.material.fill_factor)?;
    job.zones.iter().try_for_each(|zone| check_zone(job, zone))?;
    for pile in &job.stockpiles {
        not_below_0(&format!("stock on hand at {}", pile.name), pile.on_hand_m3)?;
        need(pile.face >= 1, || format!("{}: nobody can load at a face of 0", pile.name))?;
        pile.deliveries.iter().try_for_each(|d| check_delivery(&pile.name, d))?;
    }
    for pass in &job.passes {
        not_below_0(&format!("width of {}", pass.name), pass.width_m)?;
        not_below_0(&format!("passing time of {}", pass.name), pass.passing_s)?;
        need(pass.at_once >= 1, || format!("{}: no machine can pass", pass.name))?;
    }
    job.loaders.iter().try_for_each(check_loader)?;
    job.rakers.iter().try_for_each(|raker| check_raker(job, raker))?;
    check_raking(job)?;
    if let FinishRule::PileCleared { surplus_zone } = job.finish {
        need(surplus_zone < job.zones.len(), || "the surplus goes to a zone that does not exist".into())?;
    }
    check_shift(job)?;
    check_chance(job)?;
    not_below_0("fuel price", job.prices.fuel_per_l)?;
    not_below_0("price of the material", job.prices.material)
}

fn need(holds: bool, else_say: impl FnOnce() -> String) -> Checked {
    if holds { Ok(()) } else { Err(JobError(else_say())) }
}

fn above_0(what: &str, value: f64) -> Checked {
    need(value.is_finite() && value > 0.0, || format!("{what} is {value}; it must be above 0"))
}

fn not_below_0(what: &str, value: f64) -> Checked {
    need(value.is_finite() && value >= 0.0, || format!("{what} is {value}; it must be 0 or more"))
}

fn share(what: &str, value: f64) -> Checked {
    need((0.0..=1.0).contains(&value), || format!("{what} is {value}; it must be from 0 to 1"))
}

fn law(what: &str, law: &Distribution) -> Checked {
    law.check().map_err(|why| JobError(format!("{what}: {why}")))
}

fn counts(job: &Job) -> Checked {
    let within = |what: &str, n: usize, least: usize, most: usize| {
        need((least..=most).contains(&n), || {
            format!("there are {n} {what}; from {least} to {most} are possible")
        })
    };
    within("loaders", job.loaders.len(), 1, MOST_LOADERS)?;
    within("rakers", job.rakers.len(), 0, MOST_RAKERS)?;
    within("zones", job.zones.len(), 1, MOST_PLACES)?;
    within("stockpiles", job.stockpiles.len(), 1, MOST_PLACES)?;
    within("passes", job.passes.len(), 0, MOST_PLACES)
}

fn check_zone(job: &Job, zone: &Zone) -> Checked {
    let name = &zone.name;
    not_below_0(&format!("need of {name}"), zone.need_m3)?;
    need(zone.room != Some(0), || format!("{name} has room for no heap"))?;
    need(!zone.ways.is_empty(), || format!("no way leads to {name}"))?;
    need(zone.walks_m.len() == job.zones.len(), || format!("{name} needs a walk to every zone"))?;
    zone.walks_m.iter().try_for_each(|m| not_below_0(&format!("a walk from {name}"), *m))?;
    for way in &zone.ways {
        need(way.stockpile < job.stockpiles.len(), || format!("a way to {name} starts at no stockpile"))?;
        not_below_0(&format!("distance to {name}"), way.distance_m)?;
        let mut last = 0.0;
        for pass in &way.passes {
            need(pass.pass < job.passes.len(), || format!("a way to {name} leads through no known pass"))?;
            share(&format!("place of a pass on the way to {name}"), pass.share)?;
            need(pass.share >= last, || format!("passes on the way to {name} are not in order"))?;
            last = pass.share;
        }
    }
    Ok(())
}

fn check_delivery(pile: &str, delivery: &Delivery) -> Checked {
    not_below_0(&format!("time of a delivery to {pile}"), delivery.at_s)?;
    not_below_0(&format!("volume of a delivery to {pile}"), delivery.volume_m3)?;
    law(&format!("lateness of a delivery to {pile}"), &delivery.late_s)
}

fn check_loader(loader: &Loader) -> Checked {
    let name = &loader.name;
    above_0(&format!("heaped capacity of {name}"), loader.heaped_m3)?;
    if let Some(kg) = loader.lift_kg {
        above_0(&format!("what {name} may lift"), kg)?;
    }
    above_0(&format!("loaded speed of {name}"), loader.loaded_m_per_s)?;
    above_0(&format!("empty speed of {name}"), loader.empty_m_per_s)?;
    for (what, value) in [
        ("width", loader.width_m),
        ("loading time", loader.load_s),
        ("dumping time", loader.dump_s),
        ("start-and-stop time", loader.start_stop_s),
        ("spreading time", loader.spread_s_per_m3),
        ("machine cost", loader.machine_cost_per_h),
        ("operator cost", loader.operator_cost_per_h),
        ("working fuel burn", loader.fuel_working_l_per_h),
        ("idling fuel burn", loader.fuel_idling_l_per_h),
    ] {
        not_below_0(&format!("{what} of {name}"), value)?;
    }
    if let Some(stoppages) = &loader.stoppages {
        above_0(&format!("time between stoppages of {name}"), stoppages.mean_gap_s)?;
        law(&format!("length of stoppages of {name}"), &stoppages.length_s)?;
    }
    Ok(())
}

fn check_raker(job: &Job, raker: &Raker) -> Checked {
    let name = &raker.name;
    above_0(&format!("raking rate of {name}"), raker.rate_m3_per_h)?;
    above_0(&format!("walking speed of {name}"), raker.walking_m_per_s)?;
    not_below_0(&format!("cost of {name}"), raker.cost_per_h)?;
    need(raker.start_zone < job.zones.len(), || format!("{name} starts in a zone that does not exist"))
}

fn check_raking(job: &Job) -> Checked {
    let raking = &job.raking;
    share("the loaders' share of the spreading", raking.spread_share)?;
    need(!job.rakers.is_empty() || raking.spread_share == 1.0, || {
        "there is nobody to rake, and the loaders do not spread all of it themselves".into()
    })?;
    if let Some(crowding) = raking.together {
        above_0("the crowding factor", crowding)?;
    }
    if let Some(fatigue) = raking.fatigue {
        not_below_0("the loss by fatigue", fatigue.share_per_h)?;
        above_0("the least share kept by a tired raker", fatigue.floor)?;
        share("the least share kept by a tired raker", fatigue.floor)?;
    }
    Ok(())
}

fn check_shift(job: &Job) -> Checked {
    let shift = &job.shift;
    let last = shift.end_s.unwrap_or(shift.start_s + DAY_S);
    need((0.0..DAY_S).contains(&shift.start_s), || "the day must start within the first 24 hours".into())?;
    need(last > shift.start_s && (shift.end_s.is_none() || last <= DAY_S), || {
        "the day must end after its start and by midnight".into()
    })?;
    let mut free_from = shift.start_s;
    for pause in &shift.breaks {
        need(pause.start_s >= free_from && pause.end_s > pause.start_s && pause.end_s <= last, || {
            "breaks must be in order, apart, and within the day".into()
        })?;
        free_from = pause.end_s;
    }
    law("set-up", &shift.set_up_s)?;
    law("clean-up", &shift.clean_up_s)
}

fn check_chance(job: &Job) -> Checked {
    let (days, loads) = (&job.chance.days, &job.chance.loads);
    for (what, factor) in [
        ("day", &days.day),
        ("loader pace", &days.loader_pace),
        ("travel", &days.travel),
        ("raker pace", &days.raker_pace),
        ("fill from day to day", &days.fill),
        ("need", &days.need),
        ("bulk", &days.bulk),
        ("fill from load to load", &loads.fill),
        ("loading", &loads.loading),
        ("haul", &loads.haul),
        ("dump", &loads.dump),
        ("return", &loads.return_leg),
        ("raking", &loads.raking),
    ] {
        let what = format!("spread of {what}");
        law(&what, factor)?;
        need((factor.mean() - 1.0).abs() < 1e-6, || format!("{what}: its mean is {}, not 1", factor.mean()))?;
    }
    Ok(())
}
