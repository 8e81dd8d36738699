//! The list of what heapcast wrote into a folder.

use reports::answer::Document;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Component, Path};

/// The name of the list.
pub(crate) const NAME: &str = "heapcast.manifest.json";

/// Larger ones are somebody else's \[bytes\].
const LARGEST: u64 = 1_000_000;

/// The files that heapcast wrote into a folder, with their SHA-256 in hexadecimal digits.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Manifest {
    written_by: String,
    /// What the list is for, for people who open it.
    meaning: String,
    files: BTreeMap<String, String>,
}

/// Who wrote what stands under a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Whose {
    /// Nothing stands there.
    Nobodys,
    /// As heapcast wrote it.
    Ours,
    /// Listed, but no longer as heapcast wrote it.
    Changed,
    /// Not listed.
    Foreign,
    /// A folder.
    Folder,
}

impl Manifest {
    /// The list of these documents.
    pub(super) fn of(documents: &[Document]) -> Self {
        let entry = |d: &Document| (d.name.to_owned(), hex(&Sha256::digest(&d.bytes)));
        Self {
            written_by: format!("heapcast {}", env!("CARGO_PKG_VERSION")),
            meaning: "heapcast replaces or removes only the files listed here, and only while their SHA-256 is the one given"
                .to_owned(),
            files: documents.iter().map(entry).collect(),
        }
    }

    /// The list in a folder, if there is one that heapcast can have written.
    pub(super) fn read(folder: &Path) -> Option<Self> {
        let path = folder.join(NAME);
        let about = fs::symlink_metadata(&path).ok()?;
        if !about.is_file() || about.len() > LARGEST {
            return None;
        }
        let manifest: Self = serde_json::from_slice(&fs::read(path).ok()?).ok()?;
        manifest.files.keys().all(|name| is_plain(name)).then_some(manifest)
    }

    /// The list as a file.
    pub(super) fn bytes(&self) -> io::Result<Vec<u8>> {
        let mut bytes = serde_json::to_vec_pretty(self)?;
        bytes.push(b'\n');
        Ok(bytes)
    }

    /// Names of the files listed.
    pub(super) fn into_names(self) -> impl Iterator<Item = String> {
        self.files.into_keys()
    }

    /// The SHA-256 of a file listed.
    pub(super) fn hash(&self, name: &str) -> Option<&str> {
        self.files.get(name).map(String::as_str)
    }
}

/// Whether a name leads to no other folder.
pub(super) fn is_plain(name: &str) -> bool {
    let mut parts = Path::new(name).components();
    matches!((parts.next(), parts.next()), (Some(Component::Normal(part)), None) if part == name)
}

/// Who wrote the file of this name in a folder with this list.
pub(super) fn whose(manifest: Option<&Manifest>, folder: &Path, name: &str) -> Whose {
    let path = folder.join(name);
    match fs::symlink_metadata(&path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Whose::Nobodys,
        Err(_) => Whose::Foreign,
        Ok(about) if about.is_dir() => Whose::Folder,
        Ok(about) if !about.is_file() => Whose::Foreign,
        Ok(_) if name == NAME => {
            if manifest.is_some() {
                Whose::Ours
            } else {
                Whose::Foreign
            }
        }
        Ok(_) => match manifest.and_then(|manifest| manifest.hash(name)) {
            None => Whose::Foreign,
            Some(hash) if hash_of(&path).is_ok_and(|found| found == hash) => Whose::Ours,
            Some(_) => Whose::Changed,
        },
    }
}

/// The SHA-256 of a file.
pub(super) fn hash_of(path: &Path) -> io::Result<String> {
    let (mut file, mut hash) = (File::open(path)?, Sha256::new());
    let mut part = vec![0; 1 << 16];
    loop {
        match file.read(&mut part)? {
            0 => return Ok(hex(&hash.finalize())),
            n => hash.update(&part[..n]),
        }
    }
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}
