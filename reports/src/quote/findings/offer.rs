//! The price to quote, and why.

use super::price::{Price, PriceOf, at_risk, set, with_margin};
use super::words::{LEAST, about, odds, rounded_up};
use crate::findings::{label, percent};
use serde::Serialize;
use sim::Sorted;

/// Risks whose prices are told whatever is asked for.
const RISKS: [f64; 4] = [0.5, 0.2, 0.1, 0.05];

/// What the person wants of a quote.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Asked {
    /// Risk of losing money that is taken \[above 0, below 1\].
    pub risk: f64,
    /// Share of the price that is to stay on average \[above 0, below 1\], if any is wanted.
    pub margin: Option<f64>,
    /// A price to be judged \[money\] instead of finding one.
    pub price: Option<f64>,
    /// What an hour on the job is billed at \[money/h\], for those who bill by the hour.
    pub rate: Option<f64>,
}

/// What settles the price.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SettledBy {
    /// The risk taken.
    Risk,
    /// The margin wanted.
    Margin,
    /// The person.
    Person,
}

/// The price to quote.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Offer {
    /// One sentence: the price, the risk, what stays.
    pub verdict: String,
    /// Why this price, and what a margin means.
    pub why: String,
    /// How closely the risk is known, in a sentence; empty where nothing is left to chance.
    pub risk_known: String,
    /// Whether every run costs the same.
    pub certain: bool,
    /// What settles it.
    pub settled_by: SettledBy,
    /// The price and what it carries.
    pub quote: Price,
    /// The price that carries just the risk taken.
    pub at_risk: Price,
    /// The price that leaves just the margin wanted.
    pub with_margin: Option<Price>,
    /// These and a few others, rising.
    pub ladder: Vec<Price>,
}

/// The price to quote for jobs of these costs.
pub fn offer(costs: &Sorted, asked: &Asked, currency: &str) -> Offer {
    let at_risk = at_risk(costs, asked.risk, currency);
    let with_margin = asked.margin.map(|margin| with_margin(costs, margin, currency));
    let least = with_margin.as_ref().filter(|price| price.price.value > at_risk.price.value);
    let (settled_by, quote) = match asked.price {
        Some(price) => (SettledBy::Person, set(costs, PriceOf::Asked, price, currency)),
        None => {
            let least_price = least.unwrap_or(&at_risk).price.value;
            let by = if least.is_some() { SettledBy::Margin } else { SettledBy::Risk };
            (by, set(costs, PriceOf::Quote, rounded_up(least_price), currency))
        }
    };
    let values = costs.values();
    let certain = values.first().zip(values.last()).is_some_and(|(a, b)| b - a <= a.abs() * LEAST);
    let mut ladder = if certain { Vec::new() } else { ladder(costs, asked.risk, currency) };
    ladder.extend(with_margin.clone());
    ladder.push(quote.clone());
    ladder.sort_by(|a, b| a.price.value.total_cmp(&b.price.value));
    Offer {
        verdict: verdict(&quote, certain, values.len(), currency),
        why: why(&quote, settled_by, &at_risk, with_margin.as_ref(), asked, certain, currency),
        risk_known: if certain {
            String::new()
        } else {
            format!("The risk at {} is {}, with 95 % confidence.", quote.said, quote.risk_said)
        },
        certain,
        settled_by,
        quote,
        at_risk,
        with_margin,
        ladder,
    }
}

fn ladder(costs: &Sorted, risk: f64, currency: &str) -> Vec<Price> {
    let mut risks = RISKS.to_vec();
    if risks.iter().all(|known| (known - risk).abs() > LEAST) {
        risks.push(risk);
    }
    risks.into_iter().map(|risk| at_risk(costs, risk, currency)).collect()
}

