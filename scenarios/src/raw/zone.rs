//! `[[zone]]`

use super::named::Named;
use crate::diagnostics::{At, Place, Read};
use crate::document::Value;
use crate::fields::{Fields, Item};
use crate::key::zone::{MOST_ROOM, NO_LIMIT, ON_WAY, PASSES_RIGHT, WAY};
use crate::parse::Listed;
use crate::quantity::given::Given;
use crate::signs::composed;
use crate::signs::printable;
use crate::units::kind::Kind;

/// Most ways to one zone, most passes on one way.
const MOST_WAYS: usize = 50;

/// A zone as typed.
#[derive(Clone, Debug)]
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
#[derive(Clone, Debug)]
pub(crate) struct RawWay {
    pub(crate) place: Place,
    /// `None` if it was left out; then there must be one stockpile only.
    pub(crate) from: Option<At<String>>,
    pub(crate) from_is_wrong: bool,
    pub(crate) distance: Option<At<f64>>,
    pub(crate) passes: Vec<RawPassOnWay>,
}

/// A pass on a way as typed.
#[derive(Clone, Debug)]
pub(crate) struct RawPassOnWay {
    pub(crate) pass: At<String>,
    pub(crate) share: Option<At<f64>>,
}

/// A walking distance to another zone.
#[derive(Clone, Debug)]
pub(crate) struct RawWalk {
    pub(crate) to: At<String>,
    pub(crate) distance: At<f64>,
}

impl RawZone {
    pub(super) fn read(fields: &mut Fields<'_>, named: Named) -> Self {
        let volume = fields.given("volume");
        let area = fields.given("area");
        let length = fields.figure("length");
        let width = fields.figure("width");
        let diameter = fields.figure("diameter");
        let depth = fields.given("depth");
        check_size(fields);
        Self {
            volume,
            area,
            diameter,
            sides: length.zip(width).map(|(length, width)| [length, width]),
            depth,
            room: fields.under("room", room),
            ways: ways(fields),
            walks: fields.under("walk", walks).unwrap_or_default(),
            named,
        }
    }
}

/// Exactly one way of giving the size is used; if not, that is a problem.
fn check_size(fields: &mut Fields<'_>) {
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
    let problem = match key.and_then(|key| fields.get(key)) {
        Some(item) => item.wrong(what, right),
        None => Read::problem(&fields.place, "", what, right),
    };
    let _: Option<()> = fields.take(problem);
}

pub(crate) fn room(item: &Item<'_>) -> Read<At<Option<u32>>> {
    match &item.node.value {
        Value::Text(text) if text.eq_ignore_ascii_case(NO_LIMIT) => Read::made(item.at(None)),
        Value::Text(_) => {
            item.wrong("this is a text, where a count is wanted", "write a whole number, or \"no limit\"")
        }
        _ => item.count(1..=MOST_ROOM).map(|count| item.at(Some(count.value))),
    }
}

fn ways(fields: &mut Fields<'_>) -> Vec<RawWay> {
    let ways = match (fields.get("distance"), fields.get("ways")) {
        (Some(distance), Some(_)) => {
            distance.wrong("distance and ways are both given", "put the distance into the ways")
        }
        (Some(item), None) => Read::of(|diagnostics| {
            let distance = item.figure(Kind::Way).join(diagnostics);
            let place = item.place.clone();
            Some(vec![RawWay { place, from: None, from_is_wrong: false, distance, passes: Vec::new() }])
        }),
        (None, Some(item)) => listed_ways(&item),
        (None, None) => {
            let right =
                "give distance = \"25 yd\", or ways = [ { from = \"a pile\", distance = \"25 yd\" } ]";
            Read::problem(&fields.place, "", "no way leads to it", right)
        }
    };
    fields.take(ways).unwrap_or_default()
}

fn listed_ways(item: &Item<'_>) -> Read<Vec<RawWay>> {
    let right = "write ways = [ { from = \"a pile\", distance = \"25 yd\" } ]";
    let listed = Listed {
        most: MOST_WAYS,
        too_many: |count| format!("{count} ways are absurdly many"),
        wanted: ", where a list of ways is wanted",
        right,
    };
    if matches!(&item.node.value, Value::List(list) if list.is_empty()) {
        return item.wrong("no way leads to it", right);
    }
    item.numbered(&listed, ("ways", "way"), |item| {
        item.table(WAY, |fields| {
            let from = fields.text("from");
            Some(RawWay {
                place: item.place.clone(),
                from_is_wrong: from.is_none() && fields.has("from"),
                from,
                distance: fields.figure("distance"),
                passes: fields.under("passes", passes).unwrap_or_default(),
            })
        })
    })
}

fn passes(item: &Item<'_>) -> Read<Vec<RawPassOnWay>> {
    let listed = Listed {
        most: MOST_WAYS,
        too_many: |count| format!("{count} passes on one way are absurdly many"),
        wanted: ", where a list of passes is wanted",
        right: PASSES_RIGHT,
    };
    item.list(&listed).each(|entry| match entry.node.value {
        Value::Table(_) => entry.table(ON_WAY, |fields| {
            let (pass, share) =
                (fields.under("pass", |item| item.text(PASSES_RIGHT)), fields.figure("share"));
            pass.map(|pass| RawPassOnWay { pass, share })
        }),
        _ => entry.text(PASSES_RIGHT).map(|pass| RawPassOnWay { pass, share: None }),
    })
}

fn walks(item: &Item<'_>) -> Read<Vec<RawWalk>> {
    let Value::Table(table) = &item.node.value else {
        let right = "write walk = { \"name of a zone\" = \"30 yd\" }";
        return item.wrong(format!("this is {}, where a table is wanted", item.node.value.name()), right);
    };
    Read::made(table.in_order()).each(|(to, entry)| {
        let shown = printable(to);
        let place = Place {
            words: format!("{}.\"{shown}\"", item.place.words),
            path: format!("{}.{shown}", item.place.path),
            span: Some(entry.node.span.clone()),
        };
        let name = place.clone().at(&entry.key_span);
        let to = At { value: composed(to.trim()), place: name, typed: String::new() };
        item.inner(&entry.node, place).figure(Kind::Walk).map(|distance| RawWalk { to, distance })
    })
}
