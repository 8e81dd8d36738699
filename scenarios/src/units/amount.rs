//! A number with a unit, as people type it.

use super::amount_error::AmountError;
use super::dimension::Dimension;
use super::numeral::{Number, number};
use super::system::System;
use super::words::{Unit, find, nearest_word};
use crate::signs::printable;

/// Signs that stand before or after a sum of money.
const SIGNS: &[&str] = &["$", "€", "£", "¥", "₹", "₩", "₺", "₴", "₽", "R$", "kr", "zł", "Kč", "Ft", "Fr"];

/// Longest text of a quantity \[bytes\].
const LONGEST: usize = 80;

/// A number with its unit.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Amount {
    number: f64,
    size: f64,
    /// What the unit measures.
    pub(crate) dimension: Dimension,
    /// The system the unit belongs to, if to one only.
    pub(crate) system: Option<System>,
    /// The currency typed.
    pub(crate) currency: Option<String>,
}

impl Amount {
    /// How many units of the given SI size it is. Exact where both units are the same.
    pub(crate) fn in_units_of(&self, size: f64) -> f64 {
        self.number * (self.size / size)
    }

    /// Whether a comma between thousands is what people write beside it: with US units, and in sums of money.
    fn has_us_thousands(&self) -> bool {
        self.system == Some(System::Us)
            || self.dimension == Dimension::MONEY
            || self.currency.as_deref() == Some("$")
    }

    /// Whether it is counted in tons or tonnes.
    pub(crate) fn is_in_tons(&self) -> bool {
        self.dimension == Dimension::MASS && self.size > 900.0
    }

    /// The amount by volume, where it is one by mass and a volume is wanted: multiplied or divided by a density \[kg/m3\].
    pub(crate) fn by_volume(&self, wanted: Dimension, density: f64) -> Option<f64> {
        let value = self.in_units_of(1.0);
        if self.dimension.over(Dimension::DENSITY) == wanted {
            Some(value / density)
        } else if wanted.over(Dimension::DENSITY) == self.dimension {
            Some(value * density)
        } else {
            None
        }
    }
}

/// Reads `30 yd3`, `$18/yd3`, `1 h 30 min`, `5 ft 6 in`, `2 1/2 in`, `60 m x 3 m`, `1,400 ft2`, `25 %`, `0.25`.
///
/// # Errors
/// What is wrong with it. A plain number is not an error: its dimension is a number's.
pub(crate) fn parse(text: &str) -> Result<Amount, AmountError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(AmountError::Empty);
    }
    if text.len() > LONGEST {
        return Err(AmountError::TooLong);
    }
    match sides(text) {
        Some((length, width)) => rectangle(length, width),
        None => one(text),
    }
}

fn one(text: &str) -> Result<Amount, AmountError> {
    let (currency, rest) = leading_currency(text);
    let Number { value: number, rest, doubt } = number(rest)?;
    let next = rest.char_indices().find(|(i, c)| starts_number(rest, *i, *c)).map(|(i, _)| i);
    let amount = match (currency, next) {
        (Some(currency), _) => money(number, rest, currency)?,
        (None, _) if rest.is_empty() => bare(number),
        (None, None) => with_unit(number, rest)?,
        (None, Some(at)) => compound(with_unit(number, &rest[..at])?, &rest[at..])?,
    };
    match doubt {
        Some(written) if !amount.has_us_thousands() => Err(AmountError::Comma(written)),
        _ => Ok(amount),
    }
}

/// The two sides of `60 m x 3 m`.
fn sides(text: &str) -> Option<(&str, &str)> {
    text.char_indices().find_map(|(at, sign)| {
        let (before, after) = (text[..at].trim(), text[at + sign.len_utf8()..].trim());
        let side = before.starts_with(|c: char| c.is_ascii_digit())
            && after.starts_with(|c: char| c.is_ascii_digit());
        ("xX×*".contains(sign) && side).then_some((before, after))
    })
}

fn rectangle(length: &str, width: &str) -> Result<Amount, AmountError> {
    let typed = width;
    let (length, width) = (one(length)?, parse(width)?);
    if length.dimension == Dimension::NUMBER && width.dimension == Dimension::LENGTH {
        let unit = if width.system == Some(System::Us) { "ft" } else { "m" };
        return Err(AmountError::Sides(format!("\"{} {unit} x {}\"", length.number, printable(typed))));
    }
    if length.dimension != Dimension::LENGTH || width.dimension != Dimension::LENGTH {
        return Err(AmountError::Sides("\"60 ft x 10 ft\" or \"18 m x 3 m\"".into()));
    }
    if length.number < 0.0 || width.number < 0.0 {
        return Err(AmountError::Mixed);
    }
    let number = length.in_units_of(1.0) * width.in_units_of(1.0);
    Ok(Amount { number, size: 1.0, dimension: Dimension::AREA, ..length })
}

