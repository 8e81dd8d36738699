//! What lies in the plane: the shapes of a place of work as plain data.

use crate::outline::Outline;
use crate::point::Point;

/// A place of work.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Site {
    /// Where machines may be at all; `None`: everywhere.
    pub boundary: Option<Outline>,
    /// What no machine crosses.
    pub obstacles: Vec<Obstacle>,
    /// Lines that are crossed at their gates only.
    pub fences: Vec<Fence>,
    /// Where the going is slower or quicker. Where several lie over each other, the slowest counts.
    pub surfaces: Vec<Surface>,
    /// What is to be covered.
    pub zones: Vec<Zone>,
    /// Where material lies.
    pub piles: Vec<Pile>,
    /// Where a truck can tip.
    pub tipping: Vec<TippingPlace>,
}

/// An area no machine crosses: a shed, a bed, wet ground.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Obstacle {
    /// Its name.
    pub name: String,
    /// Its area; a hole in it is ground nobody gets to.
    pub outline: Outline,
}

/// A line nobody crosses but at its gates.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fence {
    /// Its name.
    pub name: String,
    /// Its posts in order, at least two; closed if the last is where the first is \[m\].
    pub line: Vec<Point>,
    /// The ways through.
    pub gates: Vec<Gate>,
}

/// A way through a fence.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Gate {
    /// Its name.
    pub name: String,
    /// Its two posts, both on the same side of the fence's line.
    pub posts: [Point; 2],
    /// Clear width, above 0 and at most the distance of the posts; what is less is taken off at both posts alike \[m\].
    pub width: f64,
    /// Passing it, each time, at least 0 \[s\].
    pub passing: f64,
}

impl Gate {
    /// A gate as wide as its posts are apart.
    pub fn between(name: impl Into<String>, posts: [Point; 2], passing: f64) -> Self {
        Self { name: name.into(), posts, width: posts[0].distance(posts[1]), passing }
    }
}

/// A patch with its own speed.
#[derive(Clone, Debug, PartialEq)]
pub struct Surface {
    /// Its name.
    pub name: String,
    /// Where.
    pub outline: Outline,
    /// Speed on it as a share of that elsewhere, above 0 and at most 2.
    pub share: f64,
}

/// An area to be covered.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Zone {
    /// Its name.
    pub name: String,
    /// Its area.
    pub outline: Outline,
    /// Loose depth of what is brought, above 0 \[m\].
    pub depth: f64,
}

/// A stockpile.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pile {
    /// Its name.
    pub name: String,
    /// Where a machine stands when it loads there.
    pub at: Point,
}

/// Where a truck can tip.
#[derive(Clone, Debug, PartialEq)]
pub struct TippingPlace {
    /// Its name.
    pub name: String,
    /// A point, or anywhere along a line.
    pub shape: TippingShape,
    /// How much fits there, above 0 \[m3\]; `None`: as much as comes.
    pub room: Option<f64>,
}

/// The shape of a tipping place.
#[derive(Clone, Debug, PartialEq)]
pub enum TippingShape {
    /// One point.
    Point(Point),
    /// Any point of a line, such as a stretch of road: at least two corners \[m\].
    Along(Vec<Point>),
}
