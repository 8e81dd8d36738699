//! The output folder: an old report stays whole until the new one is complete, whatever goes wrong.

use crate::program::{Bench, names};
use std::fs;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Every file of a folder with its content.
fn content(bench: &Bench, folder: &str) -> Vec<(String, Vec<u8>)> {
    let path = bench.path(folder);
    names(&path).into_iter().map(|name| (name.clone(), fs::read(path.join(&name)).expect("a file"))).collect()
}

/// A bench with a report of 50 runs and a file that is not ours in the folder.
fn reported() -> Bench {
    let bench = Bench::with_job();
    let said = bench.heapcast(["forecast", "job.toml", "--runs", "50", "--quiet"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    fs::write(bench.path("forecast/notes.txt"), "mine").expect("notes.txt");
    bench
}

#[test]
fn a_second_report_replaces_the_first_and_leaves_the_rest() {
    let bench = reported();
    let before = content(&bench, "forecast");
    assert_eq!(bench.heapcast(["forecast", "job.toml", "--runs", "60", "--quiet"]).code, Some(0));
    let after = content(&bench, "forecast");
    assert_eq!(names(&bench.path("forecast")).len(), before.len());
    assert_ne!(before, after);
    assert_eq!(bench.read("forecast/notes.txt"), "mine");
    assert_eq!(bench.read("forecast/runs.csv").lines().count(), 61);
}

#[test]
fn a_bad_file_leaves_the_old_report_alone() {
    let bench = reported();
    let before = content(&bench, "forecast");
    fs::write(bench.path("bad.toml"), "title = 3\n").expect("bad.toml");
    assert_eq!(bench.heapcast(["forecast", "bad.toml"]).code, Some(2));
    assert_eq!(content(&bench, "forecast"), before);
}

#[test]
fn a_full_disk_leaves_the_old_report_whole() {
    let bench = reported();
    let before = content(&bench, "forecast");
    // No file may grow beyond 8 KiB (16 blocks of 512 bytes), and the signal that goes with it is ignored: as on a full
    // disk, writing fails half-way through runs.csv.
    let shell = "trap '' XFSZ; ulimit -f 16; exec \"$0\" forecast job.toml --runs 2000";
    let output = Command::new("sh")
        .args(["-c", shell, env!("CARGO_BIN_EXE_heapcast")])
        .current_dir(bench.folder())
        .output()
        .expect("sh");
    let err = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(1), "{err}");
    assert!(err.contains("cannot write") && err.contains("left as it was"), "{err}");
    assert_eq!(output.stdout, b"", "no result is told that was not written");
    assert_eq!(content(&bench, "forecast"), before);
}

#[test]
fn standard_output_that_cannot_be_written_is_a_failure() {
    let bench = Bench::with_job();
    let Ok(full) = fs::OpenOptions::new().write(true).open("/dev/full") else { return };
    let mut command = bench.command();
    let output = command
        .args(["forecast", "job.toml", "--runs", "50"])
        .stdout(full)
        .stderr(Stdio::piped())
        .output()
        .expect("heapcast");
    assert_eq!(output.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&output.stderr).contains("standard output"));
}

#[test]
fn a_folder_that_cannot_be_written_is_found_out_before_the_runs() {
    let bench = Bench::with_job();
    fs::write(bench.path("taken"), "a file").expect("taken");
    // So many runs that they would take far longer than this test may: the folder is looked at first.
    for out in ["taken", "taken/below", "/proc/heapcast"] {
        let started = Instant::now();
        let said = bench.heapcast(["forecast", "job.toml", "--runs", "1000000", "--out", out]);
        assert_eq!(said.code, Some(1), "{out}: {}", said.err);
        assert!(said.err.contains("--out"), "{out}: what to do is told: {}", said.err);
        assert!(started.elapsed() < Duration::from_secs(5), "{out}");
    }
    assert_eq!(bench.read("taken"), "a file");
    assert_eq!(bench.entries(), ["job.toml", "taken"]);
}

#[test]
fn a_folder_in_the_place_of_a_file_is_left_alone() {
    let bench = Bench::with_job();
    fs::create_dir_all(bench.path("forecast/runs.csv/precious")).expect("a folder");
    let said = bench.heapcast(["forecast", "job.toml", "--runs", "50"]);
    assert_eq!(said.code, Some(1));
    assert!(said.err.contains("runs.csv is a folder"), "{}", said.err);
    assert!(bench.path("forecast/runs.csv/precious").is_dir());
    assert_eq!(names(&bench.path("forecast")), ["runs.csv"]);
}

#[test]
fn a_run_that_is_stopped_leaves_the_old_report_whole() {
    let bench = reported();
    let before = content(&bench, "forecast");
    let mut command = bench.command();
    let mut child = command
        .args(["forecast", "job.toml", "--runs", "1000000"])
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .expect("heapcast");
    // The staging folder shows that the folder has been opened and the runs have begun.
    let is_staging = |name: &String| name.starts_with(".heapcast-");
    let deadline = Instant::now() + Duration::from_secs(20);
    while !names(&bench.path("forecast")).iter().any(is_staging) {
        assert!(Instant::now() < deadline && child.try_wait().expect("a child").is_none(), "it never began");
        std::thread::sleep(Duration::from_millis(5));
    }
    std::thread::sleep(Duration::from_millis(100));
    let stopped = Command::new("kill").args(["-INT", &child.id().to_string()]).status().expect("kill");
    assert!(stopped.success());
    assert_eq!(child.wait().expect("an end").code(), Some(130));
    assert_eq!(content(&bench, "forecast"), before, "nothing changed and no staging is left");
}

#[test]
fn a_new_folder_that_is_stopped_is_never_seen() {
    let bench = Bench::with_job();
    let mut command = bench.command();
    let mut child = command
        .args(["forecast", "job.toml", "--runs", "1000000", "--out", "new"])
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .expect("heapcast");
    let deadline = Instant::now() + Duration::from_secs(20);
    while bench.entries().len() < 2 {
        assert!(Instant::now() < deadline && child.try_wait().expect("a child").is_none(), "it never began");
        std::thread::sleep(Duration::from_millis(5));
    }
    std::thread::sleep(Duration::from_millis(100));
    assert!(Command::new("kill").args(["-TERM", &child.id().to_string()]).status().expect("kill").success());
    assert_eq!(child.wait().expect("an end").code(), Some(130));
    assert_eq!(bench.entries(), ["job.toml"]);
}
