//! The figures of buckets: what they save against today's, and what they are worth.

use super::findings::{BucketFindings, BucketsFindings, Runs, Standing};
use crate::chart::relief::minus;
use crate::chart::saved::{SavedData, SavedRow};
use crate::chart::words::short_name;
use crate::chart::{ChartError, Figure, Size, add, saved};
use crate::findings::{about_duration, percent};

/// The figures of buckets that there is something to draw in: `saved` and, where worth was asked for, `worth`.
pub(crate) fn bucket_figures(findings: &BucketsFindings, size: Size) -> Result<Vec<Figure>, ChartError> {
    let mut figures = Vec::new();
    for data in [prepare_saved(findings), prepare_worth(findings)] {
        add(&mut figures, data.figure, data.title.clone(), saved::draw(&data, size))?;
    }
    Ok(figures)
}

/// Minutes saved a job; rows for those that were run, barrows last; those that were not are named below.
fn prepare_saved(findings: &BucketsFindings) -> SavedData {
    let others = findings.buckets.iter().filter(|bucket| bucket.standing != Standing::Today);
    let mut runs: Vec<(String, &Runs)> =
        others.filter_map(|bucket| Some((named(bucket), bucket.runs.as_ref()?))).collect();
    runs.extend(
        findings.barrow.iter().filter_map(|barrow| Some((barrow.name.clone(), barrow.runs.as_ref()?))),
    );
    let refused: Vec<String> =
        (findings.buckets.iter().filter(|bucket| bucket.standing == Standing::Refused))
            .map(|bucket| format!("{}: {}", short_name(&bucket.name), why_not(bucket)))
            .collect();
    let gains =
        runs.iter().filter(|(_, runs)| runs.saved.mean.value > 0.0).map(|(_, runs)| runs.saved.p90.value);
    let losses = runs.iter().map(|(_, runs)| runs.saved.p10.value.abs());
    let (gain, loss) = (gains.fold(0.0, f64::max), losses.fold(0.0, f64::max));
    let (unit, unit_s) = match if gain > 0.0 { gain } else { loss } {
        s if s < 180.0 => ("s", 1.0),
        s if s < 5.0 * 3_600.0 => ("min", 60.0),
        _ => ("h", 3_600.0),
    };
    let row = |(name, runs): &(String, &Runs)| {
        let saved = &runs.saved;
        SavedRow {
            name: name.clone(),
            band: (saved.p10.value / unit_s, saved.p90.value / unit_s),
            median: saved.median.value / unit_s,
            mean: saved.mean.value / unit_s,
            interval: saved.mean.low.zip(saved.mean.high).map(|(low, high)| (low / unit_s, high / unit_s)),
            words: format!("{}, faster in {}", minus(&about_duration(saved.mean.value)), saved.said.smaller),
        }
    };
    let not_run =
        if refused.is_empty() { String::new() } else { format!("; not run: {}", refused.join(", ")) };
    SavedData {
        figure: "saved",
        title: findings.verdict.answer.clone(),
        note: format!(
            "time saved a job compared with today's bucket, {unit}, run by run on the same days and loads; band: 8 runs in 10, upright line: the \
             middle run, dot: mean with its 95 % interval{not_run}"
        ),
        rows: runs.iter().map(row).collect(),
    }
}

/// Present value less price; without rows where it was not asked for or no bucket has a price.
fn prepare_worth(findings: &BucketsFindings) -> SavedData {
    let Some(usage) = &findings.usage else {
        return SavedData { figure: "worth", title: String::new(), note: String::new(), rows: Vec::new() };
    };
    let row = |bucket: &BucketFindings| {
        let worth = bucket.worth.as_ref()?;
        let [low, median, high] = worth.present_value;
        let mean = worth.present_value_mean;
        Some(SavedRow {
            name: named(bucket),
            band: (low, high),
            median,
            mean: mean.value,
            interval: mean.low.zip(mean.high),
            words: format!(
                "{}, pays in {}",
                minus(&worth.said.present_value).replace(" to -", " to \u{2212}"),
                percent(worth.pays?.value)
            ),
        })
    };
    let rows: Vec<SavedRow> = findings.buckets.iter().filter_map(row).collect();
    let (pay, all) = (rows.iter().filter(|row| row.median > 0.0).count(), rows.len());
    let title = match (pay, all) {
        (0, _) => "No bucket is worth its price in the middle future".to_owned(),
        (1, 1) => "The bucket is worth more than its price in the middle future".to_owned(),
        (pay, all) => format!("{pay} of {all} buckets are worth more than their price in the middle future"),
    };
    SavedData {
        figure: "worth",
        title,
        note: format!(
            "worth of {} years of savings less the price, {}, each future with other jobs; band: 8 futures in 10, upright line: the \
             middle one, dot: mean with its 95 % interval",
            usage.years, usage.currency
        ),
        rows,
    }
}

/// With what keeps it from being recommended.
fn named(bucket: &BucketFindings) -> String {
    match bucket.standing {
        Standing::OverLift => format!("{} (too heavy)", bucket.name),
        Standing::NotThrough => format!("{} (gate)", bucket.name),
        Standing::Fits | Standing::Today | Standing::Refused => bucket.name.clone(),
    }
}

fn why_not(bucket: &BucketFindings) -> &'static str {
    if bucket.out_of_reach.is_empty() { "leaves nothing to lift with" } else { "does not pass the gate" }
}
