//! Jobs and lists as a page hands them in: named texts.

use reports::ask::Reader;
use scenarios::{BucketList, JobFile, Refusal, Texts, shown_path};
use serde::{Deserialize, Serialize};
use std::path::{Path, PathBuf};

/// A text and its name.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize, Serialize)]
pub(crate) struct Named {
    /// Its name, as of a file.
    pub(crate) name: String,
    /// What is in it.
    pub(crate) text: String,
}

/// A scenario with the files that it names.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize, Serialize)]
pub(crate) struct Job {
    /// Its name, as of a file.
    pub(crate) name: String,
    /// The scenario (TOML).
    pub(crate) text: String,
    /// The files that it names.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(crate) files: Vec<Named>,
}

impl Job {
    /// The job, read.
    pub(crate) fn file(&self, shown: &str) -> Result<JobFile, Refusal> {
        JobFile::of_text(&self.text, shown, self.texts())
    }

    /// The files that it names.
    pub(crate) fn texts(&self) -> Texts {
        self.files.iter().map(|file| (&file.name, file.text.as_str())).collect()
    }
}

/// Whatever a question may read.
#[derive(Debug)]
pub(crate) struct Memory {
    jobs: Vec<(PathBuf, Job)>,
    list: Option<Named>,
}

impl Memory {
    /// These jobs, each with a name of its own, and a list.
    pub(crate) fn of(jobs: Vec<Job>, list: Option<Named>) -> Self {
        let mut own: Vec<(PathBuf, Job)> = Vec::new();
        for job in jobs {
            let named = |number: usize| match number {
                0 => PathBuf::from(&job.name),
                _ => numbered(&job.name, number + 1),
            };
            let free = |name: &PathBuf| own.iter().all(|(taken, _)| taken != name);
            let name = (0..=own.len()).map(named).find(free).unwrap_or_default();
            own.push((name, job));
        }
        Self { jobs: own, list }
    }

    /// What the jobs are called, in their order.
    pub(crate) fn jobs(&self) -> impl Iterator<Item = PathBuf> {
        self.jobs.iter().map(|(name, _)| name.clone())
    }

    /// What the list is called.
    pub(crate) fn list(&self) -> Option<PathBuf> {
        self.list.as_ref().map(|list| PathBuf::from(&list.name))
    }
}

/// `job.toml` becomes `job (2).toml`.
fn numbered(name: &str, number: usize) -> PathBuf {
    let (stem, ending) = name.rsplit_once('.').unwrap_or((name, "toml"));
    PathBuf::from(format!("{stem} ({number}).{ending}"))
}

impl Reader for Memory {
    fn job(&self, file: &Path) -> Result<JobFile, Refusal> {
        let found = self.jobs.iter().find(|(name, _)| name == file);
        // Only the jobs at hand are ever asked for.
        found.map(|(_, job)| job).cloned().unwrap_or_default().file(&shown_path(file))
    }

    fn buckets(&self, file: &Path) -> Result<BucketList, Refusal> {
        let text = self.list.as_ref().map(|list| list.text.as_str());
        scenarios::buckets_text(text.unwrap_or_default(), &shown_path(file))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn jobs_of_the_same_name_stay_apart() {
        let job = |name: &str, text: &str| Job { name: name.into(), text: text.into(), files: Vec::new() };
        let jobs = vec![job("a.toml", "1"), job("b.toml", "2"), job("a.toml", "3"), job("a.toml", "4")];
        let memory = Memory::of(jobs, None);
        let names: Vec<String> = memory.jobs().map(|name| name.display().to_string()).collect();
        assert_eq!(names, ["a.toml", "b.toml", "a (2).toml", "a (3).toml"]);
    }
}
