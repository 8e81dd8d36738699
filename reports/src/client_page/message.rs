//! A short message for the client: day, time, what to see to, and a price where one is named.

use super::SEE_TO;
use super::findings::{ClientFindings, Terms, client};
use crate::ask::compiled;
use crate::failure::Failure;
use crate::findings::capital;
use crate::provenance::Provenance;
use scenarios::units::System;
use scenarios::{Clock, Scenario};
use serde::Serialize;
use sim::{Runs, Study};

/// A message in plain text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Message {
    /// What it is about, in a line.
    pub subject: String,
    /// All of it.
    pub text: String,
}

/// A message about a job with this price, as typed, or without one. `made` is told of runs as they are finished, from any thread.
///
/// # Errors
/// If the model has no meaning for the job, or a run of it can make no progress.
pub fn message(
    scenario: &Scenario,
    (units, clock): (System, Clock),
    price: Option<&str>,
    (seed, runs): (u64, u32),
    made: impl Fn(u32) + Sync,
) -> Result<Message, Failure> {
    let study = Study::new(&compiled(scenario)?, seed, Runs::Exactly(runs), made)?;
    let from = Provenance::new(scenario, seed, study.runs(), String::new());
    let terms = Terms::Fixed { price: price.unwrap_or_default().trim().to_owned() };
    Ok(of(&client(scenario, &study, (units, system(clock)), terms, &from)))
}

/// The system whose clock it is.
fn system(clock: Clock) -> System {
    match clock {
        Clock::AmPm => System::Us,
        Clock::Hours24 => System::Metric,
    }
}

/// The message of what the client is told.
fn of(findings: &ClientFindings) -> Message {
    let day = match &findings.date {
        Some(date) => format!("{date}, {}", findings.from()),
        None => format!("{} The day is still to be agreed.", capital(&findings.from())),
    };
    let mut parts = vec![findings.title.clone(), capital(&findings.what)];
    parts.extend(findings.missing.clone());
    parts.push(format!("{day}\n{}", findings.until()));
    if let Terms::Fixed { price } = &findings.terms
        && !price.is_empty()
    {
        parts.push(format!("Price: {price}\n{}", findings.included));
    }
    let see_to: Vec<String> = findings.see_to.iter().map(|line| format!("- {line}")).collect();
    parts.push(format!("{SEE_TO}:\n{}", see_to.join("\n")));
    let date = findings.date.iter().map(|date| format!(", {date}"));
    Message { subject: findings.title.clone() + &date.collect::<String>(), text: parts.join("\n\n") + "\n" }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    fn told(date: bool, price: Option<&str>, clock: Clock) -> Message {
        let mut scenario = example::scenario();
        scenario.date = scenarios::calendar::day(2026, 4, 18).filter(|_| date);
        message(&scenario, (System::Metric, clock), price, (1, 200), |_| ()).unwrap()
    }

    #[test]
    fn day_range_and_what_to_see_to_are_told_and_a_price_only_where_one_is_named() {
        let without = told(true, None, Clock::AmPm);
        assert!(without.subject.ends_with(", Saturday, 18 April 2026"), "{}", without.subject);
        for part in ["Saturday, 18 April 2026, from 8 am on.\nDone at about ", "\n\nPlease see to this:\n- "]
        {
            assert!(without.text.contains(part), "{}", without.text);
        }
        assert!(!without.text.contains("rice"), "{}", without.text);
        let with = told(true, Some(" $2400 "), Clock::AmPm).text;
        assert!(with.contains("Price: $2400\nIn the price: the work"), "{with}");
    }

    #[test]
    fn without_a_date_none_is_made_up_and_the_clock_is_told_as_wanted() {
        let told = told(false, Some(" "), Clock::Hours24);
        assert!(told.text.contains("From 08:00 on. The day is still to be agreed.\nDone "), "{}", told.text);
        assert!(!told.text.contains("Price"), "{}", told.text);
    }
}
