//! A small made-up forecast for the tests of what is said and shown. All numbers are made up.

use crate::forecast::Forecast;
use crate::provenance::Provenance;
use scenarios::sentence::{Clause, Part, Sentence};
use scenarios::units::System;
use scenarios::{Assumption, Caution, Scenario, Stated, Weight};
use sim::*;

/// One loader, one raker, one zone, one pile.
pub(crate) fn job() -> Job {
    let zero = || Distribution::Constant(0.0);
    Job {
        material: Material { name: "wood chips".into(), density_kg_per_m3: 280.0, fill_factor: 0.95 },
        zones: vec![Zone {
            name: "arena".into(),
            need_m3: 24.0,
            room: Some(2),
            ways: vec![Way { stockpile: 0, distance_m: 25.0, passes: Vec::new() }],
            walks_m: vec![0.0],
        }],
        stockpiles: vec![Stockpile {
            name: "pile".into(),
            on_hand_m3: 24.0,
            deliveries: Vec::new(),
            face: 1,
        }],
        passes: Vec::new(),
        loaders: vec![Loader {
            name: "compact tractor".into(),
            heaped_m3: 0.4,
            struck_m3: None,
            lift_kg: None,
            width_m: 0.0,
            loaded_m_per_s: 1.3,
            empty_m_per_s: 1.8,
            load_s: 25.0,
            dump_s: 12.0,
            start_stop_s: 6.0,
            spread_s_per_m3: 0.0,
            machine_cost_per_h: 25.0,
            operator_cost_per_h: 35.0,
            fuel_working_l_per_h: 4.5,
            fuel_idling_l_per_h: 1.5,
            stoppages: None,
        }],
        rakers: vec![Raker {
            name: "helper".into(),
            rate_m3_per_h: 15.0,
            start_zone: 0,
            walking_m_per_s: 1.3,
            cost_per_h: 22.0,
        }],
        raking: Raking { together: None, fatigue: None, spread_share: 0.0, stand_clear: true },
        fill_order: FillOrder::AsListed,
        finish: FinishRule::AreaCovered,
        shift: Shift {
            start_s: 28_800.0,
            end_s: None,
            breaks: Vec::new(),
            set_up_s: zero(),
            clean_up_s: zero(),
        },
        chance: Chance::none(),
        prices: Prices { fuel_per_l: 1.1, material: 720.0 },
    }
}

/// Run `run` of a hundred: each takes half a minute longer than the one before.
pub(crate) fn outcome(run: u32) -> Outcome {
    let time = Duration::from_secs(120 * 60 + 30 * i64::from(run));
    let loaders = [
        (LoaderActivity::Loading, time / 2),
        (LoaderActivity::WaitingForRoom, time / 3),
        (LoaderActivity::Hauling, time - time / 2 - time / 3),
    ];
    let rakers = [(RakerActivity::Raking, time - time / 20), (RakerActivity::Waiting, time / 20)];
    Outcome {
        run,
        completion: Moment { working: time, clock: time },
        finish: Moment { working: time, clock: time },
        loads: 66 + run / 12,
        placed_m3: 24.0,
        left_over_m3: if run < 90 { 0.4 } else { 0.0 },
        short_m3: if run < 90 { 0.0 } else { 1.5 },
        ends_short: run >= 90,
        fuel_l: 9.0 + f64::from(run) / 50.0,
        labour_h: 4.0 + f64::from(run) / 60.0,
        cost: 950.0 + f64::from(run),
        loaders: loaders.into_iter().collect(),
        rakers: rakers.into_iter().collect(),
        progress: std::array::from_fn(|i| time * (i as i64 + 1) / PROGRESS_PARTS as i64),
    }
}

fn accounts(outcomes: &[Outcome]) -> Accounts {
    let mut accounts = Accounts::empty(1, 1, 1);
    for o in outcomes {
        accounts.add(&Accounts {
            loaders: vec![o.loaders],
            rakers: vec![o.rakers],
            zones: vec![ZoneTotals {
                loads: u64::from(o.loads),
                placed_m3: o.placed_m3,
                short_m3: o.short_m3,
            }],
            loads: vec![u64::from(o.loads)],
        });
    }
    accounts
}

/// The made-up scenario.
pub(crate) fn scenario() -> Scenario {
    let caution = |weight, kind, cause: &str, remedy: &str| Caution {
        weight,
        kind,
        cause: cause.into(),
        remedy: remedy.into(),
    };
    let assumption = |key: &str, words: &str| Assumption {
        key: key.into(),
        words: words.into(),
        from: "built-in table: common practice, no source".into(),
    };
    let told = [
        "Move 24 m3 of wood chips",
        " from the pile",
        ", 25 m, to the arena",
        ", with one compact tractor of 0.4 m3",
        " and one person raking",
        ", from 8:00 am",
        ", no break.",
    ];
    let clause = |words: &str| {
        let parts = vec![Part::Words(words.into())];
        Clause { kind: "material", parts, ..Clause::default() }
    };
    let clauses = told.map(clause).to_vec();
    Scenario {
        title: "Riding arena, new footing".into(),
        sentence: Sentence { clauses, ..Sentence::default() },
        file: "arena.toml".into(),
        hash: "0123456789abcdef".repeat(4),
        observed_files: Vec::new(),
        date: None,
        units: System::Us,
        currency: "$".into(),
        alternatives: Vec::new(),
        alternative: None,
        changes: Vec::new(),
        job: job(),
        ordered_m3: 24.0,
        assumptions: vec![
            assumption("loader.compact tractor.loading", "loading takes 25 s a load"),
            assumption("shift.start", "the day starts at 8:00 am"),
        ],
        cautions: vec![
            caution(
                Weight::Warning,
                "delivery-short",
                "the pile may be 2 yd3 short of the need",
                "order one more truckload",
            ),
            caution(Weight::Usual, "people-near", "People work near a moving loader.", "Keep clear of it."),
        ],
        stated: Stated { truckload_m3: 10.0, ..Stated::default() },
    }
}

