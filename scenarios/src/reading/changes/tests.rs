use crate::testing::{SOUND, changed};
use crate::{JobFile, Refusal, Scenario, Selection, Texts, Variant, shipped};

const ALTERNATIVE: &str = "[[alternative]]\nname = \"two helpers\"\nchange = { \"raker.helper.count\" = 2, \"zone.north.room\" = 4 }\n";

fn asked(text: &str, alternative: Option<&str>, changes: &str) -> Result<Scenario, Refusal> {
    let changes = if changes.is_empty() { Vec::new() } else { changes.parse::<Variant>().unwrap().changes };
    let alternative = alternative.map(str::to_owned);
    JobFile::of_text(text, "job.toml", Texts::default()).unwrap().scenario(&Selection {
        alternative,
        changes,
        ..Selection::default()
    })
}

#[track_caller]
fn made(changes: &str) -> Scenario {
    asked(SOUND, None, changes).unwrap_or_else(|refusal| panic!("{refusal}"))
}

#[track_caller]
fn said(text: &str, changes: &str) -> Vec<String> {
    let refusal = asked(text, None, changes).unwrap_err();
    for problem in &refusal.problems {
        assert!(problem.span.is_none() && problem.line == 0 && problem.column == 0, "{problem}");
        assert!(problem.key.starts_with("--change \""), "{problem}");
    }
    refusal.problems.iter().map(ToString::to_string).collect()
}

#[test]
fn a_change_gives_the_same_job_as_the_file_written_so() {
    let by_hand = crate::testing::made(&[("14 ft3", "22 ft3")]);
    let by_change = made("loader.tractor.heaped = 22 ft3");
    assert_eq!(by_change.job, by_hand.job);
    assert_eq!(by_change.cautions, by_hand.cautions);
    assert_eq!(by_change.name(), "loader.tractor.heaped = 22 ft3");
    let three = "name = \"helper\"\nrate = { low = \"10 m3/h\", typical = \"12 m3/h\", high = \"13 m3/h\" }";
    let by_hand = crate::testing::made(&[("name = \"helper\"", three)]);
    let by_change =
        made("raker.helper.rate = { low = \"10 m3/h\", typical = \"12 m3/h\", high = \"13 m3/h\" }");
    assert_eq!(by_change.job, by_hand.job);
    assert_eq!(made("shift.breaks = [ \"12:00-12:30\" ]; fill_order = in turn").job.shift.breaks.len(), 1);
    assert!(!made("crew.stand_clear = false").job.raking.stand_clear);
}

#[test]
fn the_fingerprint_and_the_units_stay_those_of_the_file() {
    let (base, changed) = (made(""), made("zone.north.volume = 8 m3; loader.tractor.width = 1 m"));
    assert_eq!(
        (base.name().as_str(), &base.hash, base.units),
        ("as it stands", &changed.hash, changed.units)
    );
    let many = "zone.north.distance = 20 m; loader.tractor.heaped = 0.5 m3; zone.north.volume = 8 m3; \
                stockpile.pile.on_hand = 9 m3";
    assert_eq!(made(many).units, base.units);
    assert_eq!(made("units = metric").units, crate::units::System::Metric);
}

#[test]
fn the_alternative_comes_first_and_changes_are_made_upon_it_in_their_order() {
    let text = format!("{SOUND}{ALTERNATIVE}");
    let scenario = asked(&text, Some("two helpers"), "zone.north.room = 2; rakers = 5; rakers = 3").unwrap();
    assert_eq!((scenario.job.rakers.len(), scenario.job.zones[0].room), (3, Some(2)));
    assert_eq!(scenario.name(), "two helpers; zone.north.room = 2; rakers = 5; rakers = 3");
    assert_eq!(asked(&text, Some("two helpers"), "").unwrap().name(), "two helpers");
    assert_eq!(scenario.changes.len(), 3);
}

