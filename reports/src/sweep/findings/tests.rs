//! What a sweep says of hand-made runs: every saving is plain arithmetic. All numbers are made up.

use super::*;
use crate::example;
use crate::sweep::{Deadline, Point, Run};
use scenarios::Vary;
use scenarios::units::System;
use sim::{Accounts, Duration, Moment};

/// A sweep over these things in which run `r` of `runs` takes `minutes(point, r)` and costs `cost(point)`; a job without
/// prices where that is `None`.
pub(crate) fn made(
    things: &[&str],
    runs: u32,
    minutes: impl Fn(usize, u32) -> f64,
    cost: Option<&dyn Fn(usize) -> f64>,
) -> Sweep {
    let things: Vec<Vary> = things.iter().map(|text| text.parse().expect("what is varied")).collect();
    let mut base = example::scenario();
    if cost.is_none() {
        unprice(&mut base.job);
    }
    let point = |(at, places): (usize, Vec<usize>)| {
        let run = |r: u32| {
            let time = Duration::try_from_secs_f64(minutes(at, r) * 60.0).expect("a time that fits");
            let finish = Moment { working: time, clock: time };
            Run {
                finish,
                missing_m3: None,
                loads: 70,
                cost: cost.map_or(0.0, |cost| cost(at)),
                labour_h: 5.0,
            }
        };
        let mut scenario = base.clone();
        // Apart from the base, so that no point is the job as it stands by accident.
        scenario.job.zones[0].need_m3 += 1.0 + at as f64;
        Point { places, scenario, runs: (0..runs).map(run).collect(), accounts: Accounts::empty(1, 1, 1) }
    };
    let points = places(&things).into_iter().enumerate().map(point).collect();
    let provenance = example::forecast().provenance;
    Sweep { base, things, points, deadline: None, units: System::Us, provenance }
}

fn places(things: &[Vary]) -> Vec<Vec<usize>> {
    match things {
        [one] => (0..one.values.len()).map(|i| vec![i]).collect(),
        [one, other] => (0..one.values.len() * other.values.len())
            .map(|i| vec![i / other.values.len(), i % other.values.len()])
            .collect(),
        _ => Vec::new(),
    }
}

fn unprice(job: &mut sim::Job) {
    job.prices = sim::Prices { fuel_per_l: 0.0, material: 0.0 };
    job.loaders.iter_mut().for_each(|l| (l.machine_cost_per_h, l.operator_cost_per_h) = (0.0, 0.0));
    job.rakers.iter_mut().for_each(|r| r.cost_per_h = 0.0);
}

/// Takes so long at every point, one minute more or less from run to run, the same everywhere.
fn line(what: &str, minutes: &[f64]) -> Sweep {
    made(&[what], 40, |point, run| minutes[point] + f64::from(run % 3) - 1.0, None)
}

#[test]
fn the_knee_is_where_the_last_step_worth_taking_leads() {
    let findings = sweep(&line("rakers 1..5", &[200.0, 162.0, 150.0, 146.0, 146.0]));
    assert_eq!(findings.knee.at, Some(2));
    assert!(!findings.knee.open);
    assert_eq!(findings.knee.steps, "A second raker saves 38 min, a third 12 min, a fourth 4 min.");
    assert_eq!(findings.knee.sentence, "The knee is at 3 rakers: beyond it at most 4 min more is saved.");
    assert_eq!(findings.letters(2), "K");
}

#[test]
fn little_is_a_tenth_of_the_whole_range_and_three_per_cent_of_the_job() {
    let at = |minutes: [f64; 3]| sweep(&line("rakers 1..3", &minutes)).knee.at;
    // Of 150 min 3 % are 4.5 min.
    assert_eq!([at([200.0, 150.0, 145.6]), at([200.0, 150.0, 145.4])], [Some(1), Some(2)]);
    // A tenth of 11.1 min and of 11.2 min.
    assert_eq!([at([200.0, 190.0, 188.9]), at([200.0, 190.0, 188.8])], [Some(1), Some(2)]);
}

#[test]
fn many_small_steps_that_save_much_together_do_not_end_at_the_first_small_one() {
    let minutes = [420.0, 380.0, 350.0, 330.0, 318.0, 309.0, 302.0, 297.0, 293.0, 290.0];
    let knee = sweep(&line("bucket 9..18 ft3 by 1", &minutes)).knee;
    assert_eq!((knee.at, knee.open), (Some(7), false));
    assert_eq!(knee.title, "Beyond a bucket of 16 ft3 at most 7 min more is saved");
}

