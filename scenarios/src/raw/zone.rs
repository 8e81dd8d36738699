//! `[[zone]]`

use super::Named;
use crate::document::Value;
use crate::fields::{Fields, Item, printable};
use crate::ledger::{At, Ledger, Place};
use crate::quantity::{Given, Takes};
use crate::signs::composed;
use crate::units::kind::Kind;

pub(super) const KEYS: &[&str] =
    &["name", "volume", "area", "length", "width", "diameter", "depth", "room", "ways", "distance", "walk"];
const WAY_KEYS: &[&str] = &["from", "distance", "passes"];
/// Most heaps of room that make sense.
const MOST_ROOM: u32 = 1000;
/// Most ways to one zone, most passes on one way.
const MOST_WAYS: usize = 50;

/// A zone as typed.
pub(crate) struct RawZone {
    pub(crate) named: Named,
    pub(crate) volume: Option<At<Given>>,
    pub(crate) area: Option<At<Given>>,
    pub(crate) sides: Option<[At<f64>; 2]>,
    pub(crate) diameter: Option<At<f64>>,
    pub(crate) depth: Option<At<Given>>,
    pub(crate) room: Option<At<Option<u32>>>,
    pub(crate) ways: Vec<RawWay>,
    pub(crate) walks: Vec<RawWalk>,
}

/// A way as typed.
pub(crate) struct RawWay {
    pub(crate) place: Place,
    /// `None` if it was left out; then there must be one stockpile only.
    pub(crate) from: Option<At<String>>,
    pub(crate) from_is_wrong: bool,
    pub(crate) distance: Option<At<f64>>,
    pub(crate) passes: Vec<RawPassOnWay>,
}

/// A pass on a way as typed.
pub(crate) struct RawPassOnWay {
    pub(crate) pass: At<String>,
    pub(crate) share: Option<At<f64>>,
}

/// A walking distance to another zone.
pub(crate) struct RawWalk {
    pub(crate) to: At<String>,
    pub(crate) distance: At<f64>,
}

impl RawZone {
    pub(super) fn read(fields: &Fields<'_>, named: Named, ledger: &mut Ledger<'_>) -> Self {
        let given = |key, kind, ledger: &mut Ledger<'_>| fields.given(key, kind, Takes::Days, ledger);
        let volume = given("volume", Kind::Volume, ledger);
        let area = given("area", Kind::Area, ledger);
        let length = fields.figure("length", Kind::Side, ledger);
        let width = fields.figure("width", Kind::Side, ledger);
        let diameter = fields.figure("diameter", Kind::Side, ledger);
        let depth = given("depth", Kind::Depth, ledger);
        check_size(fields, ledger);
        Self {
            volume,
            area,
            diameter,
            sides: length.zip(width).map(|(length, width)| [length, width]),
            depth,
            room: fields.get("room").and_then(|item| room(&item, ledger)),
            ways: ways(fields, ledger),
            walks: walks(fields, ledger),
            named,
        }
    }
}

/// Exactly one way of giving the size is used; if not, that is a problem.
fn check_size(fields: &Fields<'_>, ledger: &mut Ledger<'_>) {
    let has = |key| fields.has(key);
    let right = "give either volume (loose), or a depth and one of area, diameter, or length and width";
    let ground = ["area", "length", "width", "diameter", "depth"].into_iter().find(|key| has(key));
    let (key, what) = if let (true, Some(ground)) = (has("volume"), ground) {
        (Some(ground), format!("volume and {ground} are both given"))
    } else if has("area") && (has("length") || has("width")) {
        (Some("area"), "area and its sides are both given".into())
    } else if let (true, Some(other)) =
        (has("diameter"), ["area", "length", "width"].into_iter().find(|key| has(key)))
    {
        (Some("diameter"), format!("diameter and {other} are both given"))
    } else if has("volume") {
        return;
    } else if has("length") != has("width") {
        let missing = if has("length") { "width" } else { "length" };
        (None, format!("\"{missing}\" is missing"))
    } else if has("depth") && !has("area") && !has("length") && !has("diameter") {
        (Some("depth"), "a depth needs an area".into())
    } else if !has("depth") && ground.is_some() {
        (None, "\"depth\" is missing".into())
    } else if ground.is_none() {
        (None, "it is not said how much it takes".into())
    } else {
        return;
    };
    match key.and_then(|key| fields.get(key)) {
        Some(item) => item.wrong(what, right, ledger),
        None => ledger.problem(&fields.place, "", what, right),
    }
}

fn room(item: &Item<'_>, ledger: &mut Ledger<'_>) -> Option<At<Option<u32>>> {
    match &item.node.value {
        Value::Text(text) if text.eq_ignore_ascii_case("no limit") => Some(item.at(None)),
        Value::Text(_) => {
            item.wrong(
                "this is a text, where a count is wanted",
                "write a whole number, or \"no limit\"",
                ledger,
            );
            None
        }
        _ => item.count(1..=MOST_ROOM, ledger).map(|count| item.at(Some(count.value))),
    }
}

