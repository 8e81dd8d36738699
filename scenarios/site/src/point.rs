//! A point of the plane, and the few sums that all else is made of.

use std::ops::{Add, Mul, Sub};

/// A point, or a step from one to another \[m\].
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Up.
    pub y: f64,
}

impl Point {
    /// A point.
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// The straight distance to another \[m\].
    pub fn distance(self, other: Self) -> f64 {
        (other - self).length()
    }

    /// The length of a step \[m\].
    pub fn length(self) -> f64 {
        libm::sqrt(self.x * self.x + self.y * self.y)
    }

    pub(crate) fn is_finite(self) -> bool {
        self.x.is_finite() && self.y.is_finite()
    }

    pub(crate) fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    /// Above 0 where `other` points to the left of this.
    pub(crate) fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// The same step of length 1; of no length as it is.
    pub(crate) fn unit(self) -> Self {
        let length = self.length();
        if length > 0.0 { self * (1.0 / length) } else { self }
    }

    /// A quarter turn to the right: from a side of a ring run anticlockwise to its outside.
    pub(crate) fn right(self) -> Self {
        Self::new(self.y, -self.x)
    }

    /// The angle from this step to another, 0 to pi.
    pub(crate) fn angle(self, other: Self) -> f64 {
        libm::atan2(self.cross(other).abs(), self.dot(other))
    }

    pub(crate) fn middle(self, other: Self) -> Self {
        (self + other) * 0.5
    }
}

impl Add for Point {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Point {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for Point {
    type Output = Self;
    fn mul(self, by: f64) -> Self {
        Self::new(self.x * by, self.y * by)
    }
}

/// How far a point lies from a side \[m\].
pub(crate) fn distance_to_side(point: Point, from: Point, to: Point) -> f64 {
    let along = to - from;
    let share = if along == Point::default() { 0.0 } else { (point - from).dot(along) / along.dot(along) };
    point.distance(from + along * share.clamp(0.0, 1.0))
}
