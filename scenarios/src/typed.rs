//! Figures typed on the command line, read with the same units and limits as those of a file.

use crate::document::Value;
use crate::parse::clock::Days;
use crate::parse::{self, Wrong};
use crate::signs::printable;
use crate::units::amount;
use crate::units::dimension::Dimension;
use crate::units::kind::Kind;

/// Longest time that is believable \[s\]: some thirty years.
const LONGEST_S: f64 = 1e9;

/// A sum of money and its currency: `$2,400`, `2400 EUR`.
///
/// ```
/// assert_eq!(scenarios::typed::money("$2,400").unwrap(), (2400.0, "$".to_owned()));
/// assert_eq!(scenarios::typed::money("950").unwrap_err(), "\"950\": the currency is missing; a sum of money is wanted, \
///     such as \"$380\" or \"380 EUR\"");
/// ```
///
/// # Errors
/// What is wrong with it and what would be right, in words.
pub fn money(text: &str) -> Result<(f64, String), String> {
    with_currency(text, Kind::Price)
}

/// A cost or price per hour and its currency: `$95/h`.
///
/// # Errors
/// What is wrong with it and what would be right, in words.
pub fn rate(text: &str) -> Result<(f64, String), String> {
    with_currency(text, Kind::HourlyCost)
}

/// A share \[0 to 1\]: `6 %`, `0.06`. A number above 1 without its sign is refused: it could be read two ways.
///
/// # Errors
/// What is wrong with it and what would be right, in words.
pub fn percent(text: &str) -> Result<f64, String> {
    figure(text, Kind::SpreadShare).map(|(share, _)| share)
}

/// A length of time \[s\], at most 24 hours: `5 min`, `1 h 30 min`.
///
/// # Errors
/// What is wrong with it and what would be right, in words.
pub fn duration(text: &str) -> Result<f64, String> {
    figure(text, Kind::Stretch).map(|(seconds, _)| seconds)
}

/// A length of time above 0 \[s\], of any length: `3 min`, `90 s`, `30 h`.
///
/// # Errors
/// What is wrong with it and what would be right, in words.
pub fn time(text: &str) -> Result<f64, String> {
    let right = "write a time with its unit, such as \"3 min\" or \"90 s\"";
    let what = match parse::figure::measured(&Value::Text(text.to_owned()), Kind::Stretch, None) {
        Ok(time) if time.value < 0.0 => "this is less than nothing".into(),
        Ok(time) if time.value == 0.0 => "this may not be zero".into(),
        Ok(time) if time.value > LONGEST_S => "this is absurdly large".into(),
        Ok(time) => return Ok(time.value),
        Err(Wrong { what, .. }) => what,
    };
    Err(format!("{what}; {right}"))
}

/// A time of the clock \[s after midnight of the first day\]: `15:00`, `2:30 pm`, `day 2 10:00`, up to day 365.
///
/// ```
/// use scenarios::typed::clock;
/// assert_eq!(clock("day 2 2:30 pm"), Ok(24.0 * 3600.0 + 14.5 * 3600.0));
/// assert_eq!(clock("noon").unwrap_err(), "this is not a time of the clock; write a time such as \"08:00\", \"2:15 pm\" or \
///     \"day 2 09:00\"");
/// ```
///
/// # Errors
/// What is wrong with it and what would be right, in words.
pub fn clock(text: &str) -> Result<f64, String> {
    let clock = parse::clock::clock(&Value::Text(text.to_owned()), Days::To(365));
    clock.map_err(|Wrong { what, right }| format!("{what}; {right}"))
}

/// So many in a hundred, with or without the sign, as a share: `95` and `95 %` are 0.95. `None` if it is no number.
pub fn in_a_hundred(text: &str) -> Option<f64> {
    number(text.trim().trim_end_matches('%')).map(|percent| percent / 100.0)
}

/// A plain number.
fn number(text: &str) -> Option<f64> {
    let amount = amount::parse(text).ok().filter(|_| !text.contains('%'))?;
    (amount.dimension == Dimension::NUMBER).then(|| amount.in_units_of(1.0))
}

