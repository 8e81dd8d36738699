//! What is said of each bucket by itself, of today's, and of hand barrows.

use super::worth::{self, WorthFindings};
use crate::buckets::{Buckets, Tried};
use crate::findings::{Calendar, DoneRow, Estimate, done_rows, is_priced, who_waits_in, who_waits_with};
use crate::findings::{Saved, Unit, saved};
use scenarios::units::{bucket as in_bucket, figure, mass, short_length};
use scenarios::{Lift, Through};
use serde::Serialize;
use sim::{Job, Study, paired};

/// Percentiles of the finish that are told.
const SHARES: [f64; 2] = [0.5, 0.8];

/// How a bucket stands before any minute is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// It can be used full and everywhere, as far as is known.
    Fits,
    /// It is today's bucket, or makes the very same job.
    Today,
    /// Full it is more than may be lifted: loads are cut. Not recommended.
    OverLift,
    /// It does not pass a gate, though the job can be done around it. Not recommended.
    NotThrough,
    /// The job cannot be done with it: not run.
    Refused,
}

/// One bucket of the list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BucketFindings {
    /// Its name.
    pub name: String,
    /// What it is, in words: `22 ft3 heaped, 66 in wide, 230 lb`.
    pub what: String,
    /// Heaped capacity \[m3\].
    pub heaped_m3: f64,
    /// How it stands.
    pub standing: Standing,
    /// Whether a full one may be lifted, in a sentence or two.
    pub lift: String,
    /// The same in a few words, fit for a column.
    pub lift_short: String,
    /// The load over what may be lifted; `None` if that is not known.
    pub lift_share: Option<f64>,
    /// The load that may be lifted where it is less than a full bucket \[m3\].
    pub lift_cut_to_m3: Option<f64>,
    /// Whether it passes the gates, in a sentence or two.
    pub gates: String,
    /// The same in a few words.
    pub gates_short: String,
    /// Ground that the loader does not reach with it.
    pub out_of_reach: Vec<String>,
    /// What its runs tell; `None` where none were made.
    pub runs: Option<Runs>,
    /// Price \[money\]; `None` if the list has none.
    pub price: Option<f64>,
    /// The same in words.
    pub price_said: Option<String>,
    /// What it is worth; `None` where that was not asked for, and for today's bucket.
    pub worth: Option<WorthFindings>,
}

/// What runs tell of a job compared with today's.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Runs {
    /// P50 of the loads.
    pub loads: Estimate,
    /// P50 and P80 of the finish.
    pub finish: Vec<DoneRow>,
    /// Time saved against today's \[s\].
    pub saved: Saved,
    /// Who waits for whom, in a few words.
    pub held_up_short: String,
    /// Who waits for whom, in a short sentence.
    pub held_up: String,
}

/// The job as it is today.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TodayFindings {
    /// Which bucket it is: `"today's bucket", 14 ft3 heaped`.
    pub what: String,
    /// What its runs tell.
    pub runs: Runs,
    /// Who sets the pace, with shares of the time.
    pub pace: String,
}

/// Hand barrows in place of the loader.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BarrowFindings {
    /// `a hand barrow`, `3 hand barrows`.
    pub name: String,
    /// What its runs tell; `None` where it cannot be.
    pub runs: Option<Runs>,
    /// What the job costs less by the file's prices (below 0: more), where there are any.
    pub cost: Option<Saved>,
    /// What has to be known of it, in a sentence.
    pub words: String,
}

pub(super) fn buckets(all: &Buckets) -> Vec<BucketFindings> {
    all.tried.iter().enumerate().map(|(row, tried)| bucket(all, row, tried)).collect()
}

fn bucket(all: &Buckets, row: usize, tried: &Tried) -> BucketFindings {
    let (bucket, fitted) = (&tried.bucket, &tried.fitted);
    let standing = standing(all, row, tried);
    let runs = tried.study.as_ref().zip(fitted.job.as_ref()).map(|(study, job)| runs(all, job, study));
    BucketFindings {
        name: bucket.name.clone(),
        what: what(all, tried),
        heaped_m3: bucket.heaped_m3,
        standing,
        lift: fitted.lift.words.clone(),
        lift_short: lift_short(all, tried),
        lift_share: fitted.lift.share,
        lift_cut_to_m3: fitted.lift.cut_to_m3,
        gates: gates_words(all, tried),
        gates_short: gates_short(all, tried),
        out_of_reach: fitted.gates.out_of_reach.clone(),
        price: bucket.price,
        price_said: bucket.price.map(|price| scenarios::units::money(price, &all.list.currency)),
        worth: runs.as_ref().and_then(|runs| worth::findings(all, tried, runs)),
        runs,
    }
}

