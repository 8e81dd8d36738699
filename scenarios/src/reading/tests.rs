mod asked;
mod spoilt;

use crate::files::{Files, NamedFile, NotRead};
use crate::testing::{SOUND, accepted, changed, read, refused, refused_with};
use crate::units::System;
use crate::{JobFile, Selection, Texts, read_text, shipped};
use std::path::Path;
use std::sync::{Arc, Mutex};

fn chosen(text: &str, name: &str) -> Result<crate::Scenario, crate::Refusal> {
    read_text(
        text,
        "job.toml",
        Texts::shipped(),
        &Selection { alternative: Some(name.into()), ..Selection::default() },
    )
}

#[test]
fn every_shipped_scenario_is_read_with_all_its_alternatives() {
    assert!(shipped().len() >= 6);
    for (name, text) in shipped() {
        let file = format!("{name}.toml");
        let read = |alternative| {
            read_text(text, &file, Texts::shipped(), &Selection { alternative, ..Selection::default() })
        };
        let scenario = read(None).unwrap_or_else(|refusal| panic!("{refusal}"));
        assert!(!scenario.title.is_empty() && !scenario.assumptions.is_empty());
        for alternative in &scenario.alternatives {
            let variant = read(Some(alternative.clone())).unwrap_or_else(|refusal| panic!("{refusal}"));
            assert_eq!(variant.alternative.as_ref(), Some(alternative));
            assert_ne!(variant.job, scenario.job, "{name}: \"{alternative}\" changes nothing");
        }
    }
}

#[test]
fn every_file_beside_the_shipped_scenarios_is_shipped() {
    let mut files: Vec<String> = std::fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios"))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    files.sort();
    let mut known: Vec<String> = shipped().iter().map(|(name, _)| format!("{name}.toml")).collect();
    known.extend(crate::shipped_files().iter().map(|(name, _)| (*name).to_owned()));
    known.sort();
    assert_eq!(files, known);
}

const ALTERNATIVES: &str = r#"
[[alternative]]
name = "two helpers"
change = { "raker.helper.count" = 2, "zone.north.room" = 4, fill_order = "in turn" }
[[alternative]]
name = "quicker"
change = { loader.tractor.loading = { low = "10 s", typical = "12 s", high = "15 s" }, shift.end = "16:00", spread.days.day = "3 %" }
[[alternative]]
name = "no chance"
change = { spread = "none" }
"#;

#[test]
fn an_alternative_changes_what_it_names_and_nothing_else() {
    let text = format!("{SOUND}{ALTERNATIVES}");
    let base = accepted(&text);
    assert_eq!(base.alternatives, ["two helpers", "quicker", "no chance"]);
    assert_eq!(base.job, accepted(SOUND).job);
    let two = chosen(&text, "two helpers").unwrap().job;
    assert_eq!((two.rakers.len(), two.zones[0].room, two.fill_order), (2, Some(4), sim::FillOrder::InTurn));
    assert_eq!(two.loaders, base.job.loaders);
    let quicker = chosen(&text, "quicker").unwrap().job;
    assert!(quicker.loaders[0].load_s < 14.0);
    assert_eq!(quicker.shift.end_s, Some(57_600.0));
    assert_eq!(quicker.chance.days.day, sim::Distribution::Lognormal { mean: 1.0, cv: 0.03 });
    assert_eq!(chosen(&text, "no chance").unwrap().job.chance, sim::Chance::none());
}

#[test]
fn an_alternative_that_is_not_there_has_a_nearest_one() {
    let said = chosen(&format!("{SOUND}{ALTERNATIVES}"), "two helper").unwrap_err().to_string();
    assert_eq!(
        said,
        "job.toml: there is no alternative called \"two helper\"; the nearest is \"two helpers\""
    );
    let said = chosen(SOUND, "x").unwrap_err().to_string();
    assert!(said.ends_with("the file has no alternatives"), "{said}");
}

fn alternative(change: &str) -> String {
    format!("{SOUND}[[alternative]]\nname = \"other\"\nchange = {{ {change} }}\n")
}

