//! The trade's words for what can be turned: one word that changes several keys of a file.

use std::fmt;

/// What can be turned.
///
/// ```
/// use scenarios::Knob;
/// assert_eq!(Knob::of("rakers"), Knob::Rakers);
/// assert_eq!(Knob::of("loader.tractor.heaped"), Knob::Key("loader.tractor.heaped".into()));
/// assert_eq!(Knob::Bucket.words(), "bucket, heaped");
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Knob {
    /// How many rakers there are in all: further ones are copies of the last, of fewer the first stay.
    Rakers,
    /// How many loaders there are in all: further ones are copies of the last, of fewer the first stay.
    Loaders,
    /// Heaped capacity of every loader; struck capacity follows in proportion, everything else stays.
    Bucket,
    /// Mean haul: over the zones, by what they need, of the nearest way. All ways follow in proportion.
    Haul,
    /// Heaps that may lie in each zone at once.
    Room,
    /// A key of the file.
    Key(String),
}

impl Knob {
    /// The words of the trade, as typed.
    pub const WORDS: [&str; 5] = ["rakers", "loaders", "bucket", "haul", "room"];

    /// The knob of a word; any other word is a key of the file.
    pub fn of(word: &str) -> Self {
        match word.trim().to_ascii_lowercase().as_str() {
            "rakers" => Self::Rakers,
            "loaders" => Self::Loaders,
            "bucket" => Self::Bucket,
            "haul" => Self::Haul,
            "room" => Self::Room,
            _ => Self::Key(word.trim().to_owned()),
        }
    }

    /// What stands at an axis or above a column.
    pub fn words(&self) -> &str {
        match self {
            Self::Rakers => "rakers",
            Self::Loaders => "loaders",
            Self::Bucket => "bucket, heaped",
            Self::Haul => "mean haul",
            Self::Room => "room, heaps a zone",
            Self::Key(key) => key,
        }
    }
}

impl fmt::Display for Knob {
    /// As typed.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Rakers => "rakers",
            Self::Loaders => "loaders",
            Self::Bucket => "bucket",
            Self::Haul => "haul",
            Self::Room => "room",
            Self::Key(key) => key,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_has_a_knob_that_is_written_so() {
        for word in Knob::WORDS {
            assert_ne!(Knob::of(word), Knob::Key(word.into()));
            assert_eq!(Knob::of(word).to_string(), word);
            assert_eq!(Knob::of(&word.to_uppercase()), Knob::of(word));
        }
        assert_eq!(Knob::of(" raker.helper.count ").words(), "raker.helper.count");
    }
}
