//! The story of each load, put together from the event log of a replayed run.

use sim::{Entry, Event, LoaderActivity, Micros, RakerActivity};
use std::collections::BTreeMap;

/// What happened to one load. Times are counted from the start of the first day \[us\]; `None` = it never came to that.
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
    pub load_start: Option<Micros>,
    /// When the bucket was full.
    pub load_end: Option<Micros>,
    /// When it reached the zone.
    pub arrival: Option<Micros>,
    /// When dumping began.
    pub dump_start: Option<Micros>,
    /// When the bucket was empty.
    pub dump_end: Option<Micros>,
    /// When the first raker took the heap in hand.
    pub rake_start: Option<Micros>,
    /// When the heap was raked out.
    pub raked_out: Option<Micros>,
    /// Indices of the rakers who worked on it, in the order they came.
    pub rakers: Vec<usize>,
    /// Time the loader spent on each activity for this load, by `activity as usize` \[us\]; what came before loading
    /// (waiting for a delivery or the face) belongs to it, the way back does not.
    pub times: [Micros; LoaderActivity::COUNT],
    /// Time rakers stood clear with this heap in hand, summed over them \[us\].
    pub stood_clear: Micros,
}

/// What a loader does from one entry of the log to its next.
#[derive(Clone, Copy)]
struct Stretch {
    from: Micros,
    activity: LoaderActivity,
    load: Option<u32>,
}

/// What a raker does from one entry of the log to the next.
#[derive(Clone, Copy)]
struct Rake {
    from: Micros,
    activity: RakerActivity,
    load: Option<u32>,
}

/// The stories of all loads, by number.
pub fn load_stories(log: &[Entry]) -> Vec<LoadStory> {
    let mut book = Storybook::default();
    for entry in log {
        book.read(entry);
    }
    book.stories.into_values().collect()
}

#[derive(Default)]
struct Storybook {
    stories: BTreeMap<u32, LoadStory>,
    loaders: BTreeMap<usize, Stretch>,
    rakers: BTreeMap<usize, Rake>,
    /// Waiting before a load that has no number yet, for each loader.
    before: BTreeMap<usize, Vec<(LoaderActivity, Micros)>>,
}

impl Storybook {
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
                            story.times[activity as usize] += time;
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

    fn close(&mut self, loader: usize, stretch: Stretch, at: Micros) {
        let time = at - stretch.from;
        let column = stretch.activity as usize;
        match stretch.load.and_then(|load| self.stories.get_mut(&load)) {
            Some(story) => {
                if let Some(total) = story.times.get_mut(column) {
                    *total += time;
                }
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

    fn stand_clear(&mut self, rake: Rake, at: Micros) {
        if rake.activity == RakerActivity::StandingClear
            && let Some(story) = rake.load.and_then(|load| self.stories.get_mut(&load))
        {
            story.stood_clear += at - rake.from;
        }
    }
}
