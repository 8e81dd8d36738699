//! Where to tip: the point of least driving, and the choice among places by total driving time.

mod least;
mod screen;
mod weber;

pub use least::{least_mean_distance, least_mean_distance_along};
pub use screen::{Choice, screened};
pub use weber::{Weighted, weber};
