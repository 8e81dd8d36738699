use super::*;
use crate::units::System;
use crate::{Answers, JobFile, Texts, shipped, starter};

/// Every shipped job, and starter files in both systems.
pub(crate) fn jobs() -> Vec<(String, String)> {
    let mut all: Vec<(String, String)> =
        shipped().iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
    for units in [System::Us, System::Metric] {
        let usual = Answers::usual(units);
        let gate = Some(crate::starter::usual::gate(units).to_owned());
        all.push((format!("new {units}"), starter(&usual)));
        all.push((
            format!("new {units} with a gate, nobody raking"),
            starter(&Answers { gate, rakers: 0, ..usual }),
        ));
    }
    all
}

fn words(name: &str, units: Option<System>) -> String {
    let (_, text) = shipped().iter().find(|(known, _)| *known == name).unwrap();
    JobFile::of_text(text, name, Texts::shipped()).unwrap().sentence(units, None).words()
}

#[test]
fn a_job_is_told_in_the_units_asked_for() {
    assert_eq!(
        words("round-pen", None),
        "Move 24 yd3 of shredded wood mulch from the heap beside the pen, 30 yd, to the round pen, with one small loader of \
         12 ft3 and one person raking, from 8:00 am, no break. The heap beside the pen holds 28 yd3."
    );
    assert_eq!(
        words("round-pen", Some(System::Metric)),
        "Move 18.3 m3 of shredded wood mulch from the heap beside the pen, 27.4 m, to the round pen, with one small loader of \
         0.34 m3 and one person raking, from 08:00, no break. The heap beside the pen holds 21.4 m3."
    );
}

#[test]
fn what_is_not_known_exactly_is_told_as_what_it_is_about() {
    assert_eq!(
        words("vineyard-rows", None),
        "Move 18 m3 of compost from the headland heap to 3 zones: lower terrace, about 6 m3, 60 m; middle terrace, about 6 m3, 85 m; \
         upper terrace, about 6 m3, 110 m; with one narrow-track tractor of 0.25 m3 and two people raking, from 07:00, no \
         break. The headland heap holds 13.5 m3. A truck brings about 7.5 m3 at 08:45. The narrow-track tractor fills its \
         bucket in about 24 s. The narrow-track tractor is 1.2 m wide. By its manual the narrow-track tractor has a hydraulic \
         lift of 450 kg. One person rakes about 5 m3/h. Getting ready takes about 15 min. Cleaning up takes about 12 min."
    );
}

#[test]
fn what_the_sentence_does_not_say_is_counted_with_what_it_means() {
    let (name, text) = shipped()[6];
    let sentence = JobFile::of_text(text, name, Texts::shipped()).unwrap().sentence(None, None);
    let [struck] = sentence.further.as_slice() else { panic!("{:?}", sentence.further) };
    assert_eq!(
        (struck.key.as_str(), struck.words.starts_with("What it holds struck")),
        ("loader.small loader.struck", true)
    );
    let (name, text) = shipped()[8];
    let sentence = JobFile::of_text(text, name, Texts::shipped()).unwrap().sentence(None, None);
    let keys: Vec<&str> = sentence.further.iter().map(|further| further.key.as_str()).collect();
    for law in ["loader.narrow-track tractor.loading", "spread.loads.haul", "zone.lower terrace.volume"] {
        assert!(keys.contains(&law), "{keys:?}");
    }
}

#[test]
fn every_key_of_a_file_is_told_or_counted() {
    for (name, text) in jobs() {
        let sentence = JobFile::of_text(&text, &name, Texts::shipped()).unwrap().sentence(None, None);
        let known = |key: &str| {
            sentence.values().any(|value| value.key.contains(key))
                || sentence.further.iter().any(|one| one.key.contains(key))
        };
        for line in text.lines().take_while(|line| !line.starts_with("[[alternative")) {
            let Some((key, _)) = line.split_once(" = ") else { continue };
            let in_words = ["name", "title", "units", "currency", "rule", "ways", "count", "spread_share"];
            if key.chars().all(|c| c.is_ascii_lowercase() || c == '_') && !in_words.contains(&key) {
                assert!(known(key), "{name}: {key}");
            }
        }
    }
}

#[test]
fn the_clock_is_told_as_asked_for() {
    let (name, text) = shipped()[9];
    let file = JobFile::of_text(text, name, Texts::shipped()).unwrap();
    let said = |clock| file.sentence(Some(System::Metric), Some(clock)).words();
    assert!(said(Clock::AmPm).contains("from 8:00 am until 5:00 pm"));
    assert!(said(Clock::Hours24).contains("from 08:00 until 17:00"));
}

#[test]
fn every_value_says_what_it_is_in_words_of_the_trade() {
    for (name, text) in jobs() {
        let sentence = JobFile::of_text(&text, &name, Texts::shipped()).unwrap().sentence(None, None);
        for value in sentence.values() {
            let all = [&value.key, &value.words, &value.title, &value.help, &value.limits];
            assert!(all.iter().all(|words| !words.is_empty()), "{name}: {value:?}");
            assert!(!value.help.contains("heapcast"), "{name}: {}", value.help);
        }
        let words = sentence.words();
        assert!(words.ends_with('.') && !words.contains("  ") && !words.contains(" ,"), "{name}: {words}");
    }
}

