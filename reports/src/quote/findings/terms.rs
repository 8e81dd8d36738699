//! What is asked for, as the client is told it.

use super::{Asked, HoursFindings, Offer};
use crate::client_page::Terms;

/// Whoever bills by the hour and sets no price offers hours and a rate.
pub(in crate::quote) fn terms(asked: &Asked, offer: &Offer, hours: &HoursFindings) -> Terms {
    match hours.estimate.as_ref().filter(|_| asked.price.is_none()) {
        Some(at) => Terms::Hourly {
            hours: at.hours_said.clone(),
            rate: at.rate_said.replace("/h", " an hour"),
            sums: at.sums_said.clone(),
            limit: at.limit_said.clone(),
        },
        None => Terms::Fixed { price: offer.quote.said.clone() },
    }
}
