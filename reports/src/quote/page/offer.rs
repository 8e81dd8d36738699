//! What to ask: the price, large, with the risk it carries, and what other prices carry.

use crate::findings::capital;
use crate::quote::Quote;
use crate::quote::findings::{Price, PriceOf};
use crate::render::page::cautions::heed;
use crate::render::page::charts::Charts;
use crate::render::page::fold::{Part, more};
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use maud::{Markup, html};

pub(super) fn answer(quote: &Quote) -> Markup {
    let offer = &quote.findings.offer;
    html! {
        section id="range" {
            h2 { "What to ask" }
            (heed(&quote.scenario.cautions))
            div.answer {
                p.big { span { (offer.quote.said) } }
                p.plan { (tight(&offer.verdict)) }
                @if !offer.why.is_empty() { p { (tight(&offer.why)) } }
            }
        }
    }
}

/// What every price carries.
pub(super) fn part(quote: &Quote, charts: &Charts<'_>) -> Part {
    let offer = &quote.findings.offer;
    let heads = ["", "Price", "You lose money", "You keep on average", "8 jobs in 10", "Lost, if lost"];
    let body = html! {
        (charts.figure("risk"))
        @if offer.ladder.len() > 1 {
            (more("What other prices carry", html! {
                (Table::new(heads).rows(offer.ladder.iter().map(row)).draw())
                p.note {
                    (tight(&offer.risk_known)) " ± tells how closely these runs know a price (95 % confidence). What you keep is "
                    "the price less the cost; your wages in the job are costs."
                }
            }))
        }
    };
    Part::open("risk", "Price and risk", body)
}

fn row(price: &Price) -> Row {
    let is_set = matches!(price.of, PriceOf::Quote | PriceOf::Asked);
    let cells = [
        html! { span.nowrap { (price.said) } @if let Some(known) = &price.known { " " span.soft.nowrap { (tight(known)) } } },
        html! { (price.odds) },
        html! { (tight(&price.stays_said)) },
        html! { (tight(&price.stays_range_said)) },
        html! { (price.loss_said.as_deref().unwrap_or("nothing")) },
    ];
    Row::new(html! { (tight(&capital(&price.what))) }, cells).plan(is_set)
}
