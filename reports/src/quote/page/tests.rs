use super::quote_page;
use crate::chart::{Figure, Size};
use crate::client_page::client_page;
use crate::example;
use crate::quote::Quote;
use crate::quote::figures::{parts, risk};

fn drawn(quote: &Quote) -> String {
    let figures = |size| {
        let of_risk = risk::prepare(&quote.costs.total(), &quote.findings.offer, "$");
        let of_parts = parts::prepare(&quote.findings.cost, 100, "$");
        vec![
            Figure {
                name: "risk",
                svg: crate::chart::risk::draw(&of_risk, size).unwrap(),
                title: of_risk.title,
            },
            Figure { name: "parts", svg: parts::draw(&of_parts, size).unwrap(), title: of_parts.title },
        ]
    };
    quote_page(quote, &figures(Size::PAGE), &figures(Size::PHONE))
}

fn body(html: &str) -> &str {
    html.split_once("<body>").unwrap().1
}

#[test]
fn both_pages_stand_alone_and_call_nothing_safe() {
    let quote = example::quote();
    for html in [drawn(&quote), client_page(&quote.client)] {
        example::assert_stands_alone(&html);
        assert!(!body(&html).to_lowercase().contains("safe"));
    }
}

#[test]
fn the_report_says_the_verdict_the_prices_the_parts_and_what_is_missing() {
    let quote = example::quote();
    let html = drawn(&quote).replace('\u{a0}', " ");
    let findings = &quote.findings;
    for words in
        [&findings.offer.verdict, &findings.offer.why, &findings.cost.split, &findings.hours.sentence]
    {
        assert!(html.contains(words.as_str()), "{words}");
    }
    for price in &findings.offer.ladder {
        assert!(html.contains(&price.said), "{price:?}");
    }
    for never in &findings.gaps.never {
        let rest = &never[1..];
        assert!(html.contains(rest), "{never}");
    }
    for caution in &quote.scenario.cautions {
        assert!(html.contains(&caution.remedy[1..]), "{}", caution.remedy);
    }
    assert!(
        html.contains(&quote.provenance.scenario_hash)
            && html.contains("not accounting, tax or legal advice")
    );
}

/// Every sum of money in a text.
fn sums(text: &str) -> Vec<String> {
    let pieces = text.split('$').skip(1);
    pieces.map(|rest| rest.chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect()).collect()
}

#[test]
fn the_client_reads_the_price_and_no_other_sum() {
    let mut quote = example::quote();
    quote.asked.rate = None;
    let quote = Quote::of(quote.scenario, quote.study, quote.asked, quote.provenance);
    let html = client_page(&quote.client);
    let price = quote.findings.offer.quote.said.trim_start_matches('$').to_owned();
    assert_eq!(sums(&html), [price]);
    for inner in ["risk", "margin", "lose", "P90", "P10", "heapcast quote", &quote.provenance.scenario_hash] {
        assert!(!body(&html).contains(inner), "{inner}");
    }
    assert!(html.contains(&quote.client.reference) && html.contains("Signature"));
}

#[test]
fn a_client_who_pays_by_the_hour_reads_hours_rate_and_limit() {
    let quote = example::quote();
    let html = client_page(&quote.client);
    let at = quote.findings.hours.estimate.as_ref().unwrap();
    let words = html.replace('\u{a0}', " ");
    let expected = format!("{} hours at $95 an hour: {}.", at.hours_said, at.sums_said);
    assert!(words.contains(&expected), "{expected}");
    assert!(words.contains(&format!("Not more than {} without asking you first.", at.limit_said)));
    assert!(
        !html.contains(&quote.findings.offer.quote.said) && !html.contains("$720"),
        "the material is left to be filled in"
    );
    assert!(html.contains("Material, brought here"));
}
