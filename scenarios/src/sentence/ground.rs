//! What is moved, and to where.

use super::clause::{Add, Clause, Part, Value};
use super::figures::Told;
use super::teller::{About, Teller, clause, told, words};
use super::words::{article, as_said, between, number, pause, within};
use crate::build::loose_m3;
use crate::diagnostics::At;
use crate::key::zone::{KEYS, MOST_ROOM, NO_LIMIT, WAY};
use crate::key::{Key, finish, material};
use crate::materials::materials;
use crate::quantity::given::Given;
use crate::raw::{RawMaterial, RawWay, RawZone, piece};
use crate::units::{System, area, short_length, volume};
use sim::FinishRule;

const VOLUMES: [&[&str]; 2] = [
    &["5 yd3", "10 yd3", "20 yd3", "30 yd3", "50 yd3", "100 yd3"],
    &["5 m3", "10 m3", "15 m3", "24 m3", "50 m3", "100 m3"],
];
const AREAS: [&[&str]; 2] = [
    &["200 ft2", "500 ft2", "1200 ft2", "3000 ft2", "5000 ft2"],
    &["20 m2", "50 m2", "110 m2", "300 m2", "500 m2"],
];
const DEPTHS: [&[&str]; 2] =
    [&["1 in", "2 in", "3 in", "4 in", "6 in"], &["3 cm", "5 cm", "8 cm", "10 cm", "15 cm"]];
const SIDES: [&[&str]; 2] =
    [&["10 ft", "20 ft", "30 ft", "50 ft", "100 ft"], &["3 m", "6 m", "10 m", "15 m", "30 m"]];
const WAYS: [&[&str]; 2] = [
    &["10 yd", "20 yd", "30 yd", "50 yd", "80 yd", "120 yd"],
    &["10 m", "25 m", "40 m", "60 m", "80 m", "120 m"],
];

