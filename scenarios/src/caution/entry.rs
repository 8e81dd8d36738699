//! One caution: its weight, cause and remedy.

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

impl Caution {
    pub(super) fn warning(kind: &'static str, cause: impl Into<String>, remedy: impl Into<String>) -> Self {
        Self { weight: Weight::Warning, kind, cause: cause.into(), remedy: remedy.into() }
    }
}

/// A name in quotes; copies of one thing share a caution.
pub(crate) fn named(names: &[&str]) -> String {
    let quoted: Vec<String> = names.iter().take(6).map(|name| format!("\"{name}\"")).collect();
    let more = names.len().saturating_sub(quoted.len());
    match (quoted.split_last(), more) {
        (Some((last, [])), 0) => last.clone(),
        (Some((last, first)), 0) => format!("{} and {last}", first.join(", ")),
        _ => format!("{} and {more} more", quoted.join(", ")),
    }
}
