//! Who waits for whom: where the time of each loader and raker goes.

mod sketch;

pub(crate) use sketch::draw;

use super::doing::Doing;
use sim::{Accounts, Duration, Job};

/// Shares of the time on the job, ready to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct WaitingData {
    /// The finding.
    pub title: String,
    /// One for each loader, then one for each raker.
    pub rows: Vec<Row>,
    /// How many of the rows are loaders.
    pub loaders: usize,
}

/// Where the time of one of the crew goes.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Row {
    /// Name in the job.
    pub name: String,
    /// What they do and its share of their time on the job \[%\], in the order drawn; nothing with no share.
    pub parts: Vec<(Doing, f64)>,
}

/// What a row shows, from left to right.
const ORDER: [Doing; 12] = [
    Doing::Working,
    Doing::Raking,
    Doing::Walking,
    Doing::WaitingForRoom,
    Doing::WaitingForFace,
    Doing::WaitingForPass,
    Doing::WaitingForDelivery,
    Doing::WaitingForHeap,
    Doing::StandingClear,
    Doing::Stopped,
    Doing::OnBreak,
    Doing::SetUpAndCleanUp,
];

/// Prepares the figure from the accounts of one run or the sum of many, under the finding.
pub(crate) fn prepare(title: String, job: &Job, accounts: &Accounts) -> WaitingData {
    let loaders = accounts.loaders.iter().zip(&job.loaders).map(|(times, loader)| {
        row(&loader.name, times.iter().filter_map(|(activity, t)| Some((Doing::of_loader(activity)?, t))))
    });
    let rakers = accounts.rakers.iter().zip(&job.rakers).map(|(times, raker)| {
        row(&raker.name, times.iter().filter_map(|(activity, t)| Some((Doing::of_raker(activity)?, t))))
    });
    let rows: Vec<Row> = loaders.chain(rakers).collect();
    let loaders = accounts.loaders.len().min(job.loaders.len());
    WaitingData { title, rows, loaders }
}

fn row(name: &str, times: impl Iterator<Item = (Doing, Duration)>) -> Row {
    let times: Vec<(Doing, f64)> =
        times.map(|(doing, time)| (doing.briefly(), time.as_micros() as f64)).collect();
    let whole: f64 = times.iter().map(|(_, time)| time).sum();
    let share =
        |doing: Doing| times.iter().filter(|(d, _)| *d == doing).map(|(_, t)| 100.0 * t / whole).sum::<f64>();
    let order = ORDER.into_iter().chain([Doing::Done]);
    let parts = if whole > 0.0 {
        order.map(|doing| (doing, share(doing))).filter(|(_, percent)| *percent > 0.0).collect()
    } else {
        Vec::new()
    };
    Row { name: name.to_owned(), parts }
}

impl Row {
    /// Share of the time spent on something \[%\].
    pub(crate) fn share(&self, doing: Doing) -> f64 {
        self.parts.iter().find(|(d, _)| *d == doing).map_or(0.0, |(_, percent)| *percent)
    }
}

#[cfg(test)]
mod tests;
