//! For those who bill by the hour.

use crate::page::words::tight;
use crate::quote::Quote;
use maud::{Markup, html};

pub(super) fn section(quote: &Quote) -> Markup {
    let says = &quote.says.hours;
    html! {
        section id="hours" {
            h2 { "By the hour" }
            p.finding { (tight(&says.sentence)) }
            @if says.estimate.is_some() { p { (tight(&says.leaves)) } }
            table.short {
                thead { tr {
                    th scope="col" { "No longer in" }
                    th scope="col" { "Hours on the job" }
                    th scope="col" { "Known (95 %)" }
                    @if says.estimate.is_some() { th scope="col" { "At your rate" } }
                } }
                tbody { @for row in &says.rows { tr {
                    th scope="row" { (row.odds) " " span.soft.nowrap { "(" (row.label) ")" } }
                    td { (tight(&row.said)) }
                    td { (tight(&row.known)) }
                    @if let Some(bill) = &row.bill { td { (bill) } }
                } } }
            }
            p { "An hour on the job costs you " (says.break_even_said) " on average (" (says.break_even_known) "), what is fixed left out." }
            p.note { (says.counted) " Bills are rounded up to quarter-hours." }
        }
    }
}