/// A whole number within limits, in digits; commas may stand between its thousands.
///
/// ```
/// use scenarios::typed::whole;
/// assert_eq!(whole("10,000", 1, 1_000_000), Ok(10_000));
/// assert_eq!(whole("1e4", 1, 64).unwrap_err(), "write a whole number from 1 to 64 in digits");
/// ```
///
/// # Errors
/// What would be right, in words.
pub fn whole(text: &str, least: u32, most: u32) -> Result<u32, String> {
    let read = digits(text).and_then(|number| u32::try_from(number).ok());
    read.filter(|number| (least..=most).contains(number))
        .ok_or_else(|| format!("write a whole number from {least} to {most} in digits"))
}

/// A seed: any whole number that fits in 64 bits.
///
/// # Errors
/// What would be right, in words.
pub fn seed(text: &str) -> Result<u64, String> {
    digits(text).ok_or_else(|| format!("write a whole number from 0 to {} in digits, such as 1", u64::MAX))
}

fn digits(text: &str) -> Option<u64> {
    let groups: Vec<&str> = text.trim().split(',').collect();
    let thousands =
        groups[1..].iter().all(|group| group.len() == 3) && (groups.len() == 1 || groups[0].len() <= 3);
    let digits = groups.concat();
    let all = !digits.is_empty() && digits.bytes().all(|b| b.is_ascii_digit());
    if thousands && all { digits.parse().ok() } else { None }
}

/// The heaped capacity of a bucket \[m3\]: `14 ft3`.
///
/// # Errors
/// What is wrong with it and what would be right, in words.
pub fn bucket(text: &str) -> Result<f64, String> {
    figure(text, Kind::Bucket).map(|(volume, _)| volume)
}

/// A mass \[kg\]: `180 lb`.
///
/// # Errors
/// What is wrong with it and what would be right, in words.
pub fn mass(text: &str) -> Result<f64, String> {
    figure(text, Kind::BucketMass).map(|(mass, _)| mass)
}

/// A plain number 0 or above, or a range of two that rises: `25`, `20..35`. Of one number both ends are the same.
///
/// ```
/// assert_eq!(scenarios::typed::range("20..35").unwrap(), [20.0, 35.0]);
/// assert_eq!(scenarios::typed::range("8").unwrap(), [8.0, 8.0]);
/// ```
///
/// # Errors
/// What is wrong with it and what would be right, in words.
pub fn range(text: &str) -> Result<[f64; 2], String> {
    let such = "write a number such as 25, or a range such as 20..35";
    let shown = printable(text.trim());
    let end = |part: &str| match number(part) {
        None => Err(format!("\"{shown}\": this is not a number; {such}")),
        Some(number) if number < 0.0 => Err(format!("\"{shown}\": this is less than nothing; {such}")),
        Some(number) => Ok(number),
    };
    let (low, high) = text.split_once("..").unwrap_or((text, text));
    let ends = [end(low)?, end(high)?];
    if ends[0] > ends[1] {
        return Err(format!("\"{shown}\": this range does not rise; the smaller number comes first"));
    }
    Ok(ends)
}

fn with_currency(typed: &str, kind: Kind) -> Result<(f64, String), String> {
    let (value, currency) = figure(typed, kind)?;
    Ok((value, currency.unwrap_or_default()))
}

