//! Sums, rates and shares of money typed on the command line.

/// A sum, or a sum for an hour.
#[derive(Clone, Debug, PartialEq)]
pub struct Money {
    /// How much, or how much an hour; above 0.
    pub sum: f64,
    /// In which currency.
    pub currency: String,
    /// As typed.
    pub typed: String,
}

/// A sum such as `$2,400` or `2400 EUR`, above 0.
///
/// # Errors
/// If it is not one, in words.
pub fn price(text: &str) -> Result<Money, String> {
    read(text, "$2,400", scenarios::typed::money)
}

/// A sum for an hour such as `$95/h`, above 0.
///
/// # Errors
/// If it is not one, in words.
pub fn hourly(text: &str) -> Result<Money, String> {
    read(text, "$95/h", scenarios::typed::rate)
}

/// A share such as `10 %`, above 0 and below 1.
///
/// # Errors
/// If it is not one, in words.
pub fn share(text: &str) -> Result<f64, String> {
    let wrong = || "write a share above 0 % and below 100 %, such as \"10 %\"".to_owned();
    let share = scenarios::typed::percent(text).map_err(|why| format!("{why}; {}", wrong()))?;
    if share > 0.0 && share < 1.0 { Ok(share) } else { Err(wrong()) }
}

fn read(
    text: &str,
    such: &str,
    parse: impl Fn(&str) -> Result<(f64, String), String>,
) -> Result<Money, String> {
    // Not every shell takes single quotes off.
    let typed = text.trim().trim_matches('\'').trim();
    let right = format!(
        "write it with its currency and in single quotes, such as '{such}': between double quotes most shells take the $ and \
         what follows for something of their own"
    );
    match parse(typed) {
        Ok((sum, currency)) if sum > 0.0 => Ok(Money { sum, currency, typed: typed.to_owned() }),
        Ok(_) => Err("write a sum above 0".into()),
        Err(why) => Err(format!("{why}; {right}")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_are_read_as_people_write_them() {
        let read = |text| price(text).map(|money| (money.sum, money.currency));
        assert_eq!(read("$2,400"), Ok((2_400.0, "$".into())));
        assert_eq!(read("'$1,234,567.50'"), Ok((1_234_567.5, "$".into())));
        assert_eq!(read("2400 EUR"), Ok((2_400.0, "EUR".into())));
        let rate = hourly("$95/h").unwrap();
        assert!((rate.sum - 95.0).abs() < 1e-9 && rate.typed == "$95/h");
    }

    #[test]
    fn what_a_shell_has_left_of_a_sum_is_refused_with_the_remedy() {
        // `"$2,400"` and `"$95/h"` reach the program as these.
        for (left, of) in [(",400", price as fn(&str) -> Result<Money, String>), ("5/h", hourly)] {
            let why = of(left).unwrap_err();
            assert!(why.contains("single quotes"), "{left}: {why}");
        }
        for wrong in ["", "2400", "$0", "-$5", "$95/h", "$2,40", "$1,2345", "lots", "5 yd3"] {
            assert!(price(wrong).is_err(), "{wrong}");
        }
        assert!(hourly("$95").is_err() && hourly("$95/yd3").is_err());
    }

    #[test]
    fn a_share_lies_between_nothing_and_all() {
        assert_eq!(share("10 %"), Ok(0.1));
        assert_eq!(share("2.5%"), Ok(0.025));
        for wrong in ["0 %", "100 %", "150 %", "-5 %", "10", "", "many"] {
            assert!(share(wrong).is_err(), "{wrong}");
        }
    }
}
