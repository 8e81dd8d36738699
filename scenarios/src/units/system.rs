//! The two systems of units people are shown.

use std::fmt;
use std::str::FromStr;

/// The system of units in which results are shown. What is typed may mix both.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum System {
    /// Yards, feet, inches, pounds, US gallons.
    Us,
    /// Metres, centimetres, kilograms, litres.
    Metric,
}

impl System {
    /// The word for it in files and on the command line: `us` or `metric`.
    pub fn word(self) -> &'static str {
        match self {
            System::Us => "us",
            System::Metric => "metric",
        }
    }
}

impl fmt::Display for System {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

impl FromStr for System {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        match text.trim().to_ascii_lowercase().as_str() {
            "us" => Ok(System::Us),
            "metric" => Ok(System::Metric),
            _ => Err(format!("\"{text}\" is not a system of units: write us or metric")),
        }
    }
}
