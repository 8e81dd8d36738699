//! Why results cannot be written.

use std::io;
use std::path::{Path, PathBuf};

/// Why results cannot be written.
#[derive(Debug, thiserror::Error)]
pub(crate) enum OutputError {
    /// The folder wanted is something else.
    #[error("{} is not a folder; name another one with --out", .0.display())]
    NotAFolder(PathBuf),
    /// The path goes up from a folder that is not there.
    #[error("{} goes up (\"..\") from a folder that is not there; name the folder without \"..\" with --out", .0.display())]
    GoesUp(PathBuf),
    /// One of the files to be written is a folder.
    #[error("{} is a folder where a file has to be written; move it, or name another folder with --out", .0.display())]
    InTheWay(PathBuf),
    /// A file to be replaced was not written by heapcast.
    #[error(
        "{} was not written by heapcast and would be replaced; move it, or name another folder: --out {}; nothing was written",
        .file.display(), shell(.free)
    )]
    NotOurs {
        /// The file.
        file: PathBuf,
        /// A folder that is free.
        free: PathBuf,
    },
    /// A file to be replaced was changed after heapcast wrote it.
    #[error(
        "{} was changed after heapcast wrote it and would be replaced; move it, or name another folder: --out {}; nothing \
         was written",
        .file.display(), shell(.free)
    )]
    Changed {
        /// The file.
        file: PathBuf,
        /// A folder that is free.
        free: PathBuf,
    },
    /// A file to be replaced is read by this very command.
    #[error("{} is read by this command and would be replaced; name another folder: --out {}; nothing was written",
        .file.display(), shell(.free))]
    Input {
        /// The file.
        file: PathBuf,
        /// A folder that is free.
        free: PathBuf,
    },
    /// Somebody else writes there at this moment.
    #[error(
        "another heapcast is writing to {} now; wait until it is done, or name another folder with --out",
        .0.display()
    )]
    Busy(PathBuf),
    /// The folder cannot be written in.
    #[error("cannot write in {}: {error}; name another folder with --out", .folder.display())]
    NotWritable {
        /// The folder.
        folder: PathBuf,
        /// Why not.
        error: io::Error,
    },
    /// A file could not be written; what was there before is there again.
    #[error("cannot write {name} for {}: {error}; what was there before is left as it was", .folder.display())]
    File {
        /// The file.
        name: String,
        /// The folder wanted.
        folder: PathBuf,
        /// Why not.
        error: io::Error,
    },
    /// What was there before could not be put back.
    #[error(
        "replacing the files in {} was interrupted, and they cannot all be put back: {error}; earlier files may stand in {}: \
         move them by hand, or mend the cause and run the command again",
        .folder.display(), .kept.display()
    )]
    NotRestored {
        /// The folder wanted.
        folder: PathBuf,
        /// Where earlier files stand.
        kept: PathBuf,
        /// Why not.
        error: io::Error,
    },
}

impl OutputError {
    /// Whether another folder has to be named because of what stands in the one that was.
    pub(crate) fn is_asked_wrongly(&self) -> bool {
        matches!(self, Self::NotOurs { .. } | Self::Changed { .. } | Self::Input { .. } | Self::GoesUp(_))
    }
}

/// A folder as it can be typed.
fn shell(folder: &Path) -> String {
    reports::provenance::quoted(&folder.to_string_lossy())
}