#[test]
fn what_is_wrong_with_an_alternative_is_told_at_its_line() {
    for (change, at, words) in [
        ("\"loader.tractr.count\" = 2", 17, "the nearest is \"tractor\""),
        ("\"loader.tractor.heaps\" = 2", 17, "\"heaped\""),
        ("\"lodaer.tractor.count\" = 2", 17, "the nearest known key is \"loader\""),
        ("\"loader.tractor\" = 2", 17, "a whole table"),
        ("\"zone..room\" = 2", 17, "not a path"),
        ("\"crew.stand_clear.now\" = 2", 17, "neither true nor false"),
        ("\"zone.north.volume.low\" = \"2 m3\"", 17, "has no keys of its own"),
        ("\"loader.tractor.loading\" = \"9 ft\"", 17, "a length"),
        ("\"raker.helper.count\" = 0", 17, "nobody is left to rake"),
        ("\"stockpile.pile.on_hand\" = \"0 yd3\"", 16, "nothing to move"),
        ("\"shift.end\" = \"07:00\"", 17, "before it begins"),
    ] {
        let text = alternative(change);
        let said = refused(&text);
        assert_eq!(said.len(), 1, "{change}: {said:#?}");
        assert!(said[0].starts_with(&format!("job.toml:{at}:")), "{change}: {}", said[0]);
        assert!(
            said[0].contains("alternative \"other\"") && said[0].contains(words),
            "{change}: {}",
            said[0]
        );
    }
}

#[test]
fn all_problems_come_at_once_in_the_order_of_the_file() {
    let text = changed(&[
        ("10 yd3", "10 lb"),
        ("distance", "distence"),
        ("on_hand = \"12 yd3\"", "on_hand = \"-1 yd3\""),
        ("heaped = \"14 ft3\"", "heaped = \"nan ft3\"\ncount = 0.5"),
        ("name = \"helper\"", "name = \"helper\"\nstart = \"nort\""),
    ]);
    let refusal = read(&text).unwrap_err();
    let lines: Vec<usize> = refusal.problems.iter().map(|problem| problem.line).collect();
    assert_eq!(lines, [3, 5, 6, 9, 12, 13, 16], "{refusal}");
    for problem in &refusal.problems {
        let span = problem.span.clone().unwrap();
        let before = &text[..span.start];
        assert_eq!(before.matches('\n').count() + 1, problem.line);
        assert!(problem.value.is_empty() || text[span].starts_with(&problem.value), "{problem}");
    }
}

#[test]
fn columns_are_counted_in_characters() {
    let text = SOUND.replace("name = \"helper\"", "name = \"helper\"\nrate = { foo = \"ééé\", low = \"é\" }");
    let refusal = read(&text).unwrap_err();
    assert!(refusal.problems.iter().any(|p| (p.line, p.column) == (15, 29)), "{refusal}");
}

#[test]
fn currencies_are_not_mixed() {
    let prices =
        |price: &str| format!("heaped = \"14 ft3\"\nmachine_cost = \"$20/h\"\noperator_cost = \"{price}\"");
    refused_with(&[("heaped = \"14 ft3\"", &prices("20 EUR/h"))], &["EUR", "line 13 is in $"]);
    assert_eq!(accepted(&changed(&[("heaped = \"14 ft3\"", &prices("$30/h"))])).currency, "$");
}

#[test]
fn material_is_not_paid_twice() {
    let text = changed(&[
        ("green\"", "green\"\nprice = \"$18/yd3\""),
        ("\"12 yd3\"", "\"12 yd3\"\nprice = \"$200\""),
    ]);
    assert!(refused(&text)[0].contains("paid twice"));
}

#[test]
fn structural_faults_are_each_told() {
    for (old, new, words) in [
        ("[[zone]]", "[zone]", "double brackets"),
        ("[[loader]]", "[[loder]]", "\"loader\""),
        ("volume = \"10 yd3\"", "", "how much it takes"),
        ("volume = \"10 yd3\"", "volume = \"10 yd3\"\ndepth = \"3 in\"", "both given"),
        ("distance = \"20 yd\"", "ways = []", "no way leads to it"),
        ("distance = \"20 yd\"", "ways = [ { from = \"heap\", distance = \"20 yd\" } ]", "\"pile\""),
        ("distance = \"20 yd\"", "distance = \"20 yd\"\nwalk = { north = \"3 m\" }", "to itself"),
        ("on_hand = \"12 yd3\"", "", "nothing to move"),
        ("on_hand = \"12 yd3\"", "on_hand = \"100000 m3\"", "loads"),
        ("14 ft3\"", "14 ft3\"\nstoppages = { gap = \"1 min\", length = \"11 min\" }", "stands still"),
        ("name = \"helper\"", "name = \"helper\"\ncount = 65", "absurdly many"),
        ("name = \"helper\"", "name = \"helper\"\n[crew]\nspread_share = \"40\"", "absurdly large"),
        (
            "name = \"helper\"",
            "name = \"helper\"\n[shift]\nbreaks = [ \"7:00-7:30\" ]",
            "before the day does",
        ),
        (
            "name = \"helper\"",
            "name = \"helper\"\n[shift]\nend = \"8:10\"\nset_up = \"15 min\"",
            "before the job can begin",
        ),
        ("name = \"helper\"", "name = \"helper\"\n[finish]\nsurplus = \"nor\"", "no zone of this name"),
        ("wood chips, green", "wod chips, green", "\"wood chips, green\""),
        ("[[raker]]\nname = \"helper\"\n", "", "nobody to rake"),
    ] {
        let bucket = ("heaped = \"14 ft3\"", "heaped = \"14 ft3\"");
        refused_with(&[bucket, (old, new)], &[words]);
    }
}

