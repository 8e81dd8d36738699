//! What a comparison says, with runs made by hand.

use super::*;
use crate::compare::Judged;
use crate::compare::fixtures::{alternately, choice, comparison as of, three, usual};

fn findings(of: &Comparison) -> ComparisonFindings {
    comparison(of)
}

#[test]
fn the_verdict_names_the_best_what_it_gains_and_how_sure_that_is() {
    let findings = findings(&three());
    // 20 and 40 minutes alternately: mean 30, standard deviation 10.05, t(99) 1.984: 30 ± 2.
    assert_eq!(
        findings.verdict.take,
        "Take \"a second raker\": on average it finishes 28 to 32 min sooner than \"as it stands\", and it is the faster in \
         every run."
    );
    assert_eq!(findings.verdict.sure, "No other is faster on average, 95 % sure.");
    assert_eq!(
        findings.verdict.besides,
        [
            "On average it costs $21 more than \"as it stands\"; \"a smaller bucket\" is the cheapest: it costs $31 less than that."
        ]
    );
    assert!(findings.not_alike.is_empty(), "{:?}", findings.not_alike);
}

#[test]
fn what_is_saved_is_told_run_by_run() {
    let differences = findings(&three()).differences;
    let raker = &differences[0];
    let time = &raker.time;
    assert_eq!((raker.letter.as_str(), raker.runs), ("B", 100));
    // Fifty times 20 and fifty times 40 minutes: type 7 has the median half-way between.
    assert_eq!((time.p10.value, time.median.value, time.p90.value), (1_200.0, 1_800.0, 2_400.0));
    assert_eq!((time.mean.value, time.smaller.value, time.same.value), (1_800.0, 1.0, 0.0));
    assert_eq!(
        [&time.said.mean, &time.said.median, &time.said.eight_in_ten, &time.said.smaller],
        ["30 min ± 2 min", "30 min", "20 to 40 min", "100 %"]
    );
    let slower = &differences[1].time;
    assert_eq!((slower.mean.value, slower.smaller.value), (-600.0, 0.0));
    assert_eq!([&slower.said.mean, &slower.said.eight_in_ten], ["10 min lost", "10 min lost"]);
    let money = differences[1].money.as_ref().unwrap();
    assert_eq!((money.mean.value, money.said.mean.as_str()), (10.0, "$10 less"));
}

#[test]
fn where_the_first_is_the_best_it_is_said_to_stay_with_it() {
    let mut back = three();
    back.choices.swap(0, 1);
    back.best = 0;
    assert_eq!(
        findings(&back).verdict.take,
        "Stay with \"a second raker\": on average it finishes 28 to 32 min sooner than the next best, \"as it stands\", \
         and it is the faster in every run."
    );
}

#[test]
fn a_gain_within_what_does_not_matter_is_not_praised() {
    let close = |gain: fn(u32) -> f64| {
        let first = choice("as it stands", usual, |_| 1_000.0);
        let other = choice("new tines", move |k| usual(k) - gain(k), |_| 1_000.0);
        findings(&of(vec![first, other], 1, 200.0)).verdict
    };
    let little = close(|k| alternately(k, 1.0, 3.0));
    assert!(
        little.take.starts_with("\"new tines\" is ahead, but it hardly matters: on average it finishes "),
        "{}",
        little.take
    );
    assert_eq!(little.sure, "No other is faster by more than 5 min on average, 95 % sure.");
    assert_eq!(little.as_good, ["A"]);
    let none = close(|k| alternately(k, -20.0, 20.1));
    assert!(none.take.starts_with("It hardly matters: \"new tines\" is hardly ahead"), "{}", none.take);
    assert!(none.take.ends_with("is the faster in 50 % of the runs."), "{}", none.take);
}

#[test]
fn a_gain_that_may_be_none_or_much_is_told_with_both_ends() {
    let first = choice("as it stands", usual, |_| 1_000.0);
    let other = choice("new tines", |k| usual(k) - alternately(k, -55.0, 60.0), |_| 1_000.0);
    let verdict = findings(&of(vec![first, other], 1, 200.0)).verdict;
    // 2.5 minutes with a standard deviation of 57.8: ± 11.5.
    assert!(
        verdict.take.starts_with(
            "\"new tines\" is ahead as far as can be told: on average it finishes -9 to 14 min sooner than \"as it stands\""
        ),
        "{}",
        verdict.take
    );
}

