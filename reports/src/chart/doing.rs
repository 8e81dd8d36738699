//! What loaders and rakers do, as the figures group and name it.

use sim::{LoaderActivity, RakerActivity};

/// An activity, or several of them taken together, as a figure shows it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(crate) enum Doing {
    /// Everything a loader does for the load, taken together.
    Working,
    /// Filling the bucket.
    Loading,
    /// Driving loaded.
    Hauling,
    /// Going through a pass.
    Passing,
    /// Dumping, with the loader's own spreading.
    Dumping,
    /// Driving empty.
    Returning,
    /// Raking a heap out.
    Raking,
    /// Walking to another zone.
    Walking,
    /// Waiting for a turn at the face.
    WaitingForFace,
    /// Waiting for a pass.
    WaitingForPass,
    /// Waiting for a place to dump.
    WaitingForRoom,
    /// Waiting for a delivery.
    WaitingForDelivery,
    /// Waiting for a heap.
    WaitingForHeap,
    /// Standing clear of a loader that dumps.
    StandingClear,
    /// Held by a stoppage.
    Stopped,
    /// In a break.
    OnBreak,
    /// Before the first load.
    SetUp,
    /// After the last heap.
    CleanUp,
    /// Set-up and clean-up taken together.
    SetUpAndCleanUp,
    /// Nothing more to load.
    Done,
}

impl Doing {
    /// All of them.
    #[cfg(test)]
    pub(super) const ALL: &[Self] = &[
        Self::Working,
        Self::Loading,
        Self::Hauling,
        Self::Passing,
        Self::Dumping,
        Self::Returning,
        Self::Raking,
        Self::Walking,
        Self::WaitingForFace,
        Self::WaitingForPass,
        Self::WaitingForRoom,
        Self::WaitingForDelivery,
        Self::WaitingForHeap,
        Self::StandingClear,
        Self::Stopped,
        Self::OnBreak,
        Self::SetUp,
        Self::CleanUp,
        Self::SetUpAndCleanUp,
        Self::Done,
    ];

    /// What a row of a loader can show, each activity alone.
    #[cfg(test)]
    pub(super) const OF_A_LOADER: &[Self] = &[
        Self::Loading,
        Self::Hauling,
        Self::Passing,
        Self::Dumping,
        Self::Returning,
        Self::WaitingForFace,
        Self::WaitingForPass,
        Self::WaitingForRoom,
        Self::WaitingForDelivery,
        Self::Stopped,
        Self::OnBreak,
        Self::SetUp,
        Self::CleanUp,
        Self::Done,
    ];

    /// What a row of a loader can show, taken together.
    #[cfg(test)]
    pub(super) const OF_A_LOADER_BRIEFLY: &[Self] = &[
        Self::Working,
        Self::WaitingForFace,
        Self::WaitingForPass,
        Self::WaitingForRoom,
        Self::WaitingForDelivery,
        Self::Stopped,
        Self::OnBreak,
        Self::SetUpAndCleanUp,
        Self::Done,
    ];

    /// What a row of a raker can show, each activity alone.
    #[cfg(test)]
    pub(super) const OF_A_RAKER: &[Self] = &[
        Self::Raking,
        Self::Walking,
        Self::WaitingForHeap,
        Self::StandingClear,
        Self::OnBreak,
        Self::SetUp,
        Self::CleanUp,
    ];

    /// What a row of a raker can show, taken together.
    #[cfg(test)]
    pub(super) const OF_A_RAKER_BRIEFLY: &[Self] = &[
        Self::Raking,
        Self::Walking,
        Self::WaitingForHeap,
        Self::StandingClear,
        Self::OnBreak,
        Self::SetUpAndCleanUp,
    ];

    /// What a loader does; nothing at night.
    pub(crate) fn of_loader(activity: LoaderActivity) -> Option<Self> {
        Some(match activity {
            LoaderActivity::SetUp => Self::SetUp,
            LoaderActivity::Loading => Self::Loading,
            LoaderActivity::Hauling => Self::Hauling,
            LoaderActivity::Returning => Self::Returning,
            LoaderActivity::Passing => Self::Passing,
            LoaderActivity::WaitingForFace => Self::WaitingForFace,
            LoaderActivity::WaitingForPass => Self::WaitingForPass,
            LoaderActivity::WaitingForRoom => Self::WaitingForRoom,
            LoaderActivity::WaitingForDelivery => Self::WaitingForDelivery,
            LoaderActivity::Dumping => Self::Dumping,
            LoaderActivity::Stopped => Self::Stopped,
            LoaderActivity::OnBreak => Self::OnBreak,
            LoaderActivity::Done => Self::Done,
            LoaderActivity::CleanUp => Self::CleanUp,
            LoaderActivity::Night => return None,
        })
    }

    /// What a raker does; nothing at night.
    pub(crate) fn of_raker(activity: RakerActivity) -> Option<Self> {
        Some(match activity {
            RakerActivity::SetUp => Self::SetUp,
            RakerActivity::Raking => Self::Raking,
            RakerActivity::Waiting => Self::WaitingForHeap,
            RakerActivity::Walking => Self::Walking,
            RakerActivity::StandingClear => Self::StandingClear,
            RakerActivity::OnBreak => Self::OnBreak,
            RakerActivity::CleanUp => Self::CleanUp,
            RakerActivity::Night => return None,
        })
    }

    /// The same, with the steps of a cycle taken together.
    pub(super) const fn briefly(self) -> Self {
        match self {
            Self::Loading | Self::Hauling | Self::Passing | Self::Dumping | Self::Returning => Self::Working,
            Self::SetUp | Self::CleanUp => Self::SetUpAndCleanUp,
            other => other,
        }
    }

    /// Waiting, for whatever it is.
    pub(super) const fn is_waiting(self) -> bool {
        matches!(
            self,
            Self::WaitingForFace
                | Self::WaitingForPass
                | Self::WaitingForRoom
                | Self::WaitingForDelivery
                | Self::WaitingForHeap
                | Self::StandingClear
        )
    }

    /// Plain words for a legend.
    pub(crate) const fn words(self) -> &'static str {
        match self {
            Self::Working => "loading, driving, dumping",
            Self::Loading => LoaderActivity::Loading.words(),
            Self::Hauling => LoaderActivity::Hauling.words(),
            Self::Passing => LoaderActivity::Passing.words(),
            Self::Dumping => LoaderActivity::Dumping.words(),
            Self::Returning => LoaderActivity::Returning.words(),
            Self::Raking => RakerActivity::Raking.words(),
            Self::Walking => RakerActivity::Walking.words(),
            Self::WaitingForFace => LoaderActivity::WaitingForFace.words(),
            Self::WaitingForPass => LoaderActivity::WaitingForPass.words(),
            Self::WaitingForRoom => LoaderActivity::WaitingForRoom.words(),
            Self::WaitingForDelivery => LoaderActivity::WaitingForDelivery.words(),
            Self::WaitingForHeap => RakerActivity::Waiting.words(),
            Self::StandingClear => RakerActivity::StandingClear.words(),
            Self::Stopped => LoaderActivity::Stopped.words(),
            Self::OnBreak => LoaderActivity::OnBreak.words(),
            Self::SetUp => LoaderActivity::SetUp.words(),
            Self::CleanUp => LoaderActivity::CleanUp.words(),
            Self::SetUpAndCleanUp => "set-up, clean-up",
            Self::Done => LoaderActivity::Done.words(),
        }
    }
}
