//! One value of a table, and how it is written.

use serde::ser::{Serialize, Serializer};
use sim::Duration;

/// One value.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Cell {
    /// Words.
    Text(String),
    /// How many.
    Count(u64),
    /// A number, where it is known.
    Number(Option<f64>),
    /// A length of time.
    Time(Duration),
    /// A moment, counted from the start of the first day, and that start \[s after midnight\].
    Clock(Option<Duration>, f64),
}

impl Cell {
    /// As a number; moments of the clock from the start of the first day.
    pub(crate) fn number(&self) -> Option<f64> {
        match self {
            Self::Text(_) => None,
            Self::Count(n) => Some(*n as f64),
            Self::Number(number) => *number,
            Self::Time(time) => Some(time.as_secs_f64()),
            Self::Clock(moment, _) => moment.map(Duration::as_secs_f64),
        }
    }

    /// As a field of CSV, with as many decimals at the most.
    pub(super) fn field(self, decimals: Option<usize>) -> String {
        if let (Some(decimals), Some(number)) = (decimals, self.after_midnight()) {
            return rounded(number, decimals);
        }
        match self {
            Self::Text(text) => harmless(text),
            Self::Count(n) => n.to_string(),
            Self::Number(number) => {
                number.filter(|v| v.is_finite()).map_or_else(String::new, |v| v.to_string())
            }
            Self::Time(time) => exact_s(time),
            Self::Clock(moment, _) => moment.map_or_else(String::new, |m| exact_s(m + self.start())),
        }
    }

    fn start(&self) -> Duration {
        let Self::Clock(_, start_s) = self else { return Duration::ZERO };
        Duration::try_from_secs_f64(*start_s).unwrap_or_default()
    }

    /// As a number; moments of the clock from midnight, to the microsecond.
    fn after_midnight(&self) -> Option<f64> {
        match self {
            Self::Clock(Some(moment), _) => Some((*moment + self.start()).as_secs_f64()),
            other => other.number(),
        }
    }
}

impl Serialize for Cell {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Text(text) => text.serialize(serializer),
            Self::Count(n) => n.serialize(serializer),
            Self::Clock(moment, start_s) => moment.map(|m| start_s + m.as_secs_f64()).serialize(serializer),
            other => other.number().serialize(serializer),
        }
    }
}

macro_rules! cell_from {
    ($($from:ty => |$value:ident| $cell:expr),* $(,)?) => {
        $(impl From<$from> for Cell {
            fn from($value: $from) -> Self {
                $cell
            }
        })*
    };
}

cell_from! {
    String => |text| Self::Text(text),
    &str => |text| Self::Text(text.to_owned()),
    Option<String> => |text| Self::Text(text.unwrap_or_default()),
    bool => |yes| Self::from(if yes { "yes" } else { "no" }),
    u32 => |n| Self::Count(n.into()),
    usize => |n| Self::Count(n as u64),
    f64 => |number| Self::Number(Some(number)),
    Option<f64> => |number| Self::Number(number),
    Duration => |time| Self::Time(time),
}

/// A cell that no spreadsheet takes for a formula: a text that begins like one gets an apostrophe before it, which
/// spreadsheets read as "this is a text". Numbers stay as they are.
fn harmless(cell: String) -> String {
    let begins = |c: char| "=+-@\t\r＝＋－＠".contains(c);
    let formula = cell.trim_start_matches(' ').starts_with(begins);
    if formula && cell.parse::<f64>().is_err() { format!("'{cell}") } else { cell }
}

/// Seconds, exact to the microsecond.
fn exact_s(time: Duration) -> String {
    let micros = time.as_micros();
    let sign = if micros < 0 { "-" } else { "" };
    let size = micros.unsigned_abs();
    format!("{sign}{}.{:06}", size / 1_000_000, size % 1_000_000)
}

