//! What can be asked, and of what.

use crate::job::{Job, Named};
use crate::refused::Refused;
use reports::QUESTIONS;
use reports::ask::{AnyOpt, FileWanted, Question};
use scenarios::{JobFile, Selection, Texts, shipped, shipped_files};
use serde_json::{Value, json};

/// All of it.
pub(crate) fn about() -> Result<String, Refused> {
    let all = json!({
        "version": env!("CARGO_PKG_VERSION"),
        "questions": QUESTIONS.iter().copied().map(question).collect::<Vec<_>>(),
        "shipped": shipped().iter().map(|(name, text)| scenario(name, text)).collect::<Result<Vec<_>, _>>()?,
        "lists": shipped_files().iter().filter(|(name, _)| name.ends_with("buckets.csv")).map(named).collect::<Vec<_>>(),
    });
    Ok(all.to_string())
}

fn question(question: &Question) -> Value {
    json!({
        "name": question.name,
        "about": question.about,
        "files": question.files.iter().map(file).collect::<Vec<_>>(),
        "options": question.options().map(option).collect::<Vec<_>>(),
        "folder": question.folder.map(|folder| json!({ "name": folder.name, "files": folder.files })),
    })
}

fn file(file: &FileWanted) -> Value {
    json!({ "name": file.name, "value": file.value, "help": file.help, "repeated": file.is_repeated, "list": file.is_list })
}

fn option(option: &dyn AnyOpt) -> Value {
    let about = option.about();
    json!({
        "name": about.name,
        "value": about.value,
        "help": about.help,
        "default": about.default,
        "words": about.words,
        "repeated": about.is_repeated,
        "required": about.is_required,
        "conflicts": about.conflicts,
        "requires": about.requires,
    })
}

/// A shipped scenario with its title and the files that it names.
fn scenario(name: &str, text: &str) -> Result<Value, Refused> {
    let name = format!("{name}.toml");
    let scenario = JobFile::of_text(text, &name, Texts::shipped())?.scenario(&Selection::default())?;
    let is_named = |file: &str| scenario.observed_files.iter().any(|named| named.to_str() == Some(file));
    let files = shipped_files().iter().filter(|(file, _)| is_named(file));
    let files =
        files.map(|(name, text)| Named { name: (*name).to_owned(), text: (*text).to_owned() }).collect();
    let mut all = json!(Job { name, text: text.to_owned(), files });
    all["title"] = scenario.title.into();
    Ok(all)
}

fn named((name, text): &(&str, &str)) -> Value {
    json!({ "name": name, "text": text })
}
