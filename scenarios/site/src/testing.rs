//! What tests share: shapes, and numbers drawn from a seed.

use crate::outline::Outline;
use crate::point::Point;

pub(crate) const L_SHAPE: [(f64, f64); 6] =
    [(0.0, 0.0), (40.0, 0.0), (40.0, 10.0), (10.0, 10.0), (10.0, 30.0), (0.0, 30.0)];

pub(crate) fn outline(corners: &[(f64, f64)]) -> Outline {
    Outline::from_corners(corners.iter().map(|&(x, y)| Point::new(x, y)).collect())
}

/// Fails unless two figures are as near as that.
#[track_caller]
pub(crate) fn close(obtained: f64, expected: f64, within: f64) {
    assert!((obtained - expected).abs() <= within, "{obtained} is not {expected}");
}

/// Numbers from a seed (splitmix64), the same wherever tests run.
pub(crate) struct Draw(u64);

impl Draw {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * ((self.next() >> 11) as f64 / (1u64 << 53) as f64)
    }
}
