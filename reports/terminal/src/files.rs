//! Scenarios and lists read from disk: plain files and nothing else, no folders, devices, pipes or sockets, nothing without end.

use scenarios::{
    BucketList, Files, JobFile, NamedFile, NotRead, Problem, Refusal, escaped, nearest, shown_path,
};
use std::fs::{self, File, Metadata};
use std::io::{self, ErrorKind, Read};
use std::path::{Path, PathBuf};

/// Largest scenario file or list \[bytes\].
const LARGEST: u64 = 1_000_000;
/// Where the system keeps what looks like plain files and is not.
const NO_FILES: [&str; 2] = ["/proc", "/sys"];

/// Reads a scenario file.
///
/// # Errors
/// Everything that is wrong with it, in one go.
pub(crate) fn job_file(path: &Path) -> Result<JobFile, Refusal> {
    let folder = path.parent().unwrap_or(Path::new(""));
    JobFile::of_text(&text(path, &SCENARIO)?, &shown_path(path), Folder(folder.to_owned()))
}

/// Reads a list of buckets.
///
/// # Errors
/// Everything that is wrong with it, in one go.
pub(crate) fn buckets(path: &Path) -> Result<BucketList, Refusal> {
    scenarios::buckets_text(&text(path, &BUCKETS)?, &shown_path(path))
}

/// The files in a scenario's folder and below it.
#[derive(Debug)]
struct Folder(PathBuf);

impl Files for Folder {
    /// Where the name alone says that it lies elsewhere, nobody looks there; links are followed and may not lead out.
    fn file(&self, name: &str, most: u64) -> Result<NamedFile, NotRead> {
        if scenarios::leads_out(name) {
            return Err(NotRead::Outside);
        }
        let folder = if self.0.as_os_str().is_empty() { Path::new(".") } else { &self.0 };
        let whole = |path: &Path| fs::canonicalize(path).map_err(|error| not_read(error, path));
        let (home, path) = (whole(folder)?, whole(&folder.join(name))?);
        if !path.starts_with(&home) {
            return Err(NotRead::Outside);
        }
        Ok(NamedFile { bytes: bytes(&path, most)?, path })
    }
}

/// The bytes of a plain file, at most so many.
fn bytes(path: &Path, most: u64) -> Result<Vec<u8>, NotRead> {
    let failed = |error| not_read(error, path);
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

fn not_read(error: io::Error, path: &Path) -> NotRead {
    let link = || fs::symlink_metadata(path).is_ok_and(|about| about.is_symlink());
    match error.kind() {
        ErrorKind::PermissionDenied => NotRead::Forbidden,
        _ if link() => NotRead::BrokenLink,
        ErrorKind::NotFound | ErrorKind::NotADirectory => NotRead::Missing,
        _ => NotRead::Other(error.to_string()),
    }
}

/// The kind of file that is wanted, for messages.
struct Wanted {
    name: &'static str,
    ending: &'static str,
    missing: &'static str,
    form: &'static str,
}

const SCENARIO: Wanted = Wanted {
    name: "scenario file",
    ending: ".toml",
    missing: "write a new one with heapcast new",
    form: "a scenario file is plain text in TOML",
};

const BUCKETS: Wanted = Wanted {
    name: "list of buckets",
    ending: ".csv",
    missing: "write one with the heading line: name, struck, heaped, width, mass, price",
    form: "a list of buckets is plain text in CSV; save it from the spreadsheet as CSV in UTF-8",
};

impl Wanted {
    /// What would be right in place of a file that is not read.
    fn remedy(&self, path: &Path, not_read: &NotRead) -> String {
        let Self { name, ending, .. } = self;
        match not_read {
            NotRead::Missing => beside(path, ending).unwrap_or_else(|| self.missing.into()),
            NotRead::BrokenLink => format!("put the file there again, or name a {name} that is there"),
            NotRead::Forbidden => "ask for the right to read it".into(),
            NotRead::Folder => format!("name a {name} in it, ending in {ending}"),
            NotRead::Special => format!("name a {name}, ending in {ending}"),
            NotRead::TooLarge(_) => format!("a {name} is far smaller; is this the file you mean?"),
            NotRead::Outside | NotRead::Other(_) => format!("name a {name}"),
        }
    }
}

/// Reads a file as UTF-8 text.
fn text(path: &Path, wanted: &Wanted) -> Result<String, Refusal> {
    let bytes =
        bytes(path, LARGEST).map_err(|why| refusal(path, 0, why.to_string(), wanted.remedy(path, &why)))?;
    if bytes.contains(&0) {
        return Err(refusal(path, 0, "this is not a text file".into(), wanted.form.into()));
    }
    String::from_utf8(bytes).map_err(|error| {
        let before = error.as_bytes().get(..error.utf8_error().valid_up_to()).unwrap_or_default();
        let line = before.iter().filter(|byte| **byte == b'\n').count() + 1;
        refusal(path, line, "this line is not UTF-8 text".into(), "save the file as UTF-8".into())
    })
}

/// A file that could not be read; line 0 is the whole file.
fn refusal(path: &Path, line: usize, what: String, right: String) -> Refusal {
    let file = shown_path(path);
    let column = usize::from(line > 0);
    let (span, key, value) = (None, String::new(), String::new());
    let problem = Problem { file: file.clone(), span, line, column, key, value, what, right };
    Refusal { file, text: String::new(), problems: vec![problem] }
}

/// The file of the same kind in the same folder whose name is nearest.
fn beside(path: &Path, ending: &str) -> Option<String> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut names: Vec<String> = fs::read_dir(folder)
        .ok()?
        .take(1000)
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| name.ends_with(ending))
        .collect();
    names.sort();
    let name = path.file_name()?.to_str()?;
    nearest(name, names.iter().map(String::as_str))
        .map(|near| format!("the nearest beside it is \"{}\"", escaped(near)))
}
