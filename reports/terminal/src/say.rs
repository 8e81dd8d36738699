//! The one place that prints. Styling is taken away where the terminal or `NO_COLOR` asks for it.

use crate::failure::Failure;
use reports::render::screen::{Snippets, USUAL_WIDTH, problems};
use std::io::{IsTerminal, Write};

/// Columns of the terminal that standard output goes to, or the usual ones.
pub(crate) fn width() -> u16 {
    terminal_size::terminal_size_of(std::io::stdout()).map_or(USUAL_WIDTH, |(width, _)| width.0)
}

/// Prints results.
///
/// # Errors
/// If standard output cannot be written.
pub(crate) fn out(text: &str) -> Result<(), Failure> {
    let mut stdout = anstream::stdout().lock();
    stdout.write_all(text.as_bytes()).and_then(|()| stdout.flush()).map_err(Failure::Standard)
}

/// Prints results that are bytes already.
///
/// # Errors
/// If standard output cannot be written.
pub(crate) fn out_bytes(bytes: &[u8]) -> Result<(), Failure> {
    let mut stdout = std::io::stdout().lock();
    stdout.write_all(bytes).and_then(|()| stdout.flush()).map_err(Failure::Standard)
}

/// Tells what is not a result.
pub(crate) fn aside(text: &str) {
    // Where even standard error is gone there is nobody to tell.
    let _ = anstream::stderr().lock().write_all(text.as_bytes());
}

/// Tells what is wrong with the command line, or shows the help asked for; the exit code is clap's.
///
/// What was typed is shown only as far as it can be seen.
pub(crate) fn usage(error: &clap::Error) -> u8 {
    let typed = || std::env::args_os().map(|word| word.to_string_lossy().into_owned());
    if typed().all(|word| scenarios::escaped(&word) == word) {
        // Where even standard error is gone there is nobody to tell.
        let _ = error.print();
    } else {
        aside(&scenarios::escaped_lines(&error.render().to_string()));
    }
    u8::try_from(error.exit_code()).unwrap_or(2)
}

/// Tells why a command did not end well.
pub(crate) fn failure(failure: &Failure) {
    let text = match failure {
        _ if failure.is_broken_pipe() => return,
        Failure::Refused(refusal) => {
            let on_terminal = std::io::stderr().is_terminal();
            problems(refusal, if on_terminal { Snippets::Shown } else { Snippets::Hidden })
        }
        other => format!("heapcast: {}\n", scenarios::escaped_lines(&other.to_string())),
    };
    aside(&text);
}
