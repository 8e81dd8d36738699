//! For those who bill by the hour.

use crate::quote::Quote;
use crate::render::page::fold::{Part, more};
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use maud::html;

pub(super) fn part(quote: &Quote) -> Part {
    let findings = &quote.findings.hours;
    let billed = findings.estimate.as_ref().map(|_| "At your rate");
    let heads = ["No longer in", "Hours on the job", "Simulation error"].into_iter().chain(billed);
    let rows = findings.rows.iter().map(|row| {
        let head = html! { (row.odds) " " span.soft.nowrap { "(" (row.label) ")" } };
        let hours = [html! { (tight(&row.said)) }, html! { (tight(&row.known)) }];
        Row::new(head, hours.into_iter().chain(row.bill.as_ref().map(|bill| html! { (bill) })))
    });
    let body = html! {
        p.finding { (tight(&findings.sentence)) }
        @if findings.estimate.is_some() { p { (tight(&findings.leaves)) } }
        p { "An hour on the job costs you " (findings.break_even_said) " on average (" (findings.break_even_known) "), what is fixed left out." }
        (more("Hours in figures", html! {
            (Table::new(heads).rows(rows).draw())
            p.note { (findings.counted) " Bills are rounded up to quarter-hours." }
        }))
    };
    Part::open("hours", "By the hour", body)
}
