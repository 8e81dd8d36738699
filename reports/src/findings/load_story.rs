//! The story of each load, put together from the event log of a replayed run.

use sim::{Duration, Entry, Event, LoaderActivity, LoaderTimes, RakerActivity};
use std::collections::BTreeMap;

/// What happened to one load. Times are counted from the start of the first day; `None` = it never came to that.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LoadStory {
    /// Number of the load, counted from 0.
    pub load: u32,
    /// Index of the loader.
    pub loader: usize,
    /// Index of the stockpile it came from.
    pub stockpile: Option<usize>,
    /// Index of the zone it went to.
    pub zone: Option<usize>,
    /// Volume \[m3\].
    pub volume_m3: f64,
    /// When loading began.
    pub load_start: Option<Duration>,
    /// When the bucket was full.
    pub load_end: Option<Duration>,
    /// When it reached the zone.
    pub arrival: Option<Duration>,
    /// When dumping began.
    pub dump_start: Option<Duration>,
    /// When the bucket was empty.
    pub dump_end: Option<Duration>,
    /// When the first raker took the heap in hand.
    pub rake_start: Option<Duration>,
    /// When the heap was raked out.
    pub raked_out: Option<Duration>,
    /// Indices of the rakers who worked on it, in the order they came.
    pub rakers: Vec<usize>,
    /// Time the loader spent on each activity for this load; what came before loading
    /// (waiting for a delivery or the face) belongs to it, the way back does not.
    pub times: LoaderTimes,
    /// Time rakers stood clear with this heap in hand, summed over them.
    pub stood_clear: Duration,
}

/// What a loader does from one entry of the log to its next.
#[derive(Clone, Copy)]
struct Stretch {
    from: Duration,
    activity: LoaderActivity,
    load: Option<u32>,
}

/// What a raker does from one entry of the log to the next.
#[derive(Clone, Copy)]
struct Rake {
    from: Duration,
    activity: RakerActivity,
    load: Option<u32>,
}

/// The stories of all loads, by number.
pub fn load_stories(log: &[Entry]) -> Vec<LoadStory> {
    let mut builder = Stories::default();
    for entry in log {
        builder.read(entry);
    }
    builder.stories.into_values().collect()
}

#[derive(Default)]
struct Stories {
    stories: BTreeMap<u32, LoadStory>,
    loaders: BTreeMap<usize, Stretch>,
    rakers: BTreeMap<usize, Rake>,
    /// Waiting before a load that has no number yet, for each loader.
    before: BTreeMap<usize, Vec<(LoaderActivity, Duration)>>,
}

impl Stories {
    fn read(&mut self, entry: &Entry) {
        let at = entry.at;
        match entry.event {
            Event::Loader { loader, activity, load, zone, stockpile, volume_m3, .. } => {
                if let Some(stretch) = self.loaders.insert(loader, Stretch { from: at, activity, load }) {
                    self.close(loader, stretch, at);
                }
                let Some(load) = load else { return };
                let story = self.stories.entry(load).or_insert_with(|| LoadStory {
                    load,
                    loader,
                    ..LoadStory::default()
                });
                story.zone = zone.or(story.zone);
                story.stockpile = stockpile.or(story.stockpile);
                story.volume_m3 = story.volume_m3.max(volume_m3);
                match activity {
                    LoaderActivity::Loading => {
                        story.load_start.get_or_insert(at);
                        for (activity, time) in self.before.remove(&loader).unwrap_or_default() {
                            story.times.add(activity, time);
                        }
                    }
                    LoaderActivity::WaitingForRoom => {
                        story.arrival.get_or_insert(at);
                    }
                    LoaderActivity::Dumping => {
                        story.arrival.get_or_insert(at);
                        story.dump_start.get_or_insert(at);
                    }
                    _ => {}
                }
            }
            Event::Raker { raker, activity, load, .. } => {
                if let Some(rake) = self.rakers.insert(raker, Rake { from: at, activity, load }) {
                    self.stand_clear(rake, at);
                }
                let Some(story) = load.and_then(|load| self.stories.get_mut(&load)) else { return };
                if !story.rakers.contains(&raker) {
                    story.rakers.push(raker);
                }
                if activity == RakerActivity::Raking {
                    story.rake_start.get_or_insert(at);
                }
            }
            Event::HeapRakedOut { load, .. } => {
                if let Some(story) = self.stories.get_mut(&load) {
                    story.raked_out = Some(at);
                }
            }
            Event::Delivered { .. } | Event::WorkPauses { .. } | Event::WorkResumes => {}
        }
    }

