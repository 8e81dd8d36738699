//! What loaders and rakers spend their time on, and the time accounts of both.

use crate::duration::Duration;
pub(crate) use crate::duration::{Micros, SECOND};
use serde::{Deserialize, Serialize};
use std::fmt;
use std::ops::AddAssign;

macro_rules! activities {
    ($(#[$doc:meta])* $name:ident, $count:literal, $times:ident: $($(#[$item_doc:meta])* $item:ident => $words:literal,)*) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[repr(u8)]
        pub enum $name {
            $($(#[$item_doc])* $item,)*
        }

        impl $name {
            /// How many of them count as time on the job.
            pub const COUNT: usize = $count;
            /// Those that count as time on the job, in the order of the accounts.
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

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.pad(self.words())
            }
        }

        #[doc = concat!("Time spent on each [`", stringify!($name), "`] on the job.")]
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
        pub struct $times([Micros; $count]);

        impl $times {
            /// How long was spent on this; of a night, which is off the job, always zero.
            pub fn time(&self, activity: $name) -> Duration {
                self.0.get(activity as usize).map_or(Duration::ZERO, |time| Duration::from_micros(*time))
            }

            /// Every activity on the job with its time, in the order of `ALL`.
            pub fn iter(&self) -> impl Iterator<Item = ($name, Duration)> + '_ {
                $name::ALL.into_iter().map(|activity| (activity, self.time(activity)))
            }

            /// All of it: the time on the job.
            pub fn total(&self) -> Duration {
                self.iter().map(|(_, time)| time).sum()
            }

            /// Adds so much time spent on this; a night, which is off the job, changes nothing.
            pub fn add(&mut self, activity: $name, time: Duration) {
                if let Some(sum) = self.0.get_mut(activity as usize) {
                    *sum += time.as_micros();
                }
            }

            /// Adds the times of so many resources that did the same.
            pub(crate) fn add_micros(&mut self, times: &[Micros; $count], resources: Micros) {
                self.0.iter_mut().zip(times).for_each(|(sum, time)| *sum += time * resources);
            }
        }

        impl AddAssign<&Self> for $times {
            fn add_assign(&mut self, other: &Self) {
                self.add_micros(&other.0, 1);
            }
        }

        impl FromIterator<($name, Duration)> for $times {
            fn from_iter<I: IntoIterator<Item = ($name, Duration)>>(times: I) -> Self {
                let mut all = Self::default();
                times.into_iter().for_each(|(activity, time)| all.add(activity, time));
                all
            }
        }
    };
}

activities! {
    /// What a loader is doing. `Night` is off the job and has no account.
    LoaderActivity, 14, LoaderTimes:
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
    /// What a raker is doing. `Night` is off the job and has no account.
    RakerActivity, 7, RakerTimes:
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
