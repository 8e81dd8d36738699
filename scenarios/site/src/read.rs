//! Shapes from text: GeoJSON, walks in GPX, tape measurements.

mod geo_json;
mod gpx;
mod map;
mod tape;
mod thin;

pub use geo_json::{Drawn, DrawnShape, from_geojson};
pub use gpx::{Fix, Walk, from_gpx};
pub use map::Projection;
pub use tape::{Fixed, Side, Tape, TapeError, fixed_by_tapes};
pub use thin::{loop_of, thinned};

/// Why a text gives no shapes.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ReadError {
    /// It is not in the format at all.
    #[error("this is no {format}: {why}")]
    Format {
        /// The format's name.
        format: &'static str,
        /// What its reader says.
        why: String,
    },
    /// A position that is not on the earth: latitude and longitude exchanged, or metres instead of degrees.
    #[error(
        "position {number} is longitude {longitude}, latitude {latitude}; degrees from -180 to 180 and from -90 to 90 are wanted, longitude first in GeoJSON"
    )]
    OffTheEarth {
        /// Which position of the text, from 1.
        number: usize,
        /// As given.
        longitude: f64,
        /// As given.
        latitude: f64,
    },
    /// Positions too far from each other for one plane.
    #[error("position {number} is {apart:.0} km from the first; a place of work is within 10 km")]
    TooFarApart {
        /// Which position of the text, from 1.
        number: usize,
        /// From the first \[km\].
        apart: f64,
    },
    /// Nothing in it has a place.
    #[error("there is no point, line or area in it")]
    Empty,
}
