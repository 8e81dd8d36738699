//! Figures typed on the command line.

use scenarios::typed;
use std::str::FromStr;

/// Percentiles to tell, as shares \[0 to 1\], rising, none twice.
#[derive(Clone, Debug, PartialEq)]
pub struct Percentiles(pub Vec<f64>);

impl FromStr for Percentiles {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let one = |typed: &str| {
            let right = "write numbers above 0 and below 100, such as 10,50,80,90,95";
            let share = typed::in_a_hundred(typed.trim().trim_start_matches(['P', 'p']));
            share
                .filter(|share| *share > 0.0 && *share < 1.0)
                .ok_or_else(|| format!("\"{}\" is not a percentile: {right}", typed.trim()))
        };
        let mut shares = text.split(',').map(one).collect::<Result<Vec<_>, _>>()?;
        shares.sort_by(f64::total_cmp);
        shares.dedup();
        Ok(Self(shares))
    }
}

/// A confidence in per cent, such as `95` or `99 %`, as a share \[0.5 to 0.999\].
///
/// # Errors
/// If it is not one, in words.
pub fn confidence(text: &str) -> Result<f64, String> {
    typed::in_a_hundred(text)
        .filter(|share| (0.5..=99.9 / 100.0).contains(share))
        .ok_or_else(|| "write how sure it is to be in per cent, from 50 to 99.9, such as 95".to_owned())
}

/// How often something is to be kept, in per cent, such as `80` or `90 %`, as a share \[0.01 to 0.999\].
///
/// # Errors
/// If it is not one, in words.
pub fn kept_share(text: &str) -> Result<f64, String> {
    typed::in_a_hundred(text)
        .filter(|share| (0.01..=99.9 / 100.0).contains(share))
        .ok_or_else(|| "write how often it is to be kept in per cent, from 1 to 99.9, such as 80".to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn percentiles_are_put_in_order_once_each() {
        assert_eq!("90, P50,10,50".parse(), Ok(Percentiles(vec![0.1, 0.5, 0.9])));
        for wrong in ["", "0", "100", "fifty", "10,,20", "nan", "-5"] {
            assert!(wrong.parse::<Percentiles>().is_err(), "{wrong}");
        }
    }

    #[test]
    fn a_chance_wanted_is_neither_never_nor_always() {
        assert_eq!([kept_share("80"), kept_share("97.5 %")], [Ok(0.8), Ok(0.975)]);
        for wrong in ["0", "100", "0.8", "often", "", "nan", "-5"] {
            assert!(kept_share(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn a_confidence_is_a_share_that_can_be_reached() {
        assert_eq!(confidence("95"), Ok(0.95));
        assert_eq!(confidence("99 %"), Ok(0.99));
        assert!(confidence("99.9").is_ok() && kept_share("99.9 %").is_ok());
        for wrong in ["100", "0.95", "49", "sure", "", "nan"] {
            assert!(confidence(wrong).is_err(), "{wrong}");
        }
    }
}