#[test]
fn a_lift_that_leaves_next_to_nothing_in_the_bucket_is_told() {
    let lift = ("14 ft3\"", "14 ft3\"\nhydraulic_lift = \"1 kg\"\nhydraulic_lift_share = \"5 %\"");
    refused_with(&[lift, ("12 yd3", "60 yd3")], &["hydraulic_lift = \"1 kg\"", "with what may be lifted"]);
}

#[test]
fn a_material_of_ones_own_needs_density_and_fill_factor() {
    let own = (
        "name = \"wood chips, green\"",
        "name = \"hulls\"\ndensity = \"130 kg/m3\"\nfill_factor = { low = 0.8, typical = 0.9, high = 1.1 }",
    );
    let job = accepted(&changed(&[own])).job;
    assert_eq!((job.material.name.as_str(), job.material.density_kg_per_m3), ("hulls", 130.0));
}

#[test]
fn an_empty_or_faulty_text_is_refused() {
    for text in ["", "   \n", "# only words\n", "\u{feff}"] {
        assert!(refused(text)[0].contains("empty"), "{text:?}");
    }
    assert!(refused("a = [1, 2\n").iter().all(|said| said.contains("TOML")));
    assert!(refused(&format!("x = {}1{}", "[".repeat(5000), "]".repeat(5000)))[0].contains("TOML"));
}

#[test]
fn a_flood_of_problems_is_cut_short() {
    let text: String = (0..5000).map(|i| format!("k{i} = 1\n")).collect();
    let said = refused(&text);
    assert!(said.len() <= crate::diagnostics::MOST_PROBLEMS + 1);
    assert!(said.last().unwrap().contains("more problems are not listed"), "{:?}", said.last());
}

/// Files that can be taken away.
#[derive(Clone, Debug)]
struct Once(Arc<Mutex<Texts>>);

impl Files for Once {
    fn file(&self, name: &str, most: u64) -> Result<NamedFile, NotRead> {
        self.0.lock().unwrap().file(name, most)
    }
}

/// What is read once is not read again: with the measured times gone, the job as it stands and its alternatives are still
/// made, in either system of units.
#[test]
fn a_file_is_read_once_for_all_that_is_made_of_it() {
    let times = Once(Arc::new(Mutex::new([("times.csv", "s\n18\n22\n20\n")].into_iter().collect())));
    let loading = "heaped = \"14 ft3\"\nloading = { family = \"observed\", file = \"times.csv\", column = \"s\", unit = \"s\" }";
    let text = changed(&[("heaped = \"14 ft3\"", loading)])
        + "[[alternative]]\nname = \"two\"\nchange = { \"raker.helper.count\" = 2 }\n";
    let file = JobFile::of_text(&text, "job.toml", times.clone()).unwrap();
    let all = |file: &JobFile| {
        let alternatives = [None, Some("two".to_owned())];
        let units = [None, Some(System::Us), Some(System::Metric)];
        let each = alternatives.iter().flat_map(|alternative| {
            units.map(|units| Selection { alternative: alternative.clone(), units, ..Selection::default() })
        });
        each.map(|selection| file.scenario(&selection).unwrap()).collect::<Vec<_>>()
    };
    let before = all(&file);
    *times.0.lock().unwrap() = Texts::default();
    assert_eq!(all(&file), before);
    assert_eq!(
        before.iter().map(|scenario| scenario.job.rakers.len()).collect::<Vec<_>>(),
        [1, 1, 1, 2, 2, 2]
    );
    assert!(JobFile::of_text(&text, "job.toml", times).is_err());
}
