//! Where the marks of an axis stand: round steps, as many as have room.

/// Steps of time people read at a glance \[s\].
const TIME_STEPS_S: [f64; 24] = [
    1.0,
    2.0,
    5.0,
    10.0,
    15.0,
    30.0,
    60.0,
    120.0,
    300.0,
    600.0,
    900.0,
    1_800.0,
    3_600.0,
    7_200.0,
    10_800.0,
    14_400.0,
    21_600.0,
    43_200.0,
    86_400.0,
    172_800.0,
    432_000.0,
    864_000.0,
    1_728_000.0,
    4_320_000.0,
];

/// The least round step of time that is not below `least_s` \[s\].
pub(super) fn time_step(least_s: f64) -> f64 {
    TIME_STEPS_S.into_iter().find(|step| *step >= least_s * (1.0 - 1e-9)).unwrap_or(TIME_STEPS_S[23])
}

/// The least of 1, 2 or 5 times a power of ten that is not below `least`.
pub(super) fn round_step(least: f64) -> f64 {
    if !(least.is_finite() && least > 0.0) {
        return 1.0;
    }
    let power = 10f64.powf(least.log10().floor());
    [1.0, 2.0, 5.0]
        .into_iter()
        .map(|m| m * power)
        .find(|step| *step >= least * (1.0 - 1e-9))
        .unwrap_or(10.0 * power)
}

/// The most marks an axis may have, whatever is asked for.
const MOST: usize = 2_000;

/// The multiples of `step` from `from` to `to`, both included.
pub(super) fn multiples(from: f64, to: f64, step: f64) -> Vec<f64> {
    let first = (from / step - 1e-9).ceil();
    let count = ((to / step + 1e-9).floor() - first + 1.0).clamp(0.0, MOST as f64) as usize;
    (0..count).map(|i| (first + i as f64) * step).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_and_not_below_what_is_asked() {
        assert_eq!(time_step(7.0), 10.0);
        assert_eq!(time_step(301.0), 600.0);
        assert_eq!(time_step(900.0), 900.0);
        assert_eq!(round_step(0.3), 0.5);
        assert_eq!(round_step(20.0), 20.0);
        assert_eq!(round_step(60.0), 100.0);
    }

    #[test]
    fn multiples_include_both_ends() {
        assert_eq!(multiples(0.0, 100.0, 25.0), [0.0, 25.0, 50.0, 75.0, 100.0]);
        assert_eq!(multiples(-7.0, 7.0, 5.0), [-5.0, 0.0, 5.0]);
        assert!(multiples(1.0, 0.0, 1.0).is_empty());
    }
}
