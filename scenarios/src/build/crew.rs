//! Rakers of the job and how they work.

use super::makings::{Makings, Sense, mean};
use crate::check::names::copies;
use crate::defaults::{self, NOTHING_SAID, WALKING};
use crate::diagnostics::{Diagnostics, Read};
use crate::units::{rate, speed};
use sim::{Fatigue, Raker, Raking};

pub(super) fn rakers(makings: &Makings<'_>, density_kg_per_m3: f64) -> Read<Vec<Raker>> {
    Read::of(|diagnostics| {
        let raw = makings.raw;
        let mut rakers = Vec::new();
        for raker in &raw.rakers {
            let name = &raker.named.name.as_ref()?.value;
            let count = raker.count.as_ref().map_or(1, |count| count.value);
            if count == 0 {
                continue;
            }
            let rate_m3_per_h = match &raker.rate {
                Some(given) => mean(&given.value, Sense::Inverted),
                None => {
                    let usual = defaults::raking(density_kg_per_m3);
                    let words =
                        format!("{name}: rakes {} of loose material", rate(usual.value, makings.system));
                    diagnostics.assume(format!("raker.{name}.rate"), words, usual.from);
                    usual.value
                }
            };
            let walks = raw.zones.iter().flat_map(|zone| &zone.walks).any(|walk| walk.distance.value > 0.0);
            if raker.walking.is_none() && walks {
                let words = format!("{name}: walks {}", speed(WALKING.value, makings.system));
                diagnostics.assume(format!("raker.{name}.walking"), words, WALKING.from);
            }
            if raker.start.is_none() && raw.zones.len() > 1 {
                let words = format!("{name}: begins in \"{}\"", raw.zones[0].named.shown());
                diagnostics.assume(format!("raker.{name}.start"), words, NOTHING_SAID);
            }
            if raker.cost.is_none() && raw.said.currency.is_some() {
                diagnostics.assume(
                    format!("raker.{name}.cost"),
                    format!("{name}: costs nothing"),
                    NOTHING_SAID,
                );
            }
            let start_zone = match &raker.start {
                None => 0,
                Some(start) => raw.zones.iter().position(|zone| zone.named.shown() == start.value)?,
            };
            rakers.extend(copies(name, count).into_iter().map(|name| Raker {
                name,
                rate_m3_per_h,
                start_zone,
                walking_m_per_s: raker.walking.as_ref().map_or(WALKING.value, |speed| speed.value),
                cost_per_h: raker.cost.as_ref().map_or(0.0, |cost| cost.value),
            }));
        }
        Some(rakers)
    })
}

pub(super) fn raking(makings: &Makings<'_>) -> Read<Raking> {
    let mut diagnostics = Diagnostics::default();
    let crew = &makings.raw.crew;
    let people: u32 =
        makings.raw.rakers.iter().map(|raker| raker.count.as_ref().map_or(1, |count| count.value)).sum();
    let together = crew.together.as_ref().is_some_and(|together| together.value);
    if crew.together.is_none() && people > 1 {
        diagnostics.assume("crew.together", "each raker works a heap alone", NOTHING_SAID);
    }
    if together && crew.crowding.is_none() && people > 1 {
        diagnostics.assume(
            "crew.crowding",
            "rakers on one heap do not get in each other's way",
            NOTHING_SAID,
        );
    }
    if !together && crew.crowding.is_some() {
        let words = "crowding is not used, as each raker works a heap alone";
        diagnostics.assume("crew.crowding", words, "it goes with together = true");
    }
    if crew.stand_clear.is_none() && people > 0 {
        let words = "nobody rakes in a zone while a loader dumps there";
        diagnostics.assume("crew.stand_clear", words, "built-in rule: usual caution");
    }
    if crew.fatigue.is_none() && people > 0 {
        diagnostics.assume("crew.fatigue", "rakers do not tire", NOTHING_SAID);
    }
    if crew.spread_share.is_none() {
        diagnostics.assume("crew.spread_share", "loaders dump only; rakers spread it all", NOTHING_SAID);
    }
    let raking = Raking {
        together: together.then(|| crew.crowding.as_ref().map_or(1.0, |crowding| crowding.value)),
        fatigue: crew
            .fatigue
            .as_ref()
            .map(|(loss, least)| Fatigue { share_per_h: loss.value, floor: least.value }),
        spread_share: crew.spread_share.as_ref().map_or(0.0, |share| share.value),
        stand_clear: crew.stand_clear.as_ref().is_none_or(|stand_clear| stand_clear.value),
    };
    Read { made: Some(raking), diagnostics }
}