#[test]
fn a_word_that_stands_for_several_values_is_told_by_each_of_them() {
    let (name, text) = shipped()[5];
    let file = JobFile::of_text(text, name, Texts::shipped()).unwrap();
    let changes = vec!["haul = 80 yd".parse().unwrap(), "bucket = 14 ft3".parse().unwrap()];
    let said = file.scenario(&crate::Selection { changes, ..Default::default() }).unwrap().sentence.words();
    for words in [
        "1 in deep, 110 yd through",
        "1 in deep, 80 yd through",
        "1 in deep, 50 yd through",
        "tractor of 14 ft3",
    ] {
        assert!(said.contains(words), "{words}: {said}");
    }
}

fn told(text: &str) -> crate::Sentence {
    JobFile::of_text(text, "job.toml", Texts::shipped()).unwrap().sentence(None, None)
}

#[test]
fn a_name_with_an_article_of_its_own_is_said_as_people_say_it() {
    let text = starter(&Answers { gate: Some("1.8 m".into()), ..Answers::usual(System::Metric) });
    let text = text
        .replace("name = \"loader\"", "name = \"The Beast\"\nhydraulic_lift = \"600 kg\"\nloading = \"30 s\"")
        .replace("\"gate\"", "\"The Gap\"")
        .replace("\"pile\"", "\"The Heap\"");
    let said = told(&text).words();
    for words in [
        "from the Heap, 25 m through the Gap, to the ground, with one Beast of 0.4 m3",
        ". The Beast fills its bucket in 30 s.",
        ". By its manual the Beast has a hydraulic lift of 600 kg.",
        ". The Gap is 1.8 m wide.",
    ] {
        assert!(said.contains(words), "{words}: {said}");
    }
    // Whoever changes it finds it as it stands in the file.
    assert!(told(&text).values().any(|value| value.key.ends_with(".name") && value.typed == "The Beast"));
}

#[test]
fn no_figure_of_a_manual_is_offered_and_the_help_tells_how_to_type_ones_own() {
    let lift = |text: &str| {
        let all = told(text);
        let lifts = crate::LiftFigure::ALL.map(|figure| format!("loader.loader.{}", figure.key()));
        all.values().find(|value| lifts.contains(&value.key)).unwrap().clone()
    };
    let text = starter(&Answers::usual(System::Metric));
    let none = lift(&text);
    let offers_nothing = |value: &Value| {
        let steps = [&value.less, &value.more];
        assert!(value.choices.is_empty() && value.units.is_empty() && steps == [&None, &None], "{value:?}");
    };
    offers_nothing(&none);
    for figure in crate::LiftFigure::ALL {
        let name = figure.words();
        assert!(none.help.contains("the machine's manual") && none.help.contains(name), "{}", none.help);
        let edit = crate::Edit::Set { key: none.key.clone(), value: format!("{name} 520 kg") };
        let given = lift(&crate::edited(&text, &[edit]).unwrap());
        offers_nothing(&given);
        assert_eq!((given.key.ends_with(figure.key()), given.words.as_str()), (true, "520 kg"));
        assert!(given.help.contains(&format!("taken as the {name}")), "{}", given.help);
    }
}

#[test]
fn a_width_is_stepped_only_where_the_machine_still_goes_through() {
    let step = |machine: &str, gate: &str| {
        let text = starter(&Answers { gate: Some(gate.into()), ..Answers::usual(System::Metric) });
        let text = text.replace("# width = \"1.2 m\"", &format!("width = \"{machine}\""));
        let all = told(&text);
        let of = |key: &str| all.values().find(|value| value.key == key).unwrap().clone();
        (of("loader.loader.width").more, of("pass.gate.width").less)
    };
    let some = |text: &str| Some(text.to_owned());
    assert_eq!(step("1.2 m", "1.3 m"), (some("1.3 m"), some("1.2 m")));
    assert_eq!(step("1.25 m", "1.3 m"), (some("1.3 m"), None));
    assert_eq!(step("1.21 m", "1.29 m"), (None, None));
    assert_eq!(step("2.3 m", "2.45 m"), (some("2.4 m"), some("2.4 m")));
}

#[test]
fn room_is_one_value_where_all_zones_have_the_same() {
    let room = |name: &str| {
        let (_, text) = shipped().iter().find(|(known, _)| *known == name).unwrap();
        let sentence = JobFile::of_text(text, name, Texts::shipped()).unwrap().sentence(None, None);
        let value = sentence.values().find(|value| value.key == "room").cloned();
        assert!(sentence.further.iter().all(|further| value.is_none() || !further.key.ends_with(".room")));
        value.map(|value| (value.typed, value.usual, value.less, value.more))
    };
    assert_eq!(room("orchard-rows"), Some(("4".into(), false, Some("3".into()), Some("5".into()))));
    assert_eq!(room("allotment-barrow"), Some(("1".into(), false, None, Some("2".into()))));
    assert_eq!(room("round-pen"), Some(("no limit".into(), true, None, None)));
    assert_eq!(room("market-garden-paths"), None);
}
