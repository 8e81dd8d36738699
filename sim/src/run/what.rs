//! What an event is about, told when it is entered: one look tells what to do when it comes.

use crate::plan::Reaches;

/// What an event is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum What {
    /// A loader that nothing holds comes to a pass with its load.
    PassOut,
    /// The same on the way back.
    PassBack,
    /// It comes to the zone.
    Zone,
    /// It comes to the pile of its next load.
    Pile,
    /// It has dumped.
    Dumped,
    /// Its turn in a queue has come.
    Turn,
    /// Any step of a loader, or what holds it.
    Step,
    /// A raker has done what it had in hand.
    Raker,
    /// Deliveries, ends of breaks, starts of days.
    Opening,
    /// Beginnings of breaks, ends of days.
    Closing,
}

impl From<Reaches> for What {
    #[inline(always)]
    fn from(reaches: Reaches) -> Self {
        match reaches {
            Reaches::PassOut => Self::PassOut,
            Reaches::PassBack => Self::PassBack,
            Reaches::Zone => Self::Zone,
            Reaches::Pile => Self::Pile,
        }
    }
}
