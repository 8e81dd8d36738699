//! What a person should know before the work begins: doubtful numbers and the usual cautions.

/// How much a caution weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// A number that is doubtful or will hold the job up.
    Warning,
    /// A standing caution that belongs to every such job.
    Usual,
}

/// Something to heed, with its cause and remedy.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caution {
    /// How much it weighs.
    pub weight: Weight,
    /// A stable name for programs, such as `bucket-over-lift`.
    pub kind: &'static str,
    /// What is the matter, with figures.
    pub cause: String,
    /// What to do about it.
    pub remedy: String,
}
