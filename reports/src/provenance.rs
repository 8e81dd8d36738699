//! The command that gives the same answer again.

use crate::cli::{JobArgs, LuckArgs};
use std::path::Path;

/// How a person would type it: every word, quoted where it has spaces.
pub fn command_line(verb: &str, job: &JobArgs, luck: &LuckArgs, more: &[(&str, String)]) -> String {
    let mut words = vec!["heapcast".to_owned(), verb.to_owned(), file_name(&job.file)];
    let mut flag = |name: &str, value: String| {
        words.push(format!("--{name}"));
        words.push(if value.contains(' ') { format!("\"{value}\"") } else { value });
    };
    if let Some(name) = &job.alternative {
        flag("alternative", name.clone());
    }
    flag("seed", luck.seed.to_string());
    for (name, value) in more {
        flag(name, value.clone());
    }
    words.join(" ")
}

/// Without the folders of the machine it was typed on.
fn file_name(file: &Path) -> String {
    file.file_name().map_or_else(|| file.display().to_string(), |name| name.to_string_lossy().into_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::path::PathBuf;

    #[test]
    fn the_command_can_be_typed_again_and_names_no_folder() {
        let job = JobArgs {
            file: PathBuf::from("/somewhere/arena.toml"),
            alternative: Some("a second raker".into()),
            units: None,
        };
        let luck = LuckArgs { seed: 7, runs: 10, threads: None };
        assert_eq!(
            command_line("forecast", &job, &luck, &[("runs", "10".into())]),
            "heapcast forecast arena.toml --alternative \"a second raker\" --seed 7 --runs 10"
        );
    }
}
