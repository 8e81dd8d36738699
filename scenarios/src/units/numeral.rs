//! Numbers as people write them: `17.5`, `1e3`, `2 1/2`, `2½`, `1,400`.

use super::amount_error::AmountError;

/// Fractions that have a sign of their own.
const FRACTIONS: &[(char, f64)] = &[
    ('½', 1.0 / 2.0),
    ('⅓', 1.0 / 3.0),
    ('⅔', 2.0 / 3.0),
    ('¼', 1.0 / 4.0),
    ('¾', 3.0 / 4.0),
    ('⅛', 1.0 / 8.0),
    ('⅜', 3.0 / 8.0),
    ('⅝', 5.0 / 8.0),
    ('⅞', 7.0 / 8.0),
];
/// Largest number below the line of a fraction.
const LARGEST_BELOW: u32 = 128;

/// A number at the beginning of a text.
pub(super) struct Number<'t> {
    pub(super) value: f64,
    /// What follows.
    pub(super) rest: &'t str,
    /// Where a comma could stand between thousands or before decimals: both ways to write it.
    pub(super) doubt: Option<String>,
}

/// Reads the number at the beginning of a text.
///
/// # Errors
/// Why there is none.
pub(super) fn number(text: &str) -> Result<Number<'_>, AmountError> {
    let lower = text.to_ascii_lowercase();
    let unsigned = lower.trim_start_matches(['+', '-']);
    if ["nan", "inf", "infinity", "∞"].iter().any(|word| unsigned.split_whitespace().next() == Some(*word))
    {
        return Err(AmountError::NotFinite);
    }
    if let Some((part, rest)) = sign_of_a_fraction(text) {
        return Ok(Number { value: part, rest: rest.trim_start(), doubt: None });
    }
    let length = text.find(|c: char| !(c.is_ascii_digit() || "+-_.,".contains(c))).unwrap_or(text.len());
    let (digits, doubt) = match text[..length].split_once(',') {
        // A comma at the end belongs to the sentence.
        Some((_, "")) | None => (None, None),
        Some(_) => without_commas(&text[..length]).map(|(digits, doubt)| (Some(digits), doubt))?,
    };
    let (value, rest) = match &digits {
        Some(digits) => (finite(digits)?, &text[length..]),
        None => plain(text)?,
    };
    let whole = digits.is_none() && value.fract() == 0.0;
    match fraction(value, whole, rest) {
        Some((value, rest)) => Ok(Number { value, rest: rest.trim_start(), doubt }),
        None => Ok(Number { value, rest: rest.trim_start(), doubt }),
    }
}

fn finite(digits: &str) -> Result<f64, AmountError> {
    let value: f64 = digits.replace('_', "").parse().map_err(|_| AmountError::NotANumber)?;
    if value.is_finite() { Ok(value) } else { Err(AmountError::NotFinite) }
}

/// A number without commas or fractions.
fn plain(text: &str) -> Result<(f64, &str), AmountError> {
    let bytes = text.as_bytes();
    let digits = |mut at: usize| {
        while bytes.get(at).is_some_and(|b| b.is_ascii_digit() || *b == b'_') {
            at += 1;
        }
        at
    };
    let mut end = digits(usize::from(matches!(bytes.first(), Some(b'+' | b'-'))));
    if bytes.get(end) == Some(&b'.') {
        end = digits(end + 1);
    }
    if matches!(bytes.get(end), Some(b'e' | b'E')) {
        let sign = usize::from(matches!(bytes.get(end + 1), Some(b'+' | b'-')));
        let power = digits(end + 1 + sign);
        if power > end + 1 + sign {
            end = power;
        }
    }
    Ok((finite(&text[..end])?, &text[end..]))
}

