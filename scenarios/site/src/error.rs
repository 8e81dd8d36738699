//! What is wrong with a shape or a place, as data; shown, each says what would be right. Corners, sides and holes are counted from 1.

use crate::point::Point;
use std::fmt;

/// What a part of a place is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PartKind {
    /// [`crate::Site::boundary`].
    Boundary,
    /// One of [`crate::Site::obstacles`].
    Obstacle,
    /// One of [`crate::Site::fences`].
    Fence,
    /// A gate of a fence.
    Gate,
    /// One of [`crate::Site::surfaces`].
    Surface,
    /// One of [`crate::Site::zones`].
    Zone,
    /// One of [`crate::Site::piles`].
    Pile,
    /// One of [`crate::Site::tipping`].
    TippingPlace,
}

impl PartKind {
    fn word(self) -> &'static str {
        match self {
            Self::Boundary => "boundary",
            Self::Obstacle => "obstacle",
            Self::Fence => "fence",
            Self::Gate => "gate",
            Self::Surface => "surface",
            Self::Zone => "zone",
            Self::Pile => "pile",
            Self::TippingPlace => "tipping place",
        }
    }
}

/// One part of a place, shown as `zone "pen"`.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Part {
    /// What it is.
    pub kind: PartKind,
    /// Its place in its list; 0 for the boundary; of a gate, in its fence's list.
    pub index: usize,
    /// Its name; none for the boundary.
    pub name: String,
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.kind {
            PartKind::Boundary => f.write_str("boundary"),
            kind => write!(f, "{} {:?}", kind.word(), self.name),
        }
    }
}

/// What is wrong with one ring or line.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ShapeError {
    /// Fewer corners than make a shape.
    #[error("it has {count} corners; give at least {least}")]
    TooFewCorners {
        /// How many there are.
        count: usize,
        /// The fewest that make it: three of a ring, two of a line.
        least: usize,
    },
    /// A corner is not a place.
    #[error("corner {corner} is no place: both its figures must be finite and below 1,000 km")]
    NoPlace {
        /// Which.
        corner: usize,
    },
    /// Two corners in one place.
    #[error("corners {first} and {second} are in one place; leave one of them out, or move it")]
    OnePlace {
        /// The one that comes first.
        first: usize,
        /// The other.
        second: usize,
    },
    /// Two sides meet where they should not. Side k runs from corner k to the next.
    #[error(
        "the side from corner {first} and the side from corner {second} cross at ({:.2} {:.2}); give the corners in the order in which one walks round",
        at.x, at.y
    )]
    Crossing {
        /// The side that comes first.
        first: usize,
        /// The other.
        second: usize,
        /// Where they meet, or one of such points.
        at: Point,
    },
    /// All corners in one line.
    #[error("its corners lie in one line, so it has no area; give a corner off that line")]
    NoArea,
    /// A corner of a hole is not inside the ring.
    #[error("corner {corner} of hole {hole} is not inside the ring around it; move it inside")]
    HoleOutside {
        /// Which hole.
        hole: usize,
        /// Its corner.
        corner: usize,
    },
    /// Something is wrong with a hole.
    #[error("hole {hole}: {error}")]
    Hole {
        /// Which.
        hole: usize,
        /// What.
        error: Box<ShapeError>,
    },
    /// A hole meets another hole or the ring.
    #[error(
        "hole {hole} meets {} near ({:.2} {:.2}); keep them apart",
        other.map_or("the ring around it".to_owned(), |other| format!("hole {other}")), at.x, at.y
    )]
    HolesMeet {
        /// Which.
        hole: usize,
        /// The other hole; `None`: the ring.
        other: Option<usize>,
        /// Where.
        at: Point,
    },
}

/// What is wrong with a place.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SiteError {
    /// A shape of its own accord.
    #[error("{part}: {error}")]
    Shape {
        /// Whose.
        part: Part,
        /// What.
        error: ShapeError,
    },
    /// A figure outside of what is possible.
    #[error("{part}: {what} is {value}; it must be {wanted}")]
    Figure {
        /// Whose.
        part: Part,
        /// Which, in plain words.
        what: &'static str,
        /// What it is.
        value: f64,
        /// What it may be, in plain words.
        wanted: &'static str,
    },
    /// A corner beyond the boundary, by more than a millimetre.
    #[error(
        "{part}: corner {corner} lies {off:.2} m outside the boundary; move it inside, or the boundary further out"
    )]
    OutsideBoundary {
        /// Whose corner.
        part: Part,
        /// Which; 1 of a point.
        corner: usize,
        /// How far outside \[m\].
        off: f64,
    },
    /// A side that leaves the boundary though its ends are inside.
    #[error(
        "{part}: the side from corner {side} leaves the boundary at ({:.2} {:.2}); move it inside, or the boundary further out", at.x, at.y
    )]
    LeavesBoundary {
        /// Whose side.
        part: Part,
        /// Which.
        side: usize,
        /// Where.
        at: Point,
    },
    /// A corner inside an obstacle.
    #[error(
        "{part}: corner {corner} lies inside {obstacle}; move it out, or give the zone a hole there if nothing is to be brought there"
    )]
    InsideObstacle {
        /// Whose corner.
        part: Part,
        /// Which; 1 of a point.
        corner: usize,
        /// The obstacle.
        obstacle: Part,
    },
    /// A zone that an obstacle overlaps though none of its corners is inside it.
    #[error(
        "{part}: {obstacle} lies over it near ({:.2} {:.2}); give the zone a hole or a bend there, or move one of them", at.x, at.y
    )]
    UnderObstacle {
        /// The zone.
        part: Part,
        /// The obstacle.
        obstacle: Part,
        /// A place in both.
        at: Point,
    },
    /// A gate's post away from its fence.
    #[error(
        "{gate} of {fence}: post {post} is {off:.2} m from the fence; put both posts on its line, between two of its corners"
    )]
    PostOffFence {
        /// The gate.
        gate: Part,
        /// Its fence.
        fence: Part,
        /// The first or the second post.
        post: usize,
        /// How far from the nearest side that both could stand on \[m\].
        off: f64,
    },
    /// Two gates of one fence over each other.
    #[error("{first} and {second} of {fence} overlap; move their posts apart")]
    GatesOverlap {
        /// The fence.
        fence: Part,
        /// One.
        first: Part,
        /// The other.
        second: Part,
    },
    /// No machine of those given can drive to it from any pile.
    #[error(
        "{part}: no machine can get there from any pile; {}",
        widest.map_or("look for a gap in the fence, a gate, or an obstacle in the way".to_owned(), |widest| {
            format!("the widest that could is {widest:.2} m with its clearances: look for what is narrower than the machine")
        })
    )]
    NoWay {
        /// What cannot be reached.
        part: Part,
        /// The widest machine, clearances included, that could get there \[m\]; `None`: none.
        widest: Option<f64>,
    },
}
