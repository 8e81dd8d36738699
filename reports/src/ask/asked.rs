//! What a person asked: files and options as typed, each of which can be read.

use super::{ALTERNATIVE, AnyOpt, CHANGE, Opt, Question, UNITS};
use crate::failure::Failure;
use crate::provenance;
use scenarios::Selection;
use std::fmt;
use std::path::{Path, PathBuf};

/// What is wrong with an option that is missed.
const MISSING: &str = "it has to be given";

/// The files and options of a question, in which nothing is wrong as far as can be told without reading the files.
#[derive(Clone, Debug)]
pub struct Asked {
    question: &'static str,
    files: Vec<PathBuf>,
    typed: Vec<Typed>,
}

/// An option, and each text that was typed for it.
#[derive(Clone, Debug)]
struct Typed {
    option: &'static dyn AnyOpt,
    texts: Vec<String>,
}

/// What is wrong with an option or a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The name of the option, or of the file.
    pub option: String,
    /// What is wrong and what would be right.
    pub words: String,
}

impl Asked {
    /// Takes files and options of a question; options by their names, in any order.
    ///
    /// # Errors
    /// Everything that is wrong with them, in the order of the question.
    pub fn new(
        question: &Question,
        files: impl IntoIterator<Item = impl Into<PathBuf>>,
        typed: impl IntoIterator<Item = (impl AsRef<str>, impl Into<String>)>,
    ) -> Result<Self, Vec<Fault>> {
        let none = |option| Typed { option, texts: Vec::new() };
        let mut asked = Self {
            question: question.name,
            files: files.into_iter().map(Into::into).collect(),
            typed: question.options().map(none).collect(),
        };
        let mut faults: Vec<Fault> = asked.wrong_files(question).into_iter().collect();
        for (name, text) in typed {
            let name = name.as_ref();
            match asked.typed.iter_mut().find(|typed| typed.option.about().name == name) {
                Some(typed) => typed.texts.push(text.into()),
                None => faults.push(fault(name, format!("heapcast {} has no such option", question.name))),
            }
        }
        faults.extend(asked.typed.iter().flat_map(|typed| asked.wrong(typed)));
        if faults.is_empty() { Ok(asked) } else { Err(faults) }
    }

    fn wrong_files(&self, question: &Question) -> Option<Fault> {
        let (named, wanted) = (self.files.len(), question.files.len());
        let takes_more = question.files.iter().any(|file| file.is_repeated);
        if let Some(missing) = question.files.get(named) {
            return Some(fault(missing.name, format!("name it: {}", missing.help)));
        }
        (named > wanted && !takes_more).then(|| fault("files", format!("{named} are too many")))
    }

    fn wrong(&self, typed: &Typed) -> Vec<Fault> {
        let about = typed.option.about();
        let mut wrong: Vec<String> =
            typed.texts.iter().filter_map(|text| typed.option.check(text).err()).collect();
        if typed.texts.is_empty() {
            if about.is_required {
                wrong.push(MISSING.to_owned());
            }
        } else {
            if typed.texts.len() > 1 && !about.is_repeated {
                wrong.push("it can be given only once".to_owned());
            }
            let conflicts = about.conflicts.iter().filter(|other| self.is_named(other));
            wrong.extend(conflicts.map(|other| format!("it cannot be given with \"{other}\"")));
            let missing = about.requires.iter().filter(|other| !self.is_named(other));
            wrong.extend(missing.map(|other| format!("it needs \"{other}\" as well")));
        }
        wrong.into_iter().map(|words| fault(about.name, words)).collect()
    }

    /// What was typed for an option.
    fn texts(&self, name: &str) -> &[String] {
        let typed = self.typed.iter().find(|typed| typed.option.about().name == name);
        typed.map_or(&[], |typed| &typed.texts)
    }

    fn is_named(&self, name: &str) -> bool {
        !self.texts(name).is_empty()
    }

    /// Whether an option was given.
    pub fn is_given<T>(&self, option: &Opt<T>) -> bool {
        self.is_named(option.name())
    }

    /// Every value of an option, in the order in which they were given.
    pub fn all<T>(&self, option: &Opt<T>) -> Vec<T> {
        self.texts(option.name()).iter().filter_map(|text| option.read(text).ok()).collect()
    }

