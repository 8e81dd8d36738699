//! What can be typed after the name of a question, made from what the question says of itself.

use super::OwnArgs;
use crate::failure::Failure;
use clap::builder::{PossibleValue, PossibleValuesParser};
use clap::parser::ValueSource;
use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use reports::QUESTIONS;
use reports::ask::{AnyOpt, Asked, FileWanted, Question};
use std::path::PathBuf;

/// A question as typed.
pub(crate) struct Ask {
    /// The question.
    pub(crate) question: &'static Question,
    /// What the terminal itself wants to know.
    pub(crate) own: OwnArgs,
    typed: ArgMatches,
}

impl Ask {
    /// Takes what was typed after the name of a question.
    pub(super) fn read(name: &str, mut typed: ArgMatches) -> Result<Self, clap::Error> {
        let question = QUESTIONS.iter().copied().find(|question| question.name == name);
        let question = question.ok_or_else(|| clap::Error::new(clap::error::ErrorKind::InvalidSubcommand))?;
        Ok(Self { question, own: OwnArgs::read(question, &mut typed)?, typed })
    }

    /// What is asked.
    ///
    /// # Errors
    /// What is wrong with it.
    pub(crate) fn asked(&self) -> Result<Asked, Failure> {
        let named =
            |file: &FileWanted| self.typed.get_many::<PathBuf>(file.name).into_iter().flatten().cloned();
        let options = self.question.options().map(|option| option.about().name);
        let given = options.filter(|name| self.typed.value_source(name) == Some(ValueSource::CommandLine));
        let texts = given.flat_map(|name| {
            self.typed.get_many::<String>(name).into_iter().flatten().map(move |text| (name, text))
        });
        Asked::new(self.question, self.question.files.iter().flat_map(named), texts)
            .map_err(|faults| Failure::NoAnswer(faults.into()))
    }
}

/// The command of a question.
pub(super) fn command(question: &'static Question) -> Command {
    let command = Command::new(question.name).args(question.files.iter().map(file));
    let options: Vec<&'static dyn AnyOpt> = question.options().collect();
    // Threads are told beside what makes the runs.
    let of_runs = |option: &&'static dyn AnyOpt| ["seed", "runs"].contains(&option.about().name);
    let (before, after) = options.split_at(options.iter().rposition(of_runs).map_or(0, |last| last + 1));
    let command = OwnArgs::beside_runs(question, command.args(before.iter().copied().map(option)));
    OwnArgs::behind(question, command.args(after.iter().copied().map(option)))
        .about(question.about)
        .after_long_help(question.examples)
}

fn file(file: &FileWanted) -> Arg {
    let arg = Arg::new(file.name).value_name(file.value).help(file.help).required(true);
    let arg = arg.value_parser(value_parser!(PathBuf));
    if file.is_repeated { arg.action(ArgAction::Append).num_args(1..) } else { arg }
}

fn option(option: &'static dyn AnyOpt) -> Arg {
    let about = option.about();
    let mut arg = Arg::new(about.name)
        .long(about.name)
        .value_name(about.value)
        .help(about.help)
        .required(about.is_required)
        .allow_hyphen_values(about.may_begin_with_hyphen)
        .action(if about.is_repeated { ArgAction::Append } else { ArgAction::Set })
        .conflicts_with_all(about.conflicts.iter().copied());
    if let Some(usual) = about.default {
        arg = arg.default_value(usual);
    }
    for other in about.requires {
        arg = arg.requires(*other);
    }
    if about.words.is_empty() {
        return arg.value_parser(move |text: &str| option.check(text).map(|()| text.to_owned()));
    }
    let words = about.words.iter().map(|(word, means)| {
        let word = PossibleValue::new(*word);
        if means.is_empty() { word } else { word.help(*means) }
    });
    arg.value_parser(PossibleValuesParser::new(words))
}
