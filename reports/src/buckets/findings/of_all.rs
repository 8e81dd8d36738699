//! Cautions and assumptions of all buckets and of the barrow, each told once.

use crate::buckets::{Buckets, ByHand};
use scenarios::{Assumption, Caution};

/// Those of today's job, then what each bucket adds, with its name.
pub fn cautions_of_all(all: &Buckets) -> Vec<Caution> {
    let mut cautions = all.scenario.cautions.clone();
    for tried in &all.tried {
        let new: Vec<Caution> =
            tried.fitted.cautions.iter().filter(|c| !cautions.contains(c)).cloned().collect();
        let named = |caution: Caution| Caution {
            cause: format!("With \"{}\": {}", tried.bucket.name, caution.cause),
            ..caution
        };
        cautions.extend(new.into_iter().filter(|c| !all.scenario.cautions.contains(c)).map(named));
    }
    if let Some(by_hand) = by_hand(all) {
        let new = by_hand.scenario.cautions.iter().filter(|c| !all.scenario.cautions.contains(c));
        let named = |caution: &Caution| Caution {
            cause: format!("With hand barrows: {}", caution.cause),
            ..caution.clone()
        };
        cautions.extend(new.map(named).collect::<Vec<_>>());
    }
    cautions
}

/// Those of the file, then what is assumed of each bucket and of the barrow.
pub fn assumptions_of_all(all: &Buckets) -> Vec<Assumption> {
    let mut assumptions = all.scenario.assumptions.clone();
    let of_buckets = all.tried.iter().flat_map(|tried| &tried.fitted.assumptions);
    let of_barrow = by_hand(all).into_iter().flat_map(|by_hand| &by_hand.scenario.assumptions);
    for one in of_buckets.chain(of_barrow) {
        if !assumptions.contains(one) {
            assumptions.push(one.clone());
        }
    }
    assumptions
}

fn by_hand(all: &Buckets) -> Option<&ByHand> {
    all.barrow.as_ref()?.as_ref().ok()
}
