//! Changes of the text of a file: comments, order and whatever else stands in it stay as they are, byte for byte.

mod add;
mod breaks;
mod copies;
mod cut;
mod draft;
mod fault;
mod figures;
mod gates;
mod key;
mod knob;
mod lines;
mod remove;
mod rename;
mod set;
mod spare;
mod unset;
mod written;

use crate::files::Texts;
use draft::Draft;
pub use fault::Fault;
pub(crate) use written::typed;

/// One change of a file's text.
///
/// Keys are those of [`Change`](crate::Change) (`loader.compact tractor.heaped`, `shift.start`, `rakers`), and besides, entries of
/// a list are counted from 1: `zone.north.ways.1.distance`, `stockpile.pile.deliveries.2.at`, `shift.breaks.1`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Edit {
    /// Another value. An empty one is as [`Edit::Unset`].
    Set {
        /// The key.
        key: String,
        /// The value as a person types it, without quotes: `14 ft3`, `12:00-12:30`, `{ low = "15 s", typical = "20 s", high = "30 s" }`.
        value: String,
    },
    /// Back to the usual value.
    Unset {
        /// The key.
        key: String,
    },
    /// One thing more: a copy of the last with a name of its own.
    Add {
        /// `zone`, `loader`, `raker`, `pass`, `delivery` (to the last stockpile that has some; to a certain one as
        /// `delivery.NAME`) or `break`.
        kind: String,
    },
    /// One thing less, with all that names it.
    Remove {
        /// `zone`, `loader`, `raker`, `pass`, `delivery` or `break`.
        kind: String,
        /// Its name; of a delivery the stockpile and its number (`gate pile.2`), of a break its number.
        name: String,
    },
}

/// The text with changes made, one after the other. What a value means is not judged here: that is done when the result is read.
///
/// # Errors
/// The text is no TOML; a key names nothing; the last of its kind cannot be removed; or what is to be changed is written in a way
/// that only a person can change.
///
/// ```
/// use scenarios::{Answers, Edit, edited, starter, units::System};
/// let text = starter(&Answers::usual(System::Metric));
/// let longer = Edit::Set { key: "zone.ground.distance".into(), value: "40 m".into() };
/// let text = edited(&text, &[longer]).unwrap();
/// assert!(text.contains("distance = \"40 m\"              # from the pile to the middle of the ground"));
/// let text = edited(&text, &[Edit::Add { kind: "zone".into() }]).unwrap();
/// assert!(text.contains("name = \"ground 2\""));
/// let last = Edit::Remove { kind: "loader".into(), name: "loader".into() };
/// assert_eq!(edited(&text, &[last]).unwrap_err().what, "this is the only loader");
/// ```
pub fn edited(text: &str, edits: &[Edit]) -> Result<String, Fault> {
    edited_with(text, edits, &Texts::default())
}

/// As [`edited`], of a text that names files. They are asked when something is added or removed: an alternative that can be no
/// more (a loader left at home that is the only one now) goes as well.
///
/// # Errors
/// As [`edited`].
pub fn edited_with(text: &str, edits: &[Edit], files: &Texts) -> Result<String, Fault> {
    let mut draft = Draft::of(text, files)?;
    for edit in edits {
        match edit {
            Edit::Set { key, value } if value.trim().is_empty() => unset::unset(&mut draft, key)?,
            Edit::Set { key, value } => knob::set(&mut draft, key, value.trim())?,
            Edit::Unset { key } => unset::unset(&mut draft, key)?,
            Edit::Add { kind } => add::add(&mut draft, kind).and_then(|()| spare::spare(&mut draft))?,
            Edit::Remove { kind, name } => {
                remove::remove(&mut draft, kind, name).and_then(|()| spare::spare(&mut draft))?;
            }
        }
    }
    Ok(draft.into_text())
}

#[cfg(test)]
mod tests;
