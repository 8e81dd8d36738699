//! The output folder: an old report stays whole until the new one is complete, whatever goes wrong.

use crate::program::{Bench, names};
use sha2::{Digest, Sha256};
use std::fs;
use std::path::Path;
use std::process::{Child, Command, Stdio};
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

/// Starts a command that takes long, and waits until it has begun.
fn started(bench: &Bench, set_up: impl FnOnce(&mut Command) -> &mut Command) -> Child {
    let mut command = bench.command();
    let mut child =
        set_up(&mut command).stdout(Stdio::null()).stderr(Stdio::null()).spawn().expect("heapcast");
    // The workplace shows that the folder has been looked at and the runs have begun.
    let deadline = Instant::now() + Duration::from_secs(20);
    while !bench.entries().iter().any(|name| name.starts_with(".heapcast-")) {
        assert!(Instant::now() < deadline && child.try_wait().expect("a child").is_none(), "it never began");
        std::thread::sleep(Duration::from_millis(5));
    }
    std::thread::sleep(Duration::from_millis(100));
    child
}

fn signal(child: &Child, name: &str) {
    let status = Command::new("kill").args([&format!("-{name}"), &child.id().to_string()]).status();
    assert!(status.expect("kill").success());
}

/// Whether this process ignores the signal, as its own record says; `false` where there is no such record.
fn is_ignored(signal: i32) -> bool {
    let status = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let mask = status.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    mask.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok())
        .is_some_and(|m| m >> (signal - 1) & 1 == 1)
}

/// Some 6000 million loads: minutes on any machine.
const LONG: [&str; 8] = [
    "forecast",
    "job.toml",
    "--runs",
    "1000000",
    "--change",
    "zone.north.volume = 4000 yd3",
    "--change",
    "stockpile.pile.on_hand = 4100 yd3",
];

#[test]
fn every_signal_has_its_own_exit_code_and_leaves_the_old_report_whole_and_nothing_behind() {
    let bench = reported();
    let before = content(&bench, "forecast");
    let all = [("HUP", 129), ("INT", 130), ("QUIT", 131), ("TERM", 143), ("USR1", 138)];
    // What this very test was told to ignore (nohup, a job in the background), the program ignores too.
    let heard: Vec<(&str, i32)> = all.into_iter().filter(|(_, code)| !is_ignored(code - 128)).collect();
    assert!(heard.len() >= 2, "nearly all signals are ignored here");
    for (name, code) in heard {
        let mut child = started(&bench, |command| command.args(LONG));
        signal(&child, name);
        assert_eq!(child.wait().expect("an end").code(), Some(code), "{name}");
        assert_eq!(content(&bench, "forecast"), before, "{name}");
        assert_eq!(bench.entries(), ["forecast", "job.toml"], "{name}");
    }
}

#[test]
fn a_new_folder_that_is_stopped_is_never_seen() {
    let bench = Bench::with_job();
    let mut child = started(&bench, |command| command.args(LONG).args(["--out", "new/one"]));
    signal(&child, "TERM");
    assert_eq!(child.wait().expect("an end").code(), Some(143));
    assert_eq!(bench.entries(), ["job.toml"]);
}

/// A process's own record of the signals it ignores is what is read, which is Linux's.
#[cfg(target_os = "linux")]
#[test]
fn a_signal_that_was_ignored_from_the_start_stays_ignored() {
    let bench = Bench::with_job();
    let shell = "trap '' HUP INT; exec \"$0\" forecast job.toml --runs 300000 --quiet";
    let mut command = Command::new("sh");
    command.args(["-c", shell, env!("CARGO_BIN_EXE_heapcast")]).current_dir(bench.folder());
    let mut child = started(&bench, |unused| {
        *unused = command;
        unused
    });
    signal(&child, "HUP");
    signal(&child, "INT");
    std::thread::sleep(Duration::from_millis(100));
    assert!(child.try_wait().expect("a child").is_none(), "it goes on");
    signal(&child, "TERM");
    assert_eq!(child.wait().expect("an end").code(), Some(143), "the others still end it");
    assert_eq!(bench.entries(), ["job.toml"]);
}

