//! `summary.json` of buckets: everything that stands on the screen, for programs.

use crate::buckets::findings::BucketsFindings;
use crate::buckets::{Buckets, FUTURES};
use crate::provenance::Provenance;
use crate::render::ExportError;
use crate::render::json::{JobSummary, Reading, bytes};
use serde::Serialize;

#[derive(Serialize)]
struct List<'a> {
    file: &'a str,
    sha256: &'a str,
    currency: Option<&'a str>,
}

#[derive(Serialize)]
struct Summary<'a> {
    provenance: &'a Provenance,
    list: List<'a>,
    scenario: JobSummary<'a>,
    reading: Reading,
    saved_is: &'static str,
    worth_is: String,
    #[serde(flatten)]
    findings: &'a BucketsFindings,
}

/// Everything that is said of buckets.
pub(crate) fn buckets_json(all: &Buckets, findings: &BucketsFindings) -> Result<Vec<u8>, ExportError> {
    bytes(&Summary {
        provenance: &all.provenance,
        list: List {
            file: &all.list.file,
            sha256: &all.list.hash,
            currency: Some(all.list.currency.as_str()).filter(|c| !c.is_empty()),
        },
        scenario: JobSummary::new(&all.scenario, all.units),
        reading: Reading::new(),
        saved_is: "today's job less the other, run by run on the same days and loads; above 0 where the other saves; seconds of working \
                   time, and money",
        worth_is: format!(
            "P10, P50 and P90 of {FUTURES} futures; in years and hours null stands for never; present value at the end of each \
             year, discounted yearly, less the price, which counts as nothing where the list has none"
        ),
        findings,
    })
}
