//! The folder in which results are prepared. One writer at a time has it; the system takes the lock off when that one dies.

use super::error::OutputError;
use super::journal::{JOURNAL, JOURNAL_DRAFT, NEW, OLD};
use super::place::{Place, may_write};
use super::restore::tidy;
use std::fs::{self, DirBuilder, File, OpenOptions, TryLockError};
use std::io;
use std::path::{Path, PathBuf};

/// The file that is locked.
const LOCK: &str = "lock";

/// A workplace that is ours until it is dropped.
pub(super) struct Workplace {
    path: PathBuf,
    folder: PathBuf,
    _lock: File,
    #[cfg(test)]
    abandoned: bool,
}

impl Workplace {
    /// Makes it, or takes one over that a dead writer left.
    pub(super) fn take(place: &Place, wanted: &Path) -> Result<Self, OutputError> {
        let path = place.workplace();
        let failed = |error: io::Error| OutputError::NotWritable { folder: wanted.to_owned(), error };
        may_write(place.nearest()).map_err(failed)?;
        loop {
            match make_private(&path) {
                Err(error) if error.kind() != io::ErrorKind::AlreadyExists => return Err(failed(error)),
                _ => {}
            }
            match is_workplace(&path) {
                Ok(true) => {}
                Ok(false) => return Err(OutputError::InTheWay(path)),
                // The one before has just tidied up.
                Err(error) if error.kind() == io::ErrorKind::NotFound => continue,
                Err(error) => return Err(failed(error)),
            }
            let open = OpenOptions::new().create(true).truncate(false).write(true).open(path.join(LOCK));
            let lock = match open {
                Err(error) if error.kind() == io::ErrorKind::NotFound => continue,
                other => other.map_err(failed)?,
            };
            match lock.try_lock() {
                Ok(()) if is_still_there(&lock, &path.join(LOCK)) => {
                    return Ok(Self {
                        path,
                        folder: place.folder().to_owned(),
                        _lock: lock,
                        #[cfg(test)]
                        abandoned: false,
                    });
                }
                Ok(()) => {}
                Err(TryLockError::WouldBlock) => return Err(OutputError::Busy(wanted.to_owned())),
                Err(TryLockError::Error(error)) => return Err(failed(error)),
            }
        }
    }

    pub(super) fn path(&self) -> &Path {
        &self.path
    }

    /// Leaves everything as a kill would.
    #[cfg(test)]
    pub(super) fn abandon(&mut self) {
        self.abandoned = true;
    }
}

impl Drop for Workplace {
    fn drop(&mut self) {
        #[cfg(test)]
        if self.abandoned {
            return;
        }
        // Earlier files that could not be put back stay, and the journal with them.
        if self.path.join(JOURNAL).exists() || tidy(&self.folder, &self.path).is_err() {
            return;
        }
        // The lock goes last, while it is held: whoever opened it meanwhile sees that it is no longer there.
        let _ = fs::remove_file(self.path.join(LOCK));
        let _ = fs::remove_dir(&self.path);
    }
}

#[cfg(unix)]
fn make_private(path: &Path) -> io::Result<()> {
    use std::os::unix::fs::DirBuilderExt;
    DirBuilder::new().mode(0o700).create(path)
}

#[cfg(not(unix))]
fn make_private(path: &Path) -> io::Result<()> {
    DirBuilder::new().create(path)
}

/// Whether nothing stands in it that a workplace does not have.
fn is_workplace(path: &Path) -> io::Result<bool> {
    if !fs::symlink_metadata(path)?.is_dir() {
        return Ok(false);
    }
    let known = |name: &str| [LOCK, NEW, OLD, JOURNAL, JOURNAL_DRAFT].contains(&name);
    for entry in fs::read_dir(path)? {
        if !entry?.file_name().to_str().is_some_and(known) {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Whether the file that is locked is the one that stands under the name.
#[cfg(unix)]
fn is_still_there(lock: &File, path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    matches!((lock.metadata(), fs::symlink_metadata(path)),
        (Ok(held), Ok(found)) if (held.dev(), held.ino()) == (found.dev(), found.ino()))
}

#[cfg(not(unix))]
fn is_still_there(_: &File, path: &Path) -> bool {
    path.exists()
}
