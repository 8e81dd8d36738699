//! The text as a whole stays one that can be read.

use super::*;

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
