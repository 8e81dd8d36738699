//! A table of published or independently computed values, copied into this folder.

use std::path::Path;

/// A table of this folder, with a column's place found by its heading.
pub(crate) struct Table {
    headings: csv::StringRecord,
    pub(crate) rows: Vec<csv::StringRecord>,
}

impl Table {
    pub(crate) fn read(name: &str) -> Self {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/evidence").join(name);
        let mut reader = csv::Reader::from_path(path).unwrap();
        Self {
            headings: reader.headers().unwrap().clone(),
            rows: reader.records().map(Result::unwrap).collect(),
        }
    }

    pub(crate) fn text<'a>(&self, row: &'a csv::StringRecord, heading: &str) -> &'a str {
        let place = self.headings.iter().position(|h| h == heading);
        &row[place.unwrap_or_else(|| panic!("no column {heading}"))]
    }

    pub(crate) fn number(&self, row: &csv::StringRecord, heading: &str) -> f64 {
        let text = self.text(row, heading);
        text.parse().unwrap_or_else(|_| panic!("{heading} is no number: {text}"))
    }
}
