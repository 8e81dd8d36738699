//! The scenarios of heapcast: scenario files, units, checks and cautions, turned into a checked job.
//!
//! **It promises** that a [`Scenario`] it gives out can be run: everything that is wrong with a file is told at once, each
//! [`Problem`] with line, key, value as typed, what is wrong and what would be right; that every default used and every
//! distribution fitted stands among its [`Assumption`]s with its source; and that no file, however spoilt, makes it
//! panic or hang.
//!
//! **It does not** run anything, print anything, open files (they are handed in, see [`Files`]) or look at the clock, and it does not judge whether work can be done
//! without harm: its [`Caution`]s defer to the machine's manual, local codes and licensed practice.
//!
//! The way of the data: text -> document (values that know where they stand) -> raw things (one file per kind, as
//! typed) -> checks -> [`sim::Job`] in SI.
//!
//! ```
//! use scenarios::{Selection, Texts, read_text};
//!
//! let text = r#"
//!     [material]
//!     name = "wood chips, green"
//!     [[zone]]
//!     name = "round pen"
//!     volume = "30 yd3"
//!     distance = "20 yd"
//!     [[stockpile]]
//!     name = "heap"
//!     on_hand = "34 yd3"
//!     [[loader]]
//!     name = "small loader"
//!     heaped = "14 ft3"
//!     [[raker]]
//!     name = "helper"
//! "#;
//! let scenario = read_text(text, "pen.toml", Texts::default(), &Selection::default()).unwrap();
//! assert!((scenario.job.zones[0].need_m3 - 22.94).abs() < 0.01);
//! assert!(scenario.assumptions.iter().any(|a| a.key == "loader.small loader.loading"));
//!
//! let refusal = read_text(&text.replace("30 yd3", "30 lb"), "pen.toml", Texts::default(),
//!     &Selection::default()).unwrap_err();
//! assert_eq!(refusal.to_string(), "pen.toml:6:14: zone \"round pen\".volume = \"30 lb\": this is a mass; a volume is \
//!     wanted, such as \"20 yd3\" or \"15 m3\"");
//! ```

pub mod calendar;
pub mod sentence;
pub mod typed;
pub mod units;

mod assumption;
mod barrow;
mod buckets;
mod build;
mod caution;
mod change;
mod check;
mod clearance;
mod defaults;
mod diagnostics;
mod document;
mod edit;
mod fields;
mod files;
mod fitted;
mod hash;
mod key;
mod keys;
mod knob;
mod lift;
mod materials;
mod nearest;
mod observed;
mod parse;
mod problem;
mod quantity;
mod raw;
mod reading;
mod scenario;
mod shipped;
mod signs;
mod source;
mod starter;
#[cfg(test)]
mod testing;
mod vary;

pub use assumption::Assumption;
pub use barrow::barrow;
pub use buckets::{Bucket, BucketList, buckets_text};
pub use caution::entry::{Caution, Weight};
pub use change::{Change, Variant};
pub use edit::{Edit, Fault, edited, edited_with};
pub use files::{Files, NamedFile, NotRead, Texts, leads_out};
pub use fitted::{Fitted, GateAnswer, Lift, LiftAnswer, PassAnswer, Through, with_bucket};
pub use keys::{KeyLine, KeyTable, keys, keys_called};
pub use knob::Knob;
pub use lift::{LiftFigure, StatedLift};
pub use materials::{Material, materials, materials_called};
pub use nearest::nearest;
pub use problem::{Problem, Refusal};
pub use reading::JobFile;
pub use scenario::{FixedCosts, Scenario, Selection, Stated, StatedLoader, StatedZone};
pub use sentence::{Clock, Sentence};
pub use shipped::{shipped, shipped_files};
pub use signs::{escaped, escaped_lines, shown_path};
pub use starter::{AnsweredPrices, Answers, starter};
pub use vary::{Value, Vary, grid};

/// Reads the text of a scenario file and makes the job selected; files that it names are asked of `files`.
///
/// # Errors
/// Everything that is wrong with it, in one go.
pub fn read_text(
    text: &str,
    file: &str,
    files: impl Files + 'static,
    selection: &Selection,
) -> Result<Scenario, Refusal> {
    JobFile::of_text(text, file, files)?.scenario(selection)
}