/// A figure and its currency if it has one.
fn figure(typed: &str, kind: Kind) -> Result<(f64, Option<String>), String> {
    match parse::figure::figure(&Value::Text(typed.to_owned()), kind) {
        Ok(figure) => Ok((figure.value, figure.currency)),
        Err(Wrong { what, right }) => Err(format!("\"{}\": {what}; {right}", printable(typed.trim()))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn money_is_read_as_people_write_it() {
        for (typed, sum) in
            [("$2,400", 2400.0), ("$ 12,400.50", 12_400.5), ("$1,234,567", 1_234_567.0), ("$95", 95.0)]
        {
            assert_eq!(money(typed).unwrap(), (sum, "$".to_owned()), "{typed}");
        }
        assert_eq!(money("2400 EUR").unwrap(), (2400.0, "EUR".to_owned()));
        for (typed, words) in [
            ("$2,40", "a comma"),
            ("$24,00", "a comma"),
            ("2400", "currency is missing"),
            ("-$5", "does not begin with a number"),
            ("$-5", "less than nothing"),
            ("a lot", "does not begin with a number"),
            ("", "nothing is written"),
            ("$95/h", "a cost per time"),
            ("$9e30", "absurdly large"),
        ] {
            let said = money(typed).unwrap_err();
            assert!(said.contains(words) && said.contains("such as"), "{typed}: {said}");
        }
    }

    #[test]
    fn rates_shares_and_times_carry_their_units() {
        let (hourly, currency) = rate("$95/h").unwrap();
        assert!((hourly - 95.0).abs() < 1e-9 && currency == "$");
        assert!(rate("$95").unwrap_err().contains("a cost per time is wanted"));
        assert_eq!((percent("6 %").unwrap(), percent("0.06").unwrap()), (0.06, 0.06));
        assert!(percent("6").unwrap_err().contains("absurdly large"));
        assert_eq!(duration("1 h 30 min").unwrap(), 5400.0);
        assert!(duration("5").unwrap_err().contains("unit is missing"));
        assert!(
            (bucket("0.5 m3").unwrap() - 0.5).abs() < 1e-12 && (mass("80 kg").unwrap() - 80.0).abs() < 1e-12
        );
    }

    #[test]
    fn a_time_has_its_unit_and_no_end() {
        assert_eq!(
            [time("3 min"), time("1 h 30 min"), time("30 h")],
            [Ok(180.0), Ok(5_400.0), Ok(108_000.0)]
        );
        for (typed, words) in [
            ("3", "the unit is missing"),
            ("0 s", "may not be zero"),
            ("-3 min", "less than nothing"),
            ("3 m", "minutes are written min"),
            ("1e300 h", "absurdly large"),
            ("soon", "does not begin with a number"),
        ] {
            let said = time(typed).unwrap_err();
            assert!(said.contains(words) && said.contains("such as \"3 min\""), "{typed}: {said}");
        }
    }

    #[test]
    fn per_cent_are_written_with_or_without_the_sign() {
        let shares = ["95", "99 %", "97.5%", " 7 "].map(in_a_hundred);
        assert_eq!(shares, [Some(0.95), Some(0.99), Some(0.975), Some(0.07)]);
        for wrong in ["", "nan", "sure", "5 m", "%"] {
            assert_eq!(in_a_hundred(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn a_number_that_is_none_is_refused_with_its_limits() {
        let runs = |text| whole(text, 1, 1_000_000);
        assert_eq!(runs("10,000"), Ok(10_000));
        assert_eq!(runs(" 7 "), Ok(7));
        for wrong in ["1e4", "ten", "", "0", "-3", "1000001", "1,00", "99999999999999999999", "1_000", "2.5"]
        {
            let said = runs(wrong).unwrap_err();
            assert_eq!(said, "write a whole number from 1 to 1000000 in digits", "{wrong}");
        }
        assert_eq!(seed("18446744073709551615"), Ok(u64::MAX));
        assert!(seed("18446744073709551616").unwrap_err().contains("from 0 to 18446744073709551615"));
    }

    #[test]
    fn a_range_rises_and_is_of_plain_numbers() {
        assert_eq!(range(" 20 .. 35 ").unwrap(), [20.0, 35.0]);
        for (typed, words) in [
            ("35..20", "does not rise"),
            ("", "not a number"),
            ("1..x", "not a number"),
            ("-2", "less than nothing"),
            ("nan", "not a number"),
        ] {
            assert!(range(typed).unwrap_err().contains(words), "{typed}");
        }
    }
}
