//! A trade's word turned into changes of a document.

use crate::check::fits;
use crate::diagnostics::{At, Read};
use crate::document::{Entry, Node, Table, Value};
use crate::fields::Item;
use crate::knob::Knob;
use crate::raw::Raw;
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

const FROM: &str = "follows from the change asked for";

/// The document with a knob turned to a value, and what is assumed by it.
pub(super) fn turn(knob: &Knob, item: &Item<'_>, table: &Table, before: &Before<'_>) -> Read<Table> {
    match knob {
        Knob::Rakers => rakers(item, table, before),
        Knob::Loaders => loaders(item, table, before),
        Knob::Bucket => buckets(item, table, before),
        Knob::Haul => haul(item, table, before),
        Knob::Room => {
            let mut table = table.clone();
            things(&mut table, "zone").for_each(|zone| put(zone, "room", item.node.clone()));
            Read::made(table)
        }
        Knob::Key(_) => Read::made(table.clone()),
    }
}

fn rakers(item: &Item<'_>, table: &Table, before: &Before<'_>) -> Read<Table> {
    item.count(0..=MOST_RAKERS as u32).and_then(|wanted| {
        let rakers = before.raw.rakers.iter();
        let things: Vec<(u32, &str)> =
            rakers.map(|raker| (count(&raker.count), raker.named.shown())).collect();
        match (things.is_empty(), wanted.value) {
            (true, 0) => Read::made(table.clone()),
            (true, _) => item.wrong(
                "the file has no raker to make copies of",
                "write [[raker]] with a name into the file, with count = 0 if there is none at first",
            ),
            (false, wanted) => with_counts(table, ("raker", "rakers"), &things, wanted, item),
        }
    })
}

fn loaders(item: &Item<'_>, table: &Table, before: &Before<'_>) -> Read<Table> {
    item.count(1..=MOST_LOADERS as u32).and_then(|wanted| {
        let loaders = before.raw.loaders.iter();
        let things: Vec<_> = loaders.map(|loader| (count(&loader.count), loader.named.shown())).collect();
        with_counts(table, ("loader", "loaders"), &things, wanted.value, item)
    })
}

fn count(count: &Option<At<u32>>) -> u32 {
    count.as_ref().map_or(1, |count| count.value)
}

/// The document with so many things of a kind in all; the last of which there is one is copied.
fn with_counts(
    table: &Table,
    (kind, key): (&str, &str),
    all: &[(u32, &str)],
    wanted: u32,
    item: &Item<'_>,
) -> Read<Table> {
    let last = all.iter().rposition(|(count, _)| *count > 0).unwrap_or(all.len().saturating_sub(1));
    let mut table = table.clone();
    let mut left = wanted;
    for (i, (thing, (count, _))) in things(&mut table, kind).zip(all).enumerate() {
        let new = if i == last { left } else { left.min(*count) };
        left -= new;
        if new != *count {
            let value = Value::Whole(i64::from(new));
            put(thing, "count", Node { value, ..item.node.clone() });
        }
    }
    if wanted <= all.iter().map(|(count, _)| count).sum() {
        return Read::made(table);
    }
    let name = all.get(last).map_or("", |(_, name)| name);
    let words = format!("further {key} are like \"{name}\": as fast, and at the same cost");
    Read::assumed(table, key, words, FROM)
}

fn buckets(item: &Item<'_>, table: &Table, before: &Before<'_>) -> Read<Table> {
    item.figure(Kind::Bucket).and_then(|heaped| {
        let heaped = heaped.value;
        let mut table = table.clone();
        for (thing, raw) in things(&mut table, "loader").zip(&before.raw.loaders) {
            if let (Some(struck), Some(was)) = (&raw.struck, &raw.heaped) {
                put(thing, "struck", calculated(struck.value * (heaped / was.value), item));
            }
            put(thing, "heaped", item.node.clone());
        }
        let words = format!(
            "with a bucket of {} heaped everything else of a loader stays: width, weight, time to load and dump, what it may lift",
            bucket(heaped, before.system)
        );
        Read::assumed(table, "bucket", words, FROM)
    })
}

fn haul(item: &Item<'_>, table: &Table, before: &Before<'_>) -> Read<Table> {
    item.figure(Kind::Way).and_then(|wanted| {
        let (wanted, mean) = (wanted.value, mean_haul(before.job));
        if mean <= 0.0 {
            let right = "give the zones a distance above 0 first";
            return item.wrong("all ways are of no length, so they cannot be made longer in proportion", right);
        }
        let words = format!(
            "every way is {} % of its length, so that the mean haul is {} instead of {}; walks and gates stay",
            crate::units::figure(wanted / mean * 100.0),
            way(wanted, before.system),
            way(mean, before.system)
        );
        Read::assumed(longer(table, before.raw, wanted / mean, item), "haul", words, FROM)
    })
}

fn longer(table: &Table, raw: &Raw, factor: f64, item: &Item<'_>) -> Table {
    let mut table = table.clone();
    for (thing, raw) in things(&mut table, "zone").zip(&raw.zones) {
        let lengths = raw.ways.iter().map(|way| way.distance.as_ref().map(|distance| distance.value));
        if thing.get("distance").is_some() {
            if let Some(length) = raw.ways.first().and_then(|way| way.distance.as_ref()) {
                put(thing, "distance", calculated(length.value * factor, item));
            }
        } else if let Some(Entry { node: Node { value: Value::List(ways), .. }, .. }) =
            thing.entries.get_mut("ways")
        {
            for (node, length) in ways.iter_mut().zip(lengths) {
                if let (Value::Table(way), Some(length)) = (&mut node.value, length) {
                    put(way, "distance", calculated(length * factor, item));
                }
            }
        }
    }
    table
}

/// Mean over the zones, by what they need, of the nearest way that a loader fits through \[m\].
pub(crate) fn mean_haul(job: &Job) -> f64 {
    let open = |way: &&sim::Way| {
        job.loaders
            .iter()
            .any(|loader| way.passes.iter().all(|entry| fits(loader.width_m, job.passes[entry.pass].width_m)))
    };
    let total: f64 = job.zones.iter().map(|zone| zone.need_m3).sum();
    let weighed = job.zones.iter().map(|zone| {
        let nearest = zone.ways.iter().filter(open).map(|way| way.distance_m).fold(f64::INFINITY, f64::min);
        let weight = if total > 0.0 { zone.need_m3 / total } else { 1.0 / job.zones.len() as f64 };
        if nearest.is_finite() { nearest * weight } else { 0.0 }
    });
    weighed.sum()
}

/// All things of a kind in a document, in its order.
fn things<'t>(table: &'t mut Table, kind: &str) -> impl Iterator<Item = &'t mut Table> {
    let list = match table.entries.get_mut(kind).map(|entry| &mut entry.node.value) {
        Some(Value::List(list)) => list.as_mut_slice(),
        _ => &mut [],
    };
    list.iter_mut().filter_map(|node| match &mut node.value {
        Value::Table(thing) => Some(thing),
        _ => None,
    })
}

fn put(table: &mut Table, key: &str, node: Node) {
    table.entries.insert(key.to_owned(), Entry { key_span: node.span.clone(), node });
}

/// A quantity calculated, in the place of the value it was calculated from.
fn calculated(value: f64, item: &Item<'_>) -> Node {
    Node { value: Value::Calculated(value), ..item.node.clone() }
}
