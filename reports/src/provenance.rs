//! What it takes to get the same answer again, and the command for it.

use scenarios::Scenario;
use std::path::Path;

/// What it takes to get the same answer again.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub struct Provenance {
    /// Version of heapcast.
    pub version: String,
    /// Seed of all random numbers.
    pub seed: u64,
    /// Runs made.
    pub runs: u32,
    /// The scenario file as typed.
    pub file: String,
    /// SHA-256 of what was read, in hexadecimal.
    pub scenario_hash: String,
    /// The named alternative chosen, if any.
    pub alternative: Option<String>,
    /// What else was changed, as typed, in this order.
    pub changes: Vec<String>,
    /// The command as typed, without folders of the machine.
    pub command: String,
}

impl Provenance {
    /// Of something made from a scenario.
    pub fn new(scenario: &Scenario, seed: u64, runs: u32, command: String) -> Self {
        Self {
            version: env!("CARGO_PKG_VERSION").to_owned(),
            seed,
            runs,
            file: scenario.file.clone(),
            scenario_hash: scenario.hash.clone(),
            alternative: scenario.alternative.clone(),
            changes: scenario.changes.iter().map(ToString::to_string).collect(),
            command,
        }
    }

    /// All of it in a line.
    pub fn words(&self) -> String {
        let hash = self.scenario_hash.get(..12).unwrap_or(&self.scenario_hash);
        let runs = scenarios::units::figure(f64::from(self.runs));
        let plural = if self.runs == 1 { "run" } else { "runs" };
        format!("heapcast {}, seed {}, {runs} {plural}, scenario {hash}", self.version, self.seed)
    }
}

/// How a person would type a command with its files and options: every word, quoted where it has to be.
pub fn typed(verb: &str, files: &[impl AsRef<Path>], flags: &[(&str, String)]) -> String {
    let mut words = vec!["heapcast".to_owned(), verb.to_owned()];
    words.extend(files.iter().map(|file| quoted(&file_name(file.as_ref()))));
    for (name, value) in flags {
        words.extend([format!("--{name}"), quoted(value)]);
    }
    words.join(" ")
}

/// A word as a shell takes it for one.
pub fn quoted(word: &str) -> String {
    let plain = |c: char| c.is_alphanumeric() || "-_.,:/%+@".contains(c);
    if !word.is_empty() && word.chars().all(plain) {
        word.to_owned()
    } else if word.contains(['"', '$', '`', '\\', '!']) {
        format!("'{}'", word.replace('\'', "'\\''"))
    } else {
        format!("\"{word}\"")
    }
}

/// Without the folders of the machine it was typed on.
fn file_name(file: &Path) -> String {
    let name = file
        .file_name()
        .map_or_else(|| file.display().to_string(), |name| name.to_string_lossy().into_owned());
    scenarios::escaped(&name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_shell_would_take_apart_is_quoted_and_no_folder_is_named() {
        let flags = [
            ("within", "$20".to_owned()),
            ("change", "zone.\"n\".room = 3".to_owned()),
            ("by", "3 pm".into()),
        ];
        let files = ["a.toml", "/somewhere/my job.toml"];
        assert_eq!(
            typed("compare", &files, &flags),
            "heapcast compare a.toml \"my job.toml\" --within '$20' --change 'zone.\"n\".room = 3' --by \"3 pm\""
        );
        assert_eq!(quoted("it's $5"), r"'it'\''s $5'");
    }
}