fn standing(all: &Buckets, row: usize, tried: &Tried) -> Standing {
    let same = tried.fitted.job.as_ref() == Some(&all.scenario.job);
    match (tried.fitted.lift.lift, tried.fitted.gates.through) {
        _ if all.wanted.today == Some(row) || same => Standing::Today,
        _ if tried.study.is_none() => Standing::Refused,
        (_, Through::Around | Through::Refused) => Standing::NotThrough,
        (Lift::Cut | Lift::Nothing, _) => Standing::OverLift,
        (Lift::Within | Lift::Unknown, Through::Every | Through::Unknown) => Standing::Fits,
    }
}

fn what(all: &Buckets, tried: &Tried) -> String {
    let bucket = &tried.bucket;
    let mut parts = vec![format!("{} heaped", in_bucket(bucket.heaped_m3, all.units))];
    parts.extend(bucket.width_m.map(|width| format!("{} wide", short_length(width, all.units))));
    parts.extend(bucket.mass_kg.map(|kg| mass(kg, all.units)));
    parts.join(", ")
}

fn lift_short(all: &Buckets, tried: &Tried) -> String {
    let lift = &tried.fitted.lift;
    let share = lift.share.map(|share| format!("{} %", figure(share * 100.0))).unwrap_or_default();
    match lift.lift {
        Lift::Within => share,
        Lift::Cut => {
            let cut = lift.cut_to_m3.map_or_else(String::new, |cut| in_bucket(cut, all.units));
            format!("{share}, cut to {cut}")
        }
        Lift::Nothing => "too heavy".into(),
        Lift::Unknown => "not given".into(),
    }
}

fn gates_short(all: &Buckets, tried: &Tried) -> String {
    let gates = &tried.fitted.gates;
    let tightest = gates.passes.iter().min_by(|a, b| a.spare_m.total_cmp(&b.spare_m));
    match (gates.through, tightest) {
        (Through::Refused, _) => "no".into(),
        (Through::Around, _) => "not all".into(),
        (Through::Unknown, _) => "not known".into(),
        (Through::Every, Some(pass)) => format!("{} spare", short_length(pass.spare_m, all.units)),
        (Through::Every, None) => "none".into(),
    }
}

/// With what cannot be reached, where the job cannot be done.
fn gates_words(all: &Buckets, tried: &Tried) -> String {
    let gates = &tried.fitted.gates;
    if gates.through != Through::Refused {
        return gates.words.clone();
    }
    let lost = if gates.out_of_reach.len() == all.scenario.job.zones.len() {
        "Nothing can be reached".to_owned()
    } else {
        let names: Vec<String> = gates.out_of_reach.iter().map(|name| format!("\"{name}\"")).collect();
        format!("{} cannot be reached", names.join(", "))
    };
    format!("{} {lost} with it, so no runs were made.", gates.words)
}

pub(super) fn runs(all: &Buckets, job: &Job, study: &Study) -> Runs {
    let waits = who_waits_in(job, study);
    Runs {
        loads: study.sorted(|o| f64::from(o.loads)).percentile(0.5).into(),
        finish: done_rows(study, job.shift.start_s, &SHARES, Calendar::of(&all.scenario, all.units)),
        saved: saved(&all.saved_s(study), Unit::Time),
        held_up_short: waits.short,
        held_up: waits.title,
    }
}

pub(super) fn today(all: &Buckets) -> TodayFindings {
    let job = &all.scenario.job;
    let heaped = job.loaders.get(all.wanted.loader).map_or(0.0, |loader| loader.heaped_m3);
    let heaped = in_bucket(heaped, all.units);
    let what = match all.wanted.today.and_then(|row| all.list.buckets.get(row)) {
        Some(bucket) => format!("\"{}\" of the list, {heaped} heaped", bucket.name),
        None => format!("the bucket in {}, {heaped} heaped", all.scenario.file),
    };
    TodayFindings {
        what,
        runs: runs(all, job, &all.today),
        pace: who_waits_with(job, &all.today, &all.relief).sentence,
    }
}

pub(super) fn barrow(all: &Buckets) -> Option<BarrowFindings> {
    let count = all.wanted.barrows;
    let name = if count == 1 { "a hand barrow".to_owned() } else { format!("{count} hand barrows") };
    let loader = all.loader();
    let told = match all.barrow.as_ref()? {
        Err(why) => {
            let words = format!("The job cannot be done with {name} in place of {loader}: {why}.");
            return Some(BarrowFindings { name, runs: None, cost: None, words });
        }
        Ok(told) => told,
    };
    let people = if count == 1 { "one person".to_owned() } else { format!("{count} people") };
    let cost = is_priced(&all.scenario.job).then(|| {
        let costs = paired(&all.today.outcomes, &told.study.outcomes, |o| o.cost);
        saved(&costs, Unit::Money(&all.scenario.currency))
    });
    let costs = cost.as_ref().map_or_else(String::new, |cost| {
        format!(" By its own prices the job costs {} on average.", cost.said.mean)
    });
    let words = format!("In place of {loader}, with {people} and no machine; nothing is bought.{costs}");
    Some(BarrowFindings { name, runs: Some(runs(all, &told.scenario.job, &told.study)), cost, words })
}
