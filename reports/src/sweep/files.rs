//! All files of a sweep.

use super::figures::sweep_figures;
use crate::answer::{Document, document, drawing, undrawn};
use crate::chart::Size;
use crate::failure::Failure;
use crate::sweep::Sweep;
use crate::sweep::findings::SweepFindings;
use crate::sweep::page::sweep_page;

/// Files of a sweep; the chart of the cost is left out where there are no prices.
pub(crate) const FILES: [&str; 5] = ["report.html", "summary.json", "sweep.csv", "sweep.svg", "cost.svg"];

/// All files of a sweep.
pub(crate) fn all(sweep: &Sweep, findings: &SweepFindings) -> Result<Vec<Document>, Failure> {
    let drawn = |size| sweep_figures(sweep, findings, size).map_err(|error| undrawn("the charts", &error));
    let (wide, narrow) = (drawn(Size::PAGE)?, drawn(Size::PHONE)?);
    let mut documents = vec![
        Document { name: "report.html", bytes: sweep_page(sweep, findings, &wide, &narrow).into_bytes() },
        document("summary.json", super::sweep_json(sweep, findings))?,
        document("sweep.csv", super::sweep_csv(sweep, findings))?,
    ];
    documents.extend(wide.into_iter().filter_map(|figure| drawing(figure, &FILES, &sweep.provenance)));
    Ok(documents)
}
