//! A table of published or independently computed values, copied into this folder.

use std::path::Path;

/// A table of this folder, with a column's place found by its heading.
pub(crate) struct Table {
    headings: csv::StringRecord,
    pub(crate) rows: Vec<csv::StringRecord>,
}

impl Table {
    pub(crate) fn read(name: &str) -> Self {
        // From whichever crate builds this.
        let mut places = Path::new(env!("CARGO_MANIFEST_DIR"))
            .ancestors()
            .map(|folder| folder.join("tests/evidence").join(name));
        let path = places.find(|path| path.is_file());
        let mut reader = csv::Reader::from_path(path.expect("a table of this name")).unwrap();
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
