//! What the tests of this crate share.

use crate::{Refusal, Scenario, Selection, Texts, Weight, read_text};

/// A small job without a fault.
pub(crate) const SOUND: &str = r#"[material]
name = "wood chips, green"
[[zone]]
name = "north"
volume = "10 yd3"
distance = "20 yd"
[[stockpile]]
name = "pile"
on_hand = "12 yd3"
[[loader]]
name = "tractor"
heaped = "14 ft3"
[[raker]]
name = "helper"
"#;

/// The small job with lines exchanged.
pub(crate) fn changed(changes: &[(&str, &str)]) -> String {
    let mut text = SOUND.to_owned();
    for (old, new) in changes {
        assert!(text.contains(old), "{old} is not in the job");
        text = text.replace(old, new);
    }
    text
}

/// Reads a text that names no files.
pub(crate) fn read(text: &str) -> Result<Scenario, Refusal> {
    read_text(text, "job.toml", Texts::default(), &Selection::default())
}

/// Reads a text that must be accepted.
#[track_caller]
pub(crate) fn accepted(text: &str) -> Scenario {
    read(text).unwrap_or_else(|refusal| panic!("{refusal}"))
}

/// The small job with lines exchanged, accepted.
#[track_caller]
pub(crate) fn made(changes: &[(&str, &str)]) -> Scenario {
    accepted(&changed(changes))
}

/// What is said of a text that must be refused, one line a problem.
#[track_caller]
pub(crate) fn refused(text: &str) -> Vec<String> {
    match read(text) {
        Ok(_) => panic!("this is accepted:\n{text}"),
        Err(refusal) => refusal.problems.iter().map(ToString::to_string).collect(),
    }
}

/// The one problem of the small job with lines exchanged contains all of these words.
#[track_caller]
pub(crate) fn refused_with(changes: &[(&str, &str)], words: &[&str]) {
    let said = refused(&changed(changes));
    assert_eq!(said.len(), 1, "{said:#?}");
    for word in words {
        assert!(said[0].contains(word), "\"{word}\" is not in: {}", said[0]);
    }
}

/// The warnings of a scenario by kind.
pub(crate) fn warnings(scenario: &Scenario) -> Vec<&'static str> {
    let doubtful = scenario.cautions.iter().filter(|caution| caution.weight == Weight::Warning);
    doubtful.map(|caution| caution.kind).collect()
}

/// The words of the assumption about a key.
#[track_caller]
pub(crate) fn assumed<'s>(scenario: &'s Scenario, key: &str) -> &'s str {
    let found = scenario.assumptions.iter().find(|assumption| assumption.key == key);
    found.map_or_else(|| panic!("nothing is assumed about {key}"), |assumption| &assumption.words)
}