#[test]
fn beyond_a_knee_there_is_never_more_to_gain_than_three_per_cent_of_the_job() {
    for fall in [0.3, 0.6, 0.8, 0.9, 0.97] {
        for least in [20.0, 200.0, 2_000.0] {
            let minutes: Vec<f64> = (0..14).map(|step| least + 200.0 * f64::powi(fall, step)).collect();
            let knee = sweep(&line("bucket 9..22 ft3 by 1", &minutes)).knee;
            let Some(at) = knee.at else {
                assert!(minutes[0] - minutes[13] < 0.01 * minutes[0], "{minutes:?}: {knee:?}");
                continue;
            };
            assert!(minutes[at] - minutes[13] <= 0.03 * minutes[at] + 0.1, "{minutes:?}: {knee:?}");
            assert!(knee.open || at < 13);
        }
    }
}

#[test]
fn seconds_saved_for_much_money_are_no_knee() {
    let minutes = |point: usize, run: u32| 121.0 - 0.7 * point as f64 + f64::from(run % 3);
    let costs = [500.0, 561.0];
    let knee = sweep(&made(&["rakers 1..2"], 40, minutes, Some(&|point| costs[point]))).knee;
    assert_eq!(knee.at, None);
    assert_eq!(
        knee.sentence,
        "Nothing in this range saves time that is worth its price: there is no knee. With 2 rakers it takes 40 s less and \
         costs $61 more: each hour saved would cost more than an hour of the whole crew."
    );
    // Without prices it is too little of the job to have a knee.
    assert_eq!(sweep(&made(&["rakers 1..2"], 40, minutes, None)).knee.at, None);
}

#[test]
fn time_that_costs_more_than_the_crew_does_not_move_the_knee() {
    let minutes = [200.0, 150.0, 130.0];
    let knee = |third: f64| {
        let costs = [500.0, 480.0, 480.0 + third];
        let made = made(&["rakers 1..3"], 40, |point, _| minutes[point], Some(&|point| costs[point]));
        let job = &made.points[1].scenario.job;
        let crew =
            job.loaders[0].machine_cost_per_h + job.loaders[0].operator_cost_per_h + job.rakers[0].cost_per_h;
        (sweep(&made).knee, crew)
    };
    // A third of an hour is worth a third of what the crew costs in an hour.
    let (cheap, crew) = knee(0.0);
    assert_eq!((cheap.at, cheap.open), (Some(2), true));
    assert_eq!(knee(crew / 3.0 - 0.01).0.at, Some(2));
    let (dear, _) = knee(crew / 3.0 + 1.0);
    assert_eq!((dear.at, dear.open), (Some(1), false));
    assert!(dear.sentence.contains("With 3 rakers it takes 20 min less and costs $"), "{}", dear.sentence);
}

#[test]
fn a_small_step_before_a_large_one_does_not_end_the_search() {
    let knee = sweep(&line("rakers 1..4", &[200.0, 199.0, 150.0, 149.0])).knee;
    assert_eq!((knee.at, knee.open), (Some(2), false));
}

#[test]
fn where_the_last_step_pays_the_knee_may_lie_beyond() {
    let findings = sweep(&line("rakers 1..3", &[200.0, 150.0, 110.0]));
    assert_eq!((findings.knee.at, findings.knee.open), (Some(2), true));
    assert!(findings.knee.sentence.contains("there or beyond this range"), "{}", findings.knee.sentence);
    assert_eq!(findings.letters(2), "", "what is not found is not marked");
}

#[test]
fn where_nothing_surely_saves_time_there_is_no_knee() {
    // A minute saved in every second run and lost in the others.
    let swing =
        |point: usize, run: u32| 200.0 + if run.is_multiple_of(2) { point as f64 } else { -(point as f64) };
    let findings = sweep(&made(&["rakers 1..3"], 40, swing, None));
    assert_eq!(findings.knee.at, None);
    assert!(findings.knee.sentence.contains("there is no knee"), "{}", findings.knee.sentence);
    assert_eq!(findings.knee.steps, "A second raker saves nothing to speak of, a third nothing to speak of.");
}

#[test]
fn a_range_that_gets_worse_upwards_is_read_from_its_upper_end() {
    let findings = sweep(&line("haul 10, 20, 40 yd", &[100.0, 104.0, 140.0]));
    // 4 min are a tenth of the 40 min of the range, but more than 3 % of the job.
    assert_eq!((findings.knee.at, findings.knee.open), (Some(0), true));
    assert!(
        findings.knee.steps.starts_with("A mean haul of 20 yd instead of 40 yd saves 36 min"),
        "{}",
        findings.knee.steps
    );
    assert!(findings.later.is_empty());
}

