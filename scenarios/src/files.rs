//! Files named in a scenario: whoever has files hands them in, this library opens none.

use std::collections::BTreeMap;
use std::fmt;
use std::path::{Component, Path, PathBuf};

/// Where the files come from that a scenario names, such as those of observed values.
pub trait Files: fmt::Debug + Send + Sync {
    /// A file as it is named in the scenario: relative to the scenario's folder, and in it or below it.
    ///
    /// # Errors
    /// Why it is not read; [`NotRead::TooLarge`] if it holds more than `most` bytes.
    fn file(&self, name: &str, most: u64) -> Result<NamedFile, NotRead>;
}

/// A file that was named and read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NamedFile {
    /// What is in it.
    pub bytes: Vec<u8>,
    /// Where it was found; kept in [`Scenario::observed_files`](crate::Scenario::observed_files).
    pub path: PathBuf,
}

/// Why a file is not read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotRead {
    /// There is none of this name.
    Missing,
    /// A link to something that is not there, or that leads round in a circle.
    BrokenLink,
    /// It may not be read.
    Forbidden,
    /// It lies neither in the scenario's folder nor below it.
    Outside,
    /// A folder.
    Folder,
    /// A device, a pipe, a socket.
    Special,
    /// It holds more than so many bytes.
    TooLarge(u64),
    /// Anything else, in the system's words.
    Other(String),
}

impl fmt::Display for NotRead {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Missing => "there is no such file",
            Self::BrokenLink => "this is a link to a file that is not there",
            Self::Forbidden => "this file may not be read",
            Self::Outside => "this file lies outside the folder of the scenario file",
            Self::Folder => "this is a folder",
            Self::Special => "this is not a plain file",
            Self::TooLarge(most) => {
                return write!(f, "this file is larger than {} MB, the most that is read", most / 1_000_000);
            }
            Self::Other(error) => return write!(f, "this file cannot be read: {error}"),
        })
    }
}

impl std::error::Error for NotRead {}

/// Whether a name leads out of the folder it is counted from, told from the name alone.
///
/// ```
/// use scenarios::leads_out;
/// assert!(!leads_out("times/../a.csv") && leads_out("../a.csv") && leads_out("/a.csv"));
/// ```
pub fn leads_out(name: &str) -> bool {
    plain(name).is_none()
}

/// A name without `.` and `..`; `None` if it leads out of the folder it is counted from.
fn plain(name: &str) -> Option<PathBuf> {
    let mut plain = PathBuf::new();
    for part in Path::new(name).components() {
        match part {
            Component::Normal(part) => plain.push(part),
            Component::CurDir => {}
            Component::ParentDir if plain.pop() => {}
            Component::ParentDir | Component::RootDir | Component::Prefix(_) => return None,
        }
    }
    Some(plain)
}

/// Files kept in memory, by name; without any for a scenario that names none.
///
/// ```
/// use scenarios::{Files, NotRead, Texts};
/// let texts: Texts = [("times.csv", "loading\n20\n24\n")].into_iter().collect();
/// assert!(texts.file("./times.csv", 1000).unwrap().bytes.starts_with(b"loading"));
/// assert_eq!(texts.file("time.csv", 1000), Err(NotRead::Missing));
/// ```
#[derive(Clone, Debug, Default)]
pub struct Texts(BTreeMap<PathBuf, Vec<u8>>);

impl<N: AsRef<str>, T: Into<Vec<u8>>> FromIterator<(N, T)> for Texts {
    /// A name that leads out of the folder is never found.
    fn from_iter<I: IntoIterator<Item = (N, T)>>(texts: I) -> Self {
        let named = texts.into_iter().filter_map(|(name, text)| Some((plain(name.as_ref())?, text.into())));
        Self(named.collect())
    }
}

/// Nothing is ever found.
pub(crate) const NO_FILES: &dyn Files = &Texts(BTreeMap::new());

impl Texts {
    /// The files that go with the shipped scenarios.
    pub fn shipped() -> Self {
        crate::shipped_files().iter().copied().collect()
    }
}

impl Files for Texts {
    fn file(&self, name: &str, most: u64) -> Result<NamedFile, NotRead> {
        let path = plain(name).ok_or(NotRead::Outside)?;
        match self.0.get(&path) {
            None if self.0.keys().any(|other| other.starts_with(&path)) => Err(NotRead::Folder),
            None => Err(NotRead::Missing),
            Some(bytes) if bytes.len() as u64 > most => Err(NotRead::TooLarge(most)),
            Some(bytes) => Ok(NamedFile { bytes: bytes.clone(), path }),
        }
    }
}

#[cfg(test)]
mod tests;
