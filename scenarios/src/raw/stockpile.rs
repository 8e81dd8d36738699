//! `[[stockpile]]`

use super::Named;
use super::key::{Holds, Key, LeftOut, key};
use crate::defaults;
use crate::diagnostics::{At, Place, Read};
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
#[derive(Clone, Debug)]
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
#[derive(Clone, Debug)]
pub(crate) struct RawDelivery {
    pub(crate) place: Place,
    pub(crate) at: Option<At<f64>>,
    pub(crate) volume: Option<At<Given>>,
    pub(crate) late: Option<At<Distribution>>,
    pub(crate) price: Option<At<f64>>,
    pub(crate) carriage: Option<At<f64>>,
}

impl RawStockpile {
    pub(super) fn read(fields: &mut Fields<'_>, named: Named) -> Self {
        let on_hand = fields.given("on_hand");
        let deliveries = fields.under("deliveries", deliveries).unwrap_or_default();
        let wrong_on_hand = on_hand.is_none() && fields.has("on_hand");
        let wrong_deliveries = fields.has("deliveries") && deliveries.iter().any(|d| d.volume.is_none());
        Self {
            named,
            price: fields.figure("price"),
            carriage: fields.figure("carriage"),
            truckload: fields.figure("truckload"),
            face: fields.count("face"),
            volume_is_wrong: wrong_on_hand
                || wrong_deliveries
                || deliveries.is_empty() && fields.has("deliveries"),
            on_hand,
            deliveries,
        }
    }
}

fn deliveries(item: &Item<'_>) -> Read<Vec<RawDelivery>> {
    let listed = Listed {
        most: MOST_DELIVERIES,
        too_many: |count| format!("there are {count} deliveries, which is absurdly many"),
        wanted: ", where a list of deliveries is wanted",
        right: DELIVERY_RIGHT,
    };
    item.numbered(&listed, ("deliveries", "delivery"), |item| {
        item.table(DELIVERY, |fields| {
            Some(RawDelivery {
                at: fields.clock("at"),
                volume: fields.given("volume"),
                late: fields.law("late"),
                price: fields.figure("price"),
                carriage: fields.figure("carriage"),
                place: item.place.clone(),
            })
        })
    })
}
