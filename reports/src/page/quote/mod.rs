//! The pages of a quote: `report.html` with all costs for the person who quotes, `client.html` for the client.

mod client;
mod cost;
mod foot;
mod hours;
mod missing;
mod offer;

#[cfg(test)]
mod tests;

pub use client::client_page;

use super::charts::Charts;
use super::frame::{frame, heading};
use super::{assumed, cautions, job};
use crate::chart::Figure;
use crate::quote::Quote;
use maud::html;

/// The page with all costs. The figures are drawn once for a page and for paper (`wide`), once for a phone (`narrow`).
pub fn quote_page(quote: &Quote, wide: &[Figure], narrow: &[Figure]) -> String {
    let charts = Charts { wide, narrow };
    let scenario = &quote.scenario;
    frame(
        &scenario.title,
        html! {
            (heading(scenario))
            p.soft { "Quote, with all costs: for you alone. The page for the client is client.html." }
            (offer::section(quote, &charts))
            (cost::section(quote, &charts))
            (hours::section(quote))
            (missing::section(quote))
            (job::section(scenario, quote.units))
            (cautions::section(&scenario.cautions))
            (assumed::section(&scenario.assumptions))
            (foot::section(quote))
        },
    )
}
