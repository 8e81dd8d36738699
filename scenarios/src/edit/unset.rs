//! Back to the usual value: a key left out where something is taken for it, else the figure of a starter file.

use super::draft::Draft;
use super::fault::Fault;
use super::figures::{system, usual_of};
use super::key::place;
use super::{knob, set};
use crate::knob::Knob;
use crate::lift::LiftFigure;
use crate::starter::Answers;

/// Sets a value back.
pub(super) fn unset(draft: &mut Draft, key: &str) -> Result<(), Fault> {
    let usual = Answers::usual(system(draft));
    match Knob::of(key) {
        Knob::Rakers | Knob::Loaders => return knob::turn(draft, &Knob::of(key), "1"),
        Knob::Bucket => return knob::turn(draft, &Knob::Bucket, &usual.bucket),
        Knob::Haul => return knob::turn(draft, &Knob::Haul, &usual.distance),
        Knob::Room => return knob::turn(draft, &Knob::Room, crate::key::zone::NO_LIMIT),
        Knob::Key(_) => {}
    }
    let place = place(draft, key)?;
    if matches!(place.of_thing(), Some((_, "name"))) {
        return Ok(());
    }
    match usual_of(draft, &place) {
        _ if !place.is_needed() && draft.node(&place.path).is_none() => Ok(()),
        None if place.is_needed() => {
            Err(Fault::new("this must be given", "write another value in its place"))
        }
        None => {
            let lift =
                LiftFigure::ALL.iter().find(|figure| place.of_thing() == Some(("loader", figure.key())));
            draft.cut(&place.path)?;
            // A share of nothing is none.
            lift.map_or(Ok(()), |figure| draft.cut(&place.beside(figure.share_key())))
        }
        Some(usual) => set::one(draft, key, &usual),
    }
}
