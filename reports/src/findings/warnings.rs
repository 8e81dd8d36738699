//! Cautions: doubtful numbers first, the usual ones after.

use scenarios::{Caution, Weight};
use serde::Serialize;

/// What to heed before the work begins.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Warnings {
    /// Doubtful numbers, with cause and remedy.
    pub doubtful: Vec<Warning>,
    /// Standing cautions of the trade.
    pub usual: Vec<Warning>,
}

/// One thing to heed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Warning {
    /// Stable name.
    pub kind: String,
    /// What is the matter.
    pub cause: String,
    /// What to do about it.
    pub remedy: String,
}

/// What to heed before the work begins.
pub fn warnings(cautions: &[Caution]) -> Warnings {
    let of = |weight| {
        let chosen = cautions.iter().filter(|c| c.weight == weight);
        chosen.map(Warning::from).collect()
    };
    Warnings { doubtful: of(Weight::Warning), usual: of(Weight::Usual) }
}

impl From<&Caution> for Warning {
    fn from(caution: &Caution) -> Self {
        Self { kind: caution.kind.to_owned(), cause: caution.cause.clone(), remedy: caution.remedy.clone() }
    }
}
