//! The floors of the house: arrows point down only, and each thing stays on its own floor.

use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// The workspace's own crates that a member depends on, from `cargo metadata`, tests and benches included.
fn floors_below(package: &str) -> Vec<String> {
    let metadata = cargo_metadata::MetadataCommand::new()
        .manifest_path(root().join("Cargo.toml"))
        .no_deps()
        .other_options(["--offline".to_owned()])
        .exec()
        .unwrap();
    let members: Vec<&str> = metadata.packages.iter().map(|p| p.name.as_str()).collect();
    let own = metadata.packages.iter().find(|p| p.name.as_str() == package).unwrap();
    let mut below: Vec<String> = own
        .dependencies
        .iter()
        .map(|d| d.name.clone())
        .filter(|name| members.contains(&name.as_str()))
        .collect();
    below.sort();
    below.dedup();
    below
}

#[test]
fn arrows_point_from_reports_to_scenarios_to_sim_and_never_back() {
    assert_eq!(floors_below("heapcast-sim"), Vec::<String>::new());
    assert_eq!(floors_below("heapcast-scenarios"), ["heapcast-sim"]);
    assert_eq!(floors_below("heapcast"), ["heapcast-scenarios", "heapcast-sim"]);
}

fn rust_files(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files.extend(rust_files(&path));
        } else if path.extension().is_some_and(|e| e == "rs") {
            files.push(path);
        }
    }
    files
}

#[test]
fn the_ground_knows_no_files_no_printing_and_no_clock() {
    let files = rust_files(&root().join("sim/src"));
    assert!(files.len() > 20, "only {} files were found", files.len());
    for file in files {
        let text = fs::read_to_string(&file).unwrap();
        for word in ["std::fs", "std::io", "std::env", "std::time", "println!", "eprintln!", "SystemTime"] {
            assert!(!text.contains(word), "{} uses {word}", file.display());
        }
    }
}

#[test]
fn the_top_of_the_house_holds_only_what_belongs_there() {
    let allowed =
        ["Cargo.toml", "Cargo.lock", "README.md", "DEVELOPERS.md", "LICENSE", "clippy.toml", "rustfmt.toml"];
    let folders = ["sim", "scenarios", "reports", "tests", "target"];
    // What the README's commands write here, and git ignores.
    let written = ["forecast", "replay", "sweep"];
    for entry in fs::read_dir(root()).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        let known =
            name.starts_with('.') || [&allowed[..], &folders, &written].iter().any(|l| l.contains(&&*name));
        assert!(known, "{name} does not belong at the top");
    }
}
