//! All files of a comparison.

use super::figures::rival_figures;
use crate::answer::{Document, RUNS, RUNS_COMPRESSED, RunRows, document, drawing, failed, undrawn};
use crate::chart::Size;
use crate::compare::Comparison;
use crate::compare::findings::ComparisonFindings;
use crate::compare::page::comparison_page;
use crate::failure::Failure;

/// Files of a comparison; a chart that there is nothing to draw in is left out.
pub(crate) const COMPARISON: [&str; 9] = [
    "report.html",
    "summary.json",
    "comparison.csv",
    "differences.csv",
    RUNS,
    RUNS_COMPRESSED,
    "completion.svg",
    "differences.svg",
    "money.svg",
];

/// `summary.json` of a comparison.
pub(crate) fn comparison_summary(
    comparison: &Comparison,
    findings: &ComparisonFindings,
) -> Result<Vec<u8>, Failure> {
    super::comparison_json(comparison, findings).map_err(|error| failed("summary.json", &error))
}

/// All files of a comparison.
pub(crate) fn of_comparison(
    comparison: &Comparison,
    findings: &ComparisonFindings,
    runs: RunRows,
) -> Result<Vec<Document>, Failure> {
    let drawn =
        |size| rival_figures(comparison, findings, size).map_err(|error| undrawn("the charts", &error));
    let (wide, narrow) = (drawn(Size::PAGE)?, drawn(Size::PHONE)?);
    let page = comparison_page(comparison, findings, &wide, &narrow);
    let mut documents = vec![
        Document { name: "report.html", bytes: page.into_bytes() },
        Document { name: "summary.json", bytes: comparison_summary(comparison, findings)? },
        document("comparison.csv", super::comparison_csv(findings))?,
        document("differences.csv", super::differences_csv(findings))?,
        runs.document(super::paired_runs_csv(comparison, runs.most))?,
    ];
    let drawings = wide.into_iter().filter_map(|figure| drawing(figure, &COMPARISON, &comparison.provenance));
    documents.extend(drawings);
    Ok(documents)
}
