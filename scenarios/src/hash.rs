//! The fingerprint of a scenario.

use crate::files::NamedFile;
use sha2::{Digest, Sha256};

/// SHA-256 of a file, in hexadecimal digits; of the fingerprints of all of them one after the other, if there are
/// further files.
pub(crate) fn sha256(file: &[u8], further: &[NamedFile]) -> String {
    let first = Sha256::digest(file);
    if further.is_empty() {
        return hex(&first);
    }
    let mut all = Sha256::new();
    all.update(first);
    for file in further {
        all.update(Sha256::digest(&file.bytes));
    }
    hex(&all.finalize())
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The test vector of FIPS 180-4 for "abc" (from memory).
    #[test]
    fn a_file_has_its_published_fingerprint() {
        assert_eq!(sha256(b"abc", &[]), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    #[test]
    fn a_further_file_changes_the_fingerprint() {
        let with =
            |bytes: &[u8]| sha256(b"abc", &[NamedFile { bytes: bytes.to_vec(), path: "a.csv".into() }]);
        assert_ne!(sha256(b"abc", &[]), with(b"1,2"));
        assert_ne!(with(b"1,3"), with(b"1,2"));
    }
}
