//! What the client is told: what is done, when, for how much, what to see to, what may change the price. No cost, no risk, no
//! margin: nothing here is made from them but the price itself.

mod ground;
mod when;

use super::hours::HoursSays;
use super::offer::{Asked, Offer};
use crate::forecast::Provenance;
use ground::{ground, see_to};
use scenarios::Scenario;
use scenarios::units::System;
use sim::{FinishRule, Study};
use when::when;

/// What the client is told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClientSays {
    /// Title of the job.
    pub title: String,
    /// What is done, in a sentence.
    pub what: String,
    /// The ground, a line for each zone.
    pub ground: Vec<String>,
    /// The day and the start; `None` if no date is set.
    pub date: Option<String>,
    /// When work begins.
    pub start: String,
    /// When it will be done, as a range.
    pub done: String,
    /// The price, or hours and rate.
    pub terms: Terms,
    /// What is in the price.
    pub included: String,
    /// Whether the material is charged besides, and left to be filled in.
    pub material_besides: bool,
    /// What the client has to see to.
    pub see_to: Vec<String>,
    /// What may change the price.
    pub may_change: Vec<String>,
    /// A short number by which the reckoning is found again.
    pub reference: String,
}

/// What is asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Terms {
    /// A fixed price.
    Fixed {
        /// In words.
        price: String,
    },
    /// Hours at a rate, with a limit.
    Hourly {
        /// Hours from and to, in words.
        hours: String,
        /// What an hour is billed at, in words.
        rate: String,
        /// What the hours come to, in words.
        sums: String,
        /// The limit, in words.
        limit: String,
    },
}

/// What the client is told of a job. Whoever bills by the hour and sets no price offers hours and a rate.
pub fn client(
    scenario: &Scenario,
    study: &Study,
    units: System,
    asked: &Asked,
    (offer, hours): (&Offer, &HoursSays),
    from: &Provenance,
) -> ClientSays {
    let material = scenario.stated.fixed.material + scenario.stated.fixed.delivery > 0.0;
    let terms = match hours.estimate.as_ref().filter(|_| asked.price.is_none()) {
        Some(at) => Terms::Hourly {
            hours: at.hours_said.clone(),
            rate: at.rate_said.replace("/h", " an hour"),
            sums: at.sums_said.clone(),
            limit: at.limit_said.clone(),
        },
        None => Terms::Fixed { price: offer.quote.said.clone() },
    };
    let by_the_hour = matches!(terms, Terms::Hourly { .. });
    let (date, start, done) = when(scenario, study, units);
    ClientSays {
        title: scenario.title.clone(),
        what: what(scenario, units),
        ground: ground(scenario, units),
        date,
        start,
        done,
        included: included(material, by_the_hour),
        material_besides: material && by_the_hour,
        see_to: see_to(scenario, units),
        may_change: may_change(by_the_hour),
        reference: format!("{}-{}", from.scenario_hash.get(..8).unwrap_or(&from.scenario_hash), from.seed),
        terms,
    }
}

fn what(scenario: &Scenario, units: System) -> String {
    let job = &scenario.job;
    let (all, is_all) = match job.finish {
        FinishRule::AreaCovered => (job.zones.iter().map(|z| z.need_m3).sum(), ""),
        FinishRule::PileCleared { .. } => (scenario.ordered_m3, "all of it, "),
    };
    let amount = scenarios::units::volume(all, units);
    let pause = if job.material.name.contains(',') { "," } else { "" };
    format!("{is_all}{amount} (loose) of {}{pause} brought to its place and spread.", job.material.name)
}

fn included(material: bool, by_the_hour: bool) -> String {
    let work = "the work with set-up and clean-up, the machine and its fuel";
    match (material, by_the_hour) {
        (true, false) => format!("In the price: {work}, the material."),
        (false, false) => format!("In the price: {work}. The material is not in it."),
        (true, true) => format!("In the hours: {work}. The material comes on top."),
        (false, true) => format!("In the hours: {work}. The material is not in them."),
    }
}

fn may_change(by_the_hour: bool) -> Vec<String> {
    let mut all = vec![
        "More ground, or a deeper layer, than is written here.".to_owned(),
        "Ground that takes more material than was ordered: another truckload.".to_owned(),
        "Waiting for a gate, a truck or anything else on the list above.".to_owned(),
        "A day lost to weather.".to_owned(),
    ];
    if by_the_hour {
        all.push(
            "Hours are billed as worked, in quarter-hours; nobody goes beyond the limit without asking you."
                .into(),
        );
    }
    all
}
