//! Another truckload: how often it is needed, and what it would do to the price, for it is not in the cost.

use super::costs::Costs;
use super::price::risk_at;
use super::words::odds;
use crate::findings::{Estimate, LeftOver, OrderFindings, about_money};
use scenarios::Scenario;
use scenarios::units::{System, money, volume};
use serde::Serialize;
use sim::Sorted;

/// What a truckload more would mean.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TruckloadFindings {
    /// All of it in a sentence or two.
    pub sentence: String,
    /// What to order and that it is not in the price, to be said before the price; `None` where the order is enough.
    pub first: Option<String>,
    /// A truckload \[m3\].
    pub truckload_m3: f64,
    /// What it costs at the average price of what is ordered \[money\]; `None` where the material has no price.
    pub costs: Option<f64>,
    /// Chance of losing money at the price quoted if the runs that are short pay for it \[0 to 1\]; `None` if none is short.
    pub risk_with_it: Option<Estimate>,
}

/// What a truckload more would mean at a price.
pub fn truckload(
    scenario: &Scenario,
    units: System,
    (left, order): (&LeftOver, &OrderFindings),
    costs: &Costs,
    price: f64,
) -> TruckloadFindings {
    let truckload_m3 = scenario.stated.truckload_m3;
    let fixed = scenario.stated.fixed;
    let per_m3 = (fixed.material + fixed.delivery) / scenario.ordered_m3;
    let one = Some(truckload_m3 * per_m3).filter(|sum| *sum > 0.0 && sum.is_finite());
    let trucks = left.truckloads_more.map(f64::from);
    let more = one.zip(trucks).map(|(one, trucks)| one * trucks);
    let risk_with_it = more.map(|more| {
        let with_it = costs.0.iter().map(|run| run.total + if run.short_m3 > 0.0 { more } else { 0.0 });
        risk_at(&Sorted::new(with_it), price)
    });
    let mut sentence = left.sentence.clone();
    match (more, trucks, &risk_with_it) {
        (Some(more), _, Some(risk)) => {
            sentence = format!(
                "{sentence} Not in the cost: at today's prices {} more; if you pay for it you lose money {} at {}.",
                about_money(more, &scenario.currency),
                odds(risk.value),
                money(price, &scenario.currency)
            );
        }
        (None, Some(_), _) => sentence.push_str(" That is not in the cost: the material has no price."),
        _ => {}
    }
    if left.left_over_m3.iter().any(|at| at.value > truckload_m3 / 2.0) {
        let half = volume(truckload_m3, units);
        sentence = format!(
            "{sentence} More than half a truckload of {half} may stay: taking it away is not in the cost."
        );
    }
    let first = order.first().map(|first| match more {
        Some(more) => {
            let more = about_money(more, &scenario.currency);
            format!("{first} That is not in this price: about {more} more.")
        }
        None => format!("{first} That is not in this price: the material has no price."),
    });
    TruckloadFindings { sentence, first, truckload_m3, costs: one, risk_with_it }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn runs_that_are_short_pay_for_their_truckload_at_the_price_of_what_is_ordered() {
        // 10 of the 100 runs are short, and 24 m3 for $720 make a truckload of 10 m3 worth $300.
        let quote = example::quote();
        let dear = quote.costs.total().values()[99] + 1.0;
        let left = crate::findings::left_over_in(&quote.study, &quote.scenario, quote.units, &[0.5]);
        let order = crate::findings::order(&quote.study, &quote.scenario, quote.units);
        let findings = truckload(&quote.scenario, quote.units, (&left, &order), &quote.costs, dear);
        assert!((findings.costs.unwrap() - 7_200.0 / 24.0).abs() < 1e-9, "{findings:?}");
        assert_eq!(findings.risk_with_it.unwrap().value, 0.1);
        assert!(
            findings.sentence.contains("$300 more; if you pay for it you lose money 1 job in 10"),
            "{}",
            findings.sentence
        );
        let dearer = truckload(&quote.scenario, quote.units, (&left, &order), &quote.costs, dear + 301.0);
        assert_eq!(dearer.risk_with_it.unwrap().value, 0.0);
        assert_eq!(dearer.first, None, "one run in ten may be short");
    }

    #[test]
    fn where_the_order_is_not_enough_the_price_is_not_told_before_what_it_leaves_out() {
        let mut quote = example::quote();
        quote.study.outcomes.iter_mut().for_each(|o| (o.short_m3, o.ends_short) = (2.0, true));
        let from = quote.provenance.clone();
        let quote = crate::quote::Quote::of(quote.scenario, quote.study, quote.asked, from);
        let verdict = &quote.findings.offer.verdict;
        assert!(verdict.starts_with("Order 1 more truckload"), "{verdict}");
        let left_out = verdict.find("not in this price: about $300 more").expect(verdict);
        assert!(left_out < verdict.find("Quote $").expect(verdict), "{verdict}");
        assert!(
            quote.findings.hours.sentence.starts_with("Order 1 more truckload"),
            "{}",
            quote.findings.hours.sentence
        );
        assert!(quote.client.missing.is_some());
        assert_eq!(quote.client.ground, ["arena"], "no volume is promised");
    }
}
