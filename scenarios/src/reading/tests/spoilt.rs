//! No text is too spoilt to be answered.

use super::*;

/// However a file is cut, the answer is a scenario or a refusal.
#[test]
fn no_beginning_of_a_scenario_makes_the_reader_panic() {
    for name in ["orchard-rows", "show-ground"] {
        let (_, text) = shipped().iter().find(|(shipped, _)| *shipped == name).unwrap();
        for end in (0..text.len()).step_by(7).filter(|end| text.is_char_boundary(*end)) {
            answered(&text[..end]);
        }
    }
}

/// Nor does any spoilt byte. The spoiling is a fixed sequence (SplitMix64), so a failure can be met again.
#[test]
fn no_spoilt_byte_makes_the_reader_panic() {
    let mut state = 20_260_418_u64;
    let mut draw = move |below: usize| {
        state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) % below as u64) as usize
    };
    let pieces = [
        "\"", "=", "-", "0", "9e99", "nan", "[", "}", "\n", "é", " yd3", "%", "\t", "1.", "none", "/",
        "day 2 ",
    ];
    let texts: Vec<&str> = shipped().iter().map(|(_, text)| *text).chain([SOUND]).collect();
    for round in 0..1500 {
        let mut bytes = texts[round % texts.len()].as_bytes().to_vec();
        for _ in 0..=draw(3) {
            let at = draw(bytes.len());
            match draw(4) {
                0 => bytes[at] = draw(256) as u8,
                1 => drop(bytes.remove(at)),
                2 => drop(bytes.splice(at..at, pieces[draw(pieces.len())].bytes())),
                _ => drop(bytes.drain(at..(at + draw(12)).min(bytes.len()))),
            }
        }
        if let Ok(text) = String::from_utf8(bytes) {
            answered(&text);
        }
    }
}

fn answered(text: &str) {
    match read_text(text, "spoilt.toml", Texts::shipped(), &Selection::default()) {
        Ok(scenario) => assert!(scenario.job.loaders.iter().all(|loader| loader.heaped_m3 > 0.0)),
        Err(refusal) => {
            assert!(!refusal.problems.is_empty());
            for problem in &refusal.problems {
                assert!(!problem.what.is_empty());
                assert!(!problem.what.contains("fault of the program"), "{problem}\n{text}");
                if let Some(span) = &problem.span {
                    assert!(span.end <= text.len() && problem.line >= 1, "{problem}");
                }
            }
        }
    }
}
