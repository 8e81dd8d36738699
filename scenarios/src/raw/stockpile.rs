//! `[[stockpile]]`

use super::Named;
use super::key::{Holds, Key, LeftOut, key};
use crate::defaults;
use crate::diagnostics::{At, Diagnostics, Place};
use crate::fields::{Fields, Item};
use crate::parse::Listed;
use crate::quantity::{Given, Takes};
use crate::units::kind::Kind;
use sim::Distribution;

pub(super) const KEYS: &[Key] = &[
    key(
        "name",
        Holds::Name,
        LeftOut::Needed("give every stockpile a name of its own"),
        "\"heap by the road\"",
        "What the stockpile is called; ways name it.",
    ),
    key(
        "on_hand",
        Holds::Given(Kind::Volume, Takes::Days),
        LeftOut::Taken("nothing lies there when work begins"),
        "\"34 yd3\"",
        "What lies there, loose, when work begins; by the ton too (\"30 tons\").",
    ),
    key(
        "price",
        Holds::Figure(Kind::Price),
        LeftOut::Taken("nothing"),
        "\"$380\"",
        "What the material on hand costs, all of it together.",
    ),
    key(
        "carriage",
        Holds::Figure(Kind::Price),
        LeftOut::Taken("nothing: it is in the price"),
        "\"$90\"",
        "What it costs to bring it.",
    ),
    key(
        "truckload",
        Holds::Figure(Kind::Delivery),
        LeftOut::Usual(&defaults::TRUCKLOAD, "or the most frequent volume of a delivery"),
        "\"18 yd3\"",
        "What a truck usually brings; what to order more is told in truckloads.",
    ),
    key("face", Holds::Count(1, 20), LeftOut::Taken("1"), "2", "How many loaders can load there at a time."),
    key(
        "deliveries",
        Holds::List(DELIVERY, ""),
        LeftOut::Taken("nothing more comes"),
        "[ { at = \"10:30\", volume = \"18 yd3\" } ]",
        "What trucks bring while the job goes on. Keep people clear of a reversing truck.",
    ),
];
const DELIVERY: &[Key] = &[
    key(
        "at",
        Holds::DayAndClock,
        LeftOut::Needed(DELIVERY_RIGHT),
        "\"day 2 09:00\"",
        "When the material is there to be loaded.",
    ),
    key(
        "volume",
        Holds::Given(Kind::Delivery, Takes::Days),
        LeftOut::Needed(DELIVERY_RIGHT),
        "\"18 yd3\"",
        "What the truck brings, loose; by the ton too.",
    ),
    key(
        "late",
        Holds::Law(Kind::Stretch),
        LeftOut::Taken("it comes on time"),
        "{ low = \"0 min\", typical = \"10 min\", high = \"40 min\" }",
        "How late it comes.",
    ),
    key(
        "price",
        Holds::Figure(Kind::Price),
        LeftOut::Taken("nothing"),
        "\"$380\"",
        "What its material costs.",
    ),
    key(
        "carriage",
        Holds::Figure(Kind::Price),
        LeftOut::Taken("nothing: it is in the price"),
        "\"$90\"",
        "What it costs to bring it.",
    ),
];
const DELIVERY_RIGHT: &str = "write deliveries = [ { at = \"10:30\", volume = \"20 yd3\" } ]";
const MOST_DELIVERIES: usize = 200;

/// A stockpile as typed.
#[derive(Debug)]
pub(crate) struct RawStockpile {
    pub(crate) named: Named,
    pub(crate) on_hand: Option<At<Given>>,
    pub(crate) price: Option<At<f64>>,
    pub(crate) carriage: Option<At<f64>>,
    pub(crate) truckload: Option<At<f64>>,
    pub(crate) face: Option<At<u32>>,
    pub(crate) deliveries: Vec<RawDelivery>,
    /// Whether something of its volumes could not be read.
    pub(crate) volume_is_wrong: bool,
}

/// A delivery as typed.
#[derive(Debug)]
pub(crate) struct RawDelivery {
    pub(crate) place: Place,
    pub(crate) at: Option<At<f64>>,
    pub(crate) volume: Option<At<Given>>,
    pub(crate) late: Option<At<Distribution>>,
    pub(crate) price: Option<At<f64>>,
    pub(crate) carriage: Option<At<f64>>,
}

impl RawStockpile {
    pub(super) fn read(fields: &Fields<'_>, named: Named, diagnostics: &mut Diagnostics<'_>) -> Self {
        let on_hand = fields.given("on_hand", diagnostics);
        let deliveries = deliveries(fields, diagnostics);
        let wrong_on_hand = on_hand.is_none() && fields.has("on_hand");
        let wrong_deliveries = fields.has("deliveries") && deliveries.iter().any(|d| d.volume.is_none());
        Self {
            named,
            price: fields.figure("price", diagnostics),
            carriage: fields.figure("carriage", diagnostics),
            truckload: fields.figure("truckload", diagnostics),
            face: fields.count("face", diagnostics),
            volume_is_wrong: wrong_on_hand
                || wrong_deliveries
                || deliveries.is_empty() && fields.has("deliveries"),
            on_hand,
            deliveries,
        }
    }
}

fn deliveries(fields: &Fields<'_>, diagnostics: &mut Diagnostics<'_>) -> Vec<RawDelivery> {
    let Some(item) = fields.get("deliveries") else {
        return Vec::new();
    };
    let listed = Listed {
        most: MOST_DELIVERIES,
        too_many: |count| format!("there are {count} deliveries, which is absurdly many"),
        wanted: ", where a list of deliveries is wanted",
        right: DELIVERY_RIGHT,
    };
    let mut all = Vec::new();
    for (i, Item { node, .. }) in item.list(&listed, diagnostics).into_iter().enumerate() {
        let above = item.place.words.trim_end_matches(".deliveries").to_owned();
        let place = Place {
            words: format!("{above}, delivery {}", i + 1),
            path: format!("{} {}", item.place.path, i + 1),
            span: Some(node.span.clone()),
        };
        let Some(fields) = Fields::of(&Item { node, place: place.clone() }, DELIVERY, diagnostics) else {
            continue;
        };
        all.push(RawDelivery {
            at: fields.clock("at", diagnostics),
            volume: fields.given("volume", diagnostics),
            late: fields.law("late", diagnostics),
            price: fields.figure("price", diagnostics),
            carriage: fields.figure("carriage", diagnostics),
            place,
        });
    }
    all
}
