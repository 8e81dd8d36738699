//! What the model has no meaning for. People are told in their own words before it comes to this.

use super::{MOST_LOADERS, MOST_RAKERS};
use crate::chance::Distribution;
use crate::error::{Figure, JobError, JobPart, PartKind};
use crate::job::{Break, Delivery, FinishRule, Job, Loader, Pass, Raker, Stockpile, Way, Zone};

type Checked = Result<(), JobError>;

const DAY_S: f64 = 86_400.0;
/// Most zones, stockpiles, passes and deliveries of each.
const MOST_PLACES: usize = 1_000;

pub(super) fn check(job: &Job) -> Checked {
    counts(job)?;
    let of_job = Of(None);
    of_job.above_0("density", job.material.density_kg_per_m3)?;
    of_job.above_0("fill factor", job.material.fill_factor)?;
    let named = |kind, index, name: &String| Of(Some(JobPart { kind, index, name: name.clone() }));
    for (i, zone) in job.zones.iter().enumerate() {
        check_zone(job, zone, &named(PartKind::Zone, i, &zone.name))?;
    }
    for (i, pile) in job.stockpiles.iter().enumerate() {
        check_stockpile(pile, &named(PartKind::Stockpile, i, &pile.name))?;
    }
    for (i, pass) in job.passes.iter().enumerate() {
        check_pass(pass, &named(PartKind::Pass, i, &pass.name))?;
    }
    for (i, loader) in job.loaders.iter().enumerate() {
        check_loader(loader, &named(PartKind::Loader, i, &loader.name))?;
    }
    for (i, raker) in job.rakers.iter().enumerate() {
        check_raker(job, raker, &named(PartKind::Raker, i, &raker.name))?;
    }
    check_raking(job)?;
    if let FinishRule::PileCleared { surplus_zone: zone } = job.finish {
        need(zone < job.zones.len(), || JobError::UnknownSurplusZone { zone })?;
    }
    check_shift(job)?;
    check_chance(job)?;
    of_job.not_below_0("fuel price", job.prices.fuel_per_l)?;
    of_job.not_below_0("price of the material", job.prices.material)
}

fn need(holds: bool, or_else: impl FnOnce() -> JobError) -> Checked {
    if holds { Ok(()) } else { Err(or_else()) }
}

/// Whose figures are checked: a part's, or the whole job's.
struct Of(Option<JobPart>);

impl Of {
    fn figure(&self, what: &'static str) -> Figure {
        Figure { what, of: self.0.clone() }
    }

    fn above_0(&self, what: &'static str, value: f64) -> Checked {
        let holds = value.is_finite() && value > 0.0;
        need(holds, || JobError::NotAboveZero { figure: self.figure(what), value })
    }

    fn not_below_0(&self, what: &'static str, value: f64) -> Checked {
        let holds = value.is_finite() && value >= 0.0;
        need(holds, || JobError::BelowZero { figure: self.figure(what), value })
    }

    fn share(&self, what: &'static str, value: f64) -> Checked {
        need((0.0..=1.0).contains(&value), || JobError::NotAShare { figure: self.figure(what), value })
    }

    fn law(&self, what: &'static str, law: &Distribution) -> Checked {
        law.check().map_err(|why| JobError::Distribution { figure: self.figure(what), why })
    }

    /// An error about a part.
    fn refuse(&self, holds: bool, error: impl FnOnce(JobPart) -> JobError) -> Checked {
        match (&self.0, holds) {
            (Some(part), false) => Err(error(part.clone())),
            _ => Ok(()),
        }
    }
}

fn counts(job: &Job) -> Checked {
    let within = |things, count: usize, least: usize, most: usize| {
        need((least..=most).contains(&count), || JobError::Count { things, count, least, most })
    };
    within("loaders", job.loaders.len(), 1, MOST_LOADERS)?;
    within("rakers", job.rakers.len(), 0, MOST_RAKERS)?;
    within("zones", job.zones.len(), 1, MOST_PLACES)?;
    within("stockpiles", job.stockpiles.len(), 1, MOST_PLACES)?;
    within("passes", job.passes.len(), 0, MOST_PLACES)
}

fn check_zone(job: &Job, zone: &Zone, own: &Of) -> Checked {
    own.not_below_0("need of {}", zone.need_m3)?;
    own.refuse(zone.room != Some(0), |zone| JobError::NoRoom { zone })?;
    own.refuse(!zone.ways.is_empty(), |zone| JobError::NoWay { zone })?;
    let (given, needed) = (zone.walks_m.len(), job.zones.len());
    own.refuse(given == needed, |zone| JobError::Walks { zone, given, needed })?;
    zone.walks_m.iter().try_for_each(|m| own.not_below_0("a walk from {}", *m))?;
    zone.ways.iter().try_for_each(|way| check_way(job, way, own))
}

fn check_way(job: &Job, way: &Way, own: &Of) -> Checked {
    let stockpile = way.stockpile;
    own.refuse(stockpile < job.stockpiles.len(), |zone| JobError::UnknownStockpile { zone, stockpile })?;
    own.not_below_0("distance to {}", way.distance_m)?;
    let mut last = 0.0;
    for at in &way.passes {
        let pass = at.pass;
        own.refuse(pass < job.passes.len(), |zone| JobError::UnknownPass { zone, pass })?;
        own.share("place of a pass on the way to {}", at.share)?;
        own.refuse(at.share >= last, |zone| JobError::PassesOutOfOrder { zone })?;
        last = at.share;
    }
    Ok(())
}

