//! All files of buckets compared with today's.

use super::figures::bucket_figures;
use crate::answer::{Document, document, drawing, failed, undrawn};
use crate::buckets::Buckets;
use crate::buckets::findings::BucketsFindings;
use crate::buckets::page::buckets_page;
use crate::chart::Size;
use crate::failure::Failure;

/// Files of buckets; a chart that there is nothing to draw in is left out.
pub(crate) const BUCKETS: [&str; 5] =
    ["report.html", "summary.json", "buckets.csv", "saved.svg", "worth.svg"];

/// `summary.json`.
pub(crate) fn summary(all: &Buckets, findings: &BucketsFindings) -> Result<Vec<u8>, Failure> {
    super::buckets_json(all, findings).map_err(|error| failed("summary.json", &error))
}

/// All files.
pub(crate) fn of_buckets(all: &Buckets, findings: &BucketsFindings) -> Result<Vec<Document>, Failure> {
    let drawn = |size| bucket_figures(findings, size).map_err(|error| undrawn("the charts", &error));
    let (wide, narrow) = (drawn(Size::PAGE)?, drawn(Size::PHONE)?);
    let mut documents = vec![
        Document { name: "report.html", bytes: buckets_page(all, findings, &wide, &narrow).into_bytes() },
        Document { name: "summary.json", bytes: summary(all, findings)? },
        document("buckets.csv", super::buckets_csv(all, findings))?,
    ];
    documents.extend(wide.into_iter().filter_map(|figure| drawing(figure, &BUCKETS, &all.provenance)));
    Ok(documents)
}
