//! `[[stockpile]]`

use super::Named;
use crate::clock::Days;
use crate::document::Value;
use crate::fields::{Fields, Item};
use crate::ledger::{At, Ledger, Place};
use crate::quantity::{Given, Takes};
use crate::units::kind::Kind;
use sim::Distribution;

pub(super) const KEYS: &[&str] = &["name", "on_hand", "price", "carriage", "truckload", "face", "deliveries"];
const DELIVERY_KEYS: &[&str] = &["at", "volume", "late", "price", "carriage"];
const MOST_DELIVERIES: usize = 200;

/// A stockpile as typed.
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
pub(crate) struct RawDelivery {
    pub(crate) place: Place,
    pub(crate) at: Option<At<f64>>,
    pub(crate) volume: Option<At<Given>>,
    pub(crate) late: Option<At<Distribution>>,
    pub(crate) price: Option<At<f64>>,
    pub(crate) carriage: Option<At<f64>>,
}

impl RawStockpile {
    pub(super) fn read(fields: &Fields<'_>, named: Named, ledger: &mut Ledger<'_>) -> Self {
        let on_hand = fields.given("on_hand", Kind::Volume, Takes::Days, ledger);
        let deliveries = deliveries(fields, ledger);
        let wrong_on_hand = on_hand.is_none() && fields.has("on_hand");
        let wrong_deliveries = fields.has("deliveries") && deliveries.iter().any(|d| d.volume.is_none());
        Self {
            named,
            price: fields.figure("price", Kind::Price, ledger),
            carriage: fields.figure("carriage", Kind::Price, ledger),
            truckload: fields.figure("truckload", Kind::Delivery, ledger),
            face: fields.count("face", 1..=20, ledger),
            volume_is_wrong: wrong_on_hand
                || wrong_deliveries
                || deliveries.is_empty() && fields.has("deliveries"),
            on_hand,
            deliveries,
        }
    }
}

fn deliveries(fields: &Fields<'_>, ledger: &mut Ledger<'_>) -> Vec<RawDelivery> {
    let Some(item) = fields.get("deliveries") else {
        return Vec::new();
    };
    let right = "write deliveries = [ { at = \"10:30\", volume = \"20 yd3\" } ]";
    let list = match &item.node.value {
        Value::List(list) if list.len() <= MOST_DELIVERIES => list,
        Value::List(list) => {
            let what = format!("there are {} deliveries, which is absurdly many", list.len());
            item.wrong(what, format!("give at most {MOST_DELIVERIES}"), ledger);
            return Vec::new();
        }
        other => {
            item.wrong(
                format!("this is {}, where a list of deliveries is wanted", other.name()),
                right,
                ledger,
            );
            return Vec::new();
        }
    };
    let mut all = Vec::new();
    for (i, node) in list.iter().enumerate() {
        let above = item.place.words.trim_end_matches(".deliveries").to_owned();
        let place = Place {
            words: format!("{above}, delivery {}", i + 1),
            path: format!("{} {}", item.place.path, i + 1),
            span: Some(node.span.clone()),
        };
        let Some(fields) = Fields::of(&Item { node, place: place.clone() }, DELIVERY_KEYS, ledger) else {
            continue;
        };
        all.push(RawDelivery {
            at: fields.need("at", right, ledger).and_then(|item| item.clock(Days::Any, ledger)),
            volume: fields
                .need("volume", right, ledger)
                .and_then(|item| item.given(Kind::Delivery, Takes::Days, ledger)),
            late: fields.law("late", Kind::Stretch, ledger),
            price: fields.figure("price", Kind::Price, ledger),
            carriage: fields.figure("carriage", Kind::Price, ledger),
            place,
        });
    }
    all
}
