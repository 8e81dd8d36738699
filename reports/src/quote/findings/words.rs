//! Risks, sums and intervals of a quote in words.

use crate::findings::about_money;
use crate::findings::{Estimate, days_in, percent};

/// `9 jobs in 10` for 0.9: how often a job like this stays within a percentile.
pub(super) fn jobs_in(share: f64) -> String {
    days_in(share).replace("day", "job")
}

/// How often something goes wrong, as people say it: `1 job in 10`, `about 1 job in 11`, `less than 1 job in 100`.
pub(super) fn odds(risk: f64) -> String {
    if !risk.is_finite() {
        return "nobody knows how often".into();
    }
    let about = |named: f64, words: String| {
        if (named - risk).abs() <= named * NEAR { words } else { format!("about {words}") }
    };
    match risk {
        r if r <= 0.0 => "in no run".into(),
        r if r >= 1.0 => "in every run".into(),
        r if r < 0.01 => "less than 1 job in 100".into(),
        r if r > 0.945 => "nearly every job".into(),
        r if r <= 0.355 => {
            let of = one_in(r);
            about(1.0 / of, format!("1 job in {of:.0}"))
        }
        r => {
            let tenths = (r * 10.0).round();
            let words = if tenths == 5.0 { "1 job in 2".into() } else { format!("{tenths:.0} jobs in 10") };
            about(tenths / 10.0, words)
        }
    }
}

/// How far a risk may lie from a named one, as a share of it, and still bear its name without an "about".
const NEAR: f64 = 0.02;

/// The number of jobs of which one goes wrong, round where there are many.
fn one_in(risk: f64) -> f64 {
    let jobs = 1.0 / risk;
    let step = if jobs < 20.5 { 1.0 } else { 5.0 };
    (jobs / step).round() * step
}

/// A sum beside a far larger one: whole from ten on, lest its cents look as if they were known.
pub(super) fn about(sum: f64, beside: f64, currency: &str) -> String {
    // Small change of a small job is told exactly.
    if beside.abs() < 100.0 {
        return scenarios::units::money(sum, currency);
    }
    about_money(if sum.abs() < 10.0 { sum.round() } else { sum }, currency)
}

/// A share to the tenth of a per cent, up to a fifth.
fn finer(share: f64) -> String {
    if (0.001..0.2).contains(&share) { format!("{:.1} %", share * 100.0) } else { percent(share) }
}

/// A risk with its interval: `9.6 % (9.0 % to 10.2 %)`.
pub(super) fn risk_words(risk: Estimate) -> String {
    let ends = risk.low.zip(risk.high).map(|(low, high)| (finer(low), finer(high)));
    match ends {
        Some((low, high)) if low != high => format!("{} ({low} to {high})", finer(risk.value)),
        _ => finer(risk.value),
    }
}

/// How closely a sum is known, in words: the longer side of its interval.
pub(super) fn known(sum: Estimate, currency: &str) -> String {
    match (sum.low, sum.high) {
        (Some(low), Some(high)) if high - low <= LEAST * sum.value.abs() => "exactly".into(),
        (Some(low), Some(high)) => {
            let half = (high - sum.value).max(sum.value - low);
            format!("± {}", about_money(if half < 1.0 { half } else { half.round() }, currency))
        }
        (Some(low), None) => format!("over {}", about_money(low, currency)),
        (None, Some(high)) => format!("under {}", about_money(high, currency)),
        (None, None) => "too few runs".into(),
    }
}

/// Sums of products of measured figures that differ by no more than this share are the same sum of money.
pub(super) const LEAST: f64 = 1e-9;

/// The next round sum: to half a per cent or finer, in steps of 1, 2 or 5 times a power of ten, but not finer than a
/// hundredth.
pub(super) fn rounded_up(sum: f64) -> f64 {
    let step = round_step((sum * 0.005).max(0.01));
    let steps = (sum / step * (1.0 - LEAST)).ceil();
    // Of the two ways to take so many steps the one that comes out round.
    if step < 1.0 { steps / (1.0 / step).round() } else { steps * step }
}

/// The greatest of 1, 2 or 5 times a power of ten that is not above `most`, and no finer than a hundredth.
pub(super) fn round_step(most: f64) -> f64 {
    let fits = |step: f64| step <= most * (1.0 + LEAST);
    let mut power = 0.01;
    while fits(power * 10.0) {
        power *= 10.0;
    }
    [5.0, 2.0].into_iter().map(|m| m * power).find(|step| fits(*step)).unwrap_or(power)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn risks_are_said_as_people_say_them() {
        let said =
            [0.0, 0.004, 0.0125, 0.02, 0.05, 0.1, 0.0875, 0.2, 1.0 / 3.0, 0.399, 0.62, 0.95, 1.0].map(odds);
        let expected = [
            "in no run",
            "less than 1 job in 100",
            "1 job in 80",
            "1 job in 50",
            "1 job in 20",
            "1 job in 10",
            "about 1 job in 11",
            "1 job in 5",
            "1 job in 3",
            "4 jobs in 10",
            "about 6 jobs in 10",
            "nearly every job",
            "in every run",
        ];
        assert_eq!(said, expected);
    }

    #[test]
    fn a_price_is_rounded_up_to_half_a_per_cent_at_the_most() {
        for (sum, round) in [
            (1_944.23, 1_945.0),
            (1_945.0, 1_945.0),
            (2_301.0, 2_310.0),
            (6.3, 6.3),
            (6.300_000_000_01, 6.3),
            (6.301, 6.32),
            (0.004, 0.01),
            (90.1, 90.2),
            (12_345.0, 12_350.0),
        ] {
            let got = rounded_up(sum);
            assert!((got - round).abs() < 1e-9, "{sum}: {got}");
            assert!(got >= sum * (1.0 - LEAST) && (got <= sum * 1.005 + 0.01), "{sum}: {got}");
        }
    }

    #[test]
    fn an_interval_is_told_by_its_longer_side() {
        let of = |low, high| known(Estimate { value: 200.0, low, high }, "$");
        assert_eq!(of(Some(195.0), Some(203.0)), "± $5");
        assert_eq!(of(Some(199.7), Some(200.2)), "± $0.30");
        assert_eq!(of(Some(200.0), Some(200.0)), "exactly");
        assert_eq!(of(Some(195.0), None), "over $195");
        assert_eq!(of(None, None), "too few runs");
    }
}
