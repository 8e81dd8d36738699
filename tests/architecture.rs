//! The floors of the house: arrows point down only, and each thing stays on its own floor.

use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn metadata() -> cargo_metadata::Metadata {
    let mut command = cargo_metadata::MetadataCommand::new();
    command
        .manifest_path(root().join("Cargo.toml"))
        .no_deps()
        .other_options(["--offline".to_owned()])
        .exec()
        .unwrap()
}

/// What a member of the workspace depends on, from `cargo metadata`: all of it, and the workspace's own crates, tests and benches
/// included.
fn dependencies(package: &str) -> (Vec<String>, Vec<String>) {
    let metadata = metadata();
    let members: Vec<&str> = metadata.packages.iter().map(|p| p.name.as_str()).collect();
    let own = metadata.packages.iter().find(|p| p.name.as_str() == package).unwrap();
    let is_normal = |d: &&cargo_metadata::Dependency| d.kind == cargo_metadata::DependencyKind::Normal;
    let all = own.dependencies.iter().filter(is_normal).map(|d| d.name.clone()).collect();
    let names = own.dependencies.iter().map(|d| d.name.clone());
    let mut below: Vec<String> = names.filter(|name| members.contains(&name.as_str())).collect();
    below.sort();
    below.dedup();
    (all, below)
}

#[test]
fn arrows_point_from_the_terminal_and_the_page_to_reports_to_scenarios_to_sim_and_never_back() {
    assert_eq!(dependencies("heapcast-sim").1, Vec::<String>::new());
    assert_eq!(dependencies("heapcast-site").1, Vec::<String>::new());
    assert_eq!(dependencies("heapcast-scenarios").1, ["heapcast-sim"]);
    assert_eq!(dependencies("heapcast-reports").1, ["heapcast-scenarios", "heapcast-sim"]);
    assert_eq!(dependencies("heapcast-page").1, ["heapcast-reports", "heapcast-scenarios"]);
    // What is of the place is asked by the evidence alone so far.
    let of_terminal = ["heapcast-reports", "heapcast-scenarios", "heapcast-sim", "heapcast-site"];
    assert_eq!(dependencies("heapcast").1, of_terminal);
    assert!(!dependencies("heapcast").0.contains(&"heapcast-site".to_owned()));
}

