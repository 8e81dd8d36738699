//! Whether a machine fits through a pass.

/// A length rounded to whole micrometres, so that 6 ft and 72 in are equal.
pub(crate) fn micrometres(metres: f64) -> f64 {
    (metres * 1e6).round() / 1e6
}

/// Whether a machine fits through a pass.
pub(crate) fn fits(machine_m: f64, pass_m: f64) -> bool {
    micrometres(machine_m) <= micrometres(pass_m)
}