fn verdict(quote: &Price, certain: bool, runs: usize, currency: &str) -> String {
    let opening = match quote.of {
        PriceOf::Asked => format!("At {}:", quote.said),
        _ => format!("Quote {}:", quote.said),
    };
    let stays = quote.stays.value;
    let left = if stays < 0.0 {
        format!("{} is missing", about(-stays, quote.price.value, currency))
    } else {
        format!("you keep {}", quote.stays_said)
    };
    if runs == 1 {
        return format!("{opening} {left} in the one run made, which tells nothing of the risk.");
    }
    if certain {
        return match stays {
            0.0 => format!("{opening} that is what every run costs; nothing here is left to chance."),
            _ => format!("{opening} {left} in every run; nothing here is left to chance."),
        };
    }
    let lose = format!("you lose money {}", quote.odds);
    format!("{opening} {lose}; on average {left}.")
}

fn why(
    quote: &Price,
    by: SettledBy,
    at_risk: &Price,
    with_margin: Option<&Price>,
    asked: &Asked,
    certain: bool,
    currency: &str,
) -> String {
    let risk = percent(asked.risk);
    let mut words = match (by, with_margin) {
        _ if certain && by == SettledBy::Risk => return String::new(),
        (SettledBy::Person, _) => compared_with(quote, at_risk, &format!("a risk of {risk}"), currency),
        (SettledBy::Margin, Some(price)) => format!(
            "The margin settles it: {} ({}), rounded up. The risk of {risk} alone asks for {}.",
            price.said,
            price.known.as_deref().unwrap_or_default(),
            at_risk.said
        ),
        (_, Some(price)) => format!(
            "The risk settles it: the {} of the cost is {} ({}), rounded up. The margin of {} alone asks for {}, which loses \
             money {}.",
            label(1.0 - asked.risk),
            at_risk.said,
            at_risk.known.as_deref().unwrap_or_default(),
            percent(asked.margin.unwrap_or_default()),
            price.said,
            odds(price.risk.value)
        ),
        (_, None) => format!(
            "That is the {} of the cost, {} ({}), rounded up. It pays for the risk and nothing else; ask for more with \
             --margin.",
            label(1.0 - asked.risk),
            at_risk.said,
            at_risk.known.as_deref().unwrap_or_default()
        ),
    };
    if by == SettledBy::Risk && at_risk.price.high.is_none() {
        words.push_str(" These runs are too few to bound it from above: make more with --runs.");
    }
    if let Some(margin) = asked.margin {
        if let (SettledBy::Person, Some(price)) = (by, with_margin) {
            let what = format!("a margin of {}", percent(margin));
            words = format!("{words} {}", compared_with(quote, price, &what, currency));
        }
        words.push_str(" A margin is a share of the price: mean cost / (1 - margin).");
    }
    words
}