    fn close(&mut self, loader: usize, stretch: Stretch, at: Duration) {
        let time = at - stretch.from;
        match stretch.load.and_then(|load| self.stories.get_mut(&load)) {
            Some(story) => {
                story.times.add(stretch.activity, time);
                match stretch.activity {
                    LoaderActivity::Loading => story.load_end = Some(at),
                    LoaderActivity::Dumping => story.dump_end = Some(at),
                    _ => {}
                }
            }
            None if matches!(
                stretch.activity,
                LoaderActivity::WaitingForFace | LoaderActivity::WaitingForDelivery
            ) =>
            {
                self.before.entry(loader).or_default().push((stretch.activity, time));
            }
            None => {}
        }
    }

    fn stand_clear(&mut self, rake: Rake, at: Duration) {
        if rake.activity == RakerActivity::StandingClear
            && let Some(story) = rake.load.and_then(|load| self.stories.get_mut(&load))
        {
            story.stood_clear += at - rake.from;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use LoaderActivity as L;
    use RakerActivity as R;

    const fn us(micros: i64) -> Duration {
        Duration::from_micros(micros)
    }

    fn loader(at: i64, activity: L, load: Option<u32>, volume_m3: f64) -> Entry {
        let (zone, stockpile) = (Some(0), Some(0));
        Entry {
            at: us(at),
            event: Event::Loader { loader: 0, activity, load, zone, stockpile, pass: None, volume_m3 },
        }
    }

    fn raker(at: i64, activity: R, load: Option<u32>) -> Entry {
        Entry { at: us(at), event: Event::Raker { raker: 1, activity, load, zone: 0 } }
    }

    #[test]
    fn a_load_is_followed_from_the_wait_for_the_face_to_the_rake() {
        let log = [
            loader(0, L::WaitingForFace, None, 0.0),
            loader(5, L::Loading, Some(0), 0.0),
            loader(8, L::Stopped, Some(0), 0.0),
            loader(11, L::Loading, Some(0), 0.0),
            loader(20, L::Hauling, Some(0), 0.5),
            loader(30, L::WaitingForRoom, Some(0), 0.5),
            loader(37, L::Dumping, Some(0), 0.5),
            raker(39, R::StandingClear, Some(0)),
            loader(40, L::Returning, None, 0.0),
            raker(40, R::Raking, Some(0)),
            Entry { at: us(60), event: Event::HeapRakedOut { load: 0, zone: 0, volume_m3: 0.5 } },
            raker(60, R::Waiting, None),
            loader(55, L::Loading, Some(1), 0.0),
        ];
        let stories = load_stories(&log);
        assert_eq!(stories.len(), 2);
        let story = &stories[0];
        assert_eq!(
            (story.load_start, story.load_end, story.arrival),
            (Some(us(5)), Some(us(20)), Some(us(30)))
        );
        assert_eq!((story.dump_start, story.dump_end), (Some(us(37)), Some(us(40))));
        assert_eq!(
            (story.rake_start, story.raked_out, story.rakers.as_slice()),
            (Some(us(40)), Some(us(60)), &[1][..])
        );
        let time = |activity: L| story.times.time(activity).as_micros();
        assert_eq!((time(L::WaitingForFace), time(L::Loading), time(L::Stopped)), (5, 12, 3));
        assert_eq!((time(L::WaitingForRoom), time(L::Returning), story.stood_clear), (7, 0, us(1)));
        assert_eq!(story.volume_m3, 0.5);
        assert_eq!(stories[1].load_end, None, "what never came is not made up");
    }
}
