//! The place of a job as plane geometry: outlines, fences, surfaces and piles; areas; the ways that a machine can drive, and how
//! long they take; the drop points of a zone; where to tip.
//!
//! All lengths are metres in a flat local plane (x to the right, y up, any origin), areas square metres, times seconds, angles
//! radians anticlockwise. Only `libm` is used beyond arithmetic, and nothing depends on the order of a hash map: the same site
//! gives the same bits on every machine.
//!
//! **It does not** read files, know units as people type them, or look at a clock: text and figures are handed in.
//!
//! ```
//! use site::{Outline, Point, Site, Zone};
//!
//! let pen = Outline::rectangle(Point::new(0.0, 0.0), 30.0, 20.0, 0.0);
//! let site = Site { zones: vec![Zone { name: "pen".into(), outline: pen, depth: 0.05 }], ..Site::default() };
//! assert!(site.errors().is_empty());
//! ```

mod arcs;
mod area;
mod check;
mod drop;
mod error;
mod inside;
mod machine;
mod outline;
mod plane;
mod point;
#[cfg(test)]
mod properties;
mod read;
mod space;
#[cfg(test)]
mod testing;
mod tip;

pub use arcs::{Pose, Track, TrackPart, longest_round_corner, tracks, turned_in_place};
pub use drop::{DropPoint, FillOrder, Filled, fill_order, spacing};
pub use error::{Part, PartKind, ShapeError, SiteError};
pub use machine::{Machine, Pace, Turning};
pub use outline::Outline;
pub use plane::{Fence, Gate, Obstacle, Pile, Site, Surface, TippingPlace, TippingShape, Zone};
pub use point::Point;
pub use read::{
    Drawn, DrawnShape, Fix, Fixed, Projection, ReadError, Side, Tape, TapeError, Walk, fixed_by_tapes,
    from_geojson, from_gpx, loop_of, thinned,
};
pub use space::{Bend, BendKind, FreeSpace, Stretch, Way, WayError};
pub use tip::{Choice, Weighted, least_mean_distance, least_mean_distance_along, screened, weber};
