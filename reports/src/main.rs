//! `heapcast`: how long moving the pile will take, from the command line.

use clap::Parser;
use reports::cli::Cli;
use reports::{command, say};
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
