//! A trade's word turned into settings of the things typed in.

use crate::diagnostics::{At, Place, Read};
use crate::fields::Item;
use crate::knob::{Knob, copied, mean_haul, shared_out};
use crate::raw::{self, Named, Raw, RawChange};
use crate::units::System;
use crate::units::kind::Kind;
use crate::units::{bucket, way};
use sim::{Job, MOST_LOADERS, MOST_RAKERS};

/// The job as it stands before the change.
pub(super) struct Before<'m> {
    pub(super) raw: &'m Raw,
    pub(super) job: &'m Job,
    pub(super) system: System,
}

/// One value of a thing that a knob sets.
#[derive(Clone, Debug)]
pub(super) struct Setting {
    /// Which of its kind, and its name.
    thing: usize,
    name: String,
    value: Set,
}

#[derive(Clone, Debug)]
enum Set {
    Loaders(At<u32>),
    Rakers(At<u32>),
    Heaped(At<f64>),
    Struck(At<f64>),
    /// Of one of the ways to a zone.
    Distance(usize, At<f64>),
    Room(At<Option<u32>>),
}

impl Setting {
    /// Sets it.
    pub(super) fn put(&self, raw: &mut Raw) {
        let thing = self.thing;
        match self.value.clone() {
            Set::Loaders(count) => raw.loaders[thing].count = Some(count),
            Set::Rakers(count) => raw.rakers[thing].count = Some(count),
            Set::Heaped(heaped) => raw.loaders[thing].heaped = Some(heaped),
            Set::Struck(struck) => raw.loaders[thing].struck = Some(struck),
            Set::Distance(way, distance) => raw.zones[thing].ways[way].distance = Some(distance),
            Set::Room(room) => raw.zones[thing].room = Some(room),
        }
    }

    /// Whether a later change of a key takes its place.
    pub(super) fn is_changed_by(&self, change: &RawChange) -> bool {
        let (kind, keys): (&str, &[&str]) = match &self.value {
            Set::Loaders(_) => ("loader", &["count"]),
            Set::Rakers(_) => ("raker", &["count"]),
            Set::Heaped(_) => ("loader", &["heaped"]),
            Set::Struck(_) => ("loader", &["struck"]),
            Set::Distance(..) => ("zone", &["distance", "ways"]),
            Set::Room(_) => ("zone", &["room"]),
        };
        change.is_of(kind, &self.name, keys)
    }

    fn of(thing: usize, named: &Named, value: Set) -> Self {
        Self { thing, name: named.shown().to_owned(), value }
    }
}

const FROM: &str = "follows from the change asked for";

/// What is set when a knob is turned to a value, and what is assumed by it.
pub(super) fn turn(knob: &Knob, item: &Item<'_>, before: &Before<'_>) -> Read<Vec<Setting>> {
    match knob {
        Knob::Rakers => rakers(item, before.raw),
        Knob::Loaders => loaders(item, before.raw),
        Knob::Bucket => buckets(item, before),
        Knob::Haul => haul(item, before),
        Knob::Room => raw::room(item).map(|room| {
            let zones = before.raw.zones.iter().map(|zone| &zone.named).enumerate();
            let room_of = |named: &Named| Set::Room(at(item, named.place.key("room"), room.value));
            zones.map(|(thing, named)| Setting::of(thing, named, room_of(named))).collect()
        }),
        Knob::Key(_) => Read::made(Vec::new()),
    }
}

/// A value in the place of a key, but typed where the knob's value is.
fn at<T>(item: &Item<'_>, place: Place, value: T) -> At<T> {
    At { place: place.at(&item.node.span), ..item.at(value) }
}

fn rakers(item: &Item<'_>, raw: &Raw) -> Read<Vec<Setting>> {
    item.count(0..=MOST_RAKERS as u32).and_then(|wanted| {
        let all: Vec<_> = raw.rakers.iter().map(|raker| (&raker.named, count(&raker.count))).collect();
        match (all.is_empty(), wanted.value) {
            (true, 0) => Read::made(Vec::new()),
            (true, _) => item.wrong(
                "the file has no raker to make copies of",
                "write [[raker]] with a name into the file, with count = 0 if there is none at first",
            ),
            (false, wanted) => counts("rakers", &all, wanted, item, Set::Rakers),
        }
    })
}