#[test]
fn only_the_terminal_knows_arguments_prompts_progress_and_signals() {
    let of_a_terminal = [
        "anstream",
        "clap",
        "crossterm",
        "ctrlc",
        "dialoguer",
        "indicatif",
        "rustix",
        "signal-hook",
        "terminal_size",
    ];
    for library in
        ["heapcast-sim", "heapcast-site", "heapcast-scenarios", "heapcast-reports", "heapcast-page"]
    {
        let all = dependencies(library).0;
        assert!(!all.is_empty(), "{library} depends on nothing");
        for name in &all {
            assert!(!of_a_terminal.contains(&name.as_str()), "{library} depends on {name}");
        }
    }
    assert!(dependencies("heapcast").0.contains(&"clap".to_owned()));
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

/// The code of a crate, its tests left out.
fn code(folder: &str) -> Vec<(PathBuf, String)> {
    let of_tests = ["tests.rs", "testing.rs", "preview.rs"];
    let is_code = |path: &PathBuf| !of_tests.iter().any(|name| path.ends_with(name));
    let files: Vec<PathBuf> = rust_files(&root().join(folder)).into_iter().filter(is_code).collect();
    assert!(files.len() > 5, "only {} files were found in {folder}", files.len());
    let inside = regex::Regex::new(r"#\[cfg\(test\)\]\nmod \w+ \{").unwrap();
    let before_tests = |path: PathBuf| {
        let text = fs::read_to_string(&path).unwrap();
        let end = inside.find(&text).map_or(text.len(), |tests| tests.start());
        (path, text[..end].to_owned())
    };
    files.into_iter().map(before_tests).collect()
}

#[test]
fn the_libraries_know_no_files_no_threads_no_printing_no_clock_and_no_environment() {
    let of_a_system = [
        "std::fs",
        "std::thread",
        "std::env",
        "std::process",
        "std::net",
        "Instant",
        "SystemTime",
        "println!",
        "eprintln!",
    ];
    for folder in ["sim/src", "scenarios/site/src", "scenarios/src", "reports/src", "reports/page/src"] {
        for (file, text) in code(folder) {
            for word in of_a_system {
                assert!(!text.contains(word), "{} uses {word}", file.display());
            }
        }
    }
    for (file, text) in code("sim/src").into_iter().chain(code("scenarios/site/src")) {
        for word in ["std::io", "std::time", "HashMap", "HashSet"] {
            assert!(!text.contains(word), "{} uses {word}", file.display());
        }
    }
}

#[test]
fn no_question_knows_another_and_what_they_share_knows_none() {
    let questions: Vec<&str> = reports::QUESTIONS.iter().map(|question| question.name).collect();
    let shared = ["ask", "chart", "client_page", "crew_sheet", "findings", "render"];
    let home = root().join("reports/src");
    let mut seen = Vec::new();
    for (file, text) in code("reports/src") {
        let place = file.strip_prefix(&home).unwrap().components().next().unwrap();
        let place = place.as_os_str().to_str().unwrap().trim_end_matches(".rs").to_owned();
        if !questions.contains(&&*place) && !shared.contains(&&*place) {
            continue;
        }
        for question in questions.iter().filter(|question| **question != place) {
            // Most of what is said of a job is said of a forecast of it, and the crew's sheet is made from one.
            let allowed = ["findings", "crew_sheet"].contains(&&*place) && *question == "forecast";
            let path = regex::Regex::new(&format!(r"\bcrate::{question}\b|\bcrate::\{{[^}}]*\b{question}\b"))
                .unwrap();
            assert!(allowed || !path.is_match(&text), "{} knows {question}", file.display());
        }
        seen.push(place);
    }
    assert!(questions.iter().chain(&shared).all(|place| seen.iter().any(|s| s == place)), "{seen:?}");
}

#[test]
fn every_source_file_is_part_of_its_crate() {
    let page = ["reports/page/src", "reports/page/make/src"];
    let libraries = ["sim/src", "scenarios/site/src", "scenarios/src", "reports/src", "reports/terminal/src"];
    for folder in libraries.into_iter().chain(page) {
        let home = root().join(folder);
        for file in rust_files(&home) {
            let (above, stem) = (file.parent().unwrap(), file.file_stem().unwrap().to_str().unwrap());
            if above == home && ["lib", "main"].contains(&stem) {
                continue;
            }
            let (module, above) = match stem {
                "mod" => (above.file_name().unwrap().to_str().unwrap(), above.parent().unwrap()),
                stem => (stem, above),
            };
            let owners = [
                above.with_extension("rs"),
                above.join("mod.rs"),
                above.join("lib.rs"),
                above.join("main.rs"),
            ];
            let declared = format!("mod {module};");
            let is_declared = owners
                .iter()
                .filter_map(|owner| fs::read_to_string(owner).ok())
                .any(|text| text.contains(&declared));
            assert!(is_declared, "{} belongs to no module", file.display());
        }
    }
}

#[test]
fn the_simulation_with_its_tests_benches_and_examples_needs_nothing_outside_its_folder() {
    let home = root().join("sim").canonicalize().unwrap();
    let metadata = metadata();
    let own = metadata.packages.iter().find(|p| p.name.as_str() == "heapcast-sim").unwrap();
    let names: Vec<&str> = own.targets.iter().map(|target| target.name.as_str()).collect();
    assert!(["sim", "model", "engine", "memory"].iter().all(|name| names.contains(name)), "{names:?}");
    for target in &own.targets {
        assert!(target.src_path.starts_with(&home), "{} lies in {}", target.name, target.src_path);
    }
    let elsewhere = regex::Regex::new(r#"(?:#\[path = |include_str!\(|include!\()"([^"]+)""#).unwrap();
    for file in rust_files(&home) {
        for found in elsewhere.captures_iter(&fs::read_to_string(&file).unwrap()) {
            let path = file.parent().unwrap().join(&found[1]).canonicalize().unwrap();
            assert!(path.starts_with(&home), "{} takes {}", file.display(), path.display());
        }
    }
}

#[test]
fn the_evidence_asks_the_simulation_alone() {
    for file in
        ["tests/evidence", "tests/second_opinion"].iter().flat_map(|folder| rust_files(&root().join(folder)))
    {
        let text = fs::read_to_string(&file).unwrap();
        for above in ["scenarios::", "reports::"] {
            assert!(!text.contains(above), "{} uses {above}", file.display());
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
