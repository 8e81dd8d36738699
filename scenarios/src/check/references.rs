//! Every name that is used names something.

use crate::diagnostics::{At, Diagnostics};
use crate::nearest::nearest;
use crate::raw::{Raw, RawWay, RawZone, in_quotes};

pub(super) fn check(raw: &Raw) -> Diagnostics {
    let zones = names(raw.zones.iter().map(|zone| &zone.named.name));
    let piles = names(raw.stockpiles.iter().map(|pile| &pile.named.name));
    let passes = names(raw.passes.iter().map(|pass| &pass.named.name));
    let mut diagnostics = Diagnostics::default();
    for zone in &raw.zones {
        for way in &zone.ways {
            diagnostics.join(from(way, &piles, raw.stockpiles.len()));
            diagnostics.join(passes_of(way, &passes));
        }
        diagnostics.join(walks(zone, &zones));
    }
    diagnostics.join(piles_without_a_way(raw));
    let started = raw.rakers.iter().filter_map(|raker| raker.start.as_ref());
    diagnostics.join(started.chain(&raw.finish.surplus).map(|name| known("zone", name, &zones)).collect());
    diagnostics
}

/// Each pass of a way is known, named once, and lies beyond the one before.
fn passes_of(way: &RawWay, passes: &[String]) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    let mut met: Vec<&str> = Vec::new();
    for entry in &way.passes {
        diagnostics.join(known("pass", &entry.pass, passes));
        if met.contains(&entry.pass.value.as_str()) {
            let right = "name each pass of a way once";
            diagnostics.wrong_at(&entry.pass, "this way goes through it twice", right);
        }
        met.push(&entry.pass.value);
    }
    let mut last = 0.0;
    for (entry, share) in way.passes.iter().zip(places(way)) {
        if share < last
            && let Some(typed) = &entry.share
        {
            let right = "name passes in the order met from the pile";
            diagnostics.wrong_at(typed, "this pass lies before the one named before it", right);
        }
        last = f64::max(last, share);
    }
    diagnostics
}

fn names<'r>(things: impl Iterator<Item = &'r Option<At<String>>>) -> Vec<String> {
    things.flatten().map(|name| name.value.clone()).collect()
}

fn known(kind: &str, name: &At<String>, all: &[String]) -> Diagnostics {
    if all.contains(&name.value) {
        return Diagnostics::default();
    }
    let right = match nearest(&name.value, all.iter().map(String::as_str)) {
        Some(near) => format!("the nearest is \"{near}\""),
        None if all.is_empty() => format!("there is none in this file; write [[{kind}]]"),
        None => format!("there are {}", in_quotes(all)),
    };
    Diagnostics::of_value(name, format!("there is no {kind} of this name"), right)
}

fn from(way: &RawWay, piles: &[String], count: usize) -> Diagnostics {
    match &way.from {
        Some(from) => known("stockpile", from, piles),
        None if count > 1 && !way.from_is_wrong => {
            let right = format!(
                "there are {}: write ways = [ {{ from = \"{}\", distance = ... }} ]",
                in_quotes(piles),
                piles.first().map_or("", |p| p)
            );
            Diagnostics::of(&way.place, "", "it is not said from which stockpile", right)
        }
        None => Diagnostics::default(),
    }
}

/// A pile from which no way leads, if there are several.
fn piles_without_a_way(raw: &Raw) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    let ways: Vec<&RawWay> = raw.zones.iter().flat_map(|zone| &zone.ways).collect();
    let unclear =
        raw.zones.iter().any(|zone| zone.ways.is_empty()) || ways.iter().any(|way| way.from.is_none());
    if unclear || raw.stockpiles.len() < 2 {
        return diagnostics;
    }
    for pile in &raw.stockpiles {
        let used =
            ways.iter().any(|way| way.from.as_ref().is_some_and(|from| from.value == pile.named.shown()));
        if !used && pile.named.name.is_some() {
            let right = "add it to the ways of a zone, or leave it out";
            diagnostics.problem(&pile.named.place, "", "no way leads from it to any zone", right);
        }
    }
    diagnostics
}

/// Where the passes of a way lie, as shares from the pile: as given, else evenly spaced.
pub(crate) fn places(way: &RawWay) -> Vec<f64> {
    let count = way.passes.len() as f64 + 1.0;
    let place = |(i, entry): (usize, &crate::raw::RawPassOnWay)| {
        entry.share.as_ref().map_or((i as f64 + 1.0) / count, |share| share.value)
    };
    way.passes.iter().enumerate().map(place).collect()
}

fn walks(zone: &RawZone, zones: &[String]) -> Diagnostics {
    let mut diagnostics = Diagnostics::default();
    for walk in &zone.walks {
        diagnostics.join(known("zone", &walk.to, zones));
        if walk.to.value == zone.named.shown() {
            diagnostics.wrong_at(&walk.to, "this is a walk from a zone to itself", "name another zone");
        }
    }
    diagnostics
}
