//! Figures typed on the command line, read with the same units and limits as those of a file.

use crate::document::Value;
use crate::parse::{self, Wrong, printable};
use crate::units::kind::Kind;

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
    let number = |part: &str| {
        let number = part.trim().parse::<f64>().ok().filter(|number| number.is_finite());
        match number {
            None => Err(format!("\"{shown}\": this is not a number; {such}")),
            Some(number) if number < 0.0 => Err(format!("\"{shown}\": this is less than nothing; {such}")),
            Some(number) => Ok(number),
        }
    };
    let (low, high) = text.split_once("..").unwrap_or((text, text));
    let ends = [number(low)?, number(high)?];
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
