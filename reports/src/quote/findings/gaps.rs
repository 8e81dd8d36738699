//! What a quote leaves out: what the file prices at nothing, and what no file of this kind prices.

use crate::findings::is_fuelled;
use scenarios::Scenario;
use serde::Serialize;
use sim::Loader;

/// What is not in a quote.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Gaps {
    /// What the file prices at nothing or not at all, with the key that would say it.
    pub unpriced: Vec<String>,
    /// What heapcast does not calculate.
    pub never: Vec<&'static str>,
    /// That in a sentence.
    pub sentence: &'static str,
    /// What this calculation is not.
    pub no_advice: &'static str,
}

const NEVER: [&str; 6] = [
    "taxes",
    "insurance and permits",
    "disposal of anything taken away",
    "overheads: office, telephone, advertising, the time for visits and quotes",
    "repairs, and wear beyond the hourly cost of the machine",
    "clients who pay late or not at all",
];

const SENTENCE: &str =
    "Never included: taxes, insurance, permits, disposal, overheads, repairs, clients who do not pay.";

impl Gaps {
    /// How much of what the file could say has no price, and what never has one.
    pub fn short(&self) -> String {
        match self.unpriced.len() {
            0 => self.sentence.to_owned(),
            1 => format!("1 thing has no price. {}", self.sentence),
            n => format!("{n} things have no price. {}", self.sentence),
        }
    }
}

/// What a quote of this job leaves out.
pub fn gaps(scenario: &Scenario) -> Gaps {
    let unpriced = unpriced(scenario);
    let never = NEVER.to_vec();
    Gaps {
        sentence: SENTENCE,
        unpriced,
        never,
        no_advice: "This is a calculation of time and money from the prices of the job, not accounting, tax or legal advice.",
    }
}

fn unpriced(scenario: &Scenario) -> Vec<String> {
    let job = &scenario.job;
    let free = |cost: fn(&Loader) -> f64| -> Vec<&str> {
        job.loaders.iter().filter(|l| cost(l) <= 0.0).map(|l| l.name.as_str()).collect()
    };
    let mut all = Vec::new();
    let operators = free(|l| l.operator_cost_per_h);
    if operators.len() == job.loaders.len() {
        all.push(format!(
            "Your own time is counted at {}: what you keep is also your wage (operator_cost)",
            nothing_an_hour(scenario)
        ));
    } else if !operators.is_empty() {
        let at = nothing_an_hour(scenario);
        all.push(format!("The operator of {} is counted at {at} (operator_cost)", operators.join(", ")));
    }
    let rakers: Vec<&str> =
        job.rakers.iter().filter(|r| r.cost_per_h <= 0.0).map(|r| r.name.as_str()).collect();
    if !rakers.is_empty() {
        let at = nothing_an_hour(scenario);
        all.push(format!("{} with the rake is counted at {at} (the raker's cost)", rakers.join(", ")));
    }
    let machines = free(|l| l.machine_cost_per_h);
    if !machines.is_empty() {
        let at = nothing_an_hour(scenario);
        all.push(format!(
            "{} is counted at {at}: buying and keeping it is not in the cost (machine_cost)",
            machines.join(", ")
        ));
    }
    match (is_fuelled(job), job.prices.fuel_per_l > 0.0) {
        (true, false) => all.push("Fuel is burned but has no price ([money] fuel_price)".into()),
        (false, true) => all.push("Fuel has a price but no burn is named (fuel_working, fuel_idling)".into()),
        _ => {}
    }
    let fixed = scenario.stated.fixed;
    if fixed.material + fixed.delivery <= 0.0 {
        let name = &job.material.name;
        all.push(format!(
            "The material ({name}) has no price, nor has bringing it (a stockpile's price and carriage)"
        ));
    }
    if fixed.mobilisation <= 0.0 {
        all.push("Getting the machine there and back has no price ([money] mobilisation)".into());
    }
    all
}

/// `$0/h`, in the currency of the file.
fn nothing_an_hour(scenario: &Scenario) -> String {
    format!("{}/h", scenarios::units::money(0.0, &scenario.currency))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn what_the_file_prices_at_nothing_is_told_with_its_key() {
        let mut scenario = example::scenario();
        scenario.stated.fixed.material = 720.0;
        scenario.stated.fixed.mobilisation = 90.0;
        assert_eq!(gaps(&scenario).unpriced, [""; 0]);
        scenario.job.loaders[0].operator_cost_per_h = 0.0;
        scenario.job.loaders[0].machine_cost_per_h = 0.0;
        scenario.job.rakers[0].cost_per_h = 0.0;
        scenario.job.prices.fuel_per_l = 0.0;
        scenario.stated.fixed = scenarios::FixedCosts::default();
        let told = gaps(&scenario).unpriced;
        assert!(told[0].starts_with("Your own time is counted at $0/h"), "{told:?}");
        let keys =
            ["operator_cost", "raker's cost", "machine_cost", "fuel_price", "carriage", "mobilisation"];
        assert_eq!(told.len(), keys.len());
        for (gap, key) in told.iter().zip(keys) {
            assert!(gap.contains(key), "{key}: {gap}");
        }
    }

    #[test]
    fn fuel_is_only_missing_where_one_of_burn_and_price_is_given() {
        let mut scenario = example::scenario();
        scenario.job.loaders[0].fuel_working_l_per_h = 0.0;
        scenario.job.loaders[0].fuel_idling_l_per_h = 0.0;
        let findings =
            |scenario: &Scenario| gaps(scenario).unpriced.iter().any(|gap| gap.starts_with("Fuel"));
        assert!(findings(&scenario), "a price and no burn");
        scenario.job.prices.fuel_per_l = 0.0;
        assert!(!findings(&scenario), "a barrow burns none");
    }
}
