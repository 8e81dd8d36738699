use super::*;
use crate::sentence::tests::jobs;
use crate::sentence::{Clause, Value};
use crate::units::System;
use crate::{JobFile, Knob, Selection, Sentence, Texts};

type Checked = Result<(), String>;

fn read(text: &str) -> Result<JobFile, String> {
    JobFile::of_text(text, "job.toml", Texts::shipped()).map_err(|refusal| refusal.to_string())
}

fn sentence(text: &str) -> Result<Sentence, String> {
    Ok(read(text)?.sentence(None, None))
}

fn job(text: &str) -> Result<sim::Job, String> {
    let scenario = read(text)?.scenario(&Selection::default());
    scenario.map(|scenario| scenario.job).map_err(|refusal| refusal.to_string())
}

fn set(key: &str, value: &str) -> Edit {
    Edit::Set { key: key.into(), value: value.into() }
}

fn done(text: &str, edit: &Edit) -> Result<String, String> {
    edited_with(text, std::slice::from_ref(edit), &Texts::shipped())
        .map_err(|fault| format!("{edit:?}: {fault}"))
}

fn ensure(holds: bool, about: impl FnOnce() -> String) -> Checked {
    if holds { Ok(()) } else { Err(about()) }
}

fn value_of<'s>(sentence: &'s Sentence, key: &str) -> Result<&'s Value, String> {
    sentence.values().find(|value| value.key == key).ok_or_else(|| "it is gone".to_owned())
}

/// How many lines of one text the other does not have.
fn lines_changed(one: &str, other: &str) -> usize {
    let left: Vec<&str> = other.lines().collect();
    one.lines().filter(|line| !left.contains(line)).count()
}

/// Tries something with every value of every job; everything that is wrong is told at once.
#[track_caller]
fn each_value(check: impl Fn(&str, &Value) -> Checked) {
    let mut wrong = Vec::new();
    for (name, text) in jobs() {
        for value in sentence(&text).unwrap().values() {
            let told = check(&text, value).map_err(|words| format!("{name}: {}: {words}", value.key));
            wrong.extend(told.err());
        }
    }
    assert!(wrong.is_empty(), "{} wrong:\n{}", wrong.len(), wrong.join("\n"));
}