impl Teller<'_> {
    /// What is moved, and from which piles.
    pub(super) fn material(&self) -> Vec<Clause> {
        let Some(name) = self.raw.material.as_ref().and_then(|material| material.name.as_ref()) else {
            return Vec::new();
        };
        let known = About::in_table("material", material::KEYS, "name", "what is moved");
        let said = super::figures::typed(name, self.text);
        let value = known.value(self.built.job.material.name.clone(), said);
        let choices = materials().iter().map(|material| material.name.clone()).collect();
        let value = self.as_in_a_starter(Value { choices, ..value }, &self.usual.material);
        let mut parts = match (self.built.job.finish, self.single_volume()) {
            (FinishRule::PileCleared { .. }, _) => vec![words("Move all "), self.ordered(), words(" of ")],
            (_, Some(volume)) => vec![words("Move "), told(volume), words(" of ")],
            (_, None) => vec![words(format!("Move {} of ", volume(self.need_m3(), self.system)))],
        };
        parts.push(told(value));
        let mut clauses = vec![clause("material", parts)];
        let piles = &self.raw.stockpiles;
        let mut from = Vec::new();
        for (at, pile) in piles.iter().enumerate() {
            let Some(name) = &pile.named.name else { continue };
            let before = if at == 0 {
                format!("{} from ", pause(&self.built.job.material.name))
            } else {
                String::new()
            };
            from.push(words(format!(
                "{before}{}{}",
                between(at, piles.len(), " and "),
                article(&name.value)
            )));
            from.push(told(self.name("stockpile", crate::key::stockpile::KEYS, name, "the pile's name")));
        }
        clauses.push(clause("stockpile", from));
        clauses
    }

    /// What all zones take \[m3\].
    pub(super) fn need_m3(&self) -> f64 {
        self.built.job.zones.iter().map(|zone| zone.need_m3).sum()
    }

    fn ordered(&self) -> Part {
        words(volume(self.built.ordered_m3, self.system))
    }

    /// The volume of the only zone, where it is given as one and not all that lies there is moved.
    fn single_volume(&self) -> Option<Value> {
        let [zone] = self.raw.zones.as_slice() else { return None };
        let cleared = matches!(self.built.job.finish, FinishRule::PileCleared { .. });
        zone.volume.as_ref().filter(|_| !cleared).map(|volume| self.volume(0, zone, volume))
    }

    /// To which zones.
    pub(super) fn zones(&self) -> Vec<Clause> {
        let zones = &self.raw.zones;
        let count = zones.len();
        let mut clauses: Vec<Clause> = match zones.as_slice() {
            [zone] => vec![self.only_zone(zone)],
            _ => zones.iter().enumerate().map(|(at, zone)| self.one_of_zones(at, zone)).collect(),
        };
        for (clause, zone) in clauses.iter_mut().zip(zones) {
            clause.name = zone.named.name.as_ref().map(|name| name.value.clone());
            clause.can_remove = count > 1;
        }
        if count > 1 {
            clauses.insert(0, clause("zones", vec![words(format!(" to {count} zones"))]));
        }
        if let Some(last) = clauses.last_mut() {
            last.add = Some(Add { kind: "zone".into(), words: "another zone".into() });
        }
        clauses
    }

    /// `, with room for 3 heaps in each zone`: the trade's word for it sets all of them. Said in passing, as a sentence is long enough.
    pub(super) fn room(&self) -> Option<Clause> {
        let room = self.built.job.zones.first()?.room;
        if self.built.job.zones.iter().any(|zone| zone.room != room) {
            return None;
        }
        let known = About::of("zone", "", KEYS, "room", "room for heaps");
        let about = About { key: "room".into(), ..known };
        let (said, typed) = match room {
            Some(count) => (number(count), count.to_string()),
            None => ("any number of".to_owned(), NO_LIMIT.to_owned()),
        };
        let value = Value {
            usual: room.is_none(),
            less: room.filter(|count| *count > 1).map(|count| (count - 1).to_string()),
            more: room.filter(|count| *count < MOST_ROOM).map(|count| (count + 1).to_string()),
            choices: ["1", "2", "3", "4", "6", NO_LIMIT].map(str::to_owned).into(),
            ..about.value(said, typed)
        };
        let heaps = if room == Some(1) { " heap" } else { " heaps" };
        let each = if self.raw.zones.len() > 1 { " in each zone" } else { "" };
        let parts = vec![words(", with room for "), told(value), words(format!("{heaps}{each}"))];
        Some(Clause { is_quiet: true, ..clause("room", parts) })
    }

    /// `, 25 m, to the ground`, with its measures if it has some.
    fn only_zone(&self, zone: &RawZone) -> Clause {
        let mut parts = vec![words(", ")];
        parts.extend(self.ways(zone));
        parts.push(words(", to "));
        parts.extend(self.zone_name(zone));
        if self.single_volume().is_none() {
            parts.push(words(", "));
            parts.extend(self.size(0, zone));
        }
        clause("zone", parts)
    }

    /// ` to 3 zones: far third, 80 ft by 50 ft, 1 in deep, 55 yd; ...`
    fn one_of_zones(&self, at: usize, zone: &RawZone) -> Clause {
        let before = if at == 0 { ": " } else { "; " };
        let mut parts = vec![words(before)];
        parts.extend(self.zone_name(zone));
        parts.push(words(", "));
        parts.extend(self.size(at, zone));
        parts.push(words(", "));
        parts.extend(self.ways(zone));
        clause("zone", parts)
    }

    fn zone_name(&self, zone: &RawZone) -> Vec<Part> {
        let Some(name) = &zone.named.name else { return Vec::new() };
        let article = if self.raw.zones.len() == 1 { article(&name.value) } else { "" };
        vec![words(article), told(self.name("zone", KEYS, name, "the zone's name"))]
    }

    fn about(zone: &RawZone, key: &str, title: &'static str) -> About {
        About::of("zone", zone.named.shown(), KEYS, key, title)
    }

    fn measure<T: Told>(
        &self,
        zone: &RawZone,
        at: &At<T>,
        (key, title): (&str, &'static str),
        choices: [&[&str]; 2],
    ) -> Part {
        told(self.measured(zone, at, (key, title), choices))
    }

    fn measured<T: Told>(
        &self,
        zone: &RawZone,
        at: &At<T>,
        (key, title): (&str, &'static str),
        choices: [&[&str]; 2],
    ) -> Value {
        let value = self.given(Self::about(zone, key, title), at, choices);
        self.as_in_a_starter(value, &self.usual.of_zone(key).unwrap_or_default())
    }

    /// How much a zone takes: a volume, or its measures and depth.
    fn size(&self, at: usize, zone: &RawZone) -> Vec<Part> {
        if let Some(volume) = &zone.volume {
            return vec![told(self.volume(at, zone, volume))];
        }
        let mut parts = Vec::new();
        if let Some(area) = &zone.area {
            let value = self.measured(zone, area, ("area", "the area"), AREAS);
            parts.push(told(self.or_volume(at, value)));
        }
        if let Some([length, width]) = &zone.sides {
            parts.push(self.measure(zone, length, ("length", "how long"), SIDES));
            parts.push(words(" by "));
            parts.push(self.measure(zone, width, ("width", "how wide"), SIDES));
        }
        if let Some(across) = &zone.diameter {
            parts.push(self.measure(zone, across, ("diameter", "how wide across"), SIDES));
            parts.push(words(" across"));
        }
        if let Some(depth) = &zone.depth {
            parts.push(words(", "));
            parts.push(self.measure(zone, depth, ("depth", "how deep"), DEPTHS));
            parts.push(words(" deep"));
        }
        parts
    }

    /// A volume; an area and a depth that come to the same are offered in its place.
    fn volume(&self, at: usize, zone: &RawZone, volume: &At<Given>) -> Value {
        let value = self.given(Self::about(zone, "volume", "how much"), volume, VOLUMES);
        let mut value = self.as_in_a_starter(value, &self.usual.volume);
        let depth = if self.system == System::Us { 0.1016 } else { 0.1 };
        let need = self.built.job.zones.get(at).map_or(0.0, |zone| zone.need_m3);
        let settling = self.raw.material.as_ref().map_or(0.0, RawMaterial::known_settling);
        if need > 0.0 {
            let covered = area(need / loose_m3(1.0, depth, settling), self.system);
            let both = format!("{covered} at {}", short_length(depth, self.system));
            value.choices.push(both.replace(',', ""));
        }
        value
    }

    /// An area; the volume it comes to is offered in its place.
    fn or_volume(&self, at: usize, mut value: Value) -> Value {
        let need =
            self.built.job.zones.get(at).map(|zone| volume(zone.need_m3, self.system).replace(',', ""));
        value.choices.extend(need);
        value
    }

    /// `60 yd through the narrow gate or 130 yd`, from which pile where there are several.
    fn ways(&self, zone: &RawZone) -> Vec<Part> {
        let mut parts = Vec::new();
        for (at, way) in zone.ways.iter().enumerate() {
            if at > 0 {
                parts.push(words(" or "));
            }
            parts.extend(self.way(zone, at, way).map(told));
            let mut more = String::new();
            if let (Some(from), true) = (&way.from, self.raw.stockpiles.len() > 1) {
                more += &format!(" from {}", within(&from.value));
            }
            for (on, pass) in way.passes.iter().enumerate() {
                let before = if on == 0 { " through " } else { between(on, way.passes.len(), " and ") };
                more += &format!("{before}{}", within(&pass.pass.value));
            }
            if !more.is_empty() {
                parts.push(words(more));
            }
        }
        parts
    }

    fn way(&self, zone: &RawZone, at: usize, way: &RawWay) -> Option<Value> {
        let distance = way.distance.as_ref()?;
        let known: &'static Key = WAY.iter().find(|key| key.name == "distance")?;
        let is_alone = distance.place.path.ends_with(".distance")
            && way.from.is_none()
            && way.place.path.ends_with(".distance");
        let key = match is_alone {
            true => "distance".to_owned(),
            false => format!("ways.{}.distance", at + 1),
        };
        let about = About {
            key: format!("zone.{}.{key}", piece(zone.named.shown())),
            title: "how far, one way",
            known,
        };
        Some(self.as_in_a_starter(self.given(about, distance, WAYS), &self.usual.distance))
    }

    /// What becomes of what no zone needs.
    pub(super) fn finish(&self) -> Option<Clause> {
        let FinishRule::PileCleared { surplus_zone } = self.built.job.finish else { return None };
        let zone = &self.built.job.zones.get(surplus_zone)?.name;
        let known = About::in_table("finish", finish::KEYS, "surplus", "where the rest goes");
        let usual = self.raw.finish.surplus.is_none();
        let choices = self.built.job.zones.iter().map(|zone| zone.name.clone()).collect();
        let value = Value { usual, choices, ..known.value(as_said(zone), zone.clone()) };
        let parts =
            vec![words(format!(" What no zone needs goes to {}", article(zone))), told(value), words(".")];
        Some(clause("finish", parts))
    }
}
