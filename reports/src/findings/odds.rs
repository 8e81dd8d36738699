//! Chances in plain words.

/// `P80` for 0.8, `P97.5` for 0.975.
pub fn label(share: f64) -> String {
    format!("P{}", tidy(share * 100.0))
}

/// `8 days in 10` for 0.8: how often a job like this is done within a percentile.
pub fn days_in(share: f64) -> String {
    let percent = share * 100.0;
    for of in [2, 4, 5, 10, 20, 100] {
        let days = share * f64::from(of);
        let whole = days.round();
        if (days - whole).abs() < 1e-9 && whole >= 1.0 && of != 5 && of != 4 {
            return format!("{whole} {} in {of}", if whole < 1.5 { "day" } else { "days" });
        }
    }
    format!("{} days in 100", tidy(percent))
}

/// A share in per cent: `31 %`, `0.4 %`, `under 0.1 %`; never a bare 0 or 100 for what is only nearly so.
pub fn percent(share: f64) -> String {
    let p = share * 100.0;
    if !p.is_finite() {
        "unknown".into()
    } else if p == 0.0 {
        "0 %".into()
    } else if p < 0.1 {
        "under 0.1 %".into()
    } else if p < 1.0 || (p > 99.0 && p < 99.95) {
        format!("{p:.1} %")
    } else if (99.95..100.0).contains(&p) {
        "over 99.9 %".into()
    } else {
        format!("{p:.0} %")
    }
}

fn tidy(value: f64) -> String {
    format!("{}", (value * 1000.0).round() / 1000.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn percentiles_are_named_and_told_as_days() {
        assert_eq!((label(0.8).as_str(), label(0.975).as_str()), ("P80", "P97.5"));
        let told = [0.1, 0.5, 0.8, 0.9, 0.95, 0.99, 0.25, 0.975].map(days_in);
        let expected =
            ["1 day in 10", "1 day in 2", "8 days in 10", "9 days in 10", "19 days in 20", "99 days in 100"];
        assert_eq!(told[..6], expected);
        assert_eq!(told[6..], ["5 days in 20", "97.5 days in 100"]);
    }

    #[test]
    fn nearly_none_and_nearly_all_are_not_rounded_away() {
        assert_eq!(percent(0.0), "0 %");
        assert_eq!(percent(0.0004), "under 0.1 %");
        assert_eq!(percent(0.994), "99.4 %");
        assert_eq!(percent(0.9999), "over 99.9 %");
        assert_eq!(percent(1.0), "100 %");
        assert_eq!(percent(f64::NAN), "unknown");
    }
}
