//! The figures of a quote.

pub(crate) mod parts;
pub(crate) mod risk;

use super::Quote;
use crate::chart::{ChartError, Figure, Size};

/// Risk against price, and what the cost is made of.
pub(super) fn figures(quote: &Quote, size: Size) -> Result<Vec<Figure>, ChartError> {
    let currency = &quote.scenario.currency;
    let of_risk = risk::prepare(&quote.costs.total(), &quote.findings.offer, currency);
    let of_parts = parts::prepare(&quote.findings.cost, quote.study.runs(), currency);
    Ok(vec![
        Figure { name: "risk", svg: crate::chart::risk::draw(&of_risk, size)?, title: of_risk.title },
        Figure { name: "parts", svg: parts::draw(&of_parts, size)?, title: of_parts.title },
    ])
}