fn ways(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Vec<RawWay> {
    match (fields.get("distance"), fields.get("ways")) {
        (Some(distance), Some(_)) => {
            distance.wrong("distance and ways are both given", "put the distance into the ways", ledger);
            Vec::new()
        }
        (Some(item), None) => {
            let distance = item.figure(Kind::Way, ledger);
            let place = item.place.clone().at(&item.node.span);
            vec![RawWay { place, from: None, from_is_wrong: false, distance, passes: Vec::new() }]
        }
        (None, Some(item)) => listed_ways(&item, ledger),
        (None, None) => {
            let right =
                "give distance = \"25 yd\", or ways = [ { from = \"a pile\", distance = \"25 yd\" } ]";
            ledger.problem(&fields.place, "", "no way leads to it", right);
            Vec::new()
        }
    }
}

fn listed_ways(item: &Item<'_>, ledger: &mut Ledger<'_>) -> Vec<RawWay> {
    let right = "write ways = [ { from = \"a pile\", distance = \"25 yd\" } ]";
    let list = match &item.node.value {
        Value::List(list) if (1..=MOST_WAYS).contains(&list.len()) => list,
        Value::List(list) if list.is_empty() => {
            item.wrong("no way leads to it", right, ledger);
            return Vec::new();
        }
        Value::List(list) => {
            item.wrong(
                format!("{} ways are absurdly many", list.len()),
                format!("give at most {MOST_WAYS}"),
                ledger,
            );
            return Vec::new();
        }
        other => {
            item.wrong(format!("this is {}, where a list of ways is wanted", other.name()), right, ledger);
            return Vec::new();
        }
    };
    let mut ways = Vec::new();
    for (i, node) in list.iter().enumerate() {
        let above = item.place.words.trim_end_matches(".ways").to_owned();
        let place = Place {
            words: format!("{above}, way {}", i + 1),
            path: format!("{} {}", item.place.path, i + 1),
            span: Some(node.span.clone()),
        };
        let Some(fields) = Fields::of(&Item { node, place: place.clone() }, WAY_KEYS, ledger) else {
            continue;
        };
        let from = fields.text("from", ledger);
        ways.push(RawWay {
            place,
            from_is_wrong: from.is_none() && fields.has("from"),
            from,
            distance: fields
                .need("distance", "give distance = \"25 yd\" or \"23 m\"", ledger)
                .and_then(|item| item.figure(Kind::Way, ledger)),
            passes: passes(&fields, ledger),
        });
    }
    ways
}

fn passes(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Vec<RawPassOnWay> {
    let Some(item) = fields.get("passes") else {
        return Vec::new();
    };
    let right = "write passes = [ \"field gate\" ] or [ { pass = \"field gate\", share = \"40 %\" } ]";
    let list = match &item.node.value {
        Value::List(list) if list.len() <= MOST_WAYS => list,
        Value::List(list) => {
            let what = format!("{} passes on one way are absurdly many", list.len());
            item.wrong(what, format!("give at most {MOST_WAYS}"), ledger);
            return Vec::new();
        }
        other => {
            item.wrong(format!("this is {}, where a list of passes is wanted", other.name()), right, ledger);
            return Vec::new();
        }
    };
    let mut passes = Vec::new();
    for node in list {
        let entry = Item { node, place: item.place.clone() };
        if let Value::Table(_) = node.value {
            let Some(fields) = Fields::of(&entry, &["pass", "share"], ledger) else {
                continue;
            };
            let pass = fields.need("pass", right, ledger).and_then(|item| item.text(right, ledger));
            let share = fields.figure("share", Kind::PlaceOnWay, ledger);
            passes.extend(pass.map(|pass| RawPassOnWay { pass, share }));
        } else if let Some(pass) = entry.text(right, ledger) {
            passes.push(RawPassOnWay { pass, share: None });
        }
    }
    passes
}

fn walks(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Vec<RawWalk> {
    let Some(item) = fields.get("walk") else {
        return Vec::new();
    };
    let Value::Table(table) = &item.node.value else {
        let right = "write walk = { \"name of a zone\" = \"30 yd\" }";
        item.wrong(format!("this is {}, where a table is wanted", item.node.value.name()), right, ledger);
        return Vec::new();
    };
    let mut walks = Vec::new();
    for (to, entry) in table.in_order() {
        let shown = printable(to);
        let place = Place {
            words: format!("{}.\"{shown}\"", item.place.words),
            path: format!("{}.{shown}", item.place.path),
            span: Some(entry.node.span.clone()),
        };
        let name =
            At { value: composed(to.trim()), place: place.clone().at(&entry.key_span), typed: String::new() };
        if let Some(distance) = (Item { node: &entry.node, place }).figure(Kind::Walk, ledger) {
            walks.push(RawWalk { to: name, distance });
        }
    }
    walks
}
