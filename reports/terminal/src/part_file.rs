//! Some runs of a forecast in a file, for those that share a large study: made by one process, merged by another.

use crate::failure::Failure;
use reports::answer::Document;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use sim::{MergeError, Plan, Study, StudyPart};
use std::ops::Range;
use std::path::Path;
use std::str::FromStr;

/// The file in the folder of a part.
pub(crate) const PART: &str = "runs.part";
/// What it begins with; the number rises whenever what follows is written in another way.
const BEGINS: &[u8] = b"heapcast part 1\n";
/// Bytes of the checksum that comes next (SHA-256 of the rest).
const CHECKSUM: usize = 32;

/// Which of several parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Share {
    number: u32,
    of: u32,
}

impl FromStr for Share {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let read = text.split_once('/').and_then(|(number, of)| {
            let (number, of) = (number.trim().parse().ok()?, of.trim().parse().ok()?);
            (1..=of).contains(&number).then_some(Self { number, of })
        });
        read.ok_or_else(|| "write which part of how many, such as 2/4".to_owned())
    }
}

impl Share {
    /// Its runs, of so many.
    pub(crate) fn runs(self, all: u32) -> Range<u32> {
        let until = |part: u32| (u64::from(all) * u64::from(part) / u64::from(self.of)) as u32;
        until(self.number - 1)..until(self.number)
    }
}

/// What a file holds.
#[derive(Serialize, Deserialize)]
struct PartFile {
    /// Runs of the whole study.
    all: u32,
    part: StudyPart,
}

/// A part as a file.
pub(crate) fn document(part: StudyPart, all: u32) -> Result<Document, Failure> {
    let body = postcard::to_allocvec(&PartFile { all, part })
        .map_err(|error| Failure::asked(format!("cannot put the runs into {PART}: {error}")))?;
    let bytes = [BEGINS, Sha256::digest(&body).as_slice(), &body].concat();
    Ok(Document { name: PART, bytes })
}

/// Merges the parts in these folders to the study they make up.
pub(crate) fn merge(folders: &[impl AsRef<Path>], plan: &Plan) -> Result<Study, Failure> {
    let mut parts = Vec::new();
    let mut all = 0;
    for folder in folders {
        let file = folder.as_ref().join(PART);
        let wrong = |words: &str| Failure::asked(format!("{}: {words}", scenarios::shown_path(&file)));
        let bytes = std::fs::read(&file)
            .map_err(|error| wrong(&format!("cannot be read ({error}); name folders that --part wrote")))?;
        let read = read(&bytes).map_err(wrong)?;
        if read.part.job() != plan.fingerprint() {
            return Err(wrong(
                "its runs are of another job; merge them with the file, the alternative and the changes they were made with",
            ));
        }
        all = all.max(read.all);
        parts.push(read.part);
    }
    let study = Study::merge(parts).map_err(refused)?;
    if study.runs() < all {
        return Err(refused(MergeError::Gap { missing: study.runs()..all }));
    }
    Ok(study)
}

fn refused(error: MergeError) -> Failure {
    Failure::asked(format!("the parts cannot be merged: {error}"))
}

fn read(bytes: &[u8]) -> Result<PartFile, &'static str> {
    let rest = bytes.strip_prefix(BEGINS).ok_or("is not a part that this version of heapcast wrote")?;
    let damaged = "is damaged; make this part again";
    let (checksum, body) = rest.split_at_checked(CHECKSUM).ok_or(damaged)?;
    if Sha256::digest(body).as_slice() != checksum {
        return Err(damaged);
    }
    postcard::from_bytes(body).map_err(|_| "is not a part that this version of heapcast wrote")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_share_all_runs_among_them_and_none_twice() {
        for (all, of) in [(10_000, 4), (10, 3), (2, 5), (1_000_000, 7)] {
            let ends: Vec<_> = (1..=of).map(|number| Share { number, of }.runs(all)).collect();
            assert_eq!((ends[0].start, ends[ends.len() - 1].end), (0, all));
            assert!(ends.windows(2).all(|pair| pair[0].end == pair[1].start), "{ends:?}");
        }
    }

    #[test]
    fn a_part_is_written_as_which_of_how_many() {
        assert_eq!("2/4".parse(), Ok(Share { number: 2, of: 4 }));
        for wrong in ["", "2", "0/4", "5/4", "2/0", "-1/4", "2/4/6", "two/four"] {
            let said = wrong.parse::<Share>().unwrap_err();
            assert_eq!(said, "write which part of how many, such as 2/4", "{wrong}");
        }
    }
}
