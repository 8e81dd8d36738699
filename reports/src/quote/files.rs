//! All files of a quote.

use super::figures::figures;
use super::quote_page;
use crate::answer::{Document, RUNS, RUNS_COMPRESSED, RunRows, document, drawing, failed, undrawn};
use crate::chart::Size;
use crate::client_page::client_page;
use crate::failure::Failure;
use crate::quote::Quote;

/// Files of a quote; a chart that there is nothing to draw in is left out.
pub(crate) const QUOTE: [&str; 9] = [
    "report.html",
    "client.html",
    "summary.json",
    "cost.csv",
    "risk.csv",
    RUNS,
    RUNS_COMPRESSED,
    "risk.svg",
    "parts.svg",
];

/// `summary.json`.
pub(crate) fn summary(quote: &Quote) -> Result<Vec<u8>, Failure> {
    super::quote_json(quote).map_err(|error| failed("summary.json", &error))
}

/// All files of a quote.
pub(crate) fn of_quote(quote: &Quote, runs: RunRows) -> Result<Vec<Document>, Failure> {
    let drawn = |size| figures(quote, size).map_err(|error| undrawn("the charts", &error));
    let (wide, narrow) = (drawn(Size::PAGE)?, drawn(Size::PHONE)?);
    let mut documents = vec![
        Document { name: "report.html", bytes: quote_page(quote, &wide, &narrow).into_bytes() },
        Document { name: "client.html", bytes: client_page(&quote.client).into_bytes() },
        Document { name: "summary.json", bytes: summary(quote)? },
        document("cost.csv", super::cost_csv(quote))?,
        document("risk.csv", super::risk_csv(quote))?,
        runs.document(super::run_costs_csv(quote, runs.most))?,
    ];
    documents.extend(wide.into_iter().filter_map(|figure| drawing(figure, &QUOTE, &quote.provenance)));
    Ok(documents)
}
