//! Which bucket to buy, if any, and what would help more.

use super::worth::until;
use super::{BarrowFindings, BucketFindings, HelpLine, Standing, TodayFindings};
use crate::buckets::Buckets;
use crate::findings::Unit;
use crate::findings::about_duration;
use crate::findings::{capital, order, percent};
use serde::Serialize;

/// Which bucket to buy.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Verdict {
    /// Name of the bucket recommended; `None` if none is.
    pub buy: Option<String>,
    /// The answer in a sentence.
    pub answer: String,
    /// What goes with it: what else would help, what was not considered and why.
    pub besides: Vec<String>,
}

/// A saving under this, or under this share of the job, is not worth a bucket (our own choice).
const LEAST_S: f64 = 60.0;
const LEAST_SHARE: f64 = 0.01;
/// A bucket is recommended from this chance that it pays (our own choice).
const LIKELY: f64 = 0.8;
/// From this it may pay.
const EVEN: f64 = 0.5;
/// If no bucket saves this share of what something else saves, buckets are not what holds the job up (our own choice).
const LITTLE: f64 = 0.5;

pub(super) fn verdict(
    all: &Buckets,
    today: &TodayFindings,
    rows: &[BucketFindings],
    barrow: Option<&BarrowFindings>,
    helps: &[HelpLine],
) -> Verdict {
    let fit: Vec<&BucketFindings> = rows.iter().filter(|row| row.standing == Standing::Fits).collect();
    let best = best(all, today, &fit);
    let (buy, answer) = match best {
        Some(best) => answer(best),
        None => (None, none(all, rows, &fit)),
    };
    let answer = order(&all.today, &all.scenario, all.units).before(&answer);
    let mut besides = Vec::new();
    besides.extend(rather(today, &fit, helps));
    besides.extend(best.filter(|best| best.lift_share.is_none()).map(|best| {
        format!("Whether the loader may lift \"{}\" full is not known: {}", best.name, best.lift)
    }));
    besides.extend(unpriced(today, &fit));
    besides.extend(left_out(rows));
    besides.extend(barrow.and_then(by_hand));
    Verdict { buy, answer, besides }
}

fn mean_s(row: &BucketFindings) -> f64 {
    row.runs.as_ref().map_or(0.0, |runs| runs.saved.mean.value)
}

/// Whether it surely saves time that matters.
fn saves(row: &BucketFindings, today: &TodayFindings) -> bool {
    let job_s = today.runs.finish.first().map_or(0.0, |p50| p50.finish_working_s.value);
    let sure = row.runs.as_ref().and_then(|runs| runs.saved.mean.low).is_some_and(|low| low > 0.0);
    sure && mean_s(row) >= LEAST_S.max(LEAST_SHARE * job_s)
}

/// Of those that surely save time the one that is worth most, or saves most where worth was not asked for.
fn best<'a>(all: &Buckets, today: &TodayFindings, fit: &[&'a BucketFindings]) -> Option<&'a BucketFindings> {
    let candidates = fit.iter().copied().filter(|row| saves(row, today));
    if all.wanted.usage.is_none() {
        return candidates.max_by(|a, b| mean_s(a).total_cmp(&mean_s(b)));
    }
    let worth = |row: &BucketFindings| row.worth.as_ref().map_or(f64::NEG_INFINITY, |w| w.present_value[1]);
    let pays = |row: &&BucketFindings| {
        row.worth.as_ref().and_then(|w| w.pays).is_some_and(|pays| pays.value >= EVEN)
    };
    candidates.filter(pays).max_by(|a, b| worth(a).total_cmp(&worth(b)))
}

