//! Figures of a starter file, for keys that cannot be left out.

use super::draft::{Draft, Step};
use super::key::Place;
use crate::build::need;
use crate::defaults::TRUCKLOAD;
use crate::files::NO_FILES;
use crate::raw::{self, Raw, RawMaterial};
use crate::starter::usual::{self, DELIVERY_AT};
use crate::starter::{Answers, usual_order};
use crate::units::System;

/// The figure that a starter file has, for a key that cannot be left out.
pub(super) fn usual_of(draft: &Draft, place: &Place) -> Option<String> {
    let system = system(draft);
    let usual = Answers::usual(system);
    match (place.path.as_slice(), place.of_thing()) {
        ([Step::Key(section), Step::Key(key)], _) if section == "material" && key == "name" => {
            Some(usual.material)
        }
        (_, Some(("zone", key))) => {
            let is_way = key == "distance" && draft.node(&place.path).is_none();
            usual.of_zone(key).filter(|_| !is_way)
        }
        (_, Some(("loader", "heaped"))) => Some(usual.bucket),
        (_, Some(("pass", "width"))) => Some(usual::gate(system).to_owned()),
        (_, Some(("stockpile", "on_hand"))) => {
            let raw =
                raw(draft).filter(|raw| raw.stockpiles.iter().all(|pile| pile.deliveries.is_empty()))?;
            let truckload = raw.stockpiles.iter().find_map(|pile| pile.truckload.as_ref());
            let truckload = truckload.map_or(TRUCKLOAD.value, |volume| volume.value);
            Some(usual_order(need_m3(&raw), truckload, system)).filter(|_| raw.stockpiles.len() == 1)
        }
        (_, Some(("stockpile", "truckload"))) => Some(usual.truckload),
        ([.., Step::Key(list), Step::At(_), Step::Key(key)], _) => match (list.as_str(), key.as_str()) {
            ("deliveries", "at") => Some(DELIVERY_AT.into()),
            ("deliveries", "volume") => Some(usual.truckload),
            ("ways", "distance") => Some(usual.distance),
            _ => None,
        },
        _ => None,
    }
}

/// The things of a text as typed, as far as they can be read.
pub(super) fn raw(draft: &Draft) -> Option<Raw> {
    raw::read(draft.table(), NO_FILES, &draft.source()).made
}

/// The units of a text.
pub(super) fn system(draft: &Draft) -> System {
    raw(draft).map_or(System::Metric, |raw| raw.system())
}

/// What all zones take, as far as their sizes are known \[m3\].
fn need_m3(raw: &Raw) -> f64 {
    let settling = raw.material.as_ref().map_or(0.0, RawMaterial::known_settling);
    raw.zones.iter().filter_map(|zone| need(zone, settling)).map(|(need_m3, _)| need_m3).sum()
}
