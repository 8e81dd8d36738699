//! A forecast whose runs are shared by several processes is the forecast made by one, byte for byte.

use crate::program::{Bench, names};
use std::fs;

/// A job in which every day and every load differs, so that no sum is a round number.
fn bench() -> Bench {
    let bench = Bench::with_job();
    let job = bench.read("job.toml") + "\n[shift]\nbreaks = [\"12:00-12:30\"]\n";
    fs::write(bench.path("job.toml"), job).unwrap();
    bench
}

/// Makes these parts of four at the same time, each in a process of its own.
fn make(bench: &Bench, parts: &[u32]) {
    std::thread::scope(|scope| {
        for part in parts {
            scope.spawn(move || {
                let (share, out) = (format!("{part}/4"), format!("parts/{part}"));
                let typed = ["forecast", "job.toml", "--runs", "1,100", "--part", &share, "--out", &out];
                let said = bench.heapcast(typed);
                assert_eq!((said.code, said.err.as_str()), (Some(0), ""), "{}", said.out);
                let words = format!(
                    "275 of 1100 runs are in {out}. When all parts are made, merge them with --merge.\n"
                );
                assert_eq!(said.out, words);
            });
        }
    });
}

#[test]
fn four_processes_make_the_same_files_as_one() {
    let bench = bench();
    make(&bench, &[3, 1, 4, 2]);
    let merged = ["parts/2", "parts/4", "parts/1", "parts/3"];
    let merged =
        bench.heapcast([["forecast", "job.toml", "--out", "merged", "--merge"].as_slice(), &merged].concat());
    assert_eq!((merged.code, merged.err.as_str()), (Some(0), ""));
    let whole = bench.heapcast(["forecast", "job.toml", "--runs", "1,100", "--out", "whole"]);
    assert_eq!(merged.out.replace("merged", "whole"), whole.out);
    let files = names(&bench.path("whole"));
    assert!(files.len() > 8, "{files:?}");
    assert_eq!(names(&bench.path("merged")), files);
    for file in files {
        let read = |folder: &str| fs::read(bench.path(folder).join(&file)).unwrap();
        assert!(read("merged") == read("whole"), "{file} differs");
    }
}

#[test]
fn parts_that_do_not_make_up_a_study_are_refused_and_nothing_is_written() {
    let bench = bench();
    make(&bench, &[1, 2, 3, 4]);
    let refused = |typed: &[&str]| {
        let said = bench.heapcast([["forecast", "job.toml", "--out", "merged"].as_slice(), typed].concat());
        assert_eq!((said.code, said.out.as_str()), (Some(2), ""), "{}", said.err);
        assert!(!bench.path("merged").exists());
        said.err
    };
    let says = |typed: &[&str], words: &str| {
        let err = refused(typed);
        assert!(err.split_whitespace().collect::<Vec<_>>().join(" ").contains(words), "{err}");
    };
    says(
        &["--merge", "parts/1", "parts/2", "parts/4"],
        "the parts cannot be merged: runs 550 to 824 are in no part",
    );
    says(&["--merge", "parts/1", "parts/2", "parts/3"], "runs 825 to 1099 are in no part");
    says(&["--merge", "parts/1", "parts/1"], "runs 0 to 274 are in more than one part");
    says(&["--change", "rakers = 2", "--merge", "parts/1"], "parts/1/runs.part: its runs are of another job");
    says(&["--merge", "parts/5"], "parts/5/runs.part: cannot be read");
    says(&["--merge", "parts/1", "--seed", "4"], "cannot be used with");
    says(&["--part", "5/4"], "write which part of how many, such as 2/4");
    let mut bytes = fs::read(bench.path("parts/2/runs.part")).unwrap();
    bytes[5_000] ^= 1;
    fs::write(bench.path("parts/2/runs.part"), bytes).unwrap();
    says(&["--merge", "parts/1", "parts/2"], "parts/2/runs.part: is damaged; make this part again");
    fs::write(bench.path("parts/2/runs.part"), "runs").unwrap();
    says(&["--merge", "parts/2"], "is not a part that this version of heapcast wrote");
}
