//! A text is read: a scenario that can be run, or problems that say where and what, and nothing else.

use super::runs;
use reports::render::screen::{self, Snippets};
use scenarios::units::System;
use scenarios::{Problem, Refusal, Scenario, Selection, Texts, read_text};

/// What the text is said to be the file of.
pub(crate) const FILE: &str = "job.toml";
/// Most problems of a file that are listed, and a line that says how many are not.
const MOST_PROBLEMS: usize = 101;
/// Alternatives of one file that are read.
const ALTERNATIVES: usize = 3;

/// Reads a text every way there is; files it names are among `files`.
pub(crate) fn check(typed: &str, files: &Texts) {
    let read = |alternative: Option<&str>, units| {
        let alternative = alternative.map(str::to_owned);
        read_text(typed, FILE, files.clone(), &Selection { alternative, units, ..Selection::default() })
    };
    let answered = read(None, None);
    answer(&answered, typed);
    match answered {
        Err(refusal) => {
            assert_eq!(read(None, None).err().as_ref(), Some(&refusal), "read twice");
            assert!(read(None, Some(System::Us)).is_err(), "refused, but not in US units");
        }
        Ok(scenario) => {
            let other = if scenario.units == System::Us { System::Metric } else { System::Us };
            let again = read(None, Some(other)).unwrap_or_else(|refusal| panic!("in other units: {refusal}"));
            assert_eq!((again.units, &again.hash), (other, &scenario.hash), "in other units");
            assert_eq!(again.job, scenario.job, "in other units");
            runs::check(&scenario.job);
            for name in scenario.alternatives.iter().take(ALTERNATIVES) {
                let chosen =
                    read(Some(name), None).unwrap_or_else(|refusal| panic!("alternative {name}: {refusal}"));
                assert_eq!(chosen.alternative.as_ref(), Some(name));
                accepted(&chosen, typed);
            }
            let none = read(Some("\u{1F9F9}"), None);
            assert!(none.is_err() || scenario.alternatives.iter().any(|name| name == "\u{1F9F9}"));
        }
    }
}

/// An answer makes sense, whatever it is.
pub(crate) fn answer(answer: &Result<Scenario, Refusal>, typed: &str) {
    match answer {
        Ok(scenario) => accepted(scenario, typed),
        Err(refusal) => refused(refusal, typed),
    }
}

/// What is given out says no figure that is none, and can be printed.
pub(crate) fn accepted(scenario: &Scenario, typed: &str) {
    assert!(scenario.hash.len() == 64 && scenario.hash.bytes().all(|b| b.is_ascii_hexdigit()));
    assert!(scenario.ordered_m3.is_finite() && scenario.ordered_m3 > 0.0, "{} m3", scenario.ordered_m3);
    assert_eq!(scenario.stated.zones.len(), scenario.job.zones.len());
    let sentence = scenario.sentence.words();
    let assumed = scenario.assumptions.iter().flat_map(|a| [&a.key, &a.words, &a.from]);
    for words in assumed.chain([&scenario.title, &scenario.currency, &sentence]) {
        printable(words);
        figures_are_known(words, typed);
    }
    for caution in &scenario.cautions {
        let said = format!("{caution:?}");
        figures_are_known(&said, typed);
    }
    assert!(!reports::check::check(scenario, 80).is_empty());
}

/// No figure that is none stands in what is said, unless it was typed.
fn figures_are_known(said: &str, typed: &str) {
    for none in ["NaN", "inf ", "unknown"] {
        assert!(!said.contains(none) || typed.contains(none.trim()), "{said}");
    }
}

/// A refusal says everything at once, in the order of the file, and can be shown with the lines concerned.
pub(crate) fn refused(refusal: &Refusal, typed: &str) {
    assert_eq!((refusal.file.as_str(), refusal.text.as_str()), (FILE, typed));
    let problems = &refusal.problems;
    assert!((1..=MOST_PROBLEMS).contains(&problems.len()), "{} problems", problems.len());
    problems.iter().for_each(|problem| told(problem, typed));
    let starts: Vec<_> = problems.iter().filter_map(|problem| Some(problem.span.as_ref()?.start)).collect();
    assert!(starts.is_sorted(), "problems are not in the order of the file: {starts:?}");
    let hidden = screen::problems(refusal, Snippets::Hidden);
    assert_eq!(hidden.lines().count(), problems.len() + 1, "{hidden}");
    assert!(screen::problems(refusal, Snippets::Shown).len() >= hidden.len());
}

/// One problem says where it stands, and fits on a line.
pub(crate) fn told(problem: &Problem, typed: &str) {
    let said = problem.to_string();
    printable(&said);
    assert!(!problem.what.is_empty());
    let own_words = ["fault of the program", "change the figures concerned"];
    assert!(!own_words.contains(&problem.right.as_str()), "not told in the words of the file: {said}");
    let place = match &problem.span {
        None => (0, 0),
        Some(span) => {
            assert!(typed.get(span.clone()).is_some(), "{span:?} is not in the text: {said}");
            let before = &typed[..span.start];
            let line = before.rsplit('\n').next().unwrap_or_default();
            (before.matches('\n').count() + 1, line.chars().count() + 1)
        }
    };
    assert_eq!((problem.line, problem.column), place, "{said}");
    let (line, column) = place;
    let start = if line == 0 { format!("{FILE}: ") } else { format!("{FILE}:{line}:{column}: ") };
    assert!(said.starts_with(&start), "{said}");
}

/// What is said, is said in one line.
pub(crate) fn printable(said: &str) {
    assert!(!said.chars().any(char::is_control), "{said:?} has signs that cannot be printed");
}