#[test]
fn a_promise_that_is_not_reached_is_said_with_what_would_help() {
    let mut open = three();
    (open.held, open.within) = (false, 420.0);
    let verdict = findings(&open).verdict;
    assert!(
        verdict.take.starts_with("So far \"a second raker\" leads: on average it finishes "),
        "{}",
        verdict.take
    );
    let sure = verdict.sure;
    assert!(
        sure.starts_with("This is not settled: after 100 runs another could still be faster by 7 min"),
        "{sure}"
    );
    assert!(
        sure.contains("5 min was wanted") && sure.contains("--most") && sure.contains("--within"),
        "{sure}"
    );
}

#[test]
fn where_cost_is_judged_time_stands_beside_it() {
    let mut cost = three();
    (cost.judged, cost.best, cost.promise.indifference) = (Judged::Cost, 2, 5.0);
    let verdict = findings(&cost).verdict;
    assert_eq!(
        verdict.take,
        "Take \"a smaller bucket\": on average it costs $10 less than \"as it stands\", and it is the cheaper in every \
         run."
    );
    assert_eq!(
        verdict.besides,
        [
            "On average it takes 10 min longer than \"as it stands\"; \"a second raker\" is the fastest: it takes 38 to 42 min \
          less than that."
        ]
    );
}

#[test]
fn the_best_in_both_is_said_to_be() {
    let first = choice("as it stands", usual, |_| 1_000.0);
    let other = choice("a bigger bucket", |k| usual(k) - 30.0, |_| 990.0);
    let verdict = findings(&of(vec![first, other], 1, 0.0)).verdict;
    assert_eq!(verdict.besides, ["On average it costs $10 less than \"as it stands\"; it is the cheapest."]);
}

#[test]
fn where_the_first_is_the_cheapest_that_is_said_once() {
    let mut two = three();
    two.choices.truncate(2);
    assert_eq!(
        findings(&two).verdict.besides,
        ["On average it costs $21 more than \"as it stands\", which is the cheapest."]
    );
}

#[test]
fn who_leaves_the_ground_short_is_told_to_have_done_less() {
    let mut short = three();
    for outcome in short.choices[1].study.outcomes.iter_mut().take(30) {
        outcome.short_m3 = 4.0;
    }
    short.units = scenarios::units::System::Metric;
    let not_alike = findings(&short).not_alike;
    assert_eq!(
        not_alike,
        [
            "\"a second raker\" leaves the ground short in 30 % of the runs, by 1.2 m3 on average over all: part of the time it \
          saves is work not done."
        ]
    );
}

#[test]
fn jobs_of_other_volumes_prices_or_currencies_are_told_apart() {
    let mut unlike = three();
    unlike.choices[1].scenario.job.zones[0].need_m3 = 20.0;
    unlike.choices[1].scenario.currency = "EUR".into();
    let job = &mut unlike.choices[2].scenario.job;
    job.prices = sim::Prices { fuel_per_l: 0.0, material: 0.0 };
    (job.loaders[0].machine_cost_per_h, job.loaders[0].operator_cost_per_h) = (0.0, 0.0);
    job.rakers[0].cost_per_h = 0.0;
    let findings = findings(&unlike);
    let all = findings.not_alike.join("\n");
    assert!(all.contains("not place the same volume (A 31.4 yd3, B 26.2 yd3, C 31.4 yd3)"), "{all}");
    assert!(all.contains("The cost of \"a smaller bucket\" is not known"), "{all}");
    assert!(all.contains("Costs are in $ and in EUR"), "{all}");
    assert!(findings.differences.iter().all(|difference| difference.money.is_none()));
    assert_eq!(findings.choices[2].cost, None);
    assert!(findings.verdict.besides.is_empty(), "{:?}", findings.verdict.besides);
}

#[test]
fn jobs_that_are_the_same_are_said_to_be() {
    let mut same = three();
    same.choices[1] = crate::compare::Choice { name: "copy".into(), ..same.choices[0].clone() };
    assert_eq!(findings(&same).not_alike, ["\"copy\" is the very same job as \"as it stands\"."]);
    same.choices.truncate(2);
    same.best = 0;
    assert_eq!(
        findings(&same).verdict.take,
        "There is nothing to choose: all of them are the same job as \"as it stands\"."
    );
}

#[test]
fn over_a_night_the_chance_of_the_first_day_is_told() {
    let mut night = three();
    for outcome in night.choices[0].study.outcomes.iter_mut().skip(60) {
        outcome.finish.clock += sim::Duration::from_hours(24);
    }
    let besides = findings(&night).verdict.besides;
    assert_eq!(
        besides[1],
        "Done on day 1: A in 60 % of the runs, B in 90 % of the runs, C in 90 % of the runs."
    );
}

