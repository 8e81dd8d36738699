//! Done by when: the range, the line to plan on, the chance of a given clock time.

use super::{Calendar, Estimate, OrderFindings, days_in, label, order, percent, share_of_runs};
use crate::forecast::run::Forecast;
use serde::Serialize;
use sim::{Moment, Outcome, Sorted, Study};

/// The share that a person is told to plan on.
pub const PLAN_SHARE: f64 = 0.8;

/// Done by when.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DoneBy {
    /// The line to plan on; where the material is not enough, first what to order and then when the crew would stop.
    pub plan_on: String,
    /// Whether the material is enough: where it is not, the times below are those at which the crew would stop.
    pub order: OrderFindings,
    /// Whether every run takes the same time.
    pub certain: bool,
    /// One sentence: the range from a good day to one as bad as that is good (P10 to P90).
    pub range: String,
    /// How to read the intervals.
    pub intervals: String,
    /// One for each percentile asked for, rising.
    pub rows: Vec<DoneRow>,
    /// The row planned on (P80), whether or not it is among the rows.
    pub plan: DoneRow,
    /// The chance of the clock time asked for.
    pub by: Option<BeDone>,
}

/// One percentile of the time the job takes, from the start of the first day.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DoneRow {
    /// Which one, as a share \[0 to 1\].
    pub share: f64,
    /// `P80`.
    pub label: String,
    /// `8 days in 10`.
    pub odds: String,
    /// Working time to the finish, in words.
    pub duration: String,
    /// Clock time of the finish, in words.
    pub clock: String,
    /// Simulation error: how closely these runs know the working time, with 95 % confidence, in words: `± 3 min`.
    pub known: String,
    /// Working time to the finish, clean-up included, nights left out \[s\].
    pub finish_working_s: Estimate,
    /// Clock time of the finish \[s after midnight of the first day\].
    pub finish_clock_s: Estimate,
    /// Working time to the last heap raked out \[s\].
    pub completion_working_s: Estimate,
    /// Clock time of the last heap raked out \[s after midnight of the first day\].
    pub completion_clock_s: Estimate,
}

/// The chance of being done, clean-up included, by a clock time.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BeDone {
    /// The clock time asked for, in words.
    pub clock: String,
    /// The same \[s after midnight of the first day\].
    pub clock_s: f64,
    /// The chance \[0 to 1\].
    pub chance: Estimate,
    /// The answer in a sentence.
    pub sentence: String,
    /// Simulation error of the chance, in words.
    pub known: String,
}

/// The four samples a row is read from.
struct Samples {
    finish_working: Sorted,
    finish_clock: Sorted,
    completion_working: Sorted,
    completion_clock: Sorted,
    start_s: f64,
}

impl Samples {
    fn new(study: &Study, start_s: f64) -> Self {
        let of = |moment: fn(&Outcome) -> Moment, part: fn(Moment) -> sim::Duration| {
            study.sorted(|o| part(moment(o)).as_secs_f64())
        };
        Self {
            finish_working: of(|o| o.finish, |m| m.working),
            finish_clock: of(|o| o.finish, |m| m.clock),
            completion_working: of(|o| o.completion, |m| m.working),
            completion_clock: of(|o| o.completion, |m| m.clock),
            start_s,
        }
    }

    fn row(&self, share: f64, calendar: Calendar) -> DoneRow {
        let at = |sample: &Sorted| Estimate::from(sample.percentile(share));
        let (working, by) = (at(&self.finish_working), at(&self.finish_clock).plus(self.start_s));
        let done = calendar.done(working.value, by.value);
        DoneRow {
            share,
            label: label(share),
            odds: days_in(share),
            duration: done.duration,
            clock: done.clock,
            known: working.known(),
            finish_working_s: working,
            finish_clock_s: by,
            completion_working_s: at(&self.completion_working),
            completion_clock_s: at(&self.completion_clock).plus(self.start_s),
        }
    }
}

/// These percentiles of the runs of a job that starts then \[s after midnight\].
pub fn done_rows(study: &Study, start_s: f64, shares: &[f64], calendar: Calendar) -> Vec<DoneRow> {
    let samples = Samples::new(study, start_s);
    shares.iter().map(|share| samples.row(*share, calendar)).collect()
}

/// Done by when.
pub fn done_by(forecast: &Forecast) -> DoneBy {
    let samples = Samples::new(&forecast.study, forecast.scenario.job.shift.start_s);
    let calendar = Calendar::of(&forecast.scenario, forecast.units);
    let rows: Vec<DoneRow> = forecast.percentiles.iter().map(|p| samples.row(*p, calendar)).collect();
    let plan = samples.row(PLAN_SHARE, calendar);
    let order = order(&forecast.study, &forecast.scenario, forecast.units);
    let by = forecast.by_s.map(|by| be_done(forecast, &order, by));
    let certain = samples.finish_working.values().first() == samples.finish_working.values().last();
    DoneBy {
        plan_on: plan_on(&plan, certain, &order),
        certain,
        range: range(&rows, certain, &order),
        intervals: intervals(forecast.study.runs()),
        order,
        rows,
        plan,
        by,
    }
}

impl DoneBy {
    /// The bad day that the range ends with.
    pub fn bad_day(&self) -> Option<&DoneRow> {
        bad_day(&self.rows)
    }
}

fn plan_on(plan: &DoneRow, certain: bool, order: &OrderFindings) -> String {
    let (duration, clock) = (&plan.duration, &plan.clock);
    let odds = days_in(PLAN_SHARE);
    match (order.first(), certain) {
        (Some(first), true) => format!("{first} The crew would stop after {duration}, at {clock}."),
        (Some(first), false) => format!("{first} The crew would stop by {clock}, {odds} (after {duration})."),
        (None, true) => format!("It takes {duration}: done by {clock}. Nothing here is left to chance."),
        (None, false) => format!("Plan on {duration}: done by {clock}, {odds}."),
    }
}