/// Reads the text of a unit alone, such as `s` or `m3/h`.
pub(crate) fn parse_unit(text: &str) -> Result<Amount, AmountError> {
    if text.trim().is_empty() { Err(AmountError::Empty) } else { with_unit(1.0, text) }
}

/// A number without a unit.
pub(crate) fn bare(number: f64) -> Amount {
    Amount { number, size: 1.0, dimension: Dimension::NUMBER, system: None, currency: None }
}

/// A digit that begins a further number: it follows a space, or stands where no unit has one.
fn starts_number(text: &str, at: usize, c: char) -> bool {
    c.is_ascii_digit()
        && text[..at].ends_with(|before: char| before.is_whitespace() || before == '\'' || before == '+')
}

fn compound(first: Amount, rest: &str) -> Result<Amount, AmountError> {
    let second = parse(rest)?;
    let may_join = first.dimension == Dimension::TIME || first.dimension == Dimension::LENGTH;
    if !may_join || second.dimension != first.dimension || second.size >= first.size || first.number < 0.0 {
        return Err(AmountError::Mixed);
    }
    Ok(Amount { number: first.in_units_of(1.0) + second.in_units_of(1.0), size: 1.0, ..first })
}

fn with_unit(number: f64, text: &str) -> Result<Amount, AmountError> {
    let text = text.trim().trim_end_matches(',');
    if ["diameter", "diam", "dia", "across", "ø"].iter().any(|word| text.to_lowercase().ends_with(word)) {
        return Err(AmountError::Round);
    }
    if let Some(unit) = find(text) {
        return Ok(of(number, unit));
    }
    let text = text.replace(" per ", "/");
    if let Some((above, below)) = text.split_once('/') {
        if above.trim().is_empty() {
            return Err(AmountError::NoUnit);
        }
        let below = find(below).ok_or_else(|| unknown(below))?;
        if let Some(currency) = currency_word(above.trim()) {
            return Ok(quotient(money_amount(number, currency), below));
        }
        let above = find(above).ok_or_else(|| unknown(above))?;
        return Ok(quotient(of(number, above), below));
    }
    if text.starts_with(|c: char| c == '/' || c.is_ascii_digit()) {
        return Err(AmountError::NotANumber);
    }
    match currency_word(&text) {
        Some(currency) => Ok(money_amount(number, currency)),
        None => Err(unknown(&text)),
    }
}

fn of(number: f64, unit: &Unit) -> Amount {
    Amount { number, size: (unit.size)(), dimension: unit.dimension, system: unit.system, currency: None }
}

fn quotient(above: Amount, below: &Unit) -> Amount {
    Amount {
        size: above.size / (below.size)(),
        dimension: above.dimension.over(below.dimension),
        system: above.system.or(below.system),
        ..above
    }
}

fn unknown(word: &str) -> AmountError {
    let word: String = printable(word.trim()).chars().take(40).collect();
    let near = nearest_word(&word);
    AmountError::UnknownUnit(word, near)
}

fn money(number: f64, rest: &str, currency: String) -> Result<Amount, AmountError> {
    let amount = money_amount(number, currency);
    let rest = rest.trim();
    if rest.is_empty() {
        return Ok(amount);
    }
    let below = rest.strip_prefix('/').or_else(|| rest.strip_prefix("per ")).ok_or_else(|| unknown(rest))?;
    let unit = find(below).ok_or_else(|| unknown(below))?;
    Ok(quotient(amount, unit))
}

fn money_amount(number: f64, currency: String) -> Amount {
    Amount { number, size: 1.0, dimension: Dimension::MONEY, system: None, currency: Some(currency) }
}

fn leading_currency(text: &str) -> (Option<String>, &str) {
    let end = text.find(|c: char| c.is_ascii_digit() || "+-.".contains(c) || c.is_whitespace()).unwrap_or(0);
    match currency_word(&text[..end]) {
        Some(currency) => (Some(currency), text[end..].trim_start()),
        None => (None, text),
    }
}

/// A currency: one of the signs, or three capital letters.
pub(crate) fn currency_word(word: &str) -> Option<String> {
    let code = word.len() == 3 && word.chars().all(|c| c.is_ascii_uppercase());
    let sign = SIGNS.contains(&word);
    (code && find(word).is_none() || sign).then(|| word.to_owned())
}

#[cfg(test)]
mod tests;
