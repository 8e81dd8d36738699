//! The figures of a new job of which nothing else was said.

use super::{AnsweredPrices, Answers};
use crate::units::System;

/// When a truck comes.
pub(crate) const DELIVERY_AT: &str = "10:00";

/// The first in US units, the second in metric ones.
pub(super) fn pick<'t>(units: System, us: &'t str, metric: &'t str) -> &'t str {
    match units {
        System::Us => us,
        System::Metric => metric,
    }
}

impl Answers {
    /// The defaults in one system of units.
    pub fn usual(units: System) -> Self {
        Self {
            title: "New job".into(),
            units,
            material: "wood chips, green".into(),
            volume: pick(units, "30 yd3", "24 m3").into(),
            truckload: pick(units, "20 yd3", "15 m3").into(),
            bucket: pick(units, "14 ft3", "0.4 m3").into(),
            distance: pick(units, "30 yd", "25 m").into(),
            rakers: 1,
            gate: None,
            start: "08:00".into(),
            breaks: String::new(),
            lift: None,
            prices: AnsweredPrices::default(),
        }
    }

    /// Of a zone one of its measures.
    pub(crate) fn of_zone(&self, key: &str) -> Option<String> {
        let [us, metric] = match key {
            "volume" => return Some(self.volume.clone()),
            "distance" => return Some(self.distance.clone()),
            "area" => ["1200 ft2", "110 m2"],
            "length" => ["40 ft", "11 m"],
            "width" => ["30 ft", "10 m"],
            "diameter" => ["40 ft", "12 m"],
            "depth" => ["4 in", "10 cm"],
            _ => return None,
        };
        Some(pick(self.units, us, metric).to_owned())
    }
}

impl Default for Answers {
    fn default() -> Self {
        Self::usual(System::Us)
    }
}

/// The width of a gate, if there is one.
pub(crate) fn gate(units: System) -> &'static str {
    pick(units, "6 ft", "1.8 m")
}
