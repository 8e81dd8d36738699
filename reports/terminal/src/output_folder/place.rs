//! Where a folder of results stands, links followed, and where its workplace is.

use super::error::OutputError;
use std::ffi::OsString;
use std::fs;
use std::io;
use std::path::{Component, Path, PathBuf};

/// Begins the name of every workplace.
pub(super) const PREFIX: &str = ".heapcast-";

/// A folder wanted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Place {
    /// The nearest folder that is there.
    there: PathBuf,
    /// What is to be made below it, from above.
    missing: Vec<OsString>,
    folder: PathBuf,
}

impl Place {
    /// Finds it.
    pub(super) fn of(wanted: &Path) -> Result<Self, OutputError> {
        let not_a_folder = |path: &Path| OutputError::NotAFolder(path.to_owned());
        let mut missing = Vec::new();
        let mut there = if wanted.as_os_str().is_empty() { Path::new(".") } else { wanted };
        // A link that leads nowhere is there, though what it leads to is not.
        while there.symlink_metadata().is_err() {
            match there.components().next_back() {
                Some(Component::Normal(name)) => missing.insert(0, name.to_owned()),
                _ => return Err(OutputError::GoesUp(wanted.to_owned())),
            }
            there = there.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
        }
        if !there.is_dir() {
            return Err(not_a_folder(there));
        }
        let there = there.canonicalize().map_err(|_| not_a_folder(there))?;
        Ok(Self { folder: missing.iter().fold(there.clone(), |path, name| path.join(name)), there, missing })
    }

    /// The folder wanted, links followed.
    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }

    /// Whether it is there already.
    pub(super) fn is_there(&self) -> bool {
        self.missing.is_empty()
    }

    /// Looks again which of its folders are there.
    pub(super) fn look_again(&mut self) {
        if !self.missing.is_empty() && self.folder.is_dir() {
            self.there.clone_from(&self.folder);
            self.missing.clear();
        }
    }

    /// The topmost folder to be made, and the way from there to the folder itself.
    pub(super) fn to_be_made(&self) -> Option<(PathBuf, PathBuf)> {
        let (top, rest) = self.missing.split_first()?;
        Some((self.there.join(top), rest.iter().collect()))
    }

    /// The workplace: beside the folder where that is on the same file system, else in it.
    pub(super) fn workplace(&self) -> PathBuf {
        let beside = |folder: &Path, names: &[OsString]| {
            let mut name = OsString::from(PREFIX);
            names.iter().enumerate().for_each(|(i, part)| {
                name.push(if i > 0 { "-" } else { "" });
                name.push(part);
            });
            folder.join(name)
        };
        if !self.missing.is_empty() {
            return beside(&self.there, &self.missing);
        }
        match (self.folder.parent(), self.folder.file_name()) {
            (Some(parent), Some(name)) if same_device(parent, &self.folder) && may_write(parent).is_ok() => {
                beside(parent, &[name.to_owned()])
            }
            _ => self.in_it(),
        }
    }

    fn in_it(&self) -> PathBuf {
        self.folder.join(format!("{PREFIX}here"))
    }

    /// The nearest folder that is there.
    pub(super) fn nearest(&self) -> &Path {
        &self.there
    }

    /// Whether a workplace stands beside the folder.
    pub(super) fn is_beside(&self, workplace: &Path) -> bool {
        workplace.parent() == self.folder.parent()
    }

    /// Whether the folder can change its identity without harm to those who stand in it.
    pub(super) fn nobody_stands_in_it(&self) -> bool {
        std::env::current_dir()
            .and_then(|here| here.canonicalize())
            .is_ok_and(|here| !here.starts_with(&self.folder))
    }
}

#[cfg(unix)]
fn same_device(a: &Path, b: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    matches!((fs::metadata(a), fs::metadata(b)), (Ok(a), Ok(b)) if a.dev() == b.dev())
}

#[cfg(not(unix))]
fn same_device(_: &Path, _: &Path) -> bool {
    true
}

/// Whether files may be made in a folder, as far as its mode tells, or why not.
#[cfg(unix)]
pub(super) fn may_write(folder: &Path) -> io::Result<()> {
    use rustix::fs::{Access, access};
    Ok(access(folder, Access::WRITE_OK | Access::EXEC_OK)?)
}

/// Whether files may be made in a folder, as far as its mode tells, or why not.
#[cfg(not(unix))]
pub(super) fn may_write(folder: &Path) -> io::Result<()> {
    match fs::metadata(folder)?.permissions().readonly() {
        true => Err(io::ErrorKind::PermissionDenied.into()),
        false => Ok(()),
    }
}
