//! A question as a page asks it.

use crate::answered::Answered;
use crate::job::{Job, Memory, Named};
use crate::refused::Refused;
use reports::QUESTIONS;
use reports::ask::{Asked, Question};
use serde::Deserialize;
use std::path::PathBuf;
use std::sync::atomic::{AtomicU64, Ordering};

/// What is asked.
#[derive(Debug, Deserialize)]
struct Request {
    /// Name of the question.
    question: String,
    jobs: Vec<Job>,
    #[serde(default)]
    list: Option<Named>,
    /// Options and their values, as typed.
    #[serde(default)]
    options: Vec<(String, String)>,
}

/// Asks; `progress` is told how many runs are made and how many there will be, 0 where nobody knows.
pub(crate) fn ask(asked: &str, progress: &(dyn Fn(f64, f64) + Sync)) -> Result<Answered, Refused> {
    let request: Request = serde_json::from_str(asked)?;
    let question = QUESTIONS.iter().copied().find(|question| question.name == request.question);
    let question =
        question.ok_or_else(|| Refused::Message(format!("there is no question \"{}\"", request.question)))?;
    let memory = Memory::of(request.jobs, request.list);
    let asked = Asked::new(question, files(question, &memory), request.options)?;
    let prepared = question.prepare(&asked, &memory)?;
    let in_all = prepared.load().and_then(|load| load.in_all).unwrap_or(0) as f64;
    let made = AtomicU64::new(0);
    let count = |runs: u32| {
        let runs = u64::from(runs);
        progress((made.fetch_add(runs, Ordering::Relaxed) + runs) as f64, in_all);
    };
    let answer =
        prepared.run(&count).map_err(|failure| failure.in_file(&scenarios::shown_path(asked.file())))?;
    Ok(Answered::new(question, answer))
}

/// The files in the order of the question: its jobs, and a list where it takes one.
fn files(question: &Question, memory: &Memory) -> Vec<PathBuf> {
    let takes_list = question.files.iter().any(|file| file.is_list);
    memory.jobs().chain(memory.list().filter(|_| takes_list)).collect()
}
