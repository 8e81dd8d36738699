//! Quantities in SI turned into what a person reads.
//!
//! Every quantity has two functions: one that gives text with its unit in three significant digits (`volume`), and
//! one that gives the plain number and the unit for tables, axes and JSON (`volume_number`).

use super::exact::{
    cubic_feet, cubic_yards, feet, gallons, inches, miles_per_hour, pounds, square_feet, yards,
};
use super::system::System;

macro_rules! shown {
    ($($text:ident, $number:ident, $what:literal: $us:expr, $us_unit:literal; $metric:expr, $metric_unit:literal)*) => {$(
        #[doc = concat!("A ", $what, " as text: `", $us_unit, "` or `", $metric_unit, "`.")]
        pub fn $text(value: f64, system: System) -> String {
            let (number, unit) = $number(value, system);
            format!("{} {unit}", figure(number))
        }

        #[doc = concat!("A ", $what, " as a plain number with its unit: `", $us_unit, "` or `", $metric_unit, "`.")]
        pub fn $number(value: f64, system: System) -> (f64, &'static str) {
            match system {
                System::Us => (value / $us, $us_unit),
                System::Metric => (value / $metric, $metric_unit),
            }
        }
    )*};
}

shown! {
    volume, volume_number, "volume of material (in m3)": cubic_yards(), "yd3"; 1.0, "m3"
    bucket, bucket_number, "volume of a bucket (in m3)": cubic_feet(), "ft3"; 1.0, "m3"
    length, length_number, "distance on the ground (in m)": feet(), "ft"; 1.0, "m"
    way, way_number, "long distance (in m)": yards(), "yd"; 1.0, "m"
    short_length, short_length_number, "width or depth (in m)": inches(), "in"; 0.01, "cm"
    area, area_number, "area (in m2)": square_feet(), "ft2"; 1.0, "m2"
    mass, mass_number, "mass (in kg)": pounds(), "lb"; 1.0, "kg"
    speed, speed_number, "speed (in m/s)": miles_per_hour(), "mph"; 1.0 / 3.6, "km/h"
    rate, rate_number, "rate of work (in m3/h)": cubic_yards(), "yd3/h"; 1.0, "m3/h"
    fuel, fuel_number, "volume of fuel (in l)": gallons() * 1000.0, "gal"; 1.0, "l"
    fuel_rate, fuel_rate_number, "burn of fuel (in l/h)": gallons() * 1000.0, "gal/h"; 1.0, "l/h"
    density, density_number, "bulk density (in kg/m3)": pounds() / cubic_yards(), "lb/yd3"; 1.0, "kg/m3"
}

/// A number to three significant digits, whole from 100 on, without trailing zeros; commas from 10,000 on.
///
/// ```
/// assert_eq!(scenarios::units::figure(33.6404), "33.6");
/// assert_eq!(scenarios::units::figure(44.0), "44");
/// assert_eq!(scenarios::units::figure(12_345.6), "12,346");
/// ```
pub fn figure(number: f64) -> String {
    if !number.is_finite() {
        return "unknown".into();
    }
    let size = number.abs();
    let places = if size == 0.0 || size >= 99.95 { 0 } else { (2 - size.log10().floor() as i32).clamp(0, 9) };
    let mut text = format!("{number:.*}", places as usize);
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text == "-0" {
        text = "0".into();
    }
    if size >= 9_999.5 { with_commas(&text) } else { text }
}

fn with_commas(digits: &str) -> String {
    let (sign, digits) = digits.strip_prefix('-').map_or(("", digits), |rest| ("-", rest));
    let mut text = String::from(sign);
    for (i, digit) in digits.chars().enumerate() {
        if i > 0 && (digits.len() - i).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

/// A length of time \[s\] as a person says it: `45 s`, `4 min 30 s`, `25 min`, `2 h 05 min`. Whole minutes from ten
/// minutes on; a negative one has a minus before it.
pub fn duration(seconds: f64) -> String {
    if !seconds.is_finite() {
        return "unknown".into();
    }
    let sign = if seconds <= -0.5 { "-" } else { "" };
    let seconds = seconds.abs();
    let text = if seconds < 9.95 && (seconds - seconds.round()).abs() > 0.05 {
        format!("{seconds:.1} s")
    } else if seconds < 89.5 {
        format!("{seconds:.0} s")
    } else if seconds < 599.5 {
        let whole = seconds.round() as u64;
        if whole.is_multiple_of(60) {
            format!("{} min", whole / 60)
        } else {
            format!("{} min {:02} s", whole / 60, whole % 60)
        }
    } else {
        let minutes = (seconds / 60.0).round() as u64;
        match (minutes / 60, minutes % 60) {
            (0, m) => format!("{m} min"),
            (h, 0) => format!("{h} h"),
            (h, m) => format!("{h} h {m:02} min"),
        }
    };
    format!("{sign}{text}")
}

/// A time of the clock, from seconds after midnight of the first day: `10:05 am` or `10:05`; from the second day on
/// `day 2 10:05 am`. Rounded to the minute.
pub fn clock(seconds: f64, system: System) -> String {
    if !seconds.is_finite() || seconds < 0.0 {
        return "unknown".into();
    }
    let minutes = (seconds / 60.0).round() as u64;
    let (day, hour, minute) = (minutes / 1440 + 1, minutes / 60 % 24, minutes % 60);
    let time = match system {
        System::Metric => format!("{hour:02}:{minute:02}"),
        System::Us => {
            let half = if hour < 12 { "am" } else { "pm" };
            format!("{}:{minute:02} {half}", if hour.is_multiple_of(12) { 12 } else { hour % 12 })
        }
    };
    if day == 1 { time } else { format!("day {day} {time}") }
}

/// A sum of money with its currency: `$380`, `$41.50`, `380 EUR`. Whole from 100 on.
pub fn money(sum: f64, currency: &str) -> String {
    let sign = if sum < -0.005 { "-" } else { "" };
    let size = sum.abs();
    let digits = if !sum.is_finite() {
        return "unknown".into();
    } else if size >= 99.995 || (size - size.round()).abs() < 0.005 {
        let whole = format!("{size:.0}");
        if size >= 9_999.5 { with_commas(&whole) } else { whole }
    } else {
        format!("{size:.2}")
    };
    if currency.is_empty() {
        format!("{sign}{digits}")
    } else if currency.chars().all(char::is_alphabetic) {
        format!("{sign}{digits} {currency}")
    } else {
        format!("{sign}{currency}{digits}")
    }
}

#[cfg(test)]
mod tests;
