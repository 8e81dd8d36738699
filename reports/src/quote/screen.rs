//! A quote on one screen.

use crate::answer::Answer;
use crate::card::{Card, row};
use crate::findings::{assumed, capital, the_job_in_short, warnings};
use crate::quote::findings::{CostLine, HoursFindings, Offer, Price};
use crate::quote::{QUOTE, Quote, QuoteFindings};
use crate::render::screen::{self, Layout, assumed_line, cares, lines, titled};
use std::path::Path;

/// The price first, then what it rests on.
pub(crate) fn quote(quote: &Quote, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let width = layout.body_width();
    let (scenario, findings) = (&quote.scenario, &quote.findings);
    layout
        .section("The job", [titled(scenario), the_job_in_short(scenario)])
        .gap()
        .section("What to ask", offer_lines(&findings.offer))
        .gap()
        .section("Price and risk", price_lines(&findings.offer, width))
        .gap()
        .section("What it costs you", cost_lines(findings, width))
        .gap()
        .section("By the hour", hours_lines(&findings.hours))
        .section("Material", [findings.truckload.sentence.clone()])
        .gap()
        .section("Not in it", gap_lines(findings));
    let warnings = warnings(&scenario.cautions);
    cares(
        &mut layout,
        &scenario.file,
        &warnings,
        &assumed_line(&scenario.file, &assumed(&scenario.assumptions).all),
    );
    layout.text()
}

/// Where the files are and how to get the same answer again.
pub(crate) fn quote_files(quote: &Quote, folder: &Path, columns: u16) -> String {
    let shown = scenarios::shown_path(folder);
    let files = format!(
        "{shown}/client.html for the client; {shown}/report.html with the costs, for you; tables and charts next to them."
    );
    Layout::new(columns).section("Files", [files]).section("Made with", [quote.provenance.words()]).text()
}

fn offer_lines(offer: &Offer) -> Vec<String> {
    [&offer.verdict, &offer.why].into_iter().filter(|words| !words.is_empty()).cloned().collect()
}

fn price_lines(offer: &Offer, width: u16) -> Vec<String> {
    let row = |price: &Price| {
        let losing = price.loss_said.clone().unwrap_or_else(|| "nothing".into());
        vec![
            capital(&price.what),
            price.said.clone(),
            price.known.clone().unwrap_or_default(),
            short(&price.odds),
            price.stays_said.clone(),
            price.stays_range_said.clone(),
            losing,
        ]
    };
    let header = ["", "price", "sim. error", "you lose", "you keep", "8 jobs in 10", "if lost"];
    let mut all = lines(&header, offer.ladder.iter().map(row).collect(), &[1, 4, 5, 6], width);
    all.extend(Some(offer.risk_known.clone()).filter(|words| !words.is_empty()));
    all
}

/// `1 in 10` for `1 job in 10`.
fn short(odds: &str) -> String {
    odds.replace("in no run", "no run")
        .replace("jobs in", "in")
        .replace("job in", "in")
        .replace("less than", "under")
}

fn cost_lines(findings: &QuoteFindings, width: u16) -> Vec<String> {
    let row = |line: &CostLine| {
        let mut row = vec![capital(line.what), line.mean_said.clone()];
        row.extend(line.said.iter().cloned());
        row
    };
    let mut rows: Vec<Vec<String>> = findings.cost.parts.iter().map(row).collect();
    rows.push(row(&findings.cost.total));
    let total = &findings.cost.total;
    let mut sure = vec!["  sim. error".to_owned(), total.mean_known.clone()];
    sure.extend(total.known.iter().cloned());
    rows.push(sure);
    let header = ["", "mean", "P10", "P50", "P80", "P90", "P95"];
    let mut all = lines(&header, rows, &[1, 2, 3, 4, 5, 6], width);
    all.push(findings.cost.by_itself.to_owned());
    all
}

fn hours_lines(findings: &HoursFindings) -> Vec<String> {
    let rows: Vec<String> = findings.rows.iter().map(|row| format!("{} {}", row.label, row.said)).collect();
    let mut all = vec![findings.sentence.clone()];
    all.push(format!("On the job {}. {}", rows.join(", "), findings.leaves));
    all
}

fn gap_lines(findings: &QuoteFindings) -> Vec<String> {
    let mut all: Vec<String> = findings.gaps.unpriced.iter().map(|gap| format!("{gap}.")).collect();
    all.push(findings.gaps.sentence.to_owned());
    all
}

/// The price to ask.
pub(super) fn card(quote: &Quote) -> Card {
    let (scenario, findings) = (&quote.scenario, &quote.findings);
    let (warnings, assumed) = (warnings(&scenario.cautions), assumed(&scenario.assumptions).all);
    let mut card = Card::new(quote.headline(), row("The job", titled(scenario)), &warnings, &assumed);
    card.row("What to ask", findings.offer.verdict.clone());
    card.row("What it costs", findings.cost.range.clone());
    let hours = match &findings.truckload.first {
        // The order is said once, with the price.
        Some(first) => findings.hours.sentence.trim_start_matches(first.as_str()).trim().to_owned(),
        None => findings.hours.sentence.clone(),
    };
    card.row("By the hour", hours);
    card.row("Not in it", findings.gaps.short());
    card.files = &QUOTE;
    card
}

/// The price to ask, and where the sheet for the client is.
pub(super) fn first(quote: &Quote, folder: &Path, columns: u16) -> String {
    let besides = format!(", for you; {}/client.html for the client", scenarios::shown_path(folder));
    screen::first(&card(quote), folder, &besides, columns)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    fn plain(columns: u16) -> String {
        anstream::adapter::strip_str(&quote(&example::quote(), columns)).to_string()
    }

    #[test]
    fn the_price_stands_in_the_first_lines() {
        let text = plain(100);
        let verdict = &example::quote().findings.offer.verdict;
        let first = text.lines().take(5).collect::<Vec<_>>().join("\n");
        assert!(first.contains(verdict.split(';').next().unwrap()), "{text}");
    }

    #[test]
    fn a_typical_quote_fits_one_screen() {
        let text = plain(100) + &quote_files(&example::quote(), Path::new("quote"), 100);
        assert!(text.lines().count() <= 48, "{} lines:\n{text}", text.lines().count());
    }

    #[test]
    fn no_line_is_wider_than_the_screen() {
        example::assert_fits(plain);
    }

    #[test]
    fn percentiles_of_parts_are_said_not_to_add_up() {
        assert!(plain(100).contains("percentiles of parts do not add up"));
    }

    #[test]
    fn the_first_screen_of_a_quote_is_about_ten_lines() {
        let text =
            anstream::adapter::strip_str(&first(&example::quote(), Path::new("quote"), 100)).to_string();
        assert!(text.lines().count() <= 12, "{} lines:\n{text}", text.lines().count());
    }
}
