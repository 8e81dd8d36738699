//! What loaders and rakers spend their time on: the columns of every resource's books.

/// A time in whole microseconds.
pub type Micros = i64;

/// Microseconds in a second.
pub const SECOND: Micros = 1_000_000;

macro_rules! activities {
    ($(#[$doc:meta])* $name:ident, $count:literal: $($(#[$item_doc:meta])* $item:ident => $words:literal,)*) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[repr(u8)]
        pub enum $name {
            $($(#[$item_doc])* $item,)*
        }

        impl $name {
            /// How many of them count as time on the job.
            pub const COUNT: usize = $count;
            /// Those that count as time on the job, in the order of the books' columns.
            pub const ALL: [Self; $count] = {
                let all = [$(Self::$item),*];
                let mut on_the_job = [all[0]; $count];
                let mut i = 0;
                while i < $count {
                    on_the_job[i] = all[i];
                    i += 1;
                }
                on_the_job
            };

            /// Plain words for it.
            pub const fn words(self) -> &'static str {
                match self { $(Self::$item => $words,)* }
            }
        }
    };
}

activities! {
    /// What a loader is doing. `Night` is off the job and stands in no books.
    LoaderActivity, 14:
    /// Getting ready before the first load.
    SetUp => "set-up",
    /// Filling the bucket.
    Loading => "loading",
    /// Driving loaded.
    Hauling => "hauling",
    /// Driving empty.
    Returning => "returning",
    /// Going through a pass.
    Passing => "passing a gate",
    /// Waiting for its turn at the face.
    WaitingForFace => "waiting for the face",
    /// Waiting for a pass.
    WaitingForPass => "waiting at a gate",
    /// Waiting for a place to dump.
    WaitingForRoom => "waiting for room",
    /// Waiting for a delivery.
    WaitingForDelivery => "waiting for a delivery",
    /// Dumping, with its own share of the spreading.
    Dumping => "dumping",
    /// Held by a stoppage.
    Stopped => "stopped",
    /// In a break, or after hours.
    OnBreak => "break",
    /// Nothing more to load.
    Done => "done",
    /// Tidying up after the last heap.
    CleanUp => "clean-up",
    /// Away until the next start of day.
    Night => "night",
}

activities! {
    /// What a raker is doing. `Night` is off the job and stands in no books.
    RakerActivity, 7:
    /// Getting ready before the first load.
    SetUp => "set-up",
    /// Raking a heap out.
    Raking => "raking",
    /// Waiting for a heap.
    Waiting => "waiting for a heap",
    /// Walking to another zone.
    Walking => "walking",
    /// Standing clear of a loader that dumps.
    StandingClear => "standing clear",
    /// In a break, or after hours.
    OnBreak => "break",
    /// Tidying up after the last heap.
    CleanUp => "clean-up",
    /// Away until the next start of day.
    Night => "night",
}

/// Time spent on each [`LoaderActivity`], by `activity as usize` \[us\].
pub type LoaderTimes = [Micros; LoaderActivity::COUNT];

/// Time spent on each [`RakerActivity`], by `activity as usize` \[us\].
pub type RakerTimes = [Micros; RakerActivity::COUNT];