#[test]
fn a_second_writer_is_told_to_wait() {
    let bench = reported();
    let before = content(&bench, "forecast");
    let mut child = started(&bench, |command| command.args(LONG));
    let said = bench.heapcast(["forecast", "job.toml", "--runs", "50"]);
    assert_eq!(said.code, Some(1));
    assert!(said.err.contains("another heapcast is writing to forecast"), "{}", said.err);
    signal(&child, "INT");
    child.wait().expect("an end");
    assert_eq!(content(&bench, "forecast"), before);
}

/// Whether all that the folder's manifest lists stands there as it was written.
fn is_whole(folder: &Path) -> bool {
    let manifest = fs::read(folder.join("heapcast.manifest.json")).expect("a manifest");
    let manifest: serde_json::Value = serde_json::from_slice(&manifest).expect("JSON");
    let files = manifest["files"].as_object().expect("files");
    assert!(files.len() > 5);
    files.iter().all(|(name, hash)| {
        let bytes = fs::read(folder.join(name)).expect("a file");
        let found: String = Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect();
        Some(found.as_str()) == hash.as_str()
    })
}

#[test]
fn killed_outright_at_any_moment_the_folder_is_old_or_new_and_the_next_run_tidies_up() {
    let bench = reported();
    fs::remove_file(bench.path("forecast/notes.txt")).expect("notes.txt");
    let typed = ["forecast", "job.toml", "--quiet", "--runs"];
    let begun = Instant::now();
    assert_eq!(bench.heapcast(typed.into_iter().chain(["400"])).code, Some(0));
    let takes = begun.elapsed();
    for part in 0..12_u32 {
        let runs = (400 + part).to_string();
        let mut command = bench.command();
        let mut child = command.args(typed).arg(runs).stdout(Stdio::null()).spawn().expect("heapcast");
        std::thread::sleep(takes * (part + 4) / 14);
        child.kill().expect("a kill");
        child.wait().expect("an end");
        assert!(is_whole(&bench.path("forecast")), "part {part}");
    }
    fs::write(bench.path("forecast/notes.txt"), "mine").expect("notes.txt");
    assert_eq!(bench.heapcast(typed.into_iter().chain(["60"])).code, Some(0));
    assert!(is_whole(&bench.path("forecast")));
    assert_eq!(bench.read("forecast/notes.txt"), "mine");
    assert_eq!(bench.entries(), ["forecast", "job.toml"], "nothing is left of those killed");
}

/// So many runs that they would take far longer than is waited.
fn refused_at_once(bench: &Bench, typed: &[&str]) -> String {
    let begun = Instant::now();
    let said = bench.heapcast(typed.iter().copied());
    assert_eq!(said.code, Some(2), "{typed:?}: {}", said.err);
    assert!(begun.elapsed() < Duration::from_secs(5), "{typed:?}: before any run is made");
    assert!(said.err.contains("--out") && said.err.contains("nothing was written"), "{}", said.err);
    assert_eq!(said.out, "");
    said.err
}

#[test]
fn a_persons_files_of_the_same_names_are_never_replaced() {
    let bench = Bench::with_job();
    for name in ["report.html", "runs.csv", "summary.json", "heapcast.manifest.json"] {
        fs::write(bench.path(name), "mine").expect("a file");
        let err = refused_at_once(&bench, &[&LONG[..], &["--out", "."]].concat());
        assert!(err.contains(name) && err.contains("not written by heapcast"), "{err}");
        assert_eq!(bench.read(name), "mine");
        fs::remove_file(bench.path(name)).expect("a file");
    }
    fs::create_dir(bench.path("sweep")).expect("a folder");
    fs::write(bench.path("sweep/cost.svg"), "a drawing of mine").expect("cost.svg");
    let err = refused_at_once(&bench, &["sweep", "job.toml", "--vary", "rakers 1..2", "--runs", "1000000"]);
    assert!(err.contains("cost.svg") && err.contains("--out sweep-2"), "{err}");
    assert_eq!(bench.read("sweep/cost.svg"), "a drawing of mine");
    assert_eq!(names(&bench.path("sweep")), ["cost.svg"]);
}

