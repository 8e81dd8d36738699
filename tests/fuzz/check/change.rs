//! A change, or a sweep, typed on the command line is made or refused in words.

use super::reading;
use scenarios::{Change, JobFile, Refusal, Selection, Texts, Variant, Vary};
use sim::Plan;
use std::sync::LazyLock;

/// A job with one or more of everything that can be changed, and without chance, so that it is quick to make.
const JOB: &str = r#"fill_order = "in turn"
spread = "none"
[material]
name = "wood chips, green"
[[zone]]
name = "north"
volume = "10 yd3"
ways = [ { from = "pile", distance = "20 yd", passes = [ "gate" ] } ]
room = 2
[[zone]]
name = "plot no. 4"
area = "40 m2"
depth = "10 cm"
distance = "15 m"
[[stockpile]]
name = "pile"
on_hand = "20 yd3"
[[pass]]
name = "gate"
width = "72 in"
[[loader]]
name = "compact tractor"
count = 2
heaped = "14 ft3"
hydraulic_lift = "1100 lb"
width = "58 in"
[[raker]]
name = "helper"
[shift]
start = "8:00"
[[alternative]]
name = "two helpers"
change = { "raker.helper.count" = 2 }
"#;

static FILE: LazyLock<JobFile> = LazyLock::new(|| {
    JobFile::of_text(JOB, reading::FILE, Texts::default()).unwrap_or_else(|r| panic!("{r}"))
});

/// Takes the text as changes, and as a sweep.
pub(crate) fn check(text: &str) {
    match text.parse::<Variant>() {
        Err(said) => in_words(&said),
        Ok(variant) => {
            reading::printable(&variant.label());
            for change in &variant.changes {
                assert_eq!(change.to_string().parse::<Change>().as_ref(), Ok(change), "typed again");
            }
            let alternative = (variant.changes.len() == 2).then(|| "two helpers".to_owned());
            let changes = variant.changes;
            match FILE.scenario(&Selection { alternative, changes: changes.clone(), units: None }) {
                Err(refusal) => refused(&refusal),
                Ok(scenario) => {
                    assert_eq!(scenario.changes, changes);
                    reading::accepted(&scenario, text);
                    assert_eq!(Plan::check(&scenario.job), Ok(()));
                }
            }
        }
    }
    match text.parse::<Vary>() {
        Err(said) => in_words(&said),
        Ok(vary) => {
            assert!((1..=40).contains(&vary.values.len()), "{vary:?}");
            match vary.scenarios(&FILE, &Selection::default()) {
                Err(refusal) => refused(&refusal),
                Ok(scenarios) => assert_eq!(scenarios.len(), vary.values.len()),
            }
        }
    }
}

fn in_words(said: &str) {
    assert!(!said.is_empty());
    reading::printable(said);
}

fn refused(refusal: &Refusal) {
    assert!(!refusal.problems.is_empty());
    refusal.problems.iter().for_each(|problem| reading::told(problem, JOB));
}
