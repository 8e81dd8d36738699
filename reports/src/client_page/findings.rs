//! What the client is told: what is done, when, for how much, what to see to, what may change the price. No cost, no risk, no
//! margin: nothing here is made from them but the price itself.

mod when;
mod zones;

use crate::findings::{OrderFindings, about_volume, order};
use crate::provenance::Provenance;
use scenarios::Scenario;
use scenarios::units::System;
use sim::{FinishRule, Study};
use when::when;
use zones::{see_to, zones};

/// What the client is told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClientFindings {
    /// Title of the job.
    pub title: String,
    /// What is done, in a sentence.
    pub what: String,
    /// What the material ordered does not cover, and that it is not offered; `None` where it is enough.
    pub missing: Option<String>,
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
    /// A short number by which the calculation is found again.
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

impl ClientFindings {
    /// From when on, in words.
    pub(super) fn from(&self) -> String {
        format!("from {} on.", self.start)
    }

    /// By when, in a sentence or two.
    pub(super) fn until(&self) -> String {
        let what = if self.missing.is_some() { "What is ordered is spread" } else { "Done" };
        format!("{what} {}. A bad day can make it later.", self.done)
    }
}

/// What the client is told of a job and of what is asked for it; times of the clock are told as in the other system, if wanted.
pub fn client(
    scenario: &Scenario,
    study: &Study,
    (units, clock): (System, System),
    terms: Terms,
    from: &Provenance,
) -> ClientFindings {
    let material = scenario.stated.fixed.material + scenario.stated.fixed.delivery > 0.0;
    let by_the_hour = matches!(terms, Terms::Hourly { .. });
    let order = order(study, scenario, units);
    let (date, start, done) = when(scenario, study, clock);
    ClientFindings {
        title: scenario.title.clone(),
        what: what(scenario, &order, units),
        missing: missing(&order, units),
        ground: zones(scenario, &order, units),
        date,
        start,
        done,
        included: included(scenario, material, by_the_hour),
        material_besides: material && by_the_hour,
        see_to: see_to(scenario, units, clock),
        may_change: may_change(by_the_hour),
        reference: format!("{}-{}", from.scenario_hash.get(..8).unwrap_or(&from.scenario_hash), from.seed),
        terms,
    }
}

/// No volume is promised that is not ordered.
fn what(scenario: &Scenario, order: &OrderFindings, units: System) -> String {
    let job = &scenario.job;
    let (all, is_all) = match job.finish {
        FinishRule::AreaCovered if !order.enough => (scenario.ordered_m3, ""),
        FinishRule::AreaCovered => (job.zones.iter().map(|z| z.need_m3).sum(), ""),
        FinishRule::PileCleared { .. } => (scenario.ordered_m3, "all of it, "),
    };
    let amount = about_volume(all, units);
    let pause = if job.material.name.contains(',') { "," } else { "" };
    let as_far = if order.enough { "" } else { ", as far as it goes" };
    format!(
        "{is_all}{amount} (loose) of {}{pause} brought to its place and spread{as_far}.",
        job.material.name
    )
}

fn missing(order: &OrderFindings, units: System) -> Option<String> {
    let (ordered, missing) = (about_volume(order.ordered_m3, units), about_volume(order.missing_m3, units));
    (!order.enough).then(|| {
        format!(
            "That does not cover all of the ground: beyond the {ordered} ordered it takes about {missing} more, which is not \
             in this quote."
        )
    })
}

/// What the price was worked out from: what the file gives no time or no price for is not claimed.
fn included(scenario: &Scenario, material: bool, by_the_hour: bool) -> String {
    let work = worked(scenario);
    let brought = if scenario.stated.fixed.delivery > 0.0 { " and its delivery" } else { "" };
    match (material, by_the_hour) {
        (true, false) => format!("In the price: {work}, the material{brought}."),
        (false, false) => format!("In the price: {work}. The material is not in it."),
        (true, true) => format!("In the hours: {work}. The material comes on top."),
        (false, true) => format!("In the hours: {work}. The material is not in them."),
    }
}

/// `the work with set-up and clean-up, the machine, its fuel`.
fn worked(scenario: &Scenario) -> String {
    let job = &scenario.job;
    let around = [(&job.shift.set_up_s, "set-up"), (&job.shift.clean_up_s, "clean-up")];
    let around: Vec<&str> =
        around.into_iter().filter(|(time, _)| time.mean() > 0.0).map(|(_, what)| what).collect();
    let work = match around.as_slice() {
        [] => "the work".to_owned(),
        steps => format!("the work with {}", steps.join(" and ")),
    };
    let machine = job.loaders.iter().any(|loader| loader.machine_cost_per_h > 0.0);
    let fuel = job.prices.fuel_per_l > 0.0 && crate::findings::is_fuelled(job);
    let brought = scenario.stated.fixed.mobilisation > 0.0;
    let parts =
        [(machine, "the machine"), (fuel, "its fuel"), (brought, "bringing the machine and taking it away")];
    parts.into_iter().filter(|(is, _)| *is).fold(work, |all, (_, part)| format!("{all}, {part}"))
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;
    use sim::Distribution;

    #[test]
    fn only_what_was_counted_is_said_to_be_in_the_price() {
        let mut scenario = example::scenario();
        scenario.stated.fixed.material = 720.0;
        let job = &mut scenario.job;
        (job.shift.set_up_s, job.shift.clean_up_s) =
            (Distribution::Constant(600.0), Distribution::Constant(0.0));
        job.loaders[0].machine_cost_per_h = 28.0;
        (job.loaders[0].fuel_working_l_per_h, job.prices.fuel_per_l) = (4.0, 1.5);
        let said = |scenario: &Scenario| included(scenario, true, false);
        assert_eq!(
            said(&scenario),
            "In the price: the work with set-up, the machine, its fuel, the material."
        );
        scenario.job.prices.fuel_per_l = 0.0;
        assert_eq!(said(&scenario), "In the price: the work with set-up, the machine, the material.");
        scenario.job.prices.fuel_per_l = 1.5;
        scenario.job.loaders[0].fuel_working_l_per_h = 0.0;
        scenario.job.loaders[0].fuel_idling_l_per_h = 0.0;
        scenario.job.loaders[0].machine_cost_per_h = 0.0;
        scenario.job.shift.clean_up_s = Distribution::Constant(60.0);
        scenario.stated.fixed.delivery = 60.0;
        assert_eq!(
            said(&scenario),
            "In the price: the work with set-up and clean-up, the material and its delivery."
        );
        scenario.stated.fixed.mobilisation = 90.0;
        scenario.job.shift.set_up_s = Distribution::Constant(0.0);
        scenario.job.shift.clean_up_s = Distribution::Constant(0.0);
        assert_eq!(
            included(&scenario, false, false),
            "In the price: the work, bringing the machine and taking it away. The material is not in it."
        );
    }
}
