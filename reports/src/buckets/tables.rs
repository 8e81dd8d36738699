//! `buckets.csv`: one row a bucket, and one for hand barrows.

use crate::buckets::Buckets;
use crate::buckets::findings::{BucketSays, BucketsSays, Runs, Standing, WorthSays};
use crate::findings::Estimate;
use crate::render::csv::{ExportError, number, table};
use scenarios::units::{System, bucket_number};

const HEADER: [&str; 61] = [
    "name",
    "kind",
    "standing",
    "heaped_m3",
    "heaped_ft3",
    "price",
    "currency",
    "lift_share",
    "lift_cut_to_m3",
    "lift",
    "gates",
    "loads_p50",
    "loads_p50_low_95",
    "loads_p50_high_95",
    "finish_working_p50_s",
    "finish_working_p50_s_low_95",
    "finish_working_p50_s_high_95",
    "finish_working_p80_s",
    "finish_working_p80_s_low_95",
    "finish_working_p80_s_high_95",
    "time_saved_median_s",
    "time_saved_median_s_low_95",
    "time_saved_median_s_high_95",
    "time_saved_p10_s",
    "time_saved_p10_s_low_95",
    "time_saved_p10_s_high_95",
    "time_saved_p90_s",
    "time_saved_p90_s_low_95",
    "time_saved_p90_s_high_95",
    "time_saved_mean_s",
    "time_saved_mean_s_low_95",
    "time_saved_mean_s_high_95",
    "chance_faster",
    "chance_faster_low_95",
    "chance_faster_high_95",
    "who_waits",
    "worth_per_job",
    "worth_per_job_low_95",
    "worth_per_job_high_95",
    "yearly_p10",
    "yearly_p50",
    "yearly_p90",
    "years_to_pay_back_p10",
    "years_to_pay_back_p50",
    "years_to_pay_back_p90",
    "hours_to_pay_back_p10",
    "hours_to_pay_back_p50",
    "hours_to_pay_back_p90",
    "present_value_p10",
    "present_value_p50",
    "present_value_p90",
    "present_value_mean",
    "present_value_mean_low_95",
    "present_value_mean_high_95",
    "chance_pays",
    "chance_pays_low_95",
    "chance_pays_high_95",
    "cost_saved_mean",
    "cost_saved_mean_low_95",
    "cost_saved_mean_high_95",
    "recommended",
];

/// Every bucket, and hand barrows last. `inf` is a time that never comes.
///
/// # Errors
/// If the table cannot be written.
pub fn buckets_csv(all: &Buckets, says: &BucketsSays) -> Result<Vec<u8>, ExportError> {
    let mut rows: Vec<Vec<String>> = says.buckets.iter().map(|bucket| of_bucket(all, says, bucket)).collect();
    rows.extend(says.barrow.as_ref().map(|barrow| {
        let mut row = vec![barrow.name.clone(), "hand_barrow".into(), "in_place_of_the_loader".into()];
        row.extend(std::iter::repeat_n(String::new(), 8));
        row.extend(of_runs(barrow.runs.as_ref()));
        row.extend(of_worth(None));
        row.extend(with_ends(barrow.cost.as_ref().map(|cost| cost.mean)));
        row.push("no".into());
        row
    }));
    table(HEADER, rows)
}

fn of_bucket(all: &Buckets, says: &BucketsSays, bucket: &BucketSays) -> Vec<String> {
    let standing = match bucket.standing {
        Standing::Fits => "fits",
        Standing::Today => "today",
        Standing::OverLift => "over_lift",
        Standing::NotThrough => "not_through",
        Standing::Refused => "refused",
    };
    let currency = if bucket.price.is_some() { all.list.currency.clone() } else { String::new() };
    let mut row = vec![
        bucket.name.clone(),
        "bucket".into(),
        standing.into(),
        number(bucket.heaped_m3),
        number(bucket_number(bucket.heaped_m3, System::Us).0),
        number(bucket.price),
        currency,
        number(bucket.lift_share),
        number(bucket.lift_cut_to_m3),
        bucket.lift.clone(),
        bucket.gates.clone(),
    ];
    row.extend(of_runs(bucket.runs.as_ref()));
    row.extend(of_worth(bucket.worth.as_ref()));
    row.extend(with_ends(None));
    row.push(if says.verdict.buy.as_ref() == Some(&bucket.name) { "yes" } else { "no" }.into());
    row
}

fn of_runs(runs: Option<&Runs>) -> Vec<String> {
    let mut row = Vec::from(with_ends(runs.map(|runs| runs.loads)));
    for place in 0..2 {
        row.extend(with_ends(runs.and_then(|runs| runs.finish.get(place)).map(|at| at.finish_working_s)));
    }
    let saved = runs.map(|runs| &runs.saved);
    let each = [
        saved.map(|s| s.median),
        saved.map(|s| s.p10),
        saved.map(|s| s.p90),
        saved.map(|s| s.mean),
        saved.map(|s| s.smaller),
    ];
    row.extend(each.into_iter().flat_map(with_ends));
    row.push(runs.map(|runs| runs.held_up.clone()).unwrap_or_default());
    row
}

fn of_worth(worth: Option<&WorthSays>) -> Vec<String> {
    let three = |values: Option<[f64; 3]>| match values {
        Some(values) => values.map(number),
        None => Default::default(),
    };
    let until = |values: Option<[Option<f64>; 3]>| match values {
        Some(values) => values.map(|value| value.map_or_else(|| "inf".to_owned(), number)),
        None => Default::default(),
    };
    let mut row = Vec::from(with_ends(worth.map(|worth| worth.per_job)));
    row.extend(three(worth.map(|worth| worth.yearly)));
    row.extend(until(worth.and_then(|worth| worth.years)));
    row.extend(until(worth.and_then(|worth| worth.hours)));
    row.extend(three(worth.map(|worth| worth.present_value)));
    row.extend(with_ends(worth.map(|worth| worth.present_value_mean)));
    row.extend(with_ends(worth.and_then(|worth| worth.pays)));
    row
}

/// A figure and the ends of its interval; empty where there is none.
fn with_ends(estimate: Option<Estimate>) -> [String; 3] {
    [
        number(estimate.map(|e| e.value)),
        number(estimate.and_then(|e| e.low)),
        number(estimate.and_then(|e| e.high)),
    ]
}