#[test]
fn what_is_wrong_with_a_change_is_told_at_it_with_its_remedy() {
    for (change, words) in [
        ("loader.tractr.heaped = 22 ft3", "there is no loader called \"tractr\"; the nearest is \"tractor\""),
        ("loader.tractor.heapd = 22 ft3", "this key is not known; the nearest known key is \"heaped\""),
        ("lodaer.tractor.heaped = 22 ft3", "\"lodaer\" is not known; the nearest known key is \"loader\""),
        ("raters = 2", "\"raters\" is not known; the nearest is \"rakers\""),
        ("loader.tractor.heaped = 22 lb", "this is a mass; a volume is wanted"),
        ("loader.tractor.heaped = 22", "the unit is missing"),
        ("loader.tractor.heaped = -22 ft3", "this is less than nothing"),
        ("loader.tractor.heaped = 9000000 ft3", "this is absurdly large"),
        ("heaped = 22 ft3", "it is not said of what; write \"loader.tractor.heaped\""),
        ("loader.heaped = 22 ft3", "it is not said of what; write \"loader.tractor.heaped\""),
        ("raker.helper.count = two", "this is a text, where a count is wanted"),
        ("raker.helper.count = 0", "nobody is left to rake"),
        ("rakers = 0", "nobody is left to rake"),
        ("rakers = two", "this is a text, where a count is wanted"),
        ("rakers = 65", "this is absurdly many"),
        ("loaders = 0", "none at all is not a count"),
        ("bucket = 22 ft", "this is a length"),
        ("haul = 20 yd3", "this is a volume"),
        ("room = 0", "none at all is not a count"),
        ("alternative.x.name = y", "alternatives cannot be changed"),
        ("zone..room = 2", "this is not a path of keys"),
        ("loader.tractor.loading = { low = \"9 s\" ", "not valid TOML"),
        ("zone.north.volume.low = 3 m3", "\"volume\" has no keys of its own"),
    ] {
        let said = said(SOUND, change);
        assert_eq!(said.len(), 1, "{change}: {said:#?}");
        let start = format!("job.toml: --change \"{change}\": ").replace(" \": ", "\": ");
        assert!(said[0].starts_with(&start) && said[0].contains(words), "{change}: {}", said[0]);
    }
}

#[test]
fn what_a_change_makes_impossible_elsewhere_is_told_at_all_changes_with_the_key() {
    let said = said(SOUND, "zone.north.room = 2; stockpile.pile.on_hand = 0 yd3");
    assert_eq!(
        said,
        [
            "job.toml: --change \"zone.north.room = 2\", --change \"stockpile.pile.on_hand = 0 yd3\": stockpile \"pile\": \
          there is nothing to move; give on_hand = \"20 yd3\", or deliveries"
        ]
    );
}

#[test]
fn a_part_of_a_value_that_is_wrong_is_named() {
    let said =
        said(SOUND, "loader.tractor.loading = { low = \"9 lb\", typical = \"12 s\", high = \"20 s\" }");
    assert_eq!(said.len(), 1, "{said:#?}");
    assert!(said[0].contains("loader \"tractor\".loading.low = \"9 lb\": this is a mass"), "{}", said[0]);
}

#[test]
fn currencies_of_changes_and_file_are_not_mixed() {
    let text = changed(&[("heaped = \"14 ft3\"", "heaped = \"14 ft3\"\nmachine_cost = \"$20/h\"")]);
    let said = said(&text, "loader.tractor.operator_cost = 30 EUR/h");
    assert!(said.len() == 1 && said[0].contains("EUR, but line 13 is in $"), "{said:#?}");
    let both =
        self::said(SOUND, "loader.tractor.machine_cost = $20/h; loader.tractor.operator_cost = 30 EUR/h");
    assert!(both.len() == 1 && both[0].contains("another change is in $"), "{both:#?}");
}

#[test]
fn knobs_turn_several_keys_at_once_in_proportion() {
    let text = changed(&[
        (
            "distance = \"20 yd\"",
            "distance = \"20 yd\"\n[[zone]]\nname = \"south\"\nvolume = \"30 yd3\"\nroom = 2\nways = [ { from = \"pile\", distance = \"40 yd\" } ]",
        ),
        ("12 yd3", "30 yd3"),
        (
            "heaped = \"14 ft3\"",
            "heaped = \"20 ft3\"\nstruck = \"16 ft3\"\n[[loader]]\nname = \"barrow\"\nheaped = \"4 ft3\"\ncount = 2",
        ),
    ]);
    let base = asked(&text, None, "").unwrap().job;
    // 10 yd3 at 20 yd and 30 yd3 at 40 yd: 35 yd on average.
    assert!((crate::knob::mean_haul(&base) - 35.0 * 0.9144).abs() < 1e-9);
    let far = asked(&text, None, "haul = 70 yd").unwrap();
    let ways: Vec<f64> = far.job.zones.iter().map(|zone| zone.ways[0].distance_m / 0.9144).collect();
    assert!((ways[0] - 40.0).abs() < 1e-9 && (ways[1] - 80.0).abs() < 1e-9, "{ways:?}");
    assert!(crate::testing::assumed(&far, "haul").contains("200 %"));
    let bucket = asked(&text, None, "bucket = 10 ft3").unwrap();
    let ft3 = 0.3048_f64.powi(3);
    assert!(bucket.job.loaders.iter().all(|loader| (loader.heaped_m3 / ft3 - 10.0).abs() < 1e-12));
    assert!((bucket.job.loaders[0].struck_m3.unwrap() / ft3 - 8.0).abs() < 1e-9);
    assert_eq!(bucket.job.loaders[1].struck_m3, None);
    assert!(crate::testing::assumed(&bucket, "bucket").contains("width"));
    let names = |changes: &str| -> Vec<String> {
        asked(&text, None, changes).unwrap().job.loaders.into_iter().map(|loader| loader.name).collect()
    };
    assert_eq!(names("loaders = 1"), ["tractor"]);
    assert_eq!(names("loaders = 2"), ["tractor", "barrow"]);
    assert_eq!(names("loaders = 4"), ["tractor", "barrow 1", "barrow 2", "barrow 3"]);
    let room = asked(&text, None, "room = 5").unwrap().job;
    assert!(room.zones.iter().all(|zone| zone.room == Some(5)));
    assert!(asked(&text, None, "room = no limit").unwrap().job.zones.iter().all(|zone| zone.room.is_none()));
}

