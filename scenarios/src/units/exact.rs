//! The exact sizes of the customary units in SI, from their definitions in the international yard and pound agreement
//! of 1959 and the US gallon of 231 cubic inches (from memory; legal definitions).

/// Inch \[m\].
pub(crate) const INCH: f64 = 0.0254;
/// Foot \[m\].
pub(crate) const FOOT: f64 = 0.3048;
/// Yard \[m\].
pub(crate) const YARD: f64 = 0.9144;
/// Square foot \[m2\].
pub(crate) const SQUARE_FOOT: f64 = 0.092_903_04;
/// Cubic foot \[m3\].
pub(crate) const CUBIC_FOOT: f64 = 0.028_316_846_592;
/// Cubic yard \[m3\].
pub(crate) const CUBIC_YARD: f64 = 0.764_554_857_984;
/// US liquid gallon \[m3\].
pub(crate) const GALLON: f64 = 0.003_785_411_784;
/// Pound \[kg\].
pub(crate) const POUND: f64 = 0.453_592_37;
/// Mile per hour \[m/s\].
pub(crate) const MILE_PER_HOUR: f64 = 0.447_04;
