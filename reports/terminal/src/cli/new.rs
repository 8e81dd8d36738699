//! What can be typed after `heapcast new`.

use super::system;
use clap::Args;
use reports::ask::whole;
use scenarios::LiftFigure;
use scenarios::units::System;
use std::path::PathBuf;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast new                               asks, and writes job.toml
  heapcast new arena.toml --volume \"30 yd3\" --bucket \"14 ft3\" --distance \"25 yd\" --rakers 1
  heapcast new beds.toml --units metric --volume \"30 m3\" --bucket \"0.5 m3\" --gate \"1.8 m\"
  heapcast new mine.toml --from NAME         a copy of a shipped scenario

A file that is there already is never overwritten.";

/// `heapcast new`.
#[derive(Args, Debug)]
pub(crate) struct NewArgs {
    /// File to write; must not be there yet
    #[arg(default_value = "job.toml")]
    pub(crate) file: PathBuf,
    /// Copy this shipped scenario instead
    #[arg(long, value_name = "NAME", conflicts_with = "answers")]
    pub(crate) from: Option<String>,
    /// The answers.
    #[command(flatten)]
    pub(crate) answers: AnswerArgs,
}

/// Answers to the questions that `heapcast new` asks.
#[derive(Args, Clone, Debug, Default)]
#[group(id = "answers", multiple = true)]
pub(crate) struct AnswerArgs {
    /// What the job is called
    #[arg(long, value_name = "TEXT")]
    pub(crate) title: Option<String>,
    /// Units the file is written in [default: us]
    #[arg(long, value_name = "SYSTEM", value_parser = system())]
    pub(crate) units: Option<System>,
    /// Material, by its name in the built-in table
    #[arg(long, value_name = "NAME")]
    pub(crate) material: Option<String>,
    /// Loose volume to move, or area and depth as in "110 m2 at 10 cm"; such as "30 yd3" or "24 m3"
    #[arg(long, value_name = "VOLUME")]
    pub(crate) volume: Option<String>,
    /// What a truck brings at a time, such as "20 yd3" or "15 m3"
    #[arg(long, value_name = "VOLUME")]
    pub(crate) truckload: Option<String>,
    /// Heaped capacity of the bucket, such as "14 ft3" or "0.4 m3"
    #[arg(long, value_name = "VOLUME")]
    pub(crate) bucket: Option<String>,
    /// Distance from the pile to the middle of the ground, such as "25 yd" or "23 m"
    #[arg(long, value_name = "LENGTH")]
    pub(crate) distance: Option<String>,
    /// People who rake
    #[arg(long, value_name = "NUMBER", value_parser = rakers)]
    pub(crate) rakers: Option<u32>,
    /// Clear width of a gate on the way, such as "6 ft" or "1.8 m", if there is one
    #[arg(long, value_name = "LENGTH")]
    pub(crate) gate: Option<String>,
    /// Start of the day, such as "08:00"
    #[arg(long, value_name = "CLOCK")]
    pub(crate) start: Option<String>,
    /// Breaks, such as "12:00-12:30"; several with commas between
    #[arg(long, value_name = "CLOCK-CLOCK")]
    pub(crate) breaks: Option<String>,
    /// What the machine may lift, as its manual says it.
    #[command(flatten)]
    pub(crate) lift: LiftArgs,
    /// Price of the material, such as "$18/yd3"
    #[arg(long, value_name = "PRICE")]
    pub(crate) price: Option<String>,
    /// An hour of the machine, such as "$25/h"
    #[arg(long, value_name = "PRICE")]
    pub(crate) machine_cost: Option<String>,
    /// An hour of its operator, such as "$35/h"
    #[arg(long, value_name = "PRICE")]
    pub(crate) operator_cost: Option<String>,
    /// An hour of somebody who rakes, such as "$22/h"
    #[arg(long, value_name = "PRICE")]
    pub(crate) raker_cost: Option<String>,
}

fn rakers(text: &str) -> Result<u32, String> {
    whole(text, 0, 64)
}

/// The figure that stands in the machine's manual: one of three.
#[derive(Args, Clone, Debug, Default)]
#[group(multiple = false)]
pub(crate) struct LiftArgs {
    /// What the manual of a tractor's loader gives as its lift, such as "1300 lb"
    #[arg(long, value_name = "MASS")]
    pub(crate) hydraulic_lift: Option<String>,
    /// What the manual of a skid-steer, track or wheel loader gives as its rated operating capacity
    #[arg(long, value_name = "MASS")]
    pub(crate) rated_operating_capacity: Option<String>,
    /// What the manual gives as its tipping load
    #[arg(long, value_name = "MASS")]
    pub(crate) tipping_load: Option<String>,
}

impl LiftArgs {
    /// The figure given, and how much it says.
    pub(crate) fn given(&self) -> Option<(LiftFigure, String)> {
        let figures = [
            (LiftFigure::HydraulicLift, &self.hydraulic_lift),
            (LiftFigure::RatedOperatingCapacity, &self.rated_operating_capacity),
            (LiftFigure::TippingLoad, &self.tipping_load),
        ];
        figures.into_iter().find_map(|(figure, typed)| Some((figure, typed.clone()?)))
    }
}

impl AnswerArgs {
    /// Whether nothing was answered by a flag.
    pub(crate) fn is_empty(&self) -> bool {
        let texts = [
            &self.title,
            &self.material,
            &self.volume,
            &self.truckload,
            &self.bucket,
            &self.distance,
            &self.gate,
            &self.start,
            &self.breaks,
            &self.price,
            &self.machine_cost,
            &self.operator_cost,
            &self.raker_cost,
        ];
        self.units.is_none()
            && self.rakers.is_none()
            && self.lift.given().is_none()
            && texts.iter().all(|answer| answer.is_none())
    }
}