fn range(rows: &[DoneRow], certain: bool, order: &OrderFindings) -> String {
    let until = if order.enough { "" } else { ", then the crew stops" };
    match (rows.first(), bad_day(rows)) {
        (Some(only), _) if certain => format!("Every run takes {}{until}.", only.duration),
        (Some(first), Some(last)) if rows.len() > 1 => {
            format!(
                "From {} on a good day ({}) to {} on a bad one ({}){until}.",
                first.duration, first.label, last.duration, last.label
            )
        }
        (Some(only), _) => format!("{} for {}{until}.", only.duration, only.odds),
        _ => String::new(),
    }
}

/// The bad day that is as rare as the good one the rows begin with, where it is among them; else the worst.
fn bad_day(rows: &[DoneRow]) -> Option<&DoneRow> {
    let good = rows.first()?;
    rows.iter().skip(1).find(|row| (row.share + good.share - 1.0).abs() < 1e-9).or(rows.last())
}

fn intervals(runs: u32) -> String {
    format!(
        "Percentiles (type 7) of {} runs. Simulation error is how closely so many runs know them (95 % confidence); it says \
         nothing about a wrong figure in the job.",
        scenarios::units::figure(f64::from(runs))
    )
}

fn be_done(forecast: &Forecast, order: &OrderFindings, by_s: f64) -> BeDone {
    let since_start_s = by_s - forecast.scenario.job.shift.start_s;
    let by = sim::Duration::try_from_secs_f64(since_start_s).unwrap_or(sim::Duration::MAX);
    let share = forecast.study.share_done_by(by);
    let clock = Calendar::of(&forecast.scenario, forecast.units).clock(by_s);
    let mut sentence = match share.value {
        s if s <= 0.0 => format!("No run is done by {clock}."),
        s if s >= 1.0 => format!("Every run is done by {clock}."),
        s => format!("Chance of being done by {clock}, clean-up included: {}.", percent(s)),
    };
    if !order.enough {
        let short = share_of_runs(order.chance_short.value);
        sentence =
            format!("{} material runs out in {short}.", sentence.trim_end_matches('.').to_owned() + ":");
    }
    BeDone {
        clock,
        clock_s: by_s,
        chance: share.into(),
        known: format!("simulation error: {} to {}", percent(share.low), percent(share.high)),
        sentence,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn the_plan_is_the_p80_even_where_it_is_not_among_the_rows() {
        let mut forecast = example::forecast();
        forecast.percentiles = vec![0.5];
        let done = done_by(&forecast);
        assert_eq!(done.plan_on, "Plan on 2 h 40 min: done by 10:40 am, 8 days in 10.");
        assert_eq!(done.range, "2 h 25 min for 1 day in 2.");
    }

    #[test]
    fn rows_carry_both_clocks_and_their_intervals() {
        // A hundred runs from 7,200 s in steps of 30 s: type 7 has the median half-way between the 50th and the 51st.
        let row = &done_by(&example::forecast()).rows[1];
        let median = 7_200.0 + 30.0 * 49.5;
        assert_eq!(row.finish_working_s.value, median);
        assert_eq!(row.finish_clock_s.value, 28_800.0 + median);
        assert_eq!((row.finish_working_s.low, row.finish_working_s.high), (Some(8_370.0), Some(9_000.0)));
        assert_eq!(row.known, "± 5 min");
    }

    #[test]
    fn the_chance_of_a_clock_time_counts_the_runs_that_make_it() {
        let by = done_by(&example::forecast()).by.unwrap();
        assert_eq!(by.chance.value, 0.81);
        assert_eq!(by.sentence, "Chance of being done by 10:40 am, clean-up included: 81 %.");
        assert_eq!(by.known, "simulation error: 72 % to 88 %");
    }

    #[test]
    fn the_bad_day_of_the_range_is_as_rare_as_the_good_one_where_it_is_asked_for() {
        let told = |shares: &[f64]| {
            let mut forecast = example::forecast();
            forecast.percentiles = shares.to_vec();
            let range = done_by(&forecast).range;
            range.split(['(', ')']).skip(1).step_by(2).collect::<Vec<_>>().join(" ")
        };
        assert_eq!(told(&[0.1, 0.5, 0.8, 0.9, 0.95]), "P10 P90");
        assert_eq!(told(&[0.1, 0.5, 0.8]), "P10 P80");
    }

    #[test]
    fn what_ends_short_is_never_done_and_the_order_comes_before_any_time() {
        let mut forecast = example::forecast();
        for outcome in &mut forecast.study.outcomes {
            (outcome.short_m3, outcome.ends_short) = (2.0, true);
        }
        let done = done_by(&forecast);
        let order = done.plan_on.find("Order 1 more truckload").unwrap();
        assert!(order < done.plan_on.find("would stop by 10:40 am").unwrap(), "{}", done.plan_on);
        assert!(!done.plan_on.contains("done by"), "{}", done.plan_on);
        let by = done.by.unwrap();
        assert_eq!(by.chance.value, 0.0);
        assert_eq!(by.sentence, "No run is done by 10:40 am: material runs out in every run.");
    }

    #[test]
    fn where_nothing_is_left_to_chance_no_range_is_made_up() {
        let mut forecast = example::forecast();
        forecast.study.outcomes.truncate(1);
        let done = done_by(&forecast);
        assert_eq!(done.plan_on, "It takes 2 h: done by 10:00 am. Nothing here is left to chance.");
        assert_eq!(done.range, "Every run takes 2 h.");
    }
}
