//! What a loader can choose from.

/// A zone that a loader could serve now, and the way from the pile to load at.
#[derive(Clone, Copy, Debug)]
pub(super) struct Candidate {
    pub(super) zone: usize,
    pub(super) route: usize,
    pub(super) pile: usize,
    pub(super) distance_m: f64,
}

/// What a loader could choose, noted for as long as no need or pile is used up and nothing is delivered.
#[derive(Clone, Debug, Default)]
pub(super) struct Options {
    /// As of which change of that kind.
    pub(super) as_of: u64,
    /// In the order of the zones, or of the distance where that decides.
    pub(super) all: Vec<Candidate>,
    /// Where there is none, whether there will be.
    pub(super) awaits: bool,
}