/// Digits with commas between their thousands, without them. One comma before three digits could also be a decimal
/// comma: then both ways to write it are given.
fn without_commas(digits: &str) -> Result<(String, Option<String>), AmountError> {
    let sign = digits.len() - digits.trim_start_matches(['+', '-']).len();
    let (whole, decimals) = match digits[sign..].split_once('.') {
        Some((whole, decimals)) => (whole, Some(decimals)),
        None => (&digits[sign..], None),
    };
    let groups: Vec<&str> = whole.split(',').collect();
    let figures = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    let thousands = (1..=3).contains(&groups[0].len())
        && groups.iter().all(|group| figures(group))
        && groups[1..].iter().all(|group| group.len() == 3)
        && decimals.is_none_or(figures);
    if thousands {
        let written = digits.replace(',', "");
        let one_comma = groups.len() == 2 && decimals.is_none();
        let doubt =
            (one_comma && groups[0] != "0").then(|| format!("{written} or {}", digits.replace(',', ".")));
        if one_comma && groups[0] == "0" {
            return Err(AmountError::Comma(digits.replace(',', ".")));
        }
        return Ok((written, doubt));
    }
    // 1.400,5 and 2,5: the last comma stands before the decimals.
    let (before, after) = digits.rsplit_once(',').unwrap_or((digits, ""));
    let before: String = before.chars().filter(|c| c.is_ascii_digit() || "+-".contains(*c)).collect();
    let after: String = after.chars().filter(char::is_ascii_digit).collect();
    Err(AmountError::Comma(format!("{before}.{after}")))
}

/// A whole number and the fraction that follows it, or a fraction of which it is the upper half.
fn fraction(value: f64, whole: bool, rest: &str) -> Option<(f64, &str)> {
    if !whole {
        return None;
    }
    let sign = if value < 0.0 { -1.0 } else { 1.0 };
    if let Some((part, rest)) = sign_of_a_fraction(rest.trim_start()) {
        return Some((value + sign * part, rest));
    }
    if let Some((below, rest)) = rest.strip_prefix(['/', '⁄']).and_then(below) {
        return Some((value / below, rest));
    }
    let part = rest.strip_prefix('-').unwrap_or_else(|| rest.trim_start());
    if part.len() == rest.len() {
        return None;
    }
    let length = part.find(|c: char| !c.is_ascii_digit())?;
    let above: u32 = part[..length].parse().ok()?;
    let (below, rest) = part[length..].strip_prefix(['/', '⁄']).and_then(below)?;
    (f64::from(above) < below).then(|| (value + sign * f64::from(above) / below, rest))
}

/// The number below the line of a fraction.
fn below(text: &str) -> Option<(f64, &str)> {
    let length = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    let below: u32 = text[..length].parse().ok()?;
    (1..=LARGEST_BELOW).contains(&below).then(|| (f64::from(below), &text[length..]))
}

fn sign_of_a_fraction(text: &str) -> Option<(f64, &str)> {
    let sign = text.chars().next()?;
    let (_, part) = FRACTIONS.iter().find(|(known, _)| *known == sign)?;
    Some((*part, &text[sign.len_utf8()..]))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reads(text: &str) -> Result<(f64, &str, bool), AmountError> {
        number(text).map(|number| (number.value, number.rest, number.doubt.is_some()))
    }

    #[test]
    fn fractions_are_read_with_and_without_a_whole_number_before_them() {
        for (text, value) in [
            ("2 1/2 in", 2.5),
            ("2-1/2 in", 2.5),
            ("2½ in", 2.5),
            ("2 ½ in", 2.5),
            ("½ in", 0.5),
            ("1/2 in", 0.5),
            ("3⁄4 in", 0.75),
            ("-1 1/4 in", -1.25),
            ("12 15/16 in", 12.9375),
        ] {
            assert_eq!(reads(text), Ok((value, "in", false)), "{text}");
        }
        for (text, value, rest) in
            [("4 / m", 4.0, "/ m"), ("4/0 m", 4.0, "/0 m"), ("2 3 in", 2.0, "3 in"), ("5/m3", 5.0, "/m3")]
        {
            assert_eq!(reads(text), Ok((value, rest, false)), "{text}");
        }
    }

    #[test]
    fn commas_between_thousands_are_read_and_others_told_with_the_right_spelling() {
        assert_eq!(reads("1,234,567 l"), Ok((1_234_567.0, "l", false)));
        assert_eq!(reads("12,400.50"), Ok((12_400.5, "", false)));
        assert_eq!(reads("1,400 ft2"), Ok((1400.0, "ft2", true)));
        assert_eq!(reads("30 yd3, loose"), Ok((30.0, "yd3, loose", false)));
        for (text, right) in [
            ("2,5 m", "2.5"),
            ("0,125 m", "0.125"),
            ("1.400,50 m2", "1400.50"),
            ("1,40,000 m2", "140.000"),
            ("1234,5 m", "1234.5"),
        ] {
            assert_eq!(reads(text), Err(AmountError::Comma(right.into())), "{text}");
        }
    }
}
