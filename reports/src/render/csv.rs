//! Tables as CSV: how a field is written.
//!
//! Headers never depend on the data. Units stand in the names of columns; volumes and fuel stand in metric and in US
//! units. What is unknown is an empty field in CSV and `null` in JSON, never 0. Times are exact to the microsecond, in tables of many
//! runs to 0.1 s.

use scenarios::units::{System, fuel_number, volume_number};
use sim::{Duration, Job};

/// Why results do not fit a format.
#[derive(Debug, thiserror::Error)]
pub enum ExportError {
    /// A table cannot be written.
    #[error(transparent)]
    Csv(#[from] csv::Error),
    /// A table cannot be finished.
    #[error("{0}")]
    Unfinished(String),
    /// A document cannot be written.
    #[error(transparent)]
    Json(#[from] serde_json::Error),
}

/// A table as CSV.
pub(crate) fn table<'a>(
    header: impl IntoIterator<Item = &'a str>,
    rows: impl IntoIterator<Item = Vec<String>>,
) -> Result<Vec<u8>, ExportError> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(header.into_iter().map(|cell| harmless(cell.to_owned())))?;
    for row in rows {
        writer.write_record(row.into_iter().map(harmless))?;
    }
    writer.into_inner().map_err(|e| ExportError::Unfinished(e.to_string()))
}

/// A cell that no spreadsheet takes for a formula: a text that begins like one gets an apostrophe before it, which
/// spreadsheets read as "this is a text". Numbers stay as they are.
fn harmless(cell: String) -> String {
    let begins = |c: char| "=+-@\t\r＝＋－＠".contains(c);
    let formula = cell.trim_start_matches(' ').starts_with(begins);
    if formula && cell.parse::<f64>().is_err() { format!("'{cell}") } else { cell }
}

/// Seconds, exact to the microsecond.
pub(crate) fn exact_s(time: Duration) -> String {
    let micros = time.as_micros();
    let sign = if micros < 0 { "-" } else { "" };
    let size = micros.unsigned_abs();
    format!("{sign}{}.{:06}", size / 1_000_000, size % 1_000_000)
}

/// A moment of the clock as seconds after midnight of the first day, exact to the microsecond, from one counted from the
/// start of the first day. In every file a *clock* figure is written in this way; a *working* figure counts from that start.
pub(crate) fn clock_s(job: &Job, moment: Duration) -> String {
    exact_s(Duration::try_from_secs_f64(job.shift.start_s).unwrap_or_default() + moment)
}

/// A number in the fewest digits that give it back; empty where there is none.
pub(crate) fn number(value: impl Into<Option<f64>>) -> String {
    value.into().filter(|v| v.is_finite()).map_or_else(String::new, |v| v.to_string())
}

/// A figure of one of many runs, rounded to what anybody can use: times to 0.1 s, money to the hundredth, volumes, fuel and
/// hours to the thousandth. What the column is called says which it is.
pub(crate) fn rounded(column: &str, field: String) -> String {
    let decimals = match column {
        "cost" => 2,
        name if name.ends_with("_s") => 1,
        name if ["_m3", "_yd3", "_l", "_gal", "_h"].iter().any(|unit| name.ends_with(unit)) => 3,
        _ => return field,
    };
    let Ok(value) = field.parse::<f64>() else { return field };
    let text = format!("{value:.decimals$}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// A volume in m3 and in yd3.
pub(crate) fn volumes(m3: f64) -> [String; 2] {
    [number(m3), number(volume_number(m3, System::Us).0)]
}

/// Fuel in litres and in US gallons.
pub(crate) fn fuels(litres: Option<f64>) -> [String; 2] {
    [number(litres), number(litres.map(|l| fuel_number(l, System::Us).0))]
}

/// A time of the clock to the second, `day 1 08:03:20`, from seconds after midnight of the first day.
pub(crate) fn clock_text(seconds: f64) -> String {
    let whole = seconds.round() as i64;
    let (day, of_day) = (whole.div_euclid(86_400) + 1, whole.rem_euclid(86_400));
    format!("day {day} {:02}:{:02}:{:02}", of_day / 3_600, of_day / 60 % 60, of_day % 60)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_cell_is_a_formula_and_numbers_stay_numbers() {
        let typed = [
            "=1+2",
            "+41",
            "-5",
            "-0.000005",
            "@SUM(A1)",
            "\t=1",
            " =1",
            "-cmd",
            "+1 raker",
            "＝1",
            "north",
            "",
        ];
        let shown = [
            "'=1+2",
            "+41",
            "-5",
            "-0.000005",
            "'@SUM(A1)",
            "'\t=1",
            "' =1",
            "'-cmd",
            "'+1 raker",
            "'＝1",
            "north",
            "",
        ];
        assert_eq!(typed.map(|cell| harmless(cell.to_owned())), shown);
        let bytes = table(["=a"], [vec!["@b".to_owned()]]).unwrap();
        assert_eq!(String::from_utf8(bytes).unwrap(), "'=a\n'@b\n");
    }

    #[test]
    fn figures_of_a_run_are_rounded_by_what_they_are() {
        let told = [
            ("finish_working_s", "7260.049999", "7260"),
            ("finish_working_s", "7260.06", "7260.1"),
            ("loaders_stopped_s", "0.000000", "0"),
            ("short_m3", "-0.0004", "0"),
            ("placed_yd3", "33.123456", "33.123"),
            ("labour_h", "12.5", "12.5"),
            ("cost", "1280.555", "1280.56"),
            ("cost", "", ""),
            ("run", "1200", "1200"),
            ("loads", "80", "80"),
        ];
        for (column, field, shown) in told {
            assert_eq!(rounded(column, field.to_owned()), shown, "{column} {field}");
        }
    }

    #[test]
    fn times_are_exact_and_unknown_numbers_empty() {
        assert_eq!(exact_s(Duration::from_micros(7_260_000_001)), "7260.000001");
        assert_eq!(exact_s(Duration::from_micros(-5)), "-0.000005");
        assert_eq!(number(0.1), "0.1");
        assert_eq!(number(None), "");
        assert_eq!(number(f64::NAN), "");
        assert_eq!(clock_text(86_400.0 + 30_000.4), "day 2 08:20:00");
    }
}
