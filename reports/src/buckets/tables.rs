//! `buckets.csv`: one row a bucket, and one for hand barrows.

use crate::buckets::Buckets;
use crate::buckets::findings::{
    BarrowFindings, BucketFindings, BucketsFindings, Runs, Standing, WorthFindings,
};
use crate::render::ExportError;
use crate::render::table::{Table, Unit};
use scenarios::units::{System, bucket_number};

/// A bucket, or hand barrows in place of the loader.
struct Row<'a> {
    name: &'a str,
    bucket: Option<&'a BucketFindings>,
    barrow: Option<&'a BarrowFindings>,
    runs: Option<&'a Runs>,
}

impl<'a> Row<'a> {
    fn of_bucket(bucket: &'a BucketFindings) -> Self {
        Self { name: &bucket.name, bucket: Some(bucket), barrow: None, runs: bucket.runs.as_ref() }
    }

    fn of_barrow(barrow: &'a BarrowFindings) -> Self {
        Self { name: &barrow.name, bucket: None, barrow: Some(barrow), runs: barrow.runs.as_ref() }
    }

    fn standing(&self) -> &'static str {
        match self.bucket.map(|bucket| bucket.standing) {
            Some(Standing::Fits) => "fits",
            Some(Standing::Today) => "today",
            Some(Standing::OverLift) => "over_lift",
            Some(Standing::NotThrough) => "not_through",
            Some(Standing::Refused) => "refused",
            None => "in_place_of_the_loader",
        }
    }

    fn worth(&self) -> Option<&'a WorthFindings> {
        self.bucket?.worth.as_ref()
    }
}

/// Every bucket, and hand barrows last. `inf` is a time that never comes.
pub(crate) fn buckets_csv(all: &Buckets, findings: &BucketsFindings) -> Result<Vec<u8>, ExportError> {
    let rows: Vec<Row<'_>> = findings
        .buckets
        .iter()
        .map(Row::of_bucket)
        .chain(findings.barrow.as_ref().map(Row::of_barrow))
        .collect();
    let of = |row: &Row<'_>, figure: fn(&BucketFindings) -> Option<f64>| row.bucket.and_then(figure);
    let finish = |row: &Row<'_>, place: usize| {
        row.runs.and_then(|r| r.finish.get(place)).map(|at| at.finish_working_s)
    };
    Table::new()
        .plain("name", |row: &Row<'_>| row.name)
        .plain("kind", |row| if row.bucket.is_some() { "bucket" } else { "hand_barrow" })
        .plain("standing", Row::standing)
        .figure("heaped", Unit::M3, move |row| of(row, |b| Some(b.heaped_m3)))
        .figure("heaped", Unit::Ft3, move |row| of(row, |b| Some(bucket_number(b.heaped_m3, System::Us).0)))
        .figure("price", Unit::Money, move |row| of(row, |b| b.price))
        .plain("currency", |row| row.bucket.and_then(|b| b.price).map(|_| all.list.currency.clone()))
        .plain("lift_share", move |row| of(row, |b| b.lift_share))
        .figure("lift_cut_to", Unit::M3, move |row| of(row, |b| b.lift_cut_to_m3))
        .plain("lift", |row| row.bucket.map(|b| b.lift.clone()))
        .plain("gates", |row| row.bucket.map(|b| b.gates.clone()))
        .estimate("loads_p50", Unit::Loads, |row| row.runs.map(|runs| runs.loads))
        .estimate("finish_working_p50", Unit::Seconds, move |row| finish(row, 0))
        .estimate("finish_working_p80", Unit::Seconds, move |row| finish(row, 1))
        .saved("time_saved", Unit::Seconds, |row| row.runs.map(|runs| &runs.saved), "chance_faster")
        .plain("who_waits", |row| row.runs.map(|runs| runs.held_up.clone()))
        .chain(worth())
        .estimate("cost_saved_mean", Unit::Money, |row| row.barrow?.cost.as_ref().map(|cost| cost.mean))
        .plain("recommended", |row| row.bucket.is_some() && findings.verdict.buy.as_deref() == Some(row.name))
        .csv(&rows)
}

fn worth<'a>() -> Table<'a, Row<'a>> {
    type Three = fn(&WorthFindings) -> Option<[Option<f64>; 3]>;
    let three = |name: &'static str, never: &'static str, of: Three| {
        ["p10", "p50", "p90"].into_iter().enumerate().fold(Table::new(), |table, (place, percent)| {
            table.plain(format!("{name}_{percent}"), move |row: &Row<'a>| {
                let values = row.worth().and_then(of);
                values.map(|values| values[place].map_or_else(|| never.to_owned(), |value| value.to_string()))
            })
        })
    };
    Table::new()
        .estimate("worth_per_job", Unit::Money, |row: &Row<'a>| row.worth().map(|worth| worth.per_job))
        .chain(three("yearly", "", |worth| Some(worth.yearly.map(Some))))
        .chain(three("years_to_pay_back", "inf", |worth| worth.years))
        .chain(three("hours_to_pay_back", "inf", |worth| worth.hours))
        .chain(three("present_value", "", |worth| Some(worth.present_value.map(Some))))
        .estimate("present_value_mean", Unit::Money, |row| row.worth().map(|worth| worth.present_value_mean))
        .estimate("chance_pays", Unit::None, |row| row.worth().and_then(|worth| worth.pays))
}
