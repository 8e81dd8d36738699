//! One value of a sweep, as typed and as a plain number.

use crate::knob::Knob;
use crate::units::amount::{self, currency_word};
use crate::units::dimension::Dimension;
use crate::units::{self, System};
use std::fmt;

/// One value that a thing takes in a sweep.
///
/// ```
/// use scenarios::{Vary, units::System};
/// let vary: Vary = "bucket 8.5, 14 ft3".parse().unwrap();
/// assert_eq!(vary.values[1].label(System::Us), "14 ft3");
/// assert_eq!(vary.values[1].label(System::Metric), "0.396 m3");
/// let (number, unit) = vary.values[0].number(System::Us);
/// assert!((number - 8.5).abs() < 1e-12 && unit == "ft3");
/// assert_eq!(vary.values[0].to_string(), "8.5 ft3");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Value {
    written: Written,
    shown: Shown,
}

/// How a value is shown to people.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Shown {
    AsTyped,
    /// A bucket \[m3\].
    Bucket(f64),
    /// A way \[m\].
    Way(f64),
}

/// A number between a currency and a unit.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Written {
    pub(crate) before: String,
    pub(crate) number: f64,
    pub(crate) after: String,
}

impl Value {
    pub(super) fn new(knob: &Knob, written: Written) -> Result<Self, String> {
        let text = written.to_string();
        let amount = amount::parse(&text).map_err(|error| format!("\"{text}\": {}", error.what()))?;
        let such = |what: &str, right: &str| {
            let is = amount.dimension.name();
            Err(format!("\"{text}\": this is {is}; {what} is wanted, such as \"{right}\""))
        };
        let shown = match knob {
            knob if knob.is_count() && !written.is_count() => return Err(not_a_count(knob, &written)),
            Knob::Bucket if amount.dimension != Dimension::VOLUME => {
                return such("a volume", "bucket 8..20 ft3");
            }
            Knob::Haul if amount.dimension != Dimension::LENGTH => return such("a length", "haul 10..80 yd"),
            Knob::Bucket => Shown::Bucket(amount.in_units_of(1.0)),
            Knob::Haul => Shown::Way(amount.in_units_of(1.0)),
            _ => Shown::AsTyped,
        };
        Ok(Self { written, shown })
    }

    /// With its unit, for tables: `3`, `14 ft3`, `40 yd`. A value of a key of the file stays in the unit typed.
    pub fn label(&self, system: System) -> String {
        match self.shown {
            Shown::AsTyped => self.written.to_string(),
            Shown::Bucket(m3) => units::bucket(m3, system),
            Shown::Way(m) => units::way(m, system),
        }
    }

    /// As a plain number with its unit, for axes and columns; the unit of a count is empty. A value of a key of the file
    /// stays in the unit typed.
    pub fn number(&self, system: System) -> (f64, String) {
        let (number, unit) = match self.shown {
            Shown::AsTyped => {
                let Written { before, number, after } = &self.written;
                return (*number, format!("{before}{after}"));
            }
            Shown::Bucket(m3) => units::bucket_number(m3, system),
            Shown::Way(m) => units::way_number(m, system),
        };
        (number, unit.to_owned())
    }
}

impl fmt::Display for Value {
    /// As it would be typed: `14 ft3`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.written.fmt(f)
    }
}

impl Written {
    /// Reads `3`, `14 ft3`, `$40/h`.
    pub(crate) fn parse(text: &str) -> Result<Self, String> {
        let text = text.trim();
        let such = format!("\"{text}\" is not a number with its unit");
        let start = text.find(|c: char| c.is_ascii_digit() || "+-.".contains(c)).ok_or_else(|| {
            format!("{such}; hold words against each other with compare, each as a change of its own")
        })?;
        let (before, rest) = (text[..start].trim(), &text[start..]);
        let end = rest.find(|c: char| !(c.is_ascii_digit() || "+-._".contains(c))).unwrap_or(rest.len());
        let end = end + exponent(&rest[end..]);
        let number = rest[..end].replace('_', "").parse::<f64>().ok().filter(|number| number.is_finite());
        let after = rest[end..].trim();
        match number {
            Some(number) if before.is_empty() || currency_word(before).is_some() => {
                Ok(Self { before: before.to_owned(), number, after: after.to_owned() })
            }
            Some(_) => Err(such),
            None => Err(format!("{such}; a range is written with two dots, as in \"1..4\"")),
        }
    }

    /// Another number in the same unit, without the dust of adding up steps.
    pub(crate) fn with(&self, number: f64) -> Self {
        let number = format!("{number:.11e}").parse().unwrap_or(number);
        Self { number, ..self.clone() }
    }

    pub(crate) fn is_count(&self) -> bool {
        self.before.is_empty() && self.after.is_empty() && self.number.fract() == 0.0
    }
}

/// Length of an exponent at the beginning of a text: of `e3 m` two, of `ewes` none.
fn exponent(text: &str) -> usize {
    let Some(power) = text.strip_prefix(['e', 'E']) else { return 0 };
    let unsigned = power.trim_start_matches(['+', '-']);
    let digits = unsigned.find(|c: char| !c.is_ascii_digit()).unwrap_or(unsigned.len());
    if digits == 0 { 0 } else { text.len() - unsigned.len() + digits }
}

impl fmt::Display for Written {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { before, number, after } = self;
        let letters = |word: &str| word.starts_with(char::is_alphabetic);
        write!(f, "{before}{}{number}", if letters(before) { " " } else { "" })?;
        write!(f, "{}{after}", if after.is_empty() || after.starts_with('/') { "" } else { " " })
    }
}

/// What is said of a value that is no whole number, where a count is wanted.
pub(super) fn not_a_count(knob: &Knob, written: &Written) -> String {
    format!("\"{written}\" is not a count; write \"{knob} 1..4\"")
}
