//! What a command may cost: rows, time, memory.

use super::{MOST_RUNS, whole};
use clap::Args;
use reports::answer::RunRows;
use reports::asked::minutes_s;

/// Most runs that `runs.csv` has a row for when nothing else is asked for.
const MOST_ROWS: u32 = 10_000;

/// What is written of the single runs.
#[derive(Args, Clone, Copy, Debug)]
pub(crate) struct RowArgs {
    /// Runs that runs.csv has rows for at the most: the first ones
    #[arg(long, default_value_t = MOST_ROWS, value_name = "NUMBER", value_parser = whole::<u32>(0, i64::from(MOST_RUNS)))]
    pub(crate) rows: u32,
    /// Write runs.csv.gz (gzip) in place of runs.csv
    #[arg(long)]
    pub(crate) compress: bool,
}

impl RowArgs {
    /// For a command without a table of runs.
    pub(crate) const NONE: Self = Self { rows: 0, compress: false };

    /// What is wanted of the table.
    pub(crate) fn wanted(self) -> RunRows {
        RunRows { most: self.rows as usize, compress: self.compress }
    }
}

/// What a command may cost before it is refused.
#[derive(Args, Clone, Copy, Debug)]
pub(crate) struct LimitArgs {
    /// Refuse what would surely take longer
    #[arg(long, default_value = "1 h", value_name = "TIME", value_parser = minutes_s)]
    pub(crate) max_time: f64,
    /// Refuse what would need more memory, or write more
    #[arg(long, default_value = "2 GB", value_name = "SIZE", value_parser = size)]
    pub(crate) max_size: f64,
}

/// A size such as `500 MB` or `4 GB` \[bytes\].
fn size(text: &str) -> Result<f64, String> {
    let right = || "write a size with its unit, such as \"500 MB\" or \"4 GB\"".to_owned();
    let lower = text.trim().to_ascii_lowercase();
    let (number, unit) = [("gb", 1e9), ("mb", 1e6)]
        .iter()
        .find_map(|(end, unit)| Some((lower.strip_suffix(end)?, unit)))
        .ok_or_else(right)?;
    let number: f64 = number.trim().parse().map_err(|_| right())?;
    Some(number * unit).filter(|bytes| bytes.is_finite() && *bytes > 0.0).ok_or_else(right)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_size_has_a_unit() {
        assert_eq!([size("2 GB"), size("500mb")], [Ok(2e9), Ok(5e8)]);
        for wrong in ["2", "GB", "-1 GB", "nan MB", "inf GB", "0 MB", ""] {
            assert!(size(wrong).is_err(), "{wrong}");
        }
    }
}
