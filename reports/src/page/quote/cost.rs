//! What it costs, in its parts.

use crate::findings::capital;
use crate::findings::quote::CostLine;
use crate::page::charts::Charts;
use crate::page::words::tight;
use crate::quote::Quote;
use maud::{Markup, html};

pub(super) fn section(quote: &Quote, charts: &Charts<'_>) -> Markup {
    let says = &quote.says.cost;
    html! {
        section id="cost" {
            h2 { "What it costs you" }
            p { (tight(&says.range)) }
            (charts.figure("parts"))
            p { (tight(&says.split)) }
            table.short {
                thead { tr {
                    th scope="col" { "" }
                    th scope="col" { "Mean" }
                    @for share in says.shares { th scope="col" { (crate::findings::label(share)) } }
                } }
                tbody { @for line in &says.parts { (row(line)) } }
                tfoot {
                    (row(&says.total))
                    tr {
                        th scope="row" { "Known to (95 %)" }
                        td { (says.total.mean_known) }
                        @for known in &says.total.known { td { (known) } }
                    }
                }
            }
            p.note {
                (says.by_itself) " P80: 8 jobs in 10 cost no more. cost.csv has every line's intervals, runs.csv every run's parts."
            }
        }
    }
}

fn row(line: &CostLine) -> Markup {
    html! {
        tr {
            th scope="row" { (capital(line.what)) }
            td { (line.mean_said) }
            @for said in &line.said { td { (said) } }
        }
    }
}
