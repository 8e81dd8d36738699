//! Every question can be asked without the terminal, as a page in a browser does: text in, documents out, and they are those of the
//! program, byte for byte.

use crate::program::{Bench, names};
use reports::QUESTIONS;
use reports::answer::RunRows;
use reports::ask::{Asked, Question, Reader};
use scenarios::{BucketList, JobFile, Refusal, Texts, shipped, shipped_files};
use std::fs;
use std::path::Path;

const JOB: &str = "riding-arena.toml";
const LIST: &str = "arena-buckets.csv";

/// The shipped files, in memory.
struct Memory;

impl Reader for Memory {
    fn job(&self, file: &Path) -> Result<JobFile, Refusal> {
        let name = file.to_str().unwrap();
        let found = shipped().iter().find(|(shipped, _)| *shipped == name.trim_end_matches(".toml"));
        JobFile::of_text(found.unwrap().1, name, Texts::shipped())
    }

    fn buckets(&self, file: &Path) -> Result<BucketList, Refusal> {
        scenarios::buckets_text(list(), file.to_str().unwrap())
    }
}

fn list() -> &'static str {
    shipped_files().iter().find(|(name, _)| *name == LIST).unwrap().1
}

fn bench() -> Bench {
    let bench = Bench::empty();
    let arena = shipped().iter().find(|(name, _)| *name == "riding-arena").unwrap().1;
    fs::write(bench.path(JOB), arena).unwrap();
    fs::write(bench.path(LIST), list()).unwrap();
    bench
}

/// The files of a question, and the options without which it would not be answered or would take long.
fn typed(question: &Question) -> (Vec<&'static str>, Vec<(&'static str, &'static str)>) {
    let files = question.files.iter().map(|file| if file.is_list { LIST } else { JOB });
    let value = |name: &str| match name {
        "vary" => Some("rakers 1..2"),
        "runs" => Some("300"),
        "most" => Some("600"),
        "change" => Some("rakers = 2"),
        _ => None,
    };
    let names = question.options().map(|option| option.about().name);
    (files.collect(), names.filter_map(|name| Some((name, value(name)?))).collect())
}

#[test]
fn every_question_gives_the_same_documents_with_and_without_the_terminal() {
    let bench = bench();
    for question in QUESTIONS {
        let (files, options) = typed(question);
        let asked = Asked::new(question, files.iter().copied(), options.iter().copied()).unwrap();
        let answer = question.prepare(&asked, &Memory).unwrap().run(&|_| ()).unwrap();

        let options = options.iter().flat_map(|(name, text)| [format!("--{name}"), (*text).to_owned()]);
        let words: Vec<String> =
            [question.name].into_iter().chain(files).map(str::to_owned).chain(options).collect();
        let program = |more: &str| bench.heapcast(words.iter().map(String::as_str).chain([more]));
        let (quiet, json) = (program("--quiet"), program("--json"));
        assert_eq!((quiet.code, quiet.err.as_str()), (Some(0), ""), "{}", question.name);
        assert_eq!(quiet.out, answer.headline() + "\n", "{}", question.name);
        assert!(json.out.as_bytes() == answer.json().unwrap(), "{}: other JSON", question.name);

        let mut made = answer.files(RunRows { most: 10_000, compress: false }).unwrap();
        made.sort_by_key(|document| document.name);
        let Some(folder) = question.folder else {
            assert!(made.is_empty(), "{}", question.name);
            continue;
        };
        let in_folder = names(&bench.path(folder.name));
        let written = in_folder.iter().filter(|name| *name != "heapcast.manifest.json");
        assert_eq!(
            made.iter().map(|document| document.name).collect::<Vec<_>>(),
            written.collect::<Vec<_>>(),
            "{}",
            question.name
        );
        for document in made {
            assert!(folder.files.contains(&document.name), "{} of {}", document.name, question.name);
            let written = fs::read(bench.path(folder.name).join(document.name)).unwrap();
            assert!(written == document.bytes, "{} of {} differs", document.name, question.name);
        }
    }
}

#[test]
fn what_there_is_to_do_is_told_before_it_is_done() {
    for question in QUESTIONS {
        let (files, options) = typed(question);
        let asked = Asked::new(question, files, options).unwrap();
        let prepared = question.prepare(&asked, &Memory).unwrap();
        let Some(load) = prepared.load() else {
            assert!(question.folder.is_none(), "{} has runs", question.name);
            continue;
        };
        assert!(!load.plans.is_empty() && load.least > 0.0, "{}", question.name);
        let (least, most, in_all) = (load.least, load.most, load.in_all);
        let made = std::sync::atomic::AtomicU64::new(0);
        let count = |runs: u32| _ = made.fetch_add(runs.into(), std::sync::atomic::Ordering::Relaxed);
        prepared.run(&count).unwrap();
        let made = made.into_inner() as f64;
        match question.name {
            "sweep" | "quote" | "replay" => assert_eq!(in_all, Some(made as u64), "{}", question.name),
            // Improvements are tried until they are known well enough, beginning with two thirds of the runs of the job.
            _ => assert!(made > 0.0 && made <= 1.5 * most, "{}: {made}, {least} to {most}", question.name),
        }
        assert!(in_all.is_none_or(|all| all as f64 == most), "{}", question.name);
    }
}
