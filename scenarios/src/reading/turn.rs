//! A trade's word turned into changes of a document.

use crate::check::fits;
use crate::diagnostics::Diagnostics;
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

/// What is assumed by a turn of a knob: key, words, where it comes from.
pub(super) type Assumed = (&'static str, String, &'static str);

const FROM: &str = "follows from the change asked for";

/// Turns a knob to a value; `None` if that cannot be, which is then a problem.
pub(super) fn turn(
    knob: &Knob,
    item: &Item<'_>,
    table: &mut Table,
    before: &Before<'_>,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Vec<Assumed>> {
    match knob {
        Knob::Rakers => rakers(item, table, before, diagnostics),
        Knob::Loaders => loaders(item, table, before, diagnostics),
        Knob::Bucket => buckets(item, table, before, diagnostics),
        Knob::Haul => haul(item, table, before, diagnostics),
        Knob::Room => {
            things(table, "zone").for_each(|zone| put(zone, "room", item.node.clone()));
            Some(Vec::new())
        }
        Knob::Key(_) => Some(Vec::new()),
    }
}

fn rakers(
    item: &Item<'_>,
    table: &mut Table,
    before: &Before<'_>,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Vec<Assumed>> {
    let wanted = item.count(0..=MOST_RAKERS as u32, diagnostics)?.value;
    let counts: Vec<u32> =
        before.raw.rakers.iter().map(|raker| raker.count.as_ref().map_or(1, |count| count.value)).collect();
    if counts.is_empty() {
        if wanted > 0 {
            let right = "write [[raker]] with a name into the file, with count = 0 if there is none at first";
            item.wrong("the file has no raker to make copies of", right, diagnostics);
            return None;
        }
        return Some(Vec::new());
    }
    let last = set_counts(table, "raker", &counts, wanted, item);
    let name = before.raw.rakers.get(last).map_or("", |raker| raker.named.shown());
    Some(copies("rakers", counts.iter().sum(), wanted, name))
}

fn loaders(
    item: &Item<'_>,
    table: &mut Table,
    before: &Before<'_>,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Vec<Assumed>> {
    let wanted = item.count(1..=MOST_LOADERS as u32, diagnostics)?.value;
    let counts: Vec<u32> = before
        .raw
        .loaders
        .iter()
        .map(|loader| loader.count.as_ref().map_or(1, |count| count.value))
        .collect();
    let last = set_counts(table, "loader", &counts, wanted, item);
    let name = before.raw.loaders.get(last).map_or("", |loader| loader.named.shown());
    Some(copies("loaders", counts.iter().sum(), wanted, name))
}

fn copies(key: &'static str, there: u32, wanted: u32, name: &str) -> Vec<Assumed> {
    let words = format!("further {key} are like \"{name}\": as fast, and at the same cost");
    if wanted > there { vec![(key, words, FROM)] } else { Vec::new() }
}

/// Sets the counts of all things of a kind so that there are so many in all; gives back which one is copied.
fn set_counts(table: &mut Table, kind: &str, counts: &[u32], wanted: u32, item: &Item<'_>) -> usize {
    let last = counts.iter().rposition(|count| *count > 0).unwrap_or(counts.len().saturating_sub(1));
    let mut left = wanted;
    for (i, (thing, count)) in things(table, kind).zip(counts).enumerate() {
        let new = if i == last { left } else { left.min(*count) };
        left -= new;
        if new != *count {
            let value = Value::Whole(i64::from(new));
            put(thing, "count", Node { value, ..item.node.clone() });
        }
    }
    last
}

fn buckets(
    item: &Item<'_>,
    table: &mut Table,
    before: &Before<'_>,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Vec<Assumed>> {
    let heaped = item.figure(Kind::Bucket, diagnostics)?.value;
    for (thing, raw) in things(table, "loader").zip(&before.raw.loaders) {
        if let (Some(struck), Some(was)) = (&raw.struck, &raw.heaped) {
            put(thing, "struck", calculated(struck.value * (heaped / was.value), item));
        }
        put(thing, "heaped", item.node.clone());
    }
    let words = format!(
        "with a bucket of {} heaped everything else of a loader stays: width, weight, time to load and dump, what it may lift",
        bucket(heaped, before.system)
    );
    Some(vec![("bucket", words, FROM)])
}

fn haul(
    item: &Item<'_>,
    table: &mut Table,
    before: &Before<'_>,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Vec<Assumed>> {
    let wanted = item.figure(Kind::Way, diagnostics)?.value;
    let mean = mean_haul(before.job);
    if mean <= 0.0 {
        let right = "give the zones a distance above 0 first";
        item.wrong(
            "all ways are of no length, so they cannot be made longer in proportion",
            right,
            diagnostics,
        );
        return None;
    }
    let factor = wanted / mean;
    for (thing, raw) in things(table, "zone").zip(&before.raw.zones) {
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
    let words = format!(
        "every way is {} % of its length, so that the mean haul is {} instead of {}; walks and gates stay",
        crate::units::figure(factor * 100.0),
        way(wanted, before.system),
        way(mean, before.system)
    );
    Some(vec![("haul", words, FROM)])
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
