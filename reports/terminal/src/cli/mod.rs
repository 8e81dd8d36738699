//! The command line: what can be typed, and what it means.

mod ask;
mod keys;
mod materials;
mod new;
mod own;

pub(crate) use ask::Ask;
pub(crate) use keys::KeysArgs;
pub(crate) use materials::MaterialsArgs;
pub(crate) use new::{AnswerArgs, NewArgs};
pub(crate) use own::{LimitArgs, OwnArgs, RowArgs, SayArgs};

use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args, Command, FromArgMatches};
use reports::QUESTIONS;
use scenarios::units::System;
use std::ffi::OsString;

const EXAMPLES: &str = "\
Examples:
  heapcast new arena.toml                    write down a job, asked question by question
  heapcast check arena.toml                  what is wrong, doubtful or assumed, without a run
  heapcast forecast arena.toml               done by when, what holds it up, what would help
  heapcast forecast arena.toml --by 15:00    and the chance of being done by three
  heapcast compare arena.toml                which of its alternatives to take
  heapcast quote arena.toml                  what to ask for it, and a page for the client
  heapcast buckets arena.toml buckets.csv    would another bucket pay
  heapcast sweep arena.toml --vary \"rakers 1..4\"   where it stops paying
  heapcast replay arena.toml                 one run step by step

Units in a scenario file are typed with every figure: \"30 yd3\", \"14 ft3\", \"0.4 m3\", \"58 in\", \"4 mph\", \"20 s\".
Exit codes: 0 fine, 1 could not be carried out, 2 something typed is wrong, 128 and the number of a
signal that ended it (130: Ctrl-C).";

const ABOUT: &str =
    "How long will moving the pile take? A range you can promise, what holds it up, and what would help";

/// What was typed.
pub(crate) enum Typed {
    /// A question about a job.
    Ask(Box<Ask>),
    /// `heapcast materials`.
    Materials(MaterialsArgs),
    /// `heapcast keys`.
    Keys(KeysArgs),
    /// `heapcast new`.
    New(Box<NewArgs>),
}

/// Reads what was typed, the name of the program first.
///
/// # Errors
/// What is wrong with it, or the help asked for.
pub(crate) fn read(
    words: impl IntoIterator<Item = impl Into<OsString> + Clone>,
) -> Result<Typed, clap::Error> {
    let mut matches = command().try_get_matches_from(words)?;
    let (name, mut of) = matches.remove_subcommand().unwrap_or_default();
    Ok(match name.as_str() {
        "materials" => Typed::Materials(MaterialsArgs::from_arg_matches_mut(&mut of)?),
        "keys" => Typed::Keys(KeysArgs::from_arg_matches_mut(&mut of)?),
        "new" => Typed::New(Box::new(NewArgs::from_arg_matches_mut(&mut of)?)),
        name => Typed::Ask(Box::new(Ask::read(name, of)?)),
    })
}

fn command() -> Command {
    let materials = of::<MaterialsArgs>(
        "materials",
        "List the materials that are known by name: what they weigh, how full they fill a bucket, how they settle, and sources",
        materials::EXAMPLES,
    );
    let keys = of::<KeysArgs>(
        "keys",
        "List the keys of a scenario file: what each means, what it holds, and what is taken where it is left out",
        keys::EXAMPLES,
    );
    let new = of::<NewArgs>("new", "Write a commented scenario file to start from", new::EXAMPLES);
    Command::new("heapcast")
        .version(env!("CARGO_PKG_VERSION"))
        .about(ABOUT)
        .after_long_help(EXAMPLES)
        .max_term_width(100)
        .subcommand_required(true)
        .arg_required_else_help(true)
        .subcommands(QUESTIONS.iter().copied().map(ask::command))
        .subcommands([materials, keys, new])
}

fn of<A: Args>(name: &'static str, about: &'static str, examples: &'static str) -> Command {
    A::augment_args(Command::new(name)).about(about).after_long_help(examples)
}

fn system() -> impl TypedValueParser<Value = System> {
    PossibleValuesParser::new(["us", "metric"])
        .map(|word| if word == "us" { System::Us } else { System::Metric })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_command_line_is_put_together_without_contradictions() {
        command().debug_assert();
    }

    #[test]
    fn no_option_answers_in_the_words_of_a_library() {
        for command in command().get_subcommands() {
            for option in command.get_opts().filter_map(|arg| arg.get_long()) {
                let words = ["heapcast", command.get_name(), "x", &format!("--{option}=1e4x")];
                let Err(error) = read(words) else { continue };
                let said = error.to_string();
                for foreign in ["invalid digit", "invalid float", "number too large", "is not in "] {
                    assert!(!said.contains(foreign), "{words:?}: {said}");
                }
            }
        }
    }

    #[test]
    fn every_command_shows_examples_in_its_long_help() {
        for command in command().get_subcommands_mut() {
            let help = command.render_long_help().to_string();
            assert!(help.contains("Examples:"), "{help}");
        }
    }
}
