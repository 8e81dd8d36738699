//! Stockpiles and deliveries of the job.

use super::makings::{Makings, Sense, mean};
use crate::defaults::TRUCKLOAD;
use crate::diagnostics::{At, Read};
use crate::raw::RawDelivery;
use crate::scenario::FixedCosts;
use crate::units::volume;
use sim::{Delivery, Distribution, Stockpile};

/// The stockpiles, and what their material and its carriage cost where a price is given for them.
pub(super) fn make(makings: &Makings<'_>) -> Read<(Vec<Stockpile>, FixedCosts)> {
    Read::of(|diagnostics| {
        let mut all = Vec::new();
        let mut cost = FixedCosts::default();
        let price = |price: &Option<At<f64>>| price.as_ref().map_or(0.0, |price| price.value);
        for raw in &makings.raw.stockpiles {
            let name = raw.named.name.as_ref()?.value.clone();
            if raw.on_hand.is_none() && raw.deliveries.is_empty() {
                diagnostics.assume(
                    format!("stockpile.{name}.on_hand"),
                    "nothing lies there",
                    crate::defaults::NOTHING_SAID,
                );
            }
            if raw.face.is_none() && makings.loaders() > 1 {
                let words = format!("one loader at a time can load at \"{name}\"");
                diagnostics.assume(format!("stockpile.{name}.face"), words, crate::defaults::NOTHING_SAID);
            }
            cost.material += price(&raw.price);
            cost.delivery += price(&raw.carriage);
            let mut deliveries = Vec::new();
            for delivery in &raw.deliveries {
                cost.material += price(&delivery.price);
                cost.delivery += price(&delivery.carriage);
                deliveries.push(one(makings, delivery).join(diagnostics)?);
            }
            all.push(Stockpile {
                on_hand_m3: raw.on_hand.as_ref().map_or(0.0, |given| mean(&given.value, Sense::Direct)),
                deliveries,
                face: raw.face.as_ref().map_or(1, |face| face.value),
                name,
            });
        }
        Some((all, cost))
    })
}

fn one(makings: &Makings<'_>, raw: &RawDelivery) -> Read<Delivery> {
    Read::of(|diagnostics| {
        let late_s = match &raw.late {
            Some(late) => makings.law(&late.value),
            None => {
                let words = format!("{} comes on time", raw.place.words);
                diagnostics.assume(format!("{}.late", raw.place.path), words, crate::defaults::NOTHING_SAID);
                Distribution::Constant(0.0)
            }
        };
        Some(Delivery {
            at_s: raw.at.as_ref()?.value,
            late_s,
            volume_m3: mean(&raw.volume.as_ref()?.value, Sense::Direct),
        })
    })
}

/// The usual load of a truck: as the first pile that says it has it, else the most frequent volume of a delivery, of equals
/// the largest; else the built-in one. `matters` says whether anything could run short, for that is told in truckloads.
pub(super) fn truckload(makings: &Makings<'_>, piles: &[Stockpile], matters: bool) -> Read<f64> {
    if let Some(said) = makings.raw.stockpiles.iter().find_map(|pile| pile.truckload.as_ref()) {
        return Read::made(said.value);
    }
    let volumes: Vec<f64> =
        piles.iter().flat_map(|pile| pile.deliveries.iter().map(|delivery| delivery.volume_m3)).collect();
    let often = |volume: f64| volumes.iter().filter(|other| **other == volume).count();
    let usual = volumes.iter().copied().max_by(|a, b| often(*a).cmp(&often(*b)).then(a.total_cmp(b)));
    match usual {
        Some(usual) => Read::made(usual),
        None if !matters => Read::made(TRUCKLOAD.value),
        None => {
            let words = format!("a truck brings {} at a time", volume(TRUCKLOAD.value, makings.system));
            Read::assumed(TRUCKLOAD.value, "stockpile.truckload", words, TRUCKLOAD.from)
        }
    }
}