fn check_stockpile(pile: &Stockpile, own: &Of) -> Checked {
    own.not_below_0("stock on hand at {}", pile.on_hand_m3)?;
    own.refuse(pile.face >= 1, |stockpile| JobError::NoFace { stockpile })?;
    pile.deliveries.iter().try_for_each(|delivery| check_delivery(delivery, own))
}

fn check_delivery(delivery: &Delivery, own: &Of) -> Checked {
    own.not_below_0("time of a delivery to {}", delivery.at_s)?;
    own.not_below_0("volume of a delivery to {}", delivery.volume_m3)?;
    own.law("lateness of a delivery to {}", &delivery.late_s)
}

fn check_pass(pass: &Pass, own: &Of) -> Checked {
    own.not_below_0("width of {}", pass.width_m)?;
    own.not_below_0("passing time of {}", pass.passing_s)?;
    own.refuse(pass.at_once >= 1, |pass| JobError::NobodyPasses { pass })
}

fn check_loader(loader: &Loader, own: &Of) -> Checked {
    own.above_0("heaped capacity of {}", loader.heaped_m3)?;
    if let Some(kg) = loader.lift_kg {
        own.above_0("what {} may lift", kg)?;
    }
    own.above_0("loaded speed of {}", loader.loaded_m_per_s)?;
    own.above_0("empty speed of {}", loader.empty_m_per_s)?;
    for (what, value) in [
        ("width of {}", loader.width_m),
        ("loading time of {}", loader.load_s),
        ("dumping time of {}", loader.dump_s),
        ("start-and-stop time of {}", loader.start_stop_s),
        ("spreading time of {}", loader.spread_s_per_m3),
        ("machine cost of {}", loader.machine_cost_per_h),
        ("operator cost of {}", loader.operator_cost_per_h),
        ("working fuel burn of {}", loader.fuel_working_l_per_h),
        ("idling fuel burn of {}", loader.fuel_idling_l_per_h),
    ] {
        own.not_below_0(what, value)?;
    }
    if let Some(stoppages) = &loader.stoppages {
        own.above_0("time between stoppages of {}", stoppages.mean_gap_s)?;
        own.law("length of stoppages of {}", &stoppages.length_s)?;
    }
    Ok(())
}

fn check_raker(job: &Job, raker: &Raker, own: &Of) -> Checked {
    own.above_0("raking rate of {}", raker.rate_m3_per_h)?;
    own.above_0("walking speed of {}", raker.walking_m_per_s)?;
    own.not_below_0("cost of {}", raker.cost_per_h)?;
    let zone = raker.start_zone;
    own.refuse(zone < job.zones.len(), |raker| JobError::UnknownStartZone { raker, zone })
}

fn check_raking(job: &Job) -> Checked {
    let (raking, own) = (&job.raking, Of(None));
    let spread_share = raking.spread_share;
    own.share("the loaders' share of the spreading", spread_share)?;
    need(!job.rakers.is_empty() || spread_share == 1.0, || JobError::NobodyRakes { spread_share })?;
    if let Some(crowding) = raking.together {
        own.above_0("the crowding factor", crowding)?;
    }
    if let Some(fatigue) = raking.fatigue {
        own.not_below_0("the loss by fatigue", fatigue.share_per_h)?;
        own.above_0("the least share kept by a tired raker", fatigue.floor)?;
        own.share("the least share kept by a tired raker", fatigue.floor)?;
    }
    Ok(())
}

fn check_shift(job: &Job) -> Checked {
    let (shift, own) = (&job.shift, Of(None));
    let (start_s, end_s) = (shift.start_s, shift.end_s);
    let last = end_s.unwrap_or(start_s + DAY_S);
    need((0.0..DAY_S).contains(&start_s), || JobError::StartOfDay { start_s })?;
    need(last > start_s && (end_s.is_none() || last <= DAY_S), || JobError::EndOfDay { start_s, end_s })?;
    let mut free_from = start_s;
    for (index, Break { start_s, end_s }) in shift.breaks.iter().copied().enumerate() {
        let fits = start_s >= free_from && end_s > start_s && end_s <= last;
        need(fits, || JobError::Break { index, start_s, end_s })?;
        free_from = end_s;
    }
    own.law("set-up", &shift.set_up_s)?;
    own.law("clean-up", &shift.clean_up_s)
}

fn check_chance(job: &Job) -> Checked {
    let (days, loads, own) = (&job.chance.days, &job.chance.loads, Of(None));
    for (what, factor) in [
        ("spread of day", &days.day),
        ("spread of loader pace", &days.loader_pace),
        ("spread of travel", &days.travel),
        ("spread of raker pace", &days.raker_pace),
        ("spread of fill from day to day", &days.fill),
        ("spread of need", &days.need),
        ("spread of bulk", &days.bulk),
        ("spread of fill from load to load", &loads.fill),
        ("spread of loading", &loads.loading),
        ("spread of haul", &loads.haul),
        ("spread of dump", &loads.dump),
        ("spread of return", &loads.return_leg),
        ("spread of raking", &loads.raking),
    ] {
        own.law(what, factor)?;
        let mean = factor.mean();
        need((mean - 1.0).abs() < 1e-6, || JobError::MeanNotOne { figure: own.figure(what), mean })?;
    }
    Ok(())
}
