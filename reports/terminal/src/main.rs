//! `heapcast`: how long moving the pile will take, from the command line.

mod cli;
mod command;
mod failure;
mod files;
mod interrupt;
mod output_folder;
mod part_file;
mod progress;
mod say;

use clap::Parser;
use cli::Cli;
use std::process::ExitCode;

fn main() -> ExitCode {
    let cli = match Cli::try_parse() {
        Ok(cli) => cli,
        Err(error) => return ExitCode::from(say::usage(&error)),
    };
    match command::run(&cli) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) if failure.is_broken_pipe() => ExitCode::SUCCESS,
        Err(failure) => {
            say::failure(&failure);
            ExitCode::from(failure.code())
        }
    }
}