#[test]
fn a_file_changed_by_hand_is_never_replaced() {
    let bench = reported();
    fs::write(bench.path("forecast/percentiles.csv"), "with my own column").expect("a file");
    let err = refused_at_once(&bench, &LONG);
    assert!(err.contains("changed after heapcast wrote it") && err.contains("--out forecast-2"), "{err}");
    assert_eq!(bench.read("forecast/percentiles.csv"), "with my own column");
}

#[test]
fn what_a_command_reads_it_never_replaces() {
    let bench = Bench::with_job();
    fs::rename(bench.path("job.toml"), bench.path("summary.json")).expect("a scenario of an odd name");
    let text = bench.read("summary.json");
    for command in ["forecast", "quote", "compare", "replay"] {
        let said = bench.heapcast([command, "summary.json", "--out", "."]);
        if said.err.contains("is read by this command") {
            assert_eq!(said.code, Some(2));
        } else {
            // A replay writes no summary.json; neither a quote nor a comparison can be made of this job.
            assert!(["replay", "quote", "compare"].contains(&command), "{command}: {}", said.err);
        }
        assert_eq!(bench.read("summary.json"), text, "{command}");
    }
    fs::create_dir(bench.path("measured")).expect("a folder");
    fs::rename(bench.path("summary.json"), bench.path("measured/job.toml")).expect("a scenario");
    fs::write(bench.path("measured/runs.csv"), "loading\n20\n22\n25\n").expect("observed times");
    let observed = format!(
        "{}\n",
        text.replace(
            "heaped = \"18 ft3\"",
            "heaped = \"18 ft3\"\nloading = { family = \"observed\", file = \"runs.csv\", column = \"loading\", unit = \"s\" }"
        )
    );
    fs::write(bench.path("measured/job.toml"), observed).expect("a scenario");
    let err =
        refused_at_once(&bench, &["forecast", "measured/job.toml", "--out", "measured", "--runs", "1000000"]);
    assert!(err.contains("runs.csv is read by this command"), "{err}");
    assert!(bench.read("measured/runs.csv").starts_with("loading"));
}

#[cfg(unix)]
#[test]
fn a_read_only_folder_is_left_as_it_is() {
    use std::os::unix::fs::PermissionsExt;
    let bench = reported();
    let before = content(&bench, "forecast");
    let mode = |mode| fs::set_permissions(bench.path("forecast"), fs::Permissions::from_mode(mode));
    mode(0o500).expect("a mode");
    // To the administrator no folder is read-only.
    if fs::write(bench.path("forecast/probe"), "").is_ok() {
        fs::remove_file(bench.path("forecast/probe")).expect("probe");
        mode(0o700).expect("a mode");
        return;
    }
    let said = bench.heapcast(LONG);
    assert_eq!(said.code, Some(1), "{}", said.err);
    assert!(said.err.contains("cannot write in forecast"), "{}", said.err);
    mode(0o700).expect("a mode");
    assert_eq!(content(&bench, "forecast"), before);
}

#[test]
fn a_new_scenario_never_replaces_a_file_nor_what_a_link_leads_to() {
    let bench = Bench::with_job();
    let before = bench.read("job.toml");
    let said = bench.heapcast(["new", "job.toml"]);
    assert_eq!((said.code, bench.read("job.toml")), (Some(1), before));
    assert!(said.err.contains("is there already"), "{}", said.err);
    #[cfg(unix)]
    {
        std::os::unix::fs::symlink("elsewhere.toml", bench.path("link.toml")).expect("a link");
        assert_eq!(bench.heapcast(["new", "link.toml"]).code, Some(1));
        assert!(!bench.path("elsewhere.toml").exists());
    }
}
