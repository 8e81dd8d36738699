//! Why a text is not an amount.

/// Why a text is not an amount.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum AmountError {
    /// Nothing there.
    Empty,
    /// Far longer than any quantity.
    TooLong,
    /// It does not begin with a number.
    NotANumber,
    /// Not a finite number.
    NotFinite,
    /// A comma in the number, and how it would be written without.
    Comma(String),
    /// A number and nothing else.
    NoUnit,
    /// A word that is no unit, and the nearest that is.
    UnknownUnit(String, Option<&'static str>),
    /// Several numbers whose units do not belong together.
    Mixed,
    /// Two sides of which one has no unit or is no length, and how it would be written.
    Sides(String),
    /// A number of digits with a unit, and the word that says it is the width of a circle.
    Round,
}

impl AmountError {
    /// What is wrong, in words.
    pub(crate) fn what(&self) -> String {
        match self {
            AmountError::Empty => "nothing is written here".into(),
            AmountError::TooLong => "this is too long for a quantity".into(),
            AmountError::NotANumber => "this does not begin with a number".into(),
            AmountError::NotFinite => "this is not a finite number".into(),
            AmountError::Comma(written) => {
                format!("a comma in a number can be read two ways: write {written}")
            }
            AmountError::NoUnit => "the unit is missing".into(),
            AmountError::UnknownUnit(word, Some(near)) => {
                format!("the unit \"{word}\" is not known, the nearest is \"{near}\"")
            }
            AmountError::UnknownUnit(word, None) => format!("the unit \"{word}\" is not known"),
            AmountError::Mixed => "these units do not belong together".into(),
            AmountError::Sides(written) => format!("each side needs its unit: write {written}"),
            AmountError::Round => {
                "this is the width of a round zone: write it as diameter = \"60 ft\" in place of \
                                   the area"
                    .into()
            }
        }
    }
}
