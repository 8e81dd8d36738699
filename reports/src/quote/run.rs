//! The bundle that a quote is shown from: its runs, what they cost, and all that is said of it.

use crate::client_page::{ClientFindings, client};
use crate::failure::Failure;
use crate::findings::{is_priced, left_over_in, order};
use crate::provenance::Provenance;
use crate::quote::findings::{
    Asked, CostFindings, Costs, Gaps, HoursFindings, Offer, RiskPoint, TruckloadFindings, cost, gaps, hours,
    offer, risk_curve, terms, truckload,
};
use scenarios::Scenario;
use scenarios::units::System;
use serde::Serialize;
use sim::{Plan, Runs, Study};

/// Everything known of the cost of one job once its runs are made.
pub struct Quote {
    /// The file as it was read, and the job in it.
    pub scenario: Scenario,
    /// All runs.
    pub study: Study,
    /// What each of them costs.
    pub costs: Costs,
    /// What the person wants of the quote.
    pub asked: Asked,
    /// Units to show.
    pub units: System,
    /// What is said.
    pub findings: QuoteFindings,
    /// What the client is told.
    pub client: ClientFindings,
    /// What it takes to get the same answer again.
    pub provenance: Provenance,
}

/// What a quote says: screen, files, charts and page all say what stands here.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct QuoteFindings {
    /// What to ask for the job.
    pub offer: Offer,
    /// What it costs.
    pub cost: CostFindings,
    /// For those who bill by the hour.
    pub hours: HoursFindings,
    /// What a truckload more would mean.
    pub truckload: TruckloadFindings,
    /// What is not in the quote.
    pub gaps: Gaps,
    /// Risk against price.
    pub risk_curve: Vec<RiskPoint>,
}

impl Quote {
    /// Makes all runs of a job and works out what they cost. `plan` is the scenario's job made ready; `made` is told of runs as they
    /// are finished, from any thread.
    ///
    /// # Errors
    /// If the file has no price at all, or a run of the job can make no progress.
    pub fn new(
        scenario: Scenario,
        plan: &Plan,
        asked: Asked,
        (seed, runs): (u64, u32),
        command: String,
        made: impl Fn(u32) + Sync,
    ) -> Result<Self, Failure> {
        is_known(&scenario)?;
        let study = Study::new(plan, seed, Runs::Exactly(runs), &made)?;
        let provenance = Provenance::new(&scenario, seed, study.runs(), command);
        Ok(Self::of(scenario, study, asked, provenance))
    }

    /// Works out what runs that are made cost.
    pub fn of(scenario: Scenario, study: Study, asked: Asked, provenance: Provenance) -> Self {
        let (units, currency) = (scenario.units, scenario.currency.as_str());
        let costs = Costs::of(&scenario, &study);
        let total = costs.total();
        let mut offer = offer(&total, &asked, currency);
        let left = left_over_in(&study, &scenario, units, &[0.5]);
        let order = order(&study, &scenario, units);
        let truckload = truckload(&scenario, units, (&left, &order), &costs, offer.quote.price.value);
        let mut hours = hours(&costs, &asked, currency);
        if let Some(first) = &truckload.first {
            offer.verdict = format!("{first} {}", offer.verdict);
            hours.sentence = format!("{first} {}", hours.sentence);
        }
        let findings = QuoteFindings {
            cost: cost(&costs, currency),
            hours,
            truckload,
            gaps: gaps(&scenario),
            risk_curve: risk_curve(&total, &offer.ladder),
            offer,
        };
        let client = client(
            &scenario,
            &study,
            (units, units),
            terms(&asked, &findings.offer, &findings.hours),
            &provenance,
        );
        Self { units, findings, client, costs, asked, provenance, study, scenario }
    }
}

/// Without a price nothing can be quoted.
///
/// # Errors
/// What to write into the file.
pub fn is_known(scenario: &Scenario) -> Result<(), Failure> {
    if is_priced(&scenario.job) {
        return Ok(());
    }
    let why = if scenario.currency.is_empty() { "it has no price" } else { "every price in it is 0" };
    Err(Failure::Asked(format!(
        "{}: nothing can be quoted: {why}; write what applies: machine_cost = \"$28/h\" and operator_cost = \"$35/h\" of a \
         loader, cost = \"$22/h\" of a raker, fuel_price = \"$4/gal\" under [money], price = \"$720\" of a stockpile or its \
         delivery; nothing was written",
        scenario.file
    )))
}