/// A later change wins, be it of a key or a knob; what it does not touch stays as the earlier one set it.
#[test]
fn keys_and_knobs_are_changed_in_the_order_they_are_asked_for() {
    let count = |changes| made(changes).job.rakers.len();
    assert_eq!(count("rakers = 3; raker.helper.count = 2"), 2);
    assert_eq!(count("raker.helper.count = 2; rakers = 3"), 3);
    assert_eq!(count("rakers = 2; rakers = 4"), 4);
    assert_eq!(count("rakers = 3; zone.north.room = 5"), 3);
    let room = |changes| made(changes).job.zones[0].room;
    assert_eq!(room("room = 3; zone.north.room = 5"), Some(5));
    assert_eq!(room("zone.north.room = 5; room = no limit"), None);
    assert_eq!(room("room = 3; rakers = 2; loader.tractor.width = 1 m"), Some(3));
    let heaped = |changes| made(changes).job.loaders[0].heaped_m3;
    assert_eq!(heaped("bucket = 0.5 m3; loader.tractor.heaped = 0.4 m3"), 0.4);
    assert_eq!(heaped("loader.tractor.heaped = 0.4 m3; bucket = 0.5 m3; haul = 30 m"), 0.5);
    let ways = |changes| made(changes).job.zones[0].ways[0].distance_m;
    assert_eq!(ways("haul = 30 m; zone.north.distance = 20 m"), 20.0);
    assert_eq!(ways("zone.north.distance = 20 m; haul = 30 m; rakers = 2"), 30.0);
    // A change that cannot be made leaves the job as it is for those after it, and all are told.
    let struck = SOUND.replace("14 ft3\"", "14 ft3\"\nstruck = \"11 ft3\"");
    let both = said(&struck, "bucket = 0.001 m3; room = 0");
    assert!(
        both.len() == 2 && both[0].contains("absurdly small") && both[1].contains("room = 0"),
        "{both:#?}"
    );
    // What is calculated stays with what it was calculated from.
    let struck = "loader.tractor.struck = 0.3 m3; loader.tractor.heaped = 0.4 m3; bucket = 0.6 m3; zone.north.room = 2";
    assert!((made(struck).job.loaders[0].struck_m3.unwrap() - 0.45).abs() < 1e-12);
    assert!(!said(SOUND, "haul = 30 m; zone.north.ways = [ { distance = \"20 m\" } ]").is_empty());
}

#[test]
fn nobody_rakes_only_where_the_loaders_spread_it_all() {
    let (_, nursery) = shipped().iter().find(|(name, _)| *name == "nursery-yard").unwrap();
    assert!(asked(nursery, None, "rakers = 0").unwrap().job.rakers.is_empty());
    let refusal = asked(nursery, None, "rakers = 2").unwrap_err().to_string();
    assert!(refusal.contains("no raker to make copies of"), "{refusal}");
}

#[test]
fn a_knob_after_a_change_that_breaks_the_job_leaves_the_cause_to_be_told() {
    let said = said(SOUND, "loader.tractor.heaped = 22 lb; rakers = 2");
    assert_eq!(said.len(), 1, "{said:#?}");
    assert!(said[0].contains("--change \"loader.tractor.heaped = 22 lb\": this is a mass"), "{said:#?}");
}

/// Whatever is typed, the answer is a scenario or a refusal.
#[test]
fn no_change_makes_the_reader_panic() {
    let keys = [
        "rakers",
        "bucket",
        "haul",
        "room",
        "loader.tractor.heaped",
        "zone",
        "spread",
        "spread.days.day",
        "",
        "a.b.c.d.e",
        "\"",
        "title",
        "loader.tractor.name",
        "date",
        "zone.north.ways",
    ];
    let values = [
        "0",
        "1",
        "-1",
        "nan",
        "inf",
        "1e400",
        "9e18",
        "99999999999999999999",
        "{}",
        "[]",
        "[[]]",
        "{ a = {} }",
        "\"",
        "true",
        "2026-04-18",
        "7:00",
        "none",
        "1 m",
        "é",
        "1\"",
        "[ { distance = \"1 m\" } ]",
    ];
    let file = JobFile::of_text(SOUND, "job.toml", Texts::default()).unwrap();
    for key in keys {
        for value in values {
            let change = crate::Change { key: key.into(), value: value.into() };
            let selection = Selection { changes: vec![change], ..Selection::default() };
            if let Err(refusal) = file.scenario(&selection) {
                let told = refusal.to_string();
                assert!(told.contains("--change") && !told.contains("fault of the program"), "{told}");
            }
        }
    }
}