#[test]
fn the_day_told_is_the_one_that_parts_the_jobs() {
    let mut days = three();
    for choice in &mut days.choices {
        choice.study.outcomes.iter_mut().for_each(|o| o.finish.clock += sim::Duration::from_hours(48));
    }
    assert_eq!(findings(&days).verdict.besides.len(), 1, "all are done on day 3, which parts nobody");
    days.choices[1].study.outcomes.iter_mut().for_each(|o| o.finish.clock -= sim::Duration::from_hours(24));
    assert_eq!(
        findings(&days).verdict.besides[1],
        "Done by the end of day 2: A in no run, B in 90 % of the runs, C in no run."
    );
}

#[test]
fn what_is_the_very_same_in_many_runs_is_told_and_spans_are_short() {
    let first = choice("as it stands", usual, |_| 1_000.0);
    let other = choice("new tines", |k| usual(k) - alternately(k, 0.0, 33.2), |_| 1_000.0);
    let findings = findings(&of(vec![first, other], 1, 0.0));
    let said = &findings.differences[0].time.said;
    assert_eq!((said.smaller.as_str(), said.same.as_deref()), ("50 %", Some("50 %")));
    assert_eq!(said.eight_in_ten, "0 to 33 min");
    let first = choice("as it stands", usual, |_| 1_000.0);
    let wide = choice("new tines", |k| usual(k) - alternately(k, 1.2, 71.0), |_| 1_000.0);
    let band = comparison(&of(vec![first, wide], 1, 0.0)).differences[0].time.said.eight_in_ten.clone();
    assert_eq!(band, "1 min to 1 h 10 min");
    assert_eq!(findings.differences[0].money.as_ref().unwrap().said.mean, "the same");
}

#[test]
fn a_difference_in_a_line_says_what_is_gained_what_is_lost_and_what_cannot_be_told() {
    let line = |after: fn(u32) -> f64, cost: fn(u32) -> f64| {
        let first = choice("as it stands", usual, |_| 1_000.0);
        findings(&of(vec![first, choice("other", after, cost)], 1, 0.0)).differences[0].words.clone()
    };
    let sooner = line(|k| usual(k) - alternately(k, 5.0, 15.0), |k| 1_018.0 + alternately(k, 0.0, 2.0));
    assert!(
        sooner.starts_with("Saves 10 min on average, 9 to 11 min; faster in every run; costs $19 more."),
        "{sooner}"
    );
    let later = line(|k| usual(k) + 10.0, |_| 982.0);
    assert_eq!(later, "Takes 10 min longer on average; faster in no run; costs $18 less.");
    assert_eq!(line(usual, |_| 1_000.0), "The same time in every run; costs about the same.");
    let either = line(|k| usual(k) + alternately(k, -1.0, 1.0), |_| 1_000.0);
    assert!(either.starts_with("About the same time on average; faster in 50 % of the runs;"), "{either}");
}

#[test]
fn hours_that_differ_count_by_the_clock() {
    let mut early = three();
    early.judged = Judged::ClockTime;
    early.choices[2].scenario.job.shift.start_s -= 3_600.0;
    let findings = findings(&early);
    // Ten minutes longer, but an hour earlier.
    assert_eq!(findings.differences[1].time.mean.value, 3_000.0);
    assert!(findings.not_alike[0].starts_with("They keep different hours"), "{:?}", findings.not_alike);
}

#[test]
fn who_was_set_aside_when_is_told() {
    assert_eq!(
        findings(&three()).runs,
        "300 runs on the same days and loads: A, C dropped after 100, 100 went to B."
    );
    let mut all_left = three();
    all_left.choices.iter_mut().for_each(|choice| choice.set_aside = None);
    assert_eq!(findings(&all_left).runs, "300 runs, 100 of each on the same days and loads.");
}

#[test]
fn a_caution_of_one_job_alone_bears_its_letter() {
    let mut heavy = three();
    let mut own = heavy.choices[1].scenario.cautions[0].clone();
    own.cause = "the bucket is too heavy.".into();
    heavy.choices[1].scenario.cautions.push(own);
    let doubtful = findings(&heavy).warnings.doubtful;
    assert_eq!(doubtful.len(), 2);
    assert_eq!(doubtful[1].cause, "the bucket is too heavy (B).");
    assert!(!doubtful[0].cause.contains('('), "{}", doubtful[0].cause);
    assert_eq!(findings(&heavy).assumed.all.len(), 2);
}

#[test]
fn a_long_name_is_cut_in_a_sentence_and_whole_in_the_table() {
    let mut long = three();
    long.choices[1].name = "x".repeat(200);
    let findings = findings(&long);
    assert!(findings.verdict.take.chars().count() < 220, "{}", findings.verdict.take);
    assert_eq!(findings.choices[1].name.len(), 200);
}