/// A quote of the made-up job, whose runs cost what their hours and fuel come to at its prices.
pub(crate) fn quote() -> crate::quote::Quote {
    let mut scenario = scenario();
    scenario.stated.fixed.material = scenario.job.prices.material;
    let outcomes: Vec<Outcome> = (0..100)
        .map(|run| {
            let outcome = outcome(run);
            Outcome { cost: CostParts::of(&scenario.job, &outcome).total(), ..outcome }
        })
        .collect();
    let study = Study::of(1, outcomes.clone(), accounts(&outcomes));
    let asked =
        crate::quote::findings::Asked { risk: 0.1, margin: Some(0.15), price: None, rate: Some(95.0) };
    let provenance =
        Provenance { command: "heapcast quote arena.toml --seed 1".into(), ..forecast().provenance };
    crate::quote::Quote::of(scenario, study, asked, provenance)
}

/// A hundred made-up runs and all that is worked out from them.
pub(crate) fn forecast() -> Forecast {
    let outcomes: Vec<Outcome> = (0..100).map(outcome).collect();
    let relief = |improvement, saved_s, saved_cost| Relief {
        improvement,
        saved_s: Mean { value: saved_s, low: saved_s - 20.0, high: saved_s + 20.0, sd: 60.0, n: 100 },
        saved_cost: Mean { value: saved_cost, low: saved_cost, high: saved_cost, sd: 0.0, n: 100 },
        done: None,
    };
    Forecast {
        scenario: scenario(),
        handbook: Handbook {
            volume_m3: 24.0,
            loads: 71.3,
            cycle_s: vec![Some(82.0)],
            plain_s: 5_847.0,
            time_s: 7_016.0,
        },
        relief: vec![
            relief(Improvement::AnotherRaker, 1_690.0, 21.0),
            relief(Improvement::FasterRaking, 600.0, 14.0),
            relief(Improvement::AnotherLoader, 300.0, -95.0),
            relief(Improvement::MoreRoom, 45.0, 1.0),
            relief(Improvement::LargerBucket, 3.0, 0.0),
            relief(Improvement::ShorterWays, 1.0, 0.0),
        ],
        typical: Replay { outcome: outcome(50), accounts: accounts(&outcomes[50..51]), log: Vec::new() },
        percentiles: vec![0.1, 0.5, 0.8, 0.9, 0.95],
        within_s: None,
        by_s: Some(38_400.0),
        units: System::Us,
        provenance: Provenance {
            version: "0.1.0".into(),
            seed: 1,
            runs: 100,
            file: "arena.toml".into(),
            scenario_hash: "0123456789abcdef".repeat(4),
            alternative: None,
            changes: Vec::new(),
            command: "heapcast forecast arena.toml --runs 100 --seed 1".into(),
        },
        study: Study::of(1, outcomes.clone(), accounts(&outcomes)),
    }
}

/// Holds a screen to its width, for narrow and wide ones.
pub(crate) fn assert_fits(screen: impl Fn(u16) -> String) {
    for columns in [80, 100, 200] {
        let text = screen(columns);
        let widest = text.lines().max_by_key(|line| line.chars().count()).unwrap();
        assert!(widest.chars().count() <= usize::from(columns).min(100), "{columns}: {widest}");
    }
}

/// What stands between two marks of a text, everywhere.
pub(crate) fn between<'a>(text: &'a str, from: &str, to: &str) -> Vec<&'a str> {
    text.split(from).skip(1).filter_map(|rest| rest.split(to).next()).collect()
}

/// Holds a page to standing alone: nothing is fetched, every link and hatching leads somewhere, and no id is given twice.
pub(crate) fn assert_stands_alone(html: &str) {
    for outside in ["http:", "https:", "src=", "<script", "<link", "@import", "javascript:"] {
        assert!(!html.contains(outside), "{outside}");
    }
    assert!(html.contains("default-src 'none'"));
    assert!(between(html, "url(", ")").iter().all(|target| target.starts_with('#')));
    assert!(between(html, " href=\"", "\"").iter().all(|target| target.starts_with('#')));
    let mut ids = between(html, " id=\"", "\"");
    let targets = between(html, " href=\"#", "\"").into_iter().chain(between(html, "url(#", ")"));
    let lost: Vec<&str> = targets.filter(|target| !ids.contains(target)).collect();
    assert!(lost.is_empty(), "{lost:?}");
    let count = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), count, "an id is given twice");
}