/// A price somebody set, compared with the one that would be wanted.
fn compared_with(quote: &Price, wanted: &Price, by: &str, currency: &str) -> String {
    let short = wanted.price.value - quote.price.value;
    if short > quote.price.value * LEAST {
        format!(
            "It is {} too little for {by}, which asks for {}.",
            about(short, quote.price.value, currency),
            wanted.said
        )
    } else {
        format!("It is enough for {by}, which asks for {}.", wanted.said)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TENTH: Asked = Asked { risk: 0.1, margin: None, price: None, rate: None };

    /// A thousand jobs from $1001 to $2000.
    fn costs() -> Sorted {
        Sorted::new((1_001..=2_000).map(f64::from))
    }

    #[test]
    fn without_a_margin_the_price_is_the_percentile_of_the_cost_rounded_up() {
        // Type 7: 1001 + 0.9 x 999 = 1900.1; the next round five is 1905; 95 of a thousand cost more; mean 1500.5.
        let offer = offer(&costs(), &TENTH, "$");
        assert_eq!(offer.settled_by, SettledBy::Risk);
        assert_eq!(
            offer.verdict,
            "Quote $1905: you lose money about 1 job in 11; on average you keep $405 (21 %)."
        );
        assert!(offer.why.starts_with("That is the P90 of the cost, $1900 (±"), "{}", offer.why);
        assert!((offer.quote.risk.value - 0.095).abs() < 1e-12);
    }

    #[test]
    fn the_higher_of_what_risk_and_margin_ask_for_is_quoted() {
        // 1500.5 / 0.85 = 1765.29, below the P90; 1500.5 / 0.7 = 2143.57, above every cost.
        let modest = offer(&costs(), &Asked { margin: Some(0.15), ..TENTH }, "$");
        assert_eq!((modest.settled_by, modest.quote.price.value), (SettledBy::Risk, 1_905.0));
        assert!(modest.why.contains("The margin of 15 % alone asks for $1770"), "{}", modest.why);
        let large = offer(&costs(), &Asked { margin: Some(0.3), ..TENTH }, "$");
        assert_eq!((large.settled_by, large.quote.price.value), (SettledBy::Margin, 2_150.0));
        assert_eq!(large.verdict, "Quote $2150: you lose money in no run; on average you keep $650 (30 %).");
        assert!(large.why.contains("mean cost / (1 - margin)"), "{}", large.why);
    }

    #[test]
    fn a_price_of_ones_own_is_judged_and_not_replaced() {
        let asked = Asked { price: Some(1_800.0), margin: Some(0.3), ..TENTH };
        let offer = offer(&costs(), &asked, "$");
        assert_eq!(offer.settled_by, SettledBy::Person);
        assert!(
            offer.verdict.starts_with("At $1800: you lose money 1 job in 5; on average you keep $300"),
            "{}",
            offer.verdict
        );
        assert!(offer.why.contains("It is $100 too little for a risk of 10 %"), "{}", offer.why);
        assert!(offer.why.contains("$344 too little for a margin of 30 %"), "{}", offer.why);
    }

    #[test]
    fn a_price_below_cost_says_what_is_missing() {
        let offer = offer(&costs(), &Asked { price: Some(1_400.0), ..TENTH }, "$");
        assert_eq!(offer.verdict, "At $1400: you lose money 6 jobs in 10; on average $101 is missing.");
    }

    #[test]
    fn the_prices_told_rise_and_each_chosen_one_is_among_them() {
        let asked = Asked { risk: 0.03, margin: Some(0.15), ..TENTH };
        let offer = offer(&costs(), &asked, "$");
        assert!(offer.ladder.is_sorted_by(|a, b| a.price.value <= b.price.value));
        let of: Vec<PriceOf> = offer.ladder.iter().map(|price| price.of).collect();
        for wanted in [PriceOf::Risk(0.03), PriceOf::Risk(0.5), PriceOf::Margin(0.15), PriceOf::Quote] {
            assert!(of.contains(&wanted), "{wanted:?} in {of:?}");
        }
    }

    #[test]
    fn a_risk_that_few_runs_cannot_bound_is_said_to_be_so() {
        let ten = || Sorted::new((1..=10).map(|i| 1_000.0 + f64::from(i)));
        assert!(
            offer(&ten(), &TENTH, "$").why.contains("too few to bound it"),
            "ten runs cannot bound a P90"
        );
        assert!(!offer(&costs(), &TENTH, "$").why.contains("too few"));
        let one = offer(&Sorted::new([1_000.0]), &TENTH, "$");
        assert!(one.verdict.ends_with("which tells nothing of the risk."), "{}", one.verdict);
    }

    #[test]
    fn where_nothing_is_left_to_chance_the_price_is_the_cost() {
        let same = Sorted::new([6.3; 9]);
        assert_eq!(
            offer(&same, &TENTH, "$").verdict,
            "Quote $6.30: that is what every run costs; nothing here is left to chance."
        );
        let with_margin = offer(&same, &Asked { margin: Some(0.1), ..TENTH }, "$");
        assert_eq!(with_margin.quote.price.value, 7.0);
        assert_eq!(
            with_margin.verdict,
            "Quote $7: you keep $0.70 (10 %) in every run; nothing here is left to chance."
        );
    }
}
