//! `[[stockpile]]`

use super::named::Named;
use crate::diagnostics::{At, Place, Read};
use crate::fields::{Fields, Item};
use crate::key::stockpile::{DELIVERY, DELIVERY_RIGHT};
use crate::parse::Listed;
use crate::quantity::given::Given;
use sim::Distribution;

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