fn loaders(item: &Item<'_>, raw: &Raw) -> Read<Vec<Setting>> {
    item.count(1..=MOST_LOADERS as u32).and_then(|wanted| {
        let all: Vec<_> = raw.loaders.iter().map(|loader| (&loader.named, count(&loader.count))).collect();
        counts("loaders", &all, wanted.value, item, Set::Loaders)
    })
}

fn count(count: &Option<At<u32>>) -> u32 {
    count.as_ref().map_or(1, |count| count.value)
}

/// So many things of a kind in all.
fn counts(
    key: &str,
    all: &[(&Named, u32)],
    wanted: u32,
    item: &Item<'_>,
    set: fn(At<u32>) -> Set,
) -> Read<Vec<Setting>> {
    let counts: Vec<u32> = all.iter().map(|(_, count)| *count).collect();
    let mut settings = Vec::new();
    for (thing, (new, (named, was))) in shared_out(wanted, &counts).into_iter().zip(all).enumerate() {
        if new != *was {
            let value = set(at(item, named.place.key("count"), new));
            settings.push(Setting::of(thing, named, value));
        }
    }
    if wanted <= counts.iter().sum() {
        return Read::made(settings);
    }
    let name = all.get(copied(&counts)).map_or("", |(named, _)| named.shown());
    let words = format!("further {key} are like \"{name}\": as fast, and at the same cost");
    Read::assumed(settings, key, words, FROM)
}

fn buckets(item: &Item<'_>, before: &Before<'_>) -> Read<Vec<Setting>> {
    Read::of(|diagnostics| {
        let heaped = item.figure(Kind::Bucket).join(diagnostics)?.value;
        let mut settings = Vec::new();
        for (thing, loader) in before.raw.loaders.iter().enumerate() {
            let was = loader.heaped.as_ref()?;
            if let Some(struck) = &loader.struck {
                let new = item.believable(struck.value * (heaped / was.value), Kind::Bucket);
                let new = new.map(|new| Set::Struck(at(item, struck.place.clone(), new)));
                settings.extend(new.join(diagnostics).map(|value| Setting::of(thing, &loader.named, value)));
            }
            let value = Set::Heaped(at(item, was.place.clone(), heaped));
            settings.push(Setting::of(thing, &loader.named, value));
        }
        let words = format!(
            "with a bucket of {} heaped everything else of a loader stays: width, weight, time to load and dump, what it may lift",
            bucket(heaped, before.system)
        );
        diagnostics.assume("bucket", words, FROM);
        diagnostics.is_clean().then_some(settings)
    })
}

fn haul(item: &Item<'_>, before: &Before<'_>) -> Read<Vec<Setting>> {
    Read::of(|diagnostics| {
        let (wanted, mean) = (item.figure(Kind::Way).join(diagnostics)?.value, mean_haul(before.job));
        if mean <= 0.0 {
            let what = "all ways are of no length, so they cannot be made longer in proportion";
            return item.wrong(what, "give the zones a distance above 0 first").join(diagnostics);
        }
        let factor = wanted / mean;
        let mut settings = Vec::new();
        for (thing, zone) in before.raw.zones.iter().enumerate() {
            for (i, way) in zone.ways.iter().enumerate() {
                let was = way.distance.as_ref()?;
                let new = item.believable(was.value * factor, Kind::Way);
                let new = new.map(|new| Set::Distance(i, at(item, was.place.clone(), new)));
                settings.extend(new.join(diagnostics).map(|value| Setting::of(thing, &zone.named, value)));
            }
        }
        let words = format!(
            "every way is {} % of its length, so that the mean haul is {} instead of {}; walks and gates stay",
            crate::units::figure(factor * 100.0),
            way(wanted, before.system),
            way(mean, before.system)
        );
        diagnostics.assume("haul", words, FROM);
        diagnostics.is_clean().then_some(settings)
    })
}
