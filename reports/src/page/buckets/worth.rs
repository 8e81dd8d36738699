//! What each bucket is worth, where that was asked for.

use super::Charts;
use crate::findings::buckets::BucketsSays;
use crate::page::words::tight;
use maud::{Markup, html};

pub(super) fn section(says: &BucketsSays, charts: &Charts<'_>) -> Markup {
    let rows: Vec<_> = says.buckets.iter().filter_map(|b| Some((b, &b.worth.as_ref()?.said))).collect();
    let years = says.usage.as_ref().map_or(0, |usage| usage.years);
    html! {
        section id="worth" {
            h2 { "Does it pay" }
            @if !rows.is_empty() {
                (charts.figure("worth"))
                table.short {
                    thead { tr {
                        th scope="col" { "" }
                        th scope="col" { "price" }
                        th scope="col" { "saves a job" }
                        th scope="col" { "saves a year" }
                        th scope="col" { "paid back in" }
                        th scope="col" { "hours on jobs" }
                        th scope="col" { "worth after " (years) " years" }
                        th scope="col" { "chance that it pays" }
                    } }
                    tbody { @for (bucket, said) in rows { tr {
                        th scope="row" { (bucket.name) }
                        td { (bucket.price_said.as_deref().unwrap_or("none")) }
                        td { (tight(&said.per_job)) }
                        td { (tight(&said.yearly)) }
                        td { (tight(&said.years)) }
                        td { (tight(&said.hours)) }
                        td { (tight(&said.present_value)) }
                        td { (tight(&said.pays)) }
                    } } }
                }
            }
            p.note { (tight(&says.counted)) }
        }
    }
}