#[track_caller]
fn each_clause(check: impl Fn(&str, &Clause) -> Checked) {
    let mut wrong = Vec::new();
    for (name, text) in jobs() {
        for clause in &sentence(&text).unwrap().clauses {
            let told = check(&text, clause)
                .map_err(|words| format!("{name}: {} {:?}: {words}", clause.kind, clause.name));
            wrong.extend(told.err());
        }
    }
    assert!(wrong.is_empty(), "{} wrong:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn a_value_set_to_what_it_is_changes_nothing() {
    each_value(|text, value| {
        let after = done(text, &set(&value.key, &value.typed))?;
        ensure(value.usual || after == text, || format!("{} is other text:\n{after}", value.typed))?;
        ensure(lines_changed(text, &after) <= 1, || after.clone())?;
        let told = sentence(&after)?;
        let words = &value_of(&told, &value.key)?.words;
        ensure(*words == value.words, || format!("{words}, not {}", value.words))
    });
}

#[test]
fn each_step_reads_without_a_problem_and_the_sentence_says_it() {
    each_value(|text, value| {
        for new in [&value.less, &value.more].into_iter().flatten() {
            let after = done(text, &set(&value.key, new))?;
            let told = sentence(&after).map_err(|words| format!("{} to {new}: {words}", value.typed))?;
            let now = value_of(&told, &value.key)?;
            ensure(now.typed == *new && now.words != value.words, || {
                format!("{new} is told as {} {}", now.typed, now.words)
            })?;
            // Struck follows heaped; who spreads follows who rakes.
            let most = if value.key == "rakers" || value.key.ends_with(".heaped") { 2 } else { 1 };
            ensure(lines_changed(text, &after) <= most, || after.clone())?;
        }
        Ok(())
    });
}

#[test]
fn each_choice_is_understood() {
    // What cannot be together with the rest of the job is told.
    let apart = [
        "hours",
        "break",
        "day ends",
        "get there",
        "fits through",
        "no loader",
        "would both be called",
        "begins after",
    ];
    each_value(|text, value| {
        if !["New job", "Riding arena", "Limestone"].iter().any(|title| text.contains(title)) {
            return Ok(());
        }
        value.choices.iter().try_for_each(|choice| match read(&done(text, &set(&value.key, choice))?) {
            Err(said) if !apart.iter().any(|words| said.contains(words)) => Err(format!("{choice}: {said}")),
            _ => Ok(()),
        })
    });
}

#[test]
fn a_value_unset_is_the_usual_one() {
    each_value(|text, value| {
        if value.key.ends_with(".name") && value.key != "material.name" {
            return Ok(());
        }
        let after = done(text, &Edit::Unset { key: value.key.clone() })?;
        let told = sentence(&after)?;
        let now = value_of(&told, &value.key).ok();
        let is_entry = value.key.starts_with("shift.breaks.");
        ensure(is_entry || now.is_none_or(|now| now.usual), || format!("{now:?}"))?;
        let same = !value.usual || now.map(|now| &now.words) == Some(&value.words);
        ensure(same, || format!("was usual, {}; is {now:?}", value.words))
    });
}

#[test]
fn what_is_added_can_be_removed_and_the_job_is_the_same() {
    each_clause(|text, clause| {
        let Some(add) = &clause.add else { return Ok(()) };
        let more = done(text, &Edit::Add { kind: add.kind.clone() })?;
        let was = job(text)?;
        let now = job(&more).map_err(|words| format!("{words}\n{more}"))?;
        ensure(now != was, || "nothing is added".into())?;
        let told = sentence(&more)?;
        let kind = add.kind.split('.').next().unwrap_or_default().to_owned();
        let removals = told.clauses.iter().filter(|clause| clause.can_remove);
        let mut names =
            removals.filter(|clause| clause.kind.trim_end_matches('s') == kind || clause.kind == kind);
        let back = names.any(|clause| {
            let name = clause.name.clone().unwrap_or_default();
            let less = done(&more, &Edit::Remove { kind: kind.clone(), name });
            less.and_then(|less| job(&less)).is_ok_and(|job| job == was)
        });
        // Whoever rakes alone is said by the number of people.
        let none = kind == "raker"
            && done(&more, &set("rakers", "0")).and_then(|less| job(&less)).is_ok_and(|job| job == was);
        ensure(back || none, || format!("it does not come back\n{more}"))
    });
}

#[test]
fn what_is_removed_leaves_nothing_that_names_it() {
    each_clause(|text, clause| {
        let Some(thing) = clause.name.clone().filter(|_| clause.can_remove) else { return Ok(()) };
        let kind = if clause.kind == "breaks" { "break" } else { clause.kind };
        let less = done(text, &Edit::Remove { kind: kind.into(), name: thing.clone() })?;
        read(&less).map_err(|words| format!("{words}\n{less}"))?;
        let values: String = less.lines().filter_map(|line| line.split('#').next()).collect();
        let is_named = !["delivery", "break"].contains(&kind) && values.contains(&format!("\"{thing}\""));
        ensure(!is_named, || less.clone())
    });
}

#[test]
fn the_trades_words_do_what_a_change_does() {
    for (name, text) in jobs() {
        for change in ["rakers = 3", "loaders = 2", "room = 2"] {
            let (key, value) = change.split_once(" = ").unwrap();
            let changes = vec![change.parse().unwrap()];
            let asked = Selection { changes, ..Selection::default() };
            let Ok(changed) = read(&text).unwrap().scenario(&asked) else { continue };
            assert_eq!(
                job(&done(&text, &set(key, value)).unwrap()).unwrap(),
                changed.job,
                "{name}: {change}"
            );
        }
        // These are written rounded.
        for (change, knob) in [("bucket = 0.5 m3", Knob::Bucket), ("haul = 60 m", Knob::Haul)] {
            let (key, value) = change.split_once(" = ").unwrap();
            let asked = Selection { changes: vec![change.parse().unwrap()], ..Selection::default() };
            let wanted = knob.of_job(&read(&text).unwrap().scenario(&asked).unwrap().job).unwrap();
            let made = knob.of_job(&job(&done(&text, &set(key, value)).unwrap()).unwrap()).unwrap();
            assert!((made - wanted).abs() < 0.005 * wanted, "{name}: {change}: {made}, not {wanted}");
        }
    }
}

#[test]
fn a_hostile_text_is_edited_or_refused_but_never_breaks() {
    let edits = [
        set("zone.ground.volume", "110 m2 at 10 cm"),
        set("zone.ground.name", "x \"y\" 'z' . \n"),
        set("material.name", "{ a = [ 1"),
        set("date", "]]"),
        set("crew.fatigue.loss", "5 %/h"),
        set("rakers", "0"),
        set("haul", "30 m"),
        Edit::Unset { key: "shift.breaks.1".into() },
        Edit::Add { kind: "zone".into() },
        Edit::Add { kind: "pass".into() },
        Edit::Add { kind: "delivery".into() },
        Edit::Add { kind: "break".into() },
        Edit::Add { kind: "raker".into() },
        Edit::Remove { kind: "pass".into(), name: "arena gate".into() },
        Edit::Remove { kind: "zone".into(), name: "far third".into() },
    ];
    let mut seed = 7_u64;
    let mut next = |below: usize| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) as usize % below.max(1)
    };
    let bits = [
        "[",
        "]",
        "{",
        "}",
        "\"",
        "'",
        "=",
        "\n",
        "#",
        ".",
        ",",
        "[[zone]]",
        "\"\"\"",
        "é\u{202e}",
        "ways = []",
        "count = 0\n",
    ];
    let all = jobs();
    for round in 0..140 {
        let mut text = all[round % all.len()].1.clone();
        for _ in 0..=next(3) {
            let boundary = |text: &str, from: usize| {
                (0..=from.min(text.len())).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0)
            };
            let at = boundary(&text, next(text.len()));
            let end = boundary(&text, at + next(12)).max(at);
            text.replace_range(at..end, bits[next(bits.len())]);
        }
        for edit in &edits {
            if let Ok(after) = done(&text, edit) {
                assert!(crate::document::parse(&after).is_ok(), "{edit:?}\n{text}");
            }
        }
        if let Ok(file) = read(&text) {
            let _ = file.sentence(Some(System::Us), None).words();
        }
    }
}