/// In the fewest digits, with as many decimals at the most.
fn rounded(number: f64, decimals: usize) -> String {
    if !number.is_finite() {
        return String::new();
    }
    if let Some(text) = rounded_by_whole_numbers(number, decimals) {
        return text;
    }
    let text = format!("{number:.decimals$}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// The same in a tenth of the time, for a table of every run has hundreds of thousands of cells; `None` for a large number, or one so
/// near the middle of two that only its exact digits tell which is nearer.
fn rounded_by_whole_numbers(number: f64, decimals: usize) -> Option<String> {
    const LARGE: f64 = 1e9;
    const NEAR: f64 = 1e-6;
    let one = 10_u64.checked_pow(u32::try_from(decimals).ok()?)?;
    let scaled = number.abs() * one as f64;
    let off = scaled - scaled.floor() - 0.5;
    if scaled >= LARGE || off.abs() < NEAR {
        return None;
    }
    let whole = scaled.floor() as u64 + u64::from(off > 0.0);
    let mut text = String::with_capacity(16);
    if number < 0.0 && whole > 0 {
        text.push('-');
    }
    text.push_str(&(whole / one).to_string());
    let (mut rest, mut place) = (whole % one, one / 10);
    if rest > 0 {
        text.push('.');
    }
    while rest > 0 {
        text.push(char::from(b'0' + (rest / place) as u8));
        (rest, place) = (rest % place, place / 10);
    }
    Some(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_cell_is_a_formula_and_numbers_stay_numbers() {
        let typed = [
            ("=1+2", "'=1+2"),
            ("+41", "+41"),
            ("-5", "-5"),
            ("-0.000005", "-0.000005"),
            ("@SUM(A1)", "'@SUM(A1)"),
            ("\t=1", "'\t=1"),
            (" =1", "' =1"),
            ("-cmd", "'-cmd"),
            ("+1 raker", "'+1 raker"),
            ("＝1", "'＝1"),
            ("north", "north"),
            ("", ""),
        ];
        for (text, shown) in typed {
            assert_eq!(Cell::from(text).field(None), shown);
        }
    }

    #[test]
    fn figures_of_a_run_are_rounded() {
        let each = [
            (Cell::from(Duration::from_micros(7_260_049_999)), 1, "7260"),
            (Cell::from(Duration::from_micros(7_260_060_000)), 1, "7260.1"),
            (Cell::from(Duration::ZERO), 1, "0"),
            (Cell::from(-0.0004), 3, "0"),
            (Cell::from(33.123456), 3, "33.123"),
            (Cell::from(12.5), 3, "12.5"),
            (Cell::from(1280.555), 2, "1280.56"),
            (Cell::from(None::<f64>), 2, ""),
            (Cell::Clock(Some(Duration::from_secs(90)), 28_800.0), 1, "28890"),
        ];
        for (cell, decimals, shown) in each {
            assert_eq!(cell.clone().field(Some(decimals)), shown, "{cell:?}");
        }
    }

    #[test]
    fn rounding_by_whole_numbers_gives_the_digits_of_exact_rounding() {
        let exact = |number: f64, decimals: usize| {
            let text = format!("{number:.decimals$}");
            let text = text.trim_end_matches('0').trim_end_matches('.').to_owned();
            if text == "-0" { "0".to_owned() } else { text }
        };
        let edges = [0.05, 0.15, 0.25, 0.35, 0.000_5, 1.005, 2.675, 99.95, 999.999_5, 1e8, 123_456_789.05];
        let many = (0..20_000_u32).map(|n| f64::from(n) * 0.617_283 + f64::from(n % 1_000) / 2_000.0);
        for number in edges.into_iter().chain(many).flat_map(|number| [number, -number]) {
            for decimals in 1..=3 {
                assert_eq!(rounded(number, decimals), exact(number, decimals), "{number} to {decimals}");
            }
        }
        assert_eq!(rounded_by_whole_numbers(0.15, 1), None, "its digits go on 0.1499");
        assert_eq!(rounded_by_whole_numbers(7_260.06, 1).as_deref(), Some("7260.1"));
    }

    #[test]
    fn times_are_exact_and_unknown_numbers_empty() {
        let field = |cell: Cell| cell.field(None);
        assert_eq!(field(Duration::from_micros(7_260_000_001).into()), "7260.000001");
        assert_eq!(field(Duration::from_micros(-5).into()), "-0.000005");
        assert_eq!(field(Cell::Clock(Some(Duration::from_micros(1)), 28_800.0)), "28800.000001");
        assert_eq!(field(0.1.into()), "0.1");
        assert_eq!(
            [field(None::<f64>.into()), field(f64::NAN.into()), field(Cell::Clock(None, 0.0))],
            ["", "", ""]
        );
    }
}
