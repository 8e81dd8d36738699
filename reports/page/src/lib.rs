//! The answers of heapcast in a browser: a thin layer through which a page asks, text in, text and bytes out.
//!
//! **It promises** that an answer has the same words, figures and files, byte for byte, as that of the terminal for the same texts,
//! options and seed; and that whatever is handed in, what comes back is an answer or the words of what is wrong with it.
//!
//! **It does not** keep anything between calls but the answer last given, and it knows no page, no network and no clock.
//!
//! Every text that goes in or comes out is JSON unless said otherwise. What is refused is thrown as an `Error` whose message is JSON:
//! `{"problems": [...]}` where it can be told at a line or an option, else `{"message": "..."}`.

mod about;
mod answered;
mod ask;
mod code;
mod edit;
mod job;
mod link;
mod message;
mod new;
mod read;
mod refused;
mod sentence;

pub use answered::Answered;

use refused::Refused;
use std::cell::RefCell;
use wasm_bindgen::prelude::*;

type Thrown<T> = Result<T, JsError>;

fn thrown(refused: Refused) -> JsError {
    JsError::new(&refused.json())
}

/// What can be asked, and of what: version, questions with their options, shipped scenarios and lists.
#[wasm_bindgen]
pub fn about() -> Thrown<String> {
    about::about().map_err(thrown)
}

/// A scenario file to start from: the text itself, from its units and its title, of which each may be left out.
///
/// # Errors
/// If the answers are not such JSON.
#[wasm_bindgen]
pub fn starter(answers: &str) -> Thrown<String> {
    new::starter(answers).map_err(thrown)
}

/// A job as it was read, or what is wrong with it.
///
/// # Errors
/// If what is handed in is not such JSON; a job in which something is wrong is no error.
#[wasm_bindgen]
pub fn read(asked: &str) -> Thrown<String> {
    read::read(asked).map_err(thrown)
}

/// A job with its text changed, as it is read then, or what is wrong with the change and the text as it was.
///
/// # Errors
/// If what is handed in is not such JSON.
#[wasm_bindgen]
pub fn edit(asked: &str) -> Thrown<String> {
    edit::edit(asked).map_err(thrown)
}

#[wasm_bindgen]
extern "C" {
    /// A function of the page that is told of runs.
    pub type Progress;

    #[wasm_bindgen(method, catch)]
    fn call(this: &Progress, own: &JsValue, made: f64, in_all: f64) -> Result<(), JsValue>;
}

/// A job as a text for the end of a link: not JSON, and begun by the number of its kind.
///
/// # Errors
/// If the job is too large for a link.
#[wasm_bindgen]
pub fn pack(job: &str) -> Thrown<String> {
    link::pack(job).map_err(thrown)
}

/// The job of such a text, whoever made it.
///
/// # Errors
/// If it is cut off, damaged, of another kind, or holds something else.
#[wasm_bindgen]
pub fn unpack(text: &str) -> Thrown<String> {
    link::unpack(text).map_err(thrown)
}

/// A text as a code for a camera: SVG.
///
/// # Errors
/// If it is too long for one.
#[wasm_bindgen]
pub fn qr(text: &str) -> Thrown<String> {
    code::qr(text).map_err(thrown)
}

/// A message for the client of a job: subject and text.
///
/// # Errors
/// What is wrong with the job.
#[wasm_bindgen]
pub fn message(asked: &str) -> Thrown<String> {
    message::message(asked).map_err(thrown)
}

thread_local! {
    /// Where runs are told of: a function of the page belongs to its thread, and what makes the runs may use any.
    static PROGRESS: RefCell<Option<Progress>> = const { RefCell::new(None) };
}

/// Asks a question; `progress` is called with the runs made so far and those there will be, 0 where nobody knows.
///
/// # Errors
/// What is wrong with the question or a file, or why there is no answer.
#[wasm_bindgen]
pub fn ask(asked: &str, progress: Option<Progress>) -> Thrown<Answered> {
    PROGRESS.set(progress);
    let answer = ask::ask(asked, &|made, in_all| {
        PROGRESS.with_borrow(|progress| {
            if let Some(progress) = progress {
                // Whatever the page does with it, the runs go on.
                let _ = progress.call(&JsValue::NULL, made, in_all);
            }
        });
    });
    PROGRESS.set(None);
    answer.map_err(thrown)
}
