//! From what was typed, once nothing is wrong with it, to the job in SI; each part returns the defaults it used beside what it made.

pub(crate) mod chance;
mod crew;
mod ground;
mod hours;
mod loaders;
mod makings;
mod material;
mod piles;

use crate::diagnostics::{Diagnostics, Read};
use crate::key::finish::Rule;
use crate::raw::{Raw, Switched};
use crate::scenario::Stated;
use crate::units::System;
use chance::Statements;
pub(crate) use ground::{loose_m3, need};
use makings::Makings;
use sim::{FillOrder, FinishRule, Job, Prices};

/// A job and what it was made from.
#[derive(Clone, Debug)]
pub(crate) struct Built {
    pub(crate) job: Job,
    pub(crate) ordered_m3: f64,
    pub(crate) stated: Stated,
}

/// Makes the job, with every default used; nothing is made if something is still missing that has been told already.
pub(crate) fn job(raw: &Raw, statements: &Statements, system: System) -> Read<Built> {
    Read::of(|diagnostics| {
        let makings = Makings { raw, system };
        let made = material::make(&makings).join(diagnostics)?;
        let (stockpiles, mut fixed) = piles::make(&makings).join(diagnostics)?;
        let ordered_m3 = stockpiles
            .iter()
            .map(|pile| pile.on_hand_m3 + pile.deliveries.iter().map(|d| d.volume_m3).sum::<f64>())
            .sum();
        let (zones, stated_zones) = ground::zones(&makings, made.settling).join(diagnostics)?;
        let loaders = loaders::make(&makings).join(diagnostics)?;
        let rakers = crew::rakers(&makings, made.material.density_kg_per_m3).join(diagnostics)?;
        let per_volume = raw.material.as_ref()?.price.as_ref();
        fixed.material += per_volume.map_or(0.0, |price| price.value * ordered_m3);
        fixed.mobilisation = raw.money.mobilisation.as_ref().map_or(0.0, |price| price.value);
        let finish = match raw.finish.rule.as_ref().map_or(Rule::AreaCovered, |rule| rule.value) {
            Rule::AreaCovered => FinishRule::AreaCovered,
            Rule::PileCleared => {
                FinishRule::PileCleared { surplus_zone: surplus(&makings).join(diagnostics)? }
            }
        };
        let matters = finish == FinishRule::AreaCovered;
        let truckload_m3 = piles::truckload(&makings, &stockpiles, matters).join(diagnostics)?;
        let stated = Stated { zones: stated_zones, truckload_m3, loaders: loaders::stated(raw), fixed };
        let prices = Prices {
            fuel_per_l: raw.money.fuel_price.as_ref().map_or(0.0, |price| price.value),
            material: fixed.sum(),
        };
        let job = Job {
            chance: chance::make(raw, statements, made.table).join(diagnostics)?,
            material: made.material,
            passes: ground::passes(&makings).join(diagnostics)?,
            raking: crew::raking(&makings).join(diagnostics)?,
            fill_order: raw.fill_order.as_ref().map_or(FillOrder::AsListed, |order| order.value),
            shift: hours::make(&makings).join(diagnostics)?,
            zones,
            stockpiles,
            loaders,
            rakers,
            finish,
            prices,
        };
        diagnostics.join(small_print(raw, &job));
        Some(Built { job, ordered_m3, stated })
    })
}

fn surplus(makings: &Makings<'_>) -> Read<usize> {
    let zones = &makings.raw.zones;
    Read::of(|diagnostics| {
        if let Some(surplus) = &makings.raw.finish.surplus {
            return zones.iter().position(|zone| zone.named.shown() == surplus.value);
        }
        let last = zones.len().checked_sub(1)?;
        if last > 0 {
            let words = format!("the surplus goes to the last zone, \"{}\"", zones[last].named.shown());
            diagnostics.assume("finish.surplus", words, crate::defaults::NOTHING_SAID);
        }
        Some(last)
    })
}

/// Defaults that concern the whole job.
fn small_print(raw: &Raw, job: &Job) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    let from = crate::defaults::NOTHING_SAID;
    if raw.fill_order.is_none() && job.zones.len() > 1 {
        diagnostics.assume("fill_order", "zones are filled in the order listed", from);
    }
    if raw.finish.rule.is_none() {
        let words = "the job is done when the area is covered; what is left stays at the pile";
        diagnostics.assume("finish.rule", words, from);
    }
    if raw.said.currency.is_none() {
        diagnostics.assume("money", "no prices are given, so no costs are counted", from);
    } else {
        diagnostics.join(fixed_costs(raw));
    }
    if raw.spread.switched == Switched::None {
        let words = "chance is switched off: every quantity is taken at its mean";
        diagnostics.assume("spread", words, "as the file says");
    }
    diagnostics
}

/// Parts of the fixed costs that are not given on their own.
fn fixed_costs(raw: &Raw) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    let from = crate::defaults::NOTHING_SAID;
    if raw.money.mobilisation.is_none() {
        diagnostics.assume("money.mobilisation", "getting the machine there and back costs nothing", from);
    }
    let deliveries = || raw.stockpiles.iter().flat_map(|pile| &pile.deliveries);
    let piles = || raw.stockpiles.iter();
    let priced = raw.material.as_ref().is_some_and(|material| material.price.is_some())
        || piles().any(|pile| pile.price.is_some())
        || deliveries().any(|delivery| delivery.price.is_some());
    let carried = piles().any(|pile| pile.carriage.is_some())
        || deliveries().any(|delivery| delivery.carriage.is_some());
    if priced && !carried {
        diagnostics.assume("stockpile.carriage", "bringing the material is in its price", from);
    }
    diagnostics
}

#[cfg(test)]
mod tests;
