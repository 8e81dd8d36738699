//! A machine as far as the ground is concerned.

/// How wide a machine is and how it turns.
///
/// ```
/// use site::{Machine, Turning};
/// let tracked = Machine { width: 1.2, clearance: 0.2, turning: Turning::OnTheSpot { quarter_turn: 3.0 } };
/// assert_eq!(tracked.growth(), 0.8);
/// assert!(tracked.fits(1.6) && !tracked.fits(1.5));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Machine {
    /// Its width, its bucket's if that is wider, at least 0 \[m\]; 0 for somebody who walks.
    pub width: f64,
    /// What is kept clear on each side, at least 0 \[m\].
    pub clearance: f64,
    /// How it turns.
    pub turning: Turning,
}

impl Machine {
    /// Somebody who walks: no width, and bends cost nothing.
    pub const WALKER: Self =
        Self { width: 0.0, clearance: 0.0, turning: Turning::OnTheSpot { quarter_turn: 0.0 } };

    /// How far its middle keeps from everything it must not touch \[m\].
    pub fn growth(&self) -> f64 {
        self.width / 2.0 + self.clearance
    }

    /// Whether it goes through an opening so wide \[m\].
    pub fn fits(&self, opening: f64) -> bool {
        // Figures typed in feet and inches meet exactly, but for the last digits.
        self.width + 2.0 * self.clearance <= opening * (1.0 + 1e-12)
    }
}

/// How a machine turns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Turning {
    /// On the spot, in proportion to the angle.
    OnTheSpot {
        /// A quarter turn, at least 0 \[s\].
        quarter_turn: f64,
    },
    /// In arcs; where there is no room for one, by a reversal.
    Radius {
        /// The least radius of its middle's track, above 0 \[m\].
        radius: f64,
        /// Stopping and changing direction once, there and back, at least 0 \[s\].
        reversal: f64,
    },
}

/// How fast it drives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pace {
    /// Speed on ordinary ground, above 0 \[m/s\].
    pub speed: f64,
    /// Starting and stopping, once a leg, at least 0 \[s\].
    pub start_and_stop: f64,
}
