//! What a command takes is said before it is spent, and refused where it is beyond all measure.

use crate::program::{Bench, JOB};
use std::fs;
use std::time::{Duration, Instant};

/// A job of some 90,000 loads a run by several loaders.
fn large() -> Bench {
    let bench = Bench::empty();
    let text = JOB.replace("10 yd3", "45000 yd3").replace("12 yd3", "46000 yd3");
    let text = text.replace("heaped", "count = 6\nheaped");
    fs::write(bench.path("job.toml"), text).expect("job.toml");
    bench
}

#[test]
fn hours_are_refused_within_seconds_with_what_would_be_allowed() {
    let bench = large();
    // On one thread, so that it is hours on a machine with many, too.
    let ways: [&[&str]; 3] = [
        &["forecast", "job.toml", "--runs", "1000000", "--threads", "1"],
        &["replay", "job.toml", "--runs", "1000000", "--threads", "1"],
        &["sweep", "job.toml", "--vary", "rakers 1..10", "--runs", "100000", "--threads", "1"],
    ];
    for typed in ways {
        let begun = Instant::now();
        let said = bench.heapcast(typed.iter().copied());
        assert_eq!(said.code, Some(2), "{typed:?}: {}", said.err);
        assert!(begun.elapsed() < Duration::from_secs(30), "{typed:?}");
        for told in ["--max-time allows 1 h", "ask for --runs", "nothing was written", "runs of about"] {
            assert!(said.err.contains(told), "{typed:?}: {}", said.err);
        }
        assert_eq!((said.out.as_str(), bench.entries()), ("", vec!["job.toml".to_owned()]));
    }
}

#[test]
fn a_job_of_very_many_loads_is_shown_in_bounded_files_in_reasonable_time() {
    let bench = large();
    let begun = Instant::now();
    let said = bench.heapcast(["forecast", "job.toml", "--runs", "3", "--quiet"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let took = begun.elapsed();
    assert!(took < Duration::from_secs(60), "{took:?}");
    for file in fs::read_dir(bench.path("forecast")).expect("a folder") {
        let file = file.expect("a file");
        let size = file.metadata().expect("a size").len();
        assert!(size < 3_000_000, "{}: {size} bytes", file.path().display());
    }
}

#[test]
fn a_limit_can_be_lowered_and_raised() {
    let bench = Bench::with_job();
    let typed = ["forecast", "job.toml", "--runs", "20000", "--quiet"];
    let said = bench.heapcast(typed.into_iter().chain(["--max-time", "0.001 s"]));
    assert_eq!(said.code, Some(2), "{}", said.err);
    let said = bench.heapcast(typed.into_iter().chain(["--max-size", "1 MB"]));
    assert!(said.code == Some(2) && said.err.contains("--max-size allows 1 MB"), "{}", said.err);
    assert_eq!(bench.heapcast(typed.into_iter().chain(["--max-time", "2 h"])).code, Some(0));
}