fn answer(best: &BucketFindings) -> (Option<String>, String) {
    let name = &best.name;
    let minutes = best.runs.as_ref().map_or_else(String::new, |runs| {
        let (low, high) = (runs.saved.p10.value, runs.saved.p90.value);
        format!("saves {} a job (8 jobs in 10)", Unit::Time.band(low, high))
    });
    let priced = best.worth.as_ref().and_then(|worth| Some((worth, worth.years?, worth.pays?)));
    match priced {
        None => (Some(name.clone()), format!("\"{name}\" {minutes}, the most of those that fit.")),
        Some((_, years, pays)) => {
            let back = until(years, ("year", "years"));
            let chance = format!("chance that it pays {}", percent(pays.value));
            if pays.value >= LIKELY {
                (
                    Some(name.clone()),
                    format!("Buy \"{name}\": it {minutes} and is paid back in {back} ({chance})."),
                )
            } else {
                (
                    None,
                    format!(
                        "\"{name}\" may pay, or not: it {minutes} and is paid back in {back} ({chance})."
                    ),
                )
            }
        }
    }
}

fn none(all: &Buckets, rows: &[BucketFindings], fit: &[&BucketFindings]) -> String {
    if fit.is_empty() {
        let others = rows.iter().any(|row| row.standing != Standing::Today);
        let why = if others { "none of the others fits" } else { "the list holds no other" };
        return format!("Buy none of them for this job: {why}.");
    }
    let unpriced = fit.iter().all(|row| row.price.is_none());
    if all.wanted.usage.is_some() && unpriced && fit.iter().any(|row| mean_s(row) > 0.0) {
        return "Whether one pays cannot be said: those that fit have no price in the list.".into();
    }
    "Buy none of them for this job.".into()
}

/// What would help more than any bucket that fits.
fn rather(today: &TodayFindings, fit: &[&BucketFindings], helps: &[HelpLine]) -> Option<String> {
    let help = helps.iter().find(|line| line.is_sure() && !line.is_done_more)?;
    let most = fit.iter().map(|row| mean_s(row)).fold(0.0_f64, f64::max);
    if most >= help.saved_s.value {
        return None;
    }
    let instead = format!("{} saves {} a job.", capital(&help.what), help.saves);
    if most >= LITTLE * help.saved_s.value {
        return Some(format!("{} That is more than any bucket here.", instead));
    }
    let pace = today.pace.split([':', '.']).next().unwrap_or_default();
    let bucket = match most {
        s if s >= 0.5 => {
            format!("no bucket here that fits saves more than {} a job on average", about_duration(s))
        }
        _ if fit.iter().any(|row| mean_s(row) <= -0.5) => {
            "the buckets here that fit save no time, or lose it".into()
        }
        _ => "no bucket here that fits saves time".to_owned(),
    };
    Some(format!("{pace}: {bucket}. {instead}"))
}

/// What those may cost that have no price in the list.
fn unpriced(today: &TodayFindings, fit: &[&BucketFindings]) -> Vec<String> {
    let such = fit.iter().filter(|row| row.price.is_none() && saves(row, today));
    such.filter_map(|row| {
        let most = &row.worth.as_ref()?.said.present_value;
        Some(format!("\"{}\" has no price in the list; it {most} (9 times in 10).", row.name))
    })
    .collect()
}

/// What was not considered, and why.
fn left_out(rows: &[BucketFindings]) -> Vec<String> {
    let of = |standing: &[Standing]| -> Vec<String> {
        rows.iter()
            .filter(|row| standing.contains(&row.standing))
            .map(|row| format!("\"{}\"", row.name))
            .collect()
    };
    let mut all = Vec::new();
    let over = of(&[Standing::OverLift]);
    if !over.is_empty() {
        all.push(format!(
            "Never recommended, as a full one is more than may be lifted: {}.",
            over.join(", ")
        ));
    }
    let narrow = of(&[Standing::NotThrough, Standing::Refused]);
    if !narrow.is_empty() {
        all.push(format!(
            "Left out, as it does not pass every gate or leaves nothing to lift with: {}.",
            narrow.join(", ")
        ));
    }
    all
}

/// Where it is no slower by hand, no machine is needed at all.
fn by_hand(barrow: &BarrowFindings) -> Option<String> {
    let saved = &barrow.runs.as_ref()?.saved;
    (saved.mean.value >= 0.0).then(|| {
        format!("{} would do it no slower than the loader with today's bucket.", capital(&barrow.name))
    })
}
