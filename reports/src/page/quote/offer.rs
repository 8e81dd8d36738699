//! What to ask: the price, large, with the risk it carries, and what other prices carry.

use crate::findings::quote::{Price, PriceOf};
use crate::findings::{capital, warnings};
use crate::page::charts::Charts;
use crate::page::words::tight;
use crate::quote::Quote;
use maud::{Markup, html};

pub(super) fn section(quote: &Quote, charts: &Charts<'_>) -> Markup {
    let offer = &quote.says.offer;
    let doubtful = warnings(&quote.scenario.cautions).doubtful.len();
    html! {
        section id="range" {
            h2 { "What to ask" }
            @if doubtful > 0 {
                p.heed { "Some figures are doubtful. Read " a href="#cautions" { "the warnings" } " first." }
            }
            div.answer {
                p.big { span { (offer.quote.said) } }
                p.plan { (tight(&offer.verdict)) }
                @if !offer.why.is_empty() { p { (tight(&offer.why)) } }
            }
            (charts.figure("risk"))
            @if offer.ladder.len() > 1 {
                table.short {
                    caption { "What other prices carry" }
                    thead { tr {
                        th scope="col" { "" }
                        th scope="col" { "Price" }
                        th scope="col" { "You lose money" }
                        th scope="col" { "Stays on average" }
                        th scope="col" { "8 jobs in 10" }
                        th scope="col" { "Lost, if lost" }
                    } }
                    tbody { @for price in &offer.ladder { (row(price)) } }
                }
                p.note {
                    (tight(&offer.risk_known)) " ± tells how closely these runs know a price (95 % confidence). What stays is price "
                    "less cost; your wages in the file are costs."
                }
            }
        }
    }
}

fn row(price: &Price) -> Markup {
    let is_set = matches!(price.of, PriceOf::Quote | PriceOf::Asked);
    html! {
        tr class=[is_set.then_some("plan-row")] {
            th scope="row" { (tight(&capital(&price.what))) }
            td.nowrap { (price.said) @if let Some(known) = &price.known { " " span.soft { (tight(known)) } } }
            td { (price.odds) }
            td { (tight(&price.stays_said)) }
            td { (tight(&price.stays_range_said)) }
            td { (price.loss_said.as_deref().unwrap_or("nothing")) }
        }
    }
}
