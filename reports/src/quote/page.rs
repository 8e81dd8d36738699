//! The pages of a quote: `report.html` with all costs for the person who quotes, `client.html` for the client.

mod cost;
mod foot;
mod hours;
mod missing;
mod offer;

#[cfg(test)]
mod tests;

use crate::chart::Figure;
use crate::quote::Quote;
use crate::render::page::charts::Charts;
use crate::render::page::frame::{heading, whole};
use crate::render::page::{assumed, cautions, job};
use maud::html;

/// The page with all costs. The figures are drawn once for a page and for paper (`wide`), once for a phone (`narrow`).
pub(crate) fn quote_page(quote: &Quote, wide: &[Figure], narrow: &[Figure]) -> String {
    let charts = Charts { wide, narrow };
    let scenario = &quote.scenario;
    let head = html! {
        (heading(scenario))
        p.soft { "Quote, with all costs: for you alone. The page for the client is client.html." }
    };
    let parts = [
        offer::part(quote, &charts),
        cost::part(quote, &charts),
        hours::part(quote),
        missing::part(quote),
        cautions::part(&scenario.cautions),
        job::part(scenario, quote.units),
        assumed::part(&scenario.assumptions),
        foot::part(quote),
    ];
    whole(&scenario.title, &head, &offer::answer(quote), &parts)
}
