//! What a new job orders.

use super::Answers;
use crate::build::loose_m3;
use crate::materials;
use crate::units::dimension::Dimension;
use crate::units::{System, amount, exact};

/// What to order, and why so much.
pub(super) struct Order {
    pub(super) volume: String,
    pub(super) why: &'static str,
}

/// More than needed by so much: ground takes more than measured, trucks bring less than ordered.
const MARGIN: f64 = 1.15;
/// Whole truckloads are ordered up to so many times the need.
const MOST_OVER: f64 = 1.5;

impl Order {
    /// Whole truckloads where they come near to the need, else the need with a margin; never the need itself.
    pub(super) fn of(answers: &Answers) -> Self {
        let size = |text: &str, dimension| {
            let amount = amount::parse(text).ok().filter(|amount| amount.dimension == dimension)?;
            Some(amount.in_units_of(1.0)).filter(|size| size.is_finite() && *size > 0.0)
        };
        let settling = materials::settling_of(&answers.material);
        let need = match answers.volume.split_once(" at ") {
            None => size(&answers.volume, Dimension::VOLUME),
            Some((area, depth)) => size(area, Dimension::AREA)
                .zip(size(depth, Dimension::LENGTH))
                .map(|(area, depth)| loose_m3(area, depth, settling)),
        };
        let Some((need, truck)) = need.zip(size(&answers.truckload, Dimension::VOLUME)) else {
            // What is wrong with the answers is told when the file is read.
            return Self { volume: answers.volume.clone(), why: "as needed" };
        };
        Self::of_need(need, truck, answers.units)
    }

    fn of_need(need: f64, truck: f64, units: System) -> Self {
        let (wanted, unit, size) = match units {
            System::Us => (need * MARGIN, "yd3", exact::cubic_yards()),
            System::Metric => (need * MARGIN, "m3", 1.0),
        };
        let trucks = (wanted / truck).ceil();
        let whole = trucks * truck;
        let (ordered, why) = if whole <= MOST_OVER * need {
            (
                whole,
                "whole truckloads, with more than is needed: ground takes more than measured, trucks bring less",
            )
        } else {
            (wanted, "a seventh more than is needed: ground takes more than measured, trucks bring less")
        };
        // Rounded up to tenths, so that it is never less than was meant.
        let volume = format!("{} {unit}", (ordered / size * 10.0 - 1e-6).ceil() / 10.0);
        Self { volume, why }
    }
}

/// What to order for a need, by truckloads of a size \[m3\].
pub(crate) fn usual_order(need_m3: f64, truckload_m3: f64, units: System) -> String {
    Order::of_need(need_m3, truckload_m3, units).volume
}
