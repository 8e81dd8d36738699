//! Another gate, on the ways.

use super::copies::{own_name, pairs};
use super::draft::{Draft, Step};
use super::fault::{Fault, by_hand};
use super::figures::raw;
use super::key::names;
use crate::document::quoted;
use crate::document::{Table, Value};
use crate::raw::{Raw, RawWay};
use crate::starter::usual;
use crate::units::{System, figure, length_number};

/// Adds a gate: where there is one, a copy of the last on the same ways, behind it; else one of the usual width on all ways.
pub(super) fn pass(draft: &mut Draft) -> Result<(), Fault> {
    let raw = raw(draft).ok_or_else(by_hand)?;
    let old = names(draft.table(), "pass").pop();
    let path = [Step::Key("pass".into())];
    let name = match &old {
        Some(old) => own_name(draft, "pass", old),
        None => "gate".to_owned(),
    };
    let last = match draft.node(&path).map(|node| &node.value) {
        Some(Value::List(list)) => list.last().map(|node| &node.value),
        _ => None,
    };
    let pairs = match last {
        Some(Value::Table(last)) => pairs(draft, last, &[], &[("name", quoted(&name))]),
        _ => vec![("name".to_owned(), quoted(&name)), ("width".to_owned(), quoted(&wide_enough(&raw)))],
    };
    draft.push(&path, &pairs)?;
    for zone in 0..raw.zones.len() {
        for (way, typed) in raw.zones[zone].ways.iter().enumerate().rev() {
            if old.as_ref().is_none_or(|old| typed.passes.iter().any(|on| on.pass.value == *old)) {
                on_way(draft, zone, way, &name, share(typed))?;
            }
        }
    }
    Ok(())
}

/// Behind the last pass, where the place of that is given.
fn share(way: &RawWay) -> Option<f64> {
    let last = way.passes.iter().filter_map(|on| on.share.as_ref()).map(|share| share.value).next_back()?;
    Some(f64::midpoint(last, 1.0))
}

/// As wide as gates usually are, and as the widest loader.
fn wide_enough(raw: &Raw) -> String {
    let system = raw.system();
    let usual = if system == System::Us { 6.0 } else { 1.8 };
    let widest = raw.loaders.iter().filter_map(|loader| loader.width.as_ref()).map(|width| width.value);
    let (widest, unit) = length_number(widest.fold(0.0, f64::max), system);
    match widest <= usual {
        true => usual::gate(system).to_owned(),
        false => format!("{} {unit}", figure((widest * 2.0).ceil() / 2.0)),
    }
}

fn on_way(draft: &mut Draft, zone: usize, way: usize, name: &str, share: Option<f64>) -> Result<(), Fault> {
    let thing = [Step::Key("zone".into()), Step::At(zone)];
    let under = |key: &str| [thing.as_slice(), &[Step::Key(key.to_owned())]].concat();
    let entry = match share {
        Some(share) => format!("{{ pass = {}, share = \"{} %\" }}", quoted(name), figure(share * 100.0)),
        None => quoted(name),
    };
    if let Some(distance) = draft.node(&under("distance")) {
        let distance = draft.written(distance).to_owned();
        let ways = format!("[ {{ distance = {distance}, passes = [ {entry} ] }} ]");
        let key = draft
            .table_at(&thing)
            .and_then(|zone: &Table| zone.entries.get("distance"))
            .ok_or_else(by_hand)?;
        let both = key.key_span.start..key.node.span.end;
        return draft.splice(both, &format!("ways = {ways}"));
    }
    let passes = [under("ways"), vec![Step::At(way), Step::Key("passes".into())]].concat();
    draft.push_inline(&passes, &entry)
}
