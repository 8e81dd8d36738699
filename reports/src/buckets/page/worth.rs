//! What each bucket is worth, where that was asked for.

use super::Charts;
use crate::buckets::findings::{BucketFindings, BucketsFindings, WorthFindings};
use crate::render::page::fold::{Part, more};
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use maud::html;

pub(super) fn part(findings: &BucketsFindings, charts: &Charts<'_>) -> Part {
    let rows: Vec<_> = findings.buckets.iter().filter_map(|b| Some((b, b.worth.as_ref()?))).collect();
    let years = findings.usage.as_ref().map_or(0, |usage| usage.years);
    let heads =
        ["", "price", "saves a job", "saves a year", "paid back in", "hours on jobs"].map(str::to_owned);
    let heads =
        heads.into_iter().chain([format!("worth after {years} years"), "chance that it pays".to_owned()]);
    let row = |(bucket, worth): &(&BucketFindings, &WorthFindings)| {
        let said = &worth.said;
        let price = bucket.price_said.as_deref().unwrap_or("none");
        let said = [&said.per_job, &said.yearly, &said.years, &said.hours, &said.present_value, &said.pays];
        let said = std::iter::once(price).chain(said.map(String::as_str));
        Row::new(html! { (bucket.name) }, said.map(|words| html! { (tight(words)) }))
    };
    let body = html! {
        @if !rows.is_empty() {
            (charts.shown("worth", "Each bucket as a picture"))
            (more("Each bucket's worth in figures", Table::new(heads).rows(rows.iter().map(row)).draw()))
        }
        p.note { (tight(&findings.counted)) }
    };
    Part::open("worth", "Does it pay", body)
}
