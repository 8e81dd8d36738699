//! Figures typed on the command line.

use std::str::FromStr;

/// Percentiles to tell, as shares \[0 to 1\], rising, none twice.
#[derive(Clone, Debug, PartialEq)]
pub struct Percentiles(pub Vec<f64>);

impl FromStr for Percentiles {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let one = |typed: &str| match typed.trim().trim_start_matches(['P', 'p']).parse::<f64>() {
            Ok(percent) if percent > 0.0 && percent < 100.0 => Ok(percent / 100.0),
            _ => Err(format!(
                "\"{}\" is not a percentile: write numbers above 0 and below 100, such as 10,50,80,90,95",
                typed.trim()
            )),
        };
        let mut shares = text.split(',').map(one).collect::<Result<Vec<_>, _>>()?;
        shares.sort_by(f64::total_cmp);
        shares.dedup();
        Ok(Self(shares))
    }
}

/// A length of time such as `3 min`, `90 s` or `1 h 30 min`, above 0 \[s\].
///
/// # Errors
/// If it is not one, in words.
pub fn minutes_s(text: &str) -> Result<f64, String> {
    let time = jiff::SignedDuration::from_str(text).ok().map(|d| d.as_secs_f64());
    time.filter(|s| *s > 0.0)
        .ok_or_else(|| "write a time with its unit, such as \"3 min\" or \"90 s\"".to_owned())
}

/// A time of the clock such as `15:00`, `2:30 pm` or `day 2 10:00` \[s after midnight of the first day\].
///
/// # Errors
/// If it is not one, in words.
pub fn clock_s(text: &str) -> Result<f64, String> {
    let wrong = || "write a time of the clock, such as \"15:00\", \"2:30 pm\" or \"day 2 10:00\"".to_owned();
    let lower = text.trim().to_ascii_lowercase();
    let (day, time) = match lower.strip_prefix("day") {
        Some(rest) => rest.trim_start().split_once([' ', ',']).ok_or_else(wrong)?,
        None => ("1", lower.as_str()),
    };
    let day: u16 = day.parse().ok().filter(|d| (1..=365).contains(d)).ok_or_else(wrong)?;
    let time = time.trim();
    let read = ["%H:%M", "%I:%M %p", "%I:%M%p", "%I %p", "%I%p"]
        .iter()
        .find_map(|form| jiff::civil::Time::strptime(form, time).ok())
        .ok_or_else(wrong)?;
    Ok(f64::from(day - 1) * 86_400.0 + f64::from(read.hour()) * 3_600.0 + f64::from(read.minute()) * 60.0)
}

/// A confidence in per cent, such as `95` or `99 %`, as a share \[0.5 to 0.999\].
///
/// # Errors
/// If it is not one, in words.
pub fn confidence(text: &str) -> Result<f64, String> {
    let percent = text.trim().trim_end_matches('%').trim_end().parse::<f64>().ok();
    percent
        .filter(|p| (50.0..=99.9).contains(p))
        .map(|p| p / 100.0)
        .ok_or_else(|| "write how sure it is to be in per cent, from 50 to 99.9, such as 95".to_owned())
}

/// How often something is to be kept, in per cent, such as `80` or `90 %`, as a share \[0.01 to 0.999\].
///
/// # Errors
/// If it is not one, in words.
pub fn kept_share(text: &str) -> Result<f64, String> {
    let percent = text.trim().trim_end_matches('%').trim_end().parse::<f64>().ok();
    percent
        .filter(|p| (1.0..=99.9).contains(p))
        .map(|p| p / 100.0)
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
    fn a_time_needs_its_unit() {
        assert_eq!(minutes_s("3 min"), Ok(180.0));
        assert_eq!(minutes_s("1 h 30 min"), Ok(5_400.0));
        for wrong in ["3", "0 s", "-3 min", "soon", ""] {
            assert!(minutes_s(wrong).is_err(), "{wrong}");
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
    fn a_clock_is_read_as_people_write_it() {
        assert_eq!(clock_s("15:00"), Ok(54_000.0));
        assert_eq!(clock_s("2:30 pm"), Ok(52_200.0));
        assert_eq!(clock_s("12 AM"), Ok(0.0));
        assert_eq!(clock_s("day 2 09:00"), Ok(86_400.0 + 32_400.0));
        for wrong in ["25:00", "day 0 9:00", "noon", "day 2", "", "-1:00"] {
            assert!(clock_s(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn a_confidence_is_a_share_that_can_be_reached() {
        assert_eq!(confidence("95"), Ok(0.95));
        assert_eq!(confidence("99 %"), Ok(0.99));
        for wrong in ["100", "0.95", "49", "sure", "", "nan"] {
            assert!(confidence(wrong).is_err(), "{wrong}");
        }
    }
}