    /// The value of an option, or its usual one.
    pub fn maybe<T>(&self, option: &Opt<T>) -> Option<T> {
        let text = self.texts(option.name()).last().map(String::as_str);
        text.or(option.about().default).and_then(|text| option.read(text).ok())
    }

    /// The value of an option that has a usual one.
    ///
    /// # Errors
    /// If it has none and was not given.
    pub fn value<T>(&self, option: &Opt<T>) -> Result<T, Failure> {
        self.maybe(option).ok_or_else(|| Failure::Asked(fault(option.name(), MISSING.to_owned()).to_string()))
    }

    /// What was typed for an option that was given.
    pub fn typed<T>(&self, option: &Opt<T>) -> Option<&str> {
        self.texts(option.name()).last().map(String::as_str)
    }

    /// The files, in the order of the question.
    pub fn files(&self) -> &[PathBuf] {
        &self.files
    }

    /// The first file.
    pub fn file(&self) -> &Path {
        self.files.first().map_or(Path::new(""), PathBuf::as_path)
    }

    /// The job wanted of the first file.
    pub fn selection(&self) -> Selection {
        Selection {
            alternative: self.maybe(&ALTERNATIVE),
            changes: self.all(&CHANGE),
            units: self.maybe(&UNITS),
        }
    }

    /// The command that gives the same answer again: with the values of these options, the usual ones included, in this order,
    /// and with more, each an option and its value.
    pub fn command(&self, told: &[&dyn AnyOpt], more: &[(&str, String)]) -> String {
        let mut flags: Vec<(&str, String)> = Vec::new();
        for option in told {
            let about = option.about();
            let texts = self.texts(about.name).iter().map(String::as_str);
            let usual = if self.is_named(about.name) { None } else { about.default };
            flags.extend(texts.chain(usual).map(|text| (about.name, option.again(text))));
        }
        flags.extend(more.iter().cloned());
        provenance::typed(self.question, &self.files, &flags)
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.option, self.words)
    }
}

impl From<Vec<Fault>> for Failure {
    fn from(faults: Vec<Fault>) -> Self {
        Self::Asked(faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))
    }
}

fn fault(option: &str, words: String) -> Fault {
    Fault { option: option.to_owned(), words }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sweep::QUESTION;

    fn faults(files: &[&str], typed: &[(&str, &str)]) -> Vec<String> {
        let faults = Asked::new(&QUESTION, files, typed.iter().copied()).err().unwrap_or_default();
        faults.iter().map(ToString::to_string).collect()
    }

    #[test]
    fn what_is_wrong_is_told_at_its_option_and_all_of_it_at_once() {
        let told =
            faults(&[], &[("runs", "ten"), ("bogus", "1"), ("chance", "80"), ("seed", "1"), ("seed", "2")]);
        assert_eq!(
            told,
            [
                "file: name it: Scenario file (TOML)",
                "bogus: heapcast sweep has no such option",
                "vary: it has to be given",
                "chance: it needs \"by\" as well",
                "seed: it can be given only once",
                "runs: write a whole number from 1 to 1000000 in digits",
            ]
        );
        let vary = ("vary", "rakers 1..2");
        assert!(faults(&["a.toml"], &[vary, ("units", "feet")])[0].contains("us or metric"));
        assert_eq!(faults(&["a.toml", "b.toml"], &[vary])[0], "files: 2 are too many");
        assert!(faults(&["a.toml"], &[vary]).is_empty());
    }

    #[test]
    fn the_command_has_usual_values_too_and_says_all_in_one_way() {
        let typed = [("seed", "1,000"), ("vary", "room 1,2"), ("vary", "rakers 1..2"), ("by", "3 pm")];
        let asked = Asked::new(&QUESTION, ["x/a b.toml"], typed).unwrap();
        let told: Vec<&dyn AnyOpt> = QUESTION.options().collect();
        assert_eq!(
            asked.command(&told, &[("more", "$5".into())]),
            "heapcast sweep \"a b.toml\" --vary \"room 1, 2\" --vary \"rakers 1, 2\" --by 15:00 --chance 80 --seed 1000 \
             --runs 2000 --more '$5'"
        );
    }
}
