//! One bucket of a list.

/// A bucket that could be bought or borrowed.
#[derive(Clone, Debug, PartialEq)]
pub struct Bucket {
    /// Name, unique in its list.
    pub name: String,
    /// Struck capacity \[m3\].
    pub struck_m3: Option<f64>,
    /// Heaped capacity \[m3\], above 0 and not below the struck one.
    pub heaped_m3: f64,
    /// Width \[m\].
    pub width_m: Option<f64>,
    /// What it weighs empty \[kg\].
    pub mass_kg: Option<f64>,
    /// Price \[money\].
    pub price: Option<f64>,
}
