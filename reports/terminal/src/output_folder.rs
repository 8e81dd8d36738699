//! A folder of results that is replaced as a whole, and only when all of it is complete.
//!
//! Only what heapcast wrote is ever replaced or removed: a [manifest](MANIFEST) in the folder lists its files with their
//! SHA-256. New files are written into a workplace beside the folder, which one writer at a time may use. A new folder
//! appears by one rename; an existing one with nothing else in it is exchanged in one step where the system can do that;
//! otherwise file after file is renamed, and a journal says how to go back. What an interrupted run left is put right by
//! the next one.

mod error;
mod journal;
mod manifest;
mod place;
mod restore;
mod steps;
mod workplace;

pub(crate) use error::OutputError;
pub(crate) use manifest::NAME as MANIFEST;

use crate::interrupt::Interrupt;
use manifest::{Manifest, Whose};
use place::Place;
use reports::answer::Document;
use std::io;
use std::path::{Path, PathBuf};
use steps::Replacement;
use workplace::Workplace;

#[cfg(test)]
mod tests;

/// Where results will stand, found writable before any work is done. Nobody else can write there as long as it lives.
pub(crate) struct OutputFolder {
    wanted: PathBuf,
    names: Vec<&'static str>,
    place: Place,
    workplace: Workplace,
    interrupt: Interrupt,
}

impl OutputFolder {
    /// Makes sure that files of these names can be written into `wanted`, which need not exist, without replacing anything
    /// that heapcast did not write, nor any of `inputs`. What an interrupted run left there is put right first.
    ///
    /// # Errors
    /// If it is not a folder, cannot be written in, is being written to, or holds something else by one of the names.
    pub(crate) fn open(
        wanted: &Path,
        names: &[&'static str],
        inputs: &[PathBuf],
        interrupt: Interrupt,
    ) -> Result<Self, OutputError> {
        let mut place = Place::of(wanted)?;
        let workplace = Workplace::take(&place, wanted)?;
        restore::restore(&place, workplace.path())
            .map_err(|error| not_restored(wanted, workplace.path(), error))?;
        // What was interrupted may have made or unmade the folder.
        place.look_again();
        let folder = Self { wanted: wanted.to_owned(), names: names.to_vec(), place, workplace, interrupt };
        folder.no_input_is_replaced(inputs)?;
        folder.all_is_ours()?;
        folder.interrupt.remove_when_stopped(folder.workplace.path());
        Ok(folder)
    }

    /// Writes all documents and puts them into place together; what an earlier report had besides goes.
    ///
    /// # Errors
    /// If one of them cannot be written, or something that heapcast did not write has come in the way meanwhile.
    pub(crate) fn replace(self, documents: &[Document]) -> Result<(), OutputError> {
        let failed = |(name, error)| OutputError::File { name, folder: self.wanted.clone(), error };
        let manifest = Manifest::of(documents);
        let old = Manifest::read(self.place.folder());
        let replacement =
            Replacement::stage(&self.place, &self.workplace, documents, &manifest, old).map_err(failed)?;
        self.all_is_ours()?;
        // From here to the end a stop waits: it sees either the old report or the new one.
        let mut in_place = self.interrupt.hold();
        if let Err(error) = replacement.carry_out() {
            let kept = self.workplace.path();
            restore::restore(&self.place, kept).map_err(|error| not_restored(&self.wanted, kept, error))?;
            return Err(failed(error));
        }
        in_place.nothing_to_remove();
        Ok(())
    }

    /// Every file that would be replaced or removed, by its name.
    fn at_stake(&self) -> Vec<String> {
        let mut names: Vec<String> = self.names.iter().map(|name| (*name).to_owned()).collect();
        names.push(MANIFEST.to_owned());
        names.extend(Manifest::read(self.place.folder()).into_iter().flat_map(Manifest::into_names));
        names.sort();
        names.dedup();
        names
    }

    fn no_input_is_replaced(&self, inputs: &[PathBuf]) -> Result<(), OutputError> {
        let inputs: Vec<PathBuf> = inputs.iter().filter_map(|input| input.canonicalize().ok()).collect();
        for name in self.at_stake() {
            let file = self.place.folder().join(&name);
            let led_to = file.canonicalize().ok();
            if inputs.iter().any(|input| *input == file || Some(input) == led_to.as_ref()) {
                return Err(OutputError::Input { file: self.wanted.join(name), free: self.free() });
            }
        }
        Ok(())
    }

    fn all_is_ours(&self) -> Result<(), OutputError> {
        let manifest = Manifest::read(self.place.folder());
        for name in self.at_stake() {
            let file = self.wanted.join(&name);
            match manifest::whose(manifest.as_ref(), self.place.folder(), &name) {
                Whose::Nobodys | Whose::Ours => {}
                Whose::Folder => return Err(OutputError::InTheWay(file)),
                Whose::Changed => return Err(OutputError::Changed { file, free: self.free() }),
                Whose::Foreign => return Err(OutputError::NotOurs { file, free: self.free() }),
            }
        }
        Ok(())
    }

    /// A folder beside the one wanted that is not there yet.
    fn free(&self) -> PathBuf {
        let is_here = self.wanted.components().all(|part| !matches!(part, std::path::Component::Normal(_)));
        let stem = if is_here { self.wanted.join("results") } else { self.wanted.clone() };
        let numbered = |n: u32| {
            let mut name = stem.clone().into_os_string();
            name.push(format!("-{n}"));
            PathBuf::from(name)
        };
        let first = Some(stem.clone()).filter(|_| is_here);
        let mut candidates = first.into_iter().chain((2..1_000).map(numbered));
        candidates.find(|folder| folder.symlink_metadata().is_err()).unwrap_or(stem)
    }
}

impl Drop for OutputFolder {
    /// Where a stop is being carried out, this waits for its end.
    fn drop(&mut self) {
        self.interrupt.hold().nothing_to_remove();
    }
}

fn not_restored(wanted: &Path, kept: &Path, error: io::Error) -> OutputError {
    OutputError::NotRestored { folder: wanted.to_owned(), kept: kept.to_owned(), error }
}