#[test]
fn too_many_of_a_good_thing_do_not_turn_the_range_round() {
    let findings = sweep(&line("loaders 1..5", &[200.0, 150.0, 140.0, 180.0, 230.0]));
    assert_eq!((findings.knee.at, findings.knee.open), (Some(2), false));
    assert_eq!(
        findings.later,
        [
            "Not every step helps: a fifth loader makes the job 50 min longer.",
            "Not every step helps: a fourth loader makes the job 40 min longer."
        ]
    );
}

#[test]
fn a_key_of_the_file_is_read_towards_its_quicker_end() {
    let findings = sweep(&line("loader.x.loading = 20, 30, 40 s", &[100.0, 102.0, 140.0]));
    assert_eq!((findings.knee.at, findings.knee.open), (Some(1), false));
    assert!(
        findings.knee.steps.starts_with("\"loader.x.loading = 30 s\" instead of 40 s saves 38 min"),
        "{}",
        findings.knee.steps
    );
}

#[test]
fn a_wide_step_is_judged_by_what_it_saves_and_not_by_its_width() {
    let knee = sweep(&line("bucket 10, 11, 21 ft3", &[200.0, 190.0, 172.0])).knee;
    assert_eq!((knee.at, knee.open), (Some(2), true));
}

#[test]
fn more_that_makes_it_later_is_said() {
    let findings = sweep(&line("loaders 1..3", &[200.0, 150.0, 154.0]));
    assert_eq!(findings.later, ["Not every step helps: a third loader makes the job 4 min longer."]);
    assert_eq!(findings.knee.at, Some(1));
}

#[test]
fn savings_against_the_point_before_are_means_of_paired_differences() {
    // Saves 10 or 20 min alternately: 15 on average, known from 40 runs to t(39; 0.975) sd / sqrt(40) with sd 5.0637.
    let minutes =
        |point: usize, run: u32| 200.0 - if point == 1 { 10.0 + 10.0 * f64::from(run % 2) } else { 0.0 };
    let findings = sweep(&made(&["rakers 1..2"], 40, minutes, None));
    assert_eq!(findings.points[0].saved, [None]);
    let saved = findings.points[1].saved[0].clone().unwrap();
    assert_eq!((saved.against, saved.words.as_str()), (0, "15 min"));
    assert!((saved.min - 15.0).abs() < 1e-9);
    let half = 2.0227 * 5.0637 / 40.0_f64.sqrt();
    assert!((saved.min_high.unwrap() - 15.0 - half).abs() < 1e-3, "{saved:?}");
    assert_eq!(saved.cost, None, "no prices, no cost saved");
}

#[test]
fn money_turns_at_the_cheapest_point_and_the_others_cost_so_much_more() {
    let costs = [500.0, 470.0, 520.0];
    let findings = sweep(&made(&["rakers 1..3"], 20, |_, _| 100.0, Some(&|point| costs[point])));
    let money = findings.money.unwrap();
    assert_eq!((money.at, money.as_cheap.as_slice()), (1, &[][..]));
    assert_eq!(
        money.sentence,
        "Cheapest: 2 rakers, at $470. On average, with 1 raker it costs $30 more, with 3 rakers $50 more."
    );
}

#[test]
fn points_that_cost_the_same_are_not_told_apart() {
    let findings = sweep(&made(&["rakers 1..2"], 20, |_, _| 100.0, Some(&|_| 500.0)));
    let money = findings.money.unwrap();
    assert_eq!(money.as_cheap, [1]);
    assert_eq!(money.sentence, "Cheapest: 1 raker, at $500. These runs cannot tell 2 rakers from it.");
}

#[test]
fn a_job_without_prices_has_no_cheapest_point() {
    let findings = sweep(&line("rakers 1..2", &[100.0, 90.0]));
    assert_eq!((findings.money, findings.unpriced), (None, Some("the job names no prices")));
    assert_eq!(findings.points[0].cost, None);
}

/// With `kept[point]` of a thousand runs done in time.
fn by(kept: &[u32], cost: Option<&dyn Fn(usize) -> f64>) -> SweepFindings {
    let minutes = |point: usize, run: u32| if run < kept[point] { 100.0 } else { 140.0 };
    let mut all = made(&["rakers 1..4"], 1_000, minutes, cost);
    // Work begins at 8:00 am: 120 min end at ten.
    all.deadline = Some(Deadline { by_s: 36_000.0, chance: 0.8 });
    sweep(&all)
}