#[test]
fn lines_end_as_they_did() {
    for (name, text) in jobs() {
        let text = text.replace('\n', "\r\n");
        let edits = [
            Edit::Add { kind: "zone".into() },
            Edit::Add { kind: "pass".into() },
            set("shift.end", "18:00"),
            set("date", "2026-05-06"),
        ];
        for edit in edits {
            let after = done(&text, &edit).unwrap();
            assert_eq!(after.replace("\r\n", "").matches('\n').count(), 0, "{name} {edit:?}");
        }
    }
}

#[test]
fn names_with_dots_and_quotes_are_found_and_changed_wherever_they_stand() {
    let mut text = jobs().into_iter().find(|(name, _)| name == "riding-arena").unwrap().1;
    for (old, new) in [
        ("far third", "plot no. 4"),
        ("compact tractor", "Bob's 2.5 t one"),
        ("arena gate", "gate = 1"),
        ("gate pile", "größer\u{2019}s pile"),
    ] {
        let value = sentence(&text).unwrap();
        let value = value.values().find(|value| value.typed == old && value.key.ends_with(".name")).unwrap();
        text = done(&text, &set(&value.key, new)).unwrap();
        assert!(
            !text.lines().filter_map(|line| line.split('#').next()).any(|line| line.contains(old)),
            "{text}"
        );
    }
    let told = sentence(&text).unwrap();
    for value in told.values() {
        assert!(value.usual || done(&text, &set(&value.key, &value.typed)).unwrap() == text, "{}", value.key);
        for new in [&value.less, &value.more].into_iter().flatten() {
            assert!(read(&done(&text, &set(&value.key, new)).unwrap()).is_ok(), "{} = {new}", value.key);
        }
    }
}
