//! What one job saves against another, for every table that tells it.

use super::{Table, Unit};
use crate::findings::Saved;

impl<'a, Row: 'a> Table<'a, Row> {
    /// What is saved in a figure: `time_saved_median_s` and so on.
    pub(crate) fn saved(
        self,
        name: &str,
        unit: Unit,
        saved: impl Fn(&Row) -> Option<&Saved> + Copy + 'a,
        smaller: &str,
    ) -> Self {
        self.estimate(format!("{name}_median"), unit, move |row| saved(row).map(|s| s.median))
            .estimate(format!("{name}_p10"), unit, move |row| saved(row).map(|s| s.p10))
            .estimate(format!("{name}_p90"), unit, move |row| saved(row).map(|s| s.p90))
            .estimate(format!("{name}_mean"), unit, move |row| saved(row).map(|s| s.mean))
            .estimate(smaller, Unit::None, move |row| saved(row).map(|s| s.smaller))
    }
}