#[test]
fn the_cheapest_point_that_is_surely_done_in_time_is_named() {
    let costs = [400.0, 500.0, 650.0, 600.0];
    let by = by(&[300, 790, 950, 990], Some(&|point| costs[point])).by.unwrap();
    assert_eq!((by.at, by.keeps), (Some(3), Keeps::Surely));
    assert_eq!(by.perhaps, [1]);
    assert_eq!(
        by.sentence,
        "4 rakers, surely: the cheapest that is done by 10:00 am 8 days in 10; its chance is 99 % (98 % to 99.5 %), for \
         $600 in the middle. Perhaps enough and cheaper: 2 rakers, 79 % (76 % to 81 %); more runs would tell."
    );
}

#[test]
fn without_prices_the_smallest_crew_is_taken() {
    let findings = by(&[300, 500, 950, 990], None);
    let by = findings.by.clone().unwrap();
    assert_eq!((by.at, by.keeps), (Some(2), Keeps::Surely));
    assert!(by.sentence.starts_with("3 rakers, surely: the least that is done by"), "{}", by.sentence);
    assert_eq!(findings.verdict, by.sentence);
    assert_eq!(findings.letters(2), "KT");
}

#[test]
fn a_chance_that_these_runs_cannot_settle_is_a_perhaps() {
    let by = by(&[300, 500, 790, 810], None).by.unwrap();
    assert_eq!((by.at, by.keeps, by.nearest), (Some(2), Keeps::Perhaps, None));
    assert_eq!(by.perhaps, [3]);
    assert!(by.sentence.starts_with("Perhaps 3 rakers: ") && by.sentence.contains("More runs would tell"));
}

#[test]
fn where_nothing_is_done_in_time_the_nearest_is_named_with_what_it_misses() {
    let by = by(&[100, 200, 400, 300], None).by.unwrap();
    assert_eq!((by.at, by.keeps, by.nearest), (None, Keeps::Not, Some(2)));
    assert_eq!(
        by.sentence,
        "Nothing here is done by 10:00 am 8 days in 10. Nearest is 3 rakers: its chance is 40 % (37 % to 43 %), and 8 \
         days in 10 it is done by 10:20 am, 20 min too late."
    );
}

/// Two to three rakers (rows), rooms of one to three (columns).
fn grid(minutes: [f64; 6]) -> SweepFindings {
    sweep(&made(&["rakers 2..3", "room 1..3"], 30, |point, run| minutes[point] + f64::from(run % 3), None))
}

#[test]
fn in_a_grid_one_goes_along_the_thing_that_saves_more() {
    let findings = grid([200.0, 150.0, 148.0, 180.0, 120.0, 119.0]);
    // Room first (50 min), then a raker (30); another room saves a minute.
    assert_eq!((findings.knee.at, findings.knee.open), (Some(4), false));
    assert_eq!(
        findings.knee.sentence,
        "The knee is at 3 rakers and room for 2 heaps: beyond it at most 1 min more is saved."
    );
    let saved = &findings.points[4].saved;
    let minutes = |thing: usize| (saved[thing].as_ref().unwrap().against, saved[thing].as_ref().unwrap().min);
    assert_eq!((minutes(0), minutes(1)), ((1, 30.0), (3, 60.0)));
}

#[test]
fn where_only_both_together_help_both_are_taken() {
    let findings = grid([200.0, 200.0, 200.0, 200.0, 120.0, 119.0]);
    assert_eq!((findings.knee.at, findings.knee.open), (Some(4), false));
}

#[test]
fn small_steps_of_one_thing_are_not_held_against_large_ones_of_the_other() {
    // A raker saves 100 min, a yard less of haul 6 min, down to 30 yd; below that nothing.
    let haul = [100.0, 100.0, 106.0, 112.0, 118.0];
    let minutes =
        |point: usize, run: u32| haul[point % 5] + if point < 5 { 100.0 } else { 0.0 } + f64::from(run % 3);
    let findings = sweep(&made(&["rakers 1..2", "haul 29..33 yd by 1"], 30, minutes, None));
    assert_eq!((findings.knee.at, findings.knee.open), (Some(6), false));
    assert_eq!(findings.points[6].words, "2 rakers and a mean haul of 30 yd");
}

#[test]
fn the_job_as_it_stands_is_marked() {
    let mut all = line("rakers 1..2", &[100.0, 90.0]);
    all.points[0].scenario.job = all.base.job.clone();
    let findings = sweep(&all);
    assert_eq!(
        (findings.letters(0), findings.meaning(Mark::AsItStands)),
        ("A".into(), Some("as it stands".into()))
    );
}
