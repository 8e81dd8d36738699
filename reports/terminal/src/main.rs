//! `heapcast`: how long moving the pile will take, from the command line.

mod cli;
mod command;
mod disk;
mod failure;
mod files;
mod interrupt;
mod output_folder;
mod part_file;
mod progress;
mod say;

use std::process::ExitCode;

fn main() -> ExitCode {
    let typed = match cli::read(std::env::args_os()) {
        Ok(typed) => typed,
        Err(error) => return ExitCode::from(say::usage(&error)),
    };
    match command::run(&typed) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) if failure.is_broken_pipe() => ExitCode::SUCCESS,
        Err(failure) => {
            say::failure(&failure);
            ExitCode::from(failure.code())
        }
    }
}
