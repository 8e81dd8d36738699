//! How many more runs an improvement is tried in, by hand arithmetic.

use super::*;

/// A mean of 200 runs, so closely known.
fn mean(value: f64, half_s: f64) -> Mean {
    Mean { value, low: value - half_s, high: value + half_s, sd: 1.0, n: 200 }
}

const TRIES: Tries = Tries { fewest: 200, most: 5_000, least_s: 5.0, share: 0.1, of_chances: 200 };

#[test]
fn runs_grow_with_the_square_of_how_much_too_wide_the_interval_is() {
    // 20 s saved: 5 s are wanted, 10 s known, so 4 times as many runs and a tenth more: 880, made up to 900.
    assert_eq!(TRIES.more_than(mean(20.0, 10.0)), 700);
    // The wider of 5 s and a tenth of what is saved, or lost: 10 s are known closely enough of 100 s and of -100 s, 5 s of 20 s.
    assert_eq!(TRIES.more_than(mean(100.0, 10.0)), 0);
    assert_eq!(TRIES.more_than(mean(-100.0, 10.0)), 0);
    assert_eq!(TRIES.more_than(mean(20.0, 5.0)), 0);
    // Of 80 s, 8 s are wanted: (10 / 8)^2 x 1.1 x 200 = 343.75, made up to 350.
    assert_eq!(TRIES.more_than(mean(80.0, 10.0)), 150);
}

#[test]
fn hardly_too_wide_takes_one_round_more_and_far_too_wide_no_more_than_the_most() {
    assert_eq!(TRIES.more_than(mean(20.0, 5.000_1)), 50);
    assert_eq!(TRIES.more_than(mean(20.0, 100.0)), 4_800);
    assert_eq!(Tries { most: 200, ..TRIES }.more_than(mean(20.0, 100.0)), 0);
}
