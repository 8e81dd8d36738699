//! Zones, ways, walks and passes of the job.

use super::makings::{Makings, Sense, mean, or_usual};
use super::material::Settling;
use crate::check::references::places;
use crate::clearance::micrometres;
use crate::defaults::{NOTHING_SAID, PASSING};
use crate::diagnostics::Read;
use crate::raw::{RawWay, RawZone};
use crate::scenario::StatedZone;
use crate::units::{duration, figure};
use sim::{Pass, PassOnWay, Way, Zone};

pub(super) fn zones(makings: &Makings<'_>, settling: Settling) -> Read<(Vec<Zone>, Vec<StatedZone>)> {
    Read::of(|diagnostics| {
        let raw = &makings.raw.zones;
        let (mut zones, mut stated) = (Vec::new(), Vec::new());
        for (i, zone) in raw.iter().enumerate() {
            let (need_m3, measured) = need(zone, settling.value)?;
            zones.push(Zone {
                name: zone.named.name.as_ref()?.value.clone(),
                need_m3,
                room: room(zone).join(diagnostics)?,
                ways: zone.ways.iter().map(|way| way_of(makings, way)).collect::<Option<Vec<_>>>()?,
                walks_m: (0..raw.len()).map(|j| walk(raw, i, j).unwrap_or(0.0)).collect(),
            });
            stated.push(measured);
        }
        if let Some(from) = settling.from
            && stated.iter().any(|zone| zone.settling.is_some())
        {
            let words = format!("{} % of the depth is lost by settling", figure(settling.value * 100.0));
            diagnostics.assume("material.settling", words, from);
        }
        let pairs = (0..raw.len()).flat_map(|i| (0..i).map(move |j| (i, j)));
        let unsaid = pairs.filter(|(i, j)| walk(raw, *i, *j).is_none()).count();
        if unsaid > 0 && !makings.raw.rakers.is_empty() {
            diagnostics.assume(
                "zone.walk",
                "walking between zones takes no time where no distance is given",
                NOTHING_SAID,
            );
        }
        Some((zones, stated))
    })
}

/// What a zone takes \[m3\], as far as its size is known, with the measures it was made from.
pub(crate) fn need(zone: &RawZone, settling: f64) -> Option<(f64, StatedZone)> {
    if let Some(volume) = &zone.volume {
        return Some((mean(&volume.value, Sense::Direct), StatedZone::default()));
    }
    let area = match (&zone.area, &zone.sides, &zone.diameter) {
        (Some(area), ..) => mean(&area.value, Sense::Direct),
        (None, Some([length, width]), _) => length.value * width.value,
        (None, None, Some(diameter)) => std::f64::consts::PI / 4.0 * diameter.value * diameter.value,
        (None, None, None) => return None,
    };
    let depth = mean(&zone.depth.as_ref()?.value, Sense::Direct);
    let stated = StatedZone { area_m2: Some(area), depth_m: Some(depth), settling: Some(settling) };
    Some((loose_m3(area, depth, settling), stated))
}

/// The loose volume that lies so deep on an area \[m2\] once it has settled \[m3\].
pub(crate) fn loose_m3(area_m2: f64, depth_m: f64, settling: f64) -> f64 {
    area_m2 * depth_m / (1.0 - settling)
}

fn room(zone: &RawZone) -> Read<Option<u32>> {
    match &zone.room {
        Some(room) => Read::made(room.value),
        None => {
            let name = zone.named.shown();
            let words = format!("there is room in \"{name}\" for any number of heaps at once");
            Read::assumed(None, format!("zone.{name}.room"), words, NOTHING_SAID)
        }
    }
}

fn way_of(makings: &Makings<'_>, way: &RawWay) -> Option<Way> {
    let raw = makings.raw;
    let stockpile = match &way.from {
        None => 0,
        Some(from) => raw.stockpiles.iter().position(|pile| pile.named.shown() == from.value)?,
    };
    let passes = way.passes.iter().zip(places(way)).map(|(entry, share)| {
        let pass = raw.passes.iter().position(|pass| pass.named.shown() == entry.pass.value)?;
        Some(PassOnWay { pass, share })
    });
    Some(Way {
        stockpile,
        distance_m: way.distance.as_ref()?.value,
        passes: passes.collect::<Option<Vec<_>>>()?,
    })
}

/// The walk between two zones as given, in this direction or else in the other.
fn walk(zones: &[RawZone], from: usize, to: usize) -> Option<f64> {
    if from == to {
        return Some(0.0);
    }
    let said = |from: &RawZone, to: &RawZone| {
        let walk = from.walks.iter().find(|walk| walk.to.value == to.named.shown());
        walk.map(|walk| walk.distance.value)
    };
    said(&zones[from], &zones[to]).or_else(|| said(&zones[to], &zones[from]))
}

pub(super) fn passes(makings: &Makings<'_>) -> Read<Vec<Pass>> {
    Read::of(|diagnostics| {
        let mut passes = Vec::new();
        for raw in &makings.raw.passes {
            let name = raw.named.name.as_ref()?.value.clone();
            let key = format!("pass.{name}.passing");
            let words = |time| format!("passing \"{name}\" takes {}", duration(time));
            let passed = makings.is_passed(&name);
            let passing_s = if passed {
                or_usual(raw.passing.as_ref(), Sense::Direct, &PASSING, key, words).join(diagnostics)?
            } else {
                raw.passing.as_ref().map_or(PASSING.value, |given| mean(&given.value, Sense::Direct))
            };
            let at_once = raw.at_once.as_ref().map_or(1, |count| count.value);
            if raw.at_once.is_none() && passed && makings.loaders() > 1 {
                let words = format!("one machine at a time goes through \"{name}\"");
                diagnostics.assume(format!("pass.{name}.at_once"), words, NOTHING_SAID);
            }
            passes.push(Pass { width_m: micrometres(raw.width.as_ref()?.value), passing_s, at_once, name });
        }
        Some(passes)
    })
}
