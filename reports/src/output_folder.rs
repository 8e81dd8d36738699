//! A folder of results that is replaced only when all of it is complete.
//!
//! Everything is first written into a staging folder on the same file system: inside the folder wanted if it exists,
//! beside it if not. A new folder then appears by one rename; in an existing one each file is renamed into place, the old
//! one kept aside until all are there, so that an error half-way puts the old report back. Files that are not ours are
//! never touched.

use crate::interrupt::Interrupt;
use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use tempfile::TempDir;

#[cfg(test)]
mod tests;

/// One file to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Document {
    /// Its name in the folder.
    pub name: &'static str,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// Why results cannot be written. Whatever the reason, an older report is left whole.
#[derive(Debug, thiserror::Error)]
pub enum OutputError {
    /// The folder wanted is something else.
    #[error("{} is not a folder; name another one with --out", .0.display())]
    NotAFolder(PathBuf),
    /// One of the files to be written is a folder.
    #[error("{} is a folder where a file has to be written; move it, or name another folder with --out", .0.display())]
    InTheWay(PathBuf),
    /// The folder cannot be written in.
    #[error("cannot write in {}: {error}; name another folder with --out", .folder.display())]
    NotWritable {
        /// The folder.
        folder: PathBuf,
        /// Why not.
        error: io::Error,
    },
    /// A file could not be written.
    #[error("cannot write {name} for {}: {error}; what was there before is left as it was", .folder.display())]
    File {
        /// The file.
        name: &'static str,
        /// The folder wanted.
        folder: PathBuf,
        /// Why not.
        error: io::Error,
    },
}

/// Where results will stand, found writable before any work is done.
pub struct OutputFolder {
    wanted: PathBuf,
    names: Vec<&'static str>,
    staging: TempDir,
    interrupt: Interrupt,
}

impl OutputFolder {
    /// Makes sure that files of these names can be written into `wanted`, which need not exist. All of them are taken
    /// for ours: one that is not written this time does not stay behind from an older report.
    ///
    /// # Errors
    /// If it is not a folder, cannot be written in, or holds a folder by one of the names.
    pub fn open(wanted: &Path, names: &[&'static str], interrupt: Interrupt) -> Result<Self, OutputError> {
        if wanted.exists() && !wanted.is_dir() {
            return Err(OutputError::NotAFolder(wanted.to_owned()));
        }
        if let Some(taken) = names.iter().map(|n| wanted.join(n)).find(|p| p.is_dir()) {
            return Err(OutputError::InTheWay(taken));
        }
        let place = nearest_folder(wanted);
        if !place.is_dir() {
            return Err(OutputError::NotAFolder(place));
        }
        let staging = tempfile::Builder::new().prefix(".heapcast-").tempdir_in(&place).map_err(|error| {
            // The staging folder's own made-up name in the message would only puzzle.
            let error = error.raw_os_error().map_or(error, io::Error::from_raw_os_error);
            OutputError::NotWritable { folder: wanted.to_owned(), error }
        })?;
        interrupt.remove_when_stopped(staging.path());
        Ok(Self { wanted: wanted.to_owned(), names: names.to_vec(), staging, interrupt })
    }

    /// Writes all documents and puts them into place together.
    ///
    /// # Errors
    /// If one of them cannot be written; the folder is then as it was.
    pub fn replace(mut self, documents: &[Document]) -> Result<(), OutputError> {
        let wanted = self.wanted.clone();
        let failed = |name, error| OutputError::File { name, folder: wanted.clone(), error };
        let fresh = self.staging.path().join("new");
        fs::create_dir(&fresh).map_err(|e| failed("the new files", e))?;
        for document in documents {
            write(&fresh.join(document.name), &document.bytes).map_err(|e| failed(document.name, e))?;
        }
        // From here to the end an interrupt waits: it sees either the old report or the new one.
        let interrupt = self.interrupt.clone();
        let mut in_place = interrupt.hold();
        if self.wanted.exists() {
            self.rename_each(&fresh, documents).map_err(|(name, e)| failed(name, e))?;
        } else {
            self.rename_whole(&fresh).map_err(|e| failed("the folder", e))?;
        }
        in_place.nothing_to_remove();
        Ok(())
    }

    fn rename_whole(&self, fresh: &Path) -> io::Result<()> {
        if let Some(parent) = self.wanted.parent().filter(|p| !p.as_os_str().is_empty()) {
            fs::create_dir_all(parent)?;
        }
        fs::rename(fresh, &self.wanted)
    }

    /// Renames file by file; on an error everything is renamed back.
    fn rename_each(&mut self, fresh: &Path, documents: &[Document]) -> Result<(), (&'static str, io::Error)> {
        let aside = self.staging.path().join("old");
        fs::create_dir(&aside).map_err(|e| ("the old files", e))?;
        let written = |name| documents.iter().any(|d| d.name == name);
        let mut moved = Vec::new();
        for &name in &self.names {
            let place = self.wanted.join(name);
            let result = keep_aside(&place, &aside.join(name)).and_then(|()| {
                moved.push(name);
                if written(name) { fs::rename(fresh.join(name), place) } else { Ok(()) }
            });
            if let Err(error) = result {
                let is_back =
                    moved.iter().all(|name| put_back(&aside.join(name), &self.wanted.join(name)).is_ok());
                // What cannot be put back is at least not thrown away.
                self.staging.disable_cleanup(!is_back);
                return Err((name, error));
            }
        }
        Ok(())
    }
}

/// Moves an old file out of the way; a folder is not ours to move.
fn keep_aside(file: &Path, aside: &Path) -> io::Result<()> {
    match fs::symlink_metadata(file) {
        Ok(found) if found.is_dir() => Err(io::ErrorKind::IsADirectory.into()),
        Ok(_) => fs::rename(file, aside),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        Err(error) => Err(error),
    }
}

/// Brings an old file back, or takes a new one away where there was none.
fn put_back(old: &Path, place: &Path) -> io::Result<()> {
    let result = if old.exists() { fs::rename(old, place) } else { fs::remove_file(place) };
    match result {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        result => result,
    }
}

/// A full disk may only show when the bytes are made to reach it.
fn write(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut file = fs::File::create_new(path)?;
    file.write_all(bytes)?;
    file.sync_all()
}

/// The folder itself if it exists, else the nearest one above it.
fn nearest_folder(wanted: &Path) -> PathBuf {
    let named = wanted.ancestors().filter(|p| !p.as_os_str().is_empty());
    named.into_iter().find(|p| p.exists()).map_or_else(|| PathBuf::from("."), Path::to_owned)
}
