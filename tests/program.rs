//! The program under test in a folder of its own.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// A small job with everything left out that may be.
pub(crate) const JOB: &str = r#"
[material]
name = "wood chips, green"

[[zone]]
name = "north"
volume = "10 yd3"
distance = "20 yd"
room = 2

[[stockpile]]
name = "pile"
on_hand = "12 yd3"

[[loader]]
name = "tractor"
heaped = "18 ft3"

[[raker]]
name = "helper"
"#;

/// A temporary folder to run the program in.
pub(crate) struct Bench(tempfile::TempDir);

/// What the program said and how it ended.
pub(crate) struct Said {
    pub(crate) out: String,
    pub(crate) err: String,
    pub(crate) code: Option<i32>,
}

impl Bench {
    pub(crate) fn empty() -> Self {
        Self(tempfile::tempdir().expect("a temporary folder"))
    }

    /// With [`JOB`] in `job.toml`.
    pub(crate) fn with_job() -> Self {
        let bench = Self::empty();
        fs::write(bench.path("job.toml"), JOB).expect("job.toml");
        bench
    }

    pub(crate) fn folder(&self) -> &Path {
        self.0.path()
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.0.path().join(name)
    }

    pub(crate) fn read(&self, name: &str) -> String {
        fs::read_to_string(self.path(name)).unwrap_or_else(|e| panic!("{name}: {e}"))
    }

    /// Names in the folder, in order.
    pub(crate) fn entries(&self) -> Vec<String> {
        names(self.folder())
    }

    pub(crate) fn heapcast<'a>(&self, typed: impl IntoIterator<Item = &'a str>) -> Said {
        self.run(|command| command.args(typed))
    }

    pub(crate) fn run(&self, set_up: impl FnOnce(&mut Command) -> &mut Command) -> Said {
        let mut command = self.command();
        let output = set_up(&mut command).output().expect("heapcast starts");
        let text = |bytes| String::from_utf8(bytes).expect("UTF-8");
        Said { out: text(output.stdout), err: text(output.stderr), code: output.status.code() }
    }

    pub(crate) fn command(&self) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_heapcast"));
        command.current_dir(self.folder()).env_remove("NO_COLOR").env_remove("CLICOLOR_FORCE");
        command
    }
}

/// Names in a folder, in order.
pub(crate) fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("a folder");
    let mut names: Vec<String> =
        entries.map(|e| e.expect("an entry").file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}
