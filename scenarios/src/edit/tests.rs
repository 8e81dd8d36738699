mod each;
mod follows;
mod whole;

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
