//! Plain files read from disk, and nothing else: no folders, devices, pipes or sockets, nothing without end.

use std::fs::{self, File, Metadata};
use std::io::{ErrorKind, Read};
use std::path::{Component, Path, PathBuf};

/// Where the system keeps what looks like plain files and is not.
const NO_FILES: [&str; 2] = ["/proc", "/sys"];

/// Why a file is not read.
#[derive(Debug)]
pub(crate) enum NotRead {
    Missing,
    /// A link to something that is not there, or that leads round in a circle.
    BrokenLink,
    Forbidden,
    Folder,
    /// A device, a pipe, a socket.
    Special,
    /// More bytes than are read.
    TooLarge(u64),
    Other(std::io::Error),
}

impl NotRead {
    fn of(error: std::io::Error, path: &Path) -> Self {
        let link = || fs::symlink_metadata(path).is_ok_and(|about| about.is_symlink());
        match error.kind() {
            ErrorKind::PermissionDenied => Self::Forbidden,
            _ if link() => Self::BrokenLink,
            ErrorKind::NotFound | ErrorKind::NotADirectory => Self::Missing,
            _ => Self::Other(error),
        }
    }

    /// What is wrong, in words.
    pub(crate) fn what(&self) -> String {
        match self {
            Self::Missing => "there is no such file".into(),
            Self::BrokenLink => "this is a link to a file that is not there".into(),
            Self::Forbidden => "this file may not be read".into(),
            Self::Folder => "this is a folder".into(),
            Self::Special => "this is not a plain file".into(),
            Self::TooLarge(most) => {
                format!("this file is larger than {}, the most that is read", size(*most))
            }
            Self::Other(error) => format!("this file cannot be read: {error}"),
        }
    }
}

/// A number of bytes as a person says it.
fn size(bytes: u64) -> String {
    format!("{} MB", bytes / 1_000_000)
}

/// The bytes of a plain file, at most so many.
pub(crate) fn bytes(path: &Path, most: u64) -> Result<Vec<u8>, NotRead> {
    let failed = |error| NotRead::of(error, path);
    let about = fs::metadata(path).map_err(failed)?;
    plain(&about, path)?;
    if about.len() > most {
        return Err(NotRead::TooLarge(most));
    }
    let file = File::open(path).map_err(failed)?;
    // What lies there may have been exchanged since it was looked at.
    plain(&file.metadata().map_err(failed)?, path)?;
    let mut bytes = Vec::new();
    file.take(most + 1).read_to_end(&mut bytes).map_err(failed)?;
    if bytes.len() as u64 > most { Err(NotRead::TooLarge(most)) } else { Ok(bytes) }
}

fn plain(about: &Metadata, path: &Path) -> Result<(), NotRead> {
    if about.is_dir() {
        return Err(NotRead::Folder);
    }
    let whole = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    let of_the_system = NO_FILES.iter().any(|folder| whole.starts_with(folder));
    if about.is_file() && !of_the_system { Ok(()) } else { Err(NotRead::Special) }
}

/// The path of a file named in a scenario, which lies in the scenario's folder or below it; links are followed.
///
/// # Errors
/// `None` if it lies elsewhere; that is found out without looking there where the name alone says so.
pub(crate) fn below(folder: &Path, name: &str) -> Result<PathBuf, Option<NotRead>> {
    let named = Path::new(name);
    let mut depth = 0_i32;
    for part in named.components() {
        depth += match part {
            Component::Normal(_) => 1,
            Component::CurDir => 0,
            Component::ParentDir => -1,
            Component::RootDir | Component::Prefix(_) => return Err(None),
        };
        if depth < 0 {
            return Err(None);
        }
    }
    let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
    let path = folder.join(named);
    let whole = |path: &Path| fs::canonicalize(path).map_err(|error| Some(NotRead::of(error, path)));
    let (home, found) = (whole(folder)?, whole(&path)?);
    if found.starts_with(&home) { Ok(found) } else { Err(None) }
}

#[cfg(test)]
mod tests;
