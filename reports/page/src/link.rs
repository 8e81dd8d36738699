//! A job as a text that a link can carry, and back.

use crate::job::Job;
use crate::refused::Refused;
use base64::prelude::{BASE64_URL_SAFE_NO_PAD, Engine};
use flate2::write::ZlibEncoder;
use flate2::{Compression, Decompress, FlushDecompress, Status};
use std::io::Write;

/// What begins a text of this kind; another kind will get another number.
const VERSION: &str = "1.";
/// Most that a link may hold once it is unpacked \[bytes\].
const MOST: usize = 1_000_000;

/// A job as a text.
pub(crate) fn pack(job: &str) -> Result<String, Refused> {
    let job: Job = serde_json::from_str(job)?;
    let text = serde_json::to_vec(&job)?;
    if text.len() > MOST {
        return refused("this job is too large for a link; send it as a file");
    }
    let mut encoder = ZlibEncoder::new(Vec::new(), Compression::best());
    let packed = encoder.write_all(&text).and_then(|()| encoder.finish());
    let packed = packed.map_err(|error| Refused::Message(format!("the job cannot be packed: {error}")))?;
    Ok(format!("{VERSION}{}", BASE64_URL_SAFE_NO_PAD.encode(packed)))
}

/// The job of a text, whatever the text may be.
pub(crate) fn unpack(text: &str) -> Result<String, Refused> {
    let Some(packed) = text.trim().strip_prefix(VERSION) else {
        let newer = text.split_once('.').is_some_and(|(version, _)| version.parse::<u32>().is_ok());
        return refused(match newer {
            true => "this link was made by a newer page; open the newer page, or ask for the job as a file",
            false => "this is not the link of a job",
        });
    };
    let Ok(packed) = BASE64_URL_SAFE_NO_PAD.decode(packed) else { return refused(DAMAGED) };
    // One byte more than may be tells that it is too much, however little it was packed to.
    let mut text = Vec::with_capacity(MOST + 1);
    let unpacked = Decompress::new(true).decompress_vec(&packed, &mut text, FlushDecompress::Finish);
    if text.len() > MOST {
        return refused("this link holds far more than a job; it is not opened");
    }
    if !matches!(unpacked, Ok(Status::StreamEnd)) {
        return refused(DAMAGED);
    }
    let job = String::from_utf8(text).ok().and_then(|text| serde_json::from_str::<Job>(&text).ok());
    match job {
        Some(job) => Ok(serde_json::to_string(&job)?),
        None => refused("what this link holds is not a job"),
    }
}

const DAMAGED: &str = "this link is cut off or damaged; ask for it again, or for the job as a file";

fn refused(words: &str) -> Result<String, Refused> {
    Err(Refused::Message(words.to_owned()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn job(text: &str) -> String {
        serde_json::json!({ "name": "a b.toml", "text": text, "files": [{ "name": "x.csv", "text": "1\n" }] })
            .to_string()
    }

    fn words(text: &str) -> String {
        match unpack(text) {
            Err(Refused::Message(words)) => words,
            other => panic!("{text:.60}: {other:?}"),
        }
    }

    fn packed(bytes: &[u8]) -> String {
        let mut encoder = ZlibEncoder::new(Vec::new(), Compression::best());
        encoder.write_all(bytes).unwrap();
        format!("{VERSION}{}", BASE64_URL_SAFE_NO_PAD.encode(encoder.finish().unwrap()))
    }

    #[test]
    fn every_job_comes_out_of_its_link_as_it_went_in() {
        let texts = scenarios::shipped().iter().map(|(_, text)| *text);
        for text in texts.chain(["", "\u{0}\r\n\u{202e}</script>é 🚜"]) {
            let job = job(text);
            let link = pack(&job).unwrap();
            let plain = |c: char| c.is_ascii_alphanumeric() || "-_.".contains(c);
            assert!(link.starts_with("1.") && link.chars().all(plain), "{link}");
            let back: Job = serde_json::from_str(&unpack(&link).unwrap()).unwrap();
            assert_eq!(back, serde_json::from_str(&job).unwrap());
        }
    }

    #[test]
    fn a_link_cut_off_or_damaged_anywhere_says_so() {
        let job = job(scenarios::shipped()[6].1);
        let link = pack(&job).unwrap();
        for end in 2..link.len() {
            assert!(words(&link[..end]).contains("cut off or damaged"), "{end}");
        }
        for at in 2..link.len() {
            let mut damaged = link.clone().into_bytes();
            damaged[at] = if damaged[at] == b'A' { b'B' } else { b'A' };
            let damaged = String::from_utf8(damaged).unwrap();
            // A few bits before the sum at its end mean nothing.
            let back = unpack(&damaged).ok().map(|back| serde_json::from_str::<Job>(&back).unwrap());
            assert!(back.is_none_or(|back| back == serde_json::from_str(&job).unwrap()), "{at}");
        }
    }

    #[test]
    fn a_link_that_grows_without_end_or_holds_anything_else_is_not_opened() {
        assert!(words(&packed(&vec![b' '; 50_000_000])).contains("far more than a job"));
        assert!(words(&packed(b"[1, 2]")).contains("not a job"));
        assert!(words(&packed(&[0xff, 0xfe])).contains("not a job"));
        assert!(words("2.abc").contains("newer page"));
        for other in ["", "abc", "x.abc", "https://example.org/"] {
            assert!(words(other).contains("not the link"), "{other}");
        }
        assert!(words("1.***").contains("damaged"));
    }

    #[test]
    fn what_is_too_large_for_a_link_is_not_packed() {
        assert!(
            matches!(pack(&job(&"#".repeat(1_100_000))), Err(Refused::Message(words)) if words.contains("as a file"))
        );
    }
}
