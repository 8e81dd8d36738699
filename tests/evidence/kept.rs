//! Comparisons kept as a table: every figure on a line. What one test target found, the page of the other can print.

use super::comparison::{Against, Comparison, Figure, Status};
use std::path::{Path, PathBuf};

const HEADINGS: [&str; 10] = [
    "claim",
    "source",
    "status",
    "allowed",
    "figure",
    "expected",
    "obtained",
    "standard_error",
    "rounding",
    "against",
];

/// Where the page and its tables stand in the project.
pub(crate) fn at_home() -> PathBuf {
    root().join("tests")
}

/// The project's own folder, from whichever crate builds this.
pub(crate) fn root() -> &'static Path {
    let mut above = Path::new(env!("CARGO_MANIFEST_DIR")).ancestors();
    above.find(|folder| folder.join("Cargo.lock").is_file()).expect("the folder with Cargo.lock")
}

/// Where they are to be written, if the environment asks for it; a relative folder counts from the project's own.
pub(crate) fn asked_for() -> Option<PathBuf> {
    let folder = std::env::var_os("HEAPCAST_EVIDENCE")?;
    Some(root().join(folder))
}

/// Writes a file and the folder it lies in.
pub(crate) fn write(path: &Path, text: &str) {
    std::fs::create_dir_all(path.parent().unwrap()).unwrap();
    std::fs::write(path, text).unwrap();
}

/// A number to so many digits, written as short as it goes.
pub(crate) fn digits(number: f64, digits: usize) -> String {
    let rounded: f64 = format!("{number:.*e}", digits - 1).parse().unwrap();
    rounded.to_string()
}

/// The comparisons as a table.
pub(crate) fn table_of(comparisons: &[Comparison]) -> String {
    let mut table = csv::Writer::from_writer(Vec::new());
    table.write_record(HEADINGS).unwrap();
    for comparison in comparisons {
        for figure in &comparison.figures {
            // Figures in which nothing is drawn may be whole microseconds of a long day.
            let shown = |number| digits(number, if figure.error > 0.0 { 8 } else { 12 });
            let against = match figure.against {
                Against::Figure => "figure",
                Against::Band => "band",
            };
            let row = [
                comparison.claim.clone(),
                comparison.source.clone(),
                comparison.status.words().to_owned(),
                comparison.most.to_string(),
                figure.what.clone(),
                shown(figure.expected),
                shown(figure.obtained),
                digits(figure.error, 4),
                // In full: the ends of a band depend on its last digits.
                figure.rounding.to_string(),
                against.to_owned(),
            ];
            table.write_record(row).unwrap();
        }
    }
    String::from_utf8(table.into_inner().unwrap()).unwrap()
}

/// The comparisons of a table.
pub(crate) fn comparisons_of(text: &str) -> Vec<Comparison> {
    let mut comparisons: Vec<Comparison> = Vec::new();
    for row in csv::Reader::from_reader(text.as_bytes()).records().map(Result::unwrap) {
        let number = |column: usize| row[column].parse::<f64>().unwrap();
        if comparisons.last().is_none_or(|comparison| comparison.claim != row[0]) {
            let status = Status::ALL.into_iter().find(|status| status.words() == &row[2]).unwrap();
            comparisons.push(Comparison::new(&row[0], &row[1], status, number(3)));
        }
        let figure = Figure {
            what: row[4].to_owned(),
            expected: number(5),
            obtained: number(6),
            error: number(7),
            rounding: number(8),
            against: if &row[9] == "band" { Against::Band } else { Against::Figure },
        };
        if let Some(comparison) = comparisons.last_mut() {
            comparison.figures.push(figure);
        }
    }
    comparisons
}
