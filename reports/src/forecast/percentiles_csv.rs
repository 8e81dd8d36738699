//! `percentiles.csv`: one row for each figure and percentile.

use crate::findings::{is_fuelled, is_priced};
use crate::forecast::{Forecast, seconds};
use crate::render::csv::{ExportError, number, table};
use scenarios::units::{System, fuel_number, volume_number};
use sim::Outcome;

const HEADER: [&str; 6] = ["figure", "unit", "percentile", "value", "low_95", "high_95"];

type Figure = (&'static str, &'static str, fn(&Outcome) -> f64);

/// Working times count from the start of the first day, times of the clock are shifted to midnight before it.
const FIGURES: [Figure; 14] = [
    ("finish_working", "s", |o| seconds(o.finish.working)),
    ("finish_clock", "s", |o| seconds(o.finish.clock)),
    ("completion_working", "s", |o| seconds(o.completion.working)),
    ("completion_clock", "s", |o| seconds(o.completion.clock)),
    ("loads", "loads", |o| f64::from(o.loads)),
    ("placed", "m3", |o| o.placed_m3),
    ("placed", "yd3", |o| volume_number(o.placed_m3, System::Us).0),
    ("left_over", "m3", |o| o.left_over_m3),
    ("left_over", "yd3", |o| volume_number(o.left_over_m3, System::Us).0),
    ("short", "m3", |o| o.short_m3),
    ("short", "yd3", |o| volume_number(o.short_m3, System::Us).0),
    ("fuel", "l", |o| o.fuel_l),
    ("fuel", "gal", |o| fuel_number(o.fuel_l, System::Us).0),
    ("labour", "h", |o| o.labour_h),
];

/// The percentiles of every figure with their 95 % intervals (type 7, order statistics). Fields of unknown figures and of
/// ends that the runs cannot bound are empty.
///
/// # Errors
/// If the table cannot be written.
pub fn percentiles_csv(forecast: &Forecast) -> Result<Vec<u8>, ExportError> {
    let job = &forecast.scenario.job;
    let (fuelled, priced) = (is_fuelled(job), is_priced(job));
    let cost: Figure = ("cost", "", |o| o.cost);
    let rows = FIGURES.iter().chain([&cost]).flat_map(|(figure, unit, of)| {
        let known = (*figure != "fuel" || fuelled) && (*figure != "cost" || priced);
        let unit = if *figure == "cost" { forecast.scenario.currency.as_str() } else { unit };
        let from_midnight = if figure.ends_with("_clock") { job.shift.start_s } else { 0.0 };
        let sample = forecast.study.sorted(of);
        let row = move |share: &f64| {
            let p = sample.percentile(*share);
            let [value, low, high] = [Some(p.value), p.low, p.high]
                .map(|v| number(v.filter(|_| known).map(|v| v + from_midnight)));
            vec![(*figure).to_owned(), unit.to_owned(), tidy_percent(*share), value, low, high]
        };
        forecast.percentiles.iter().map(row).collect::<Vec<_>>()
    });
    table(HEADER, rows)
}

fn tidy_percent(share: f64) -> String {
    number((share * 1e8).round() / 1e6)
}
