//! What jobs save against the first, run by run: a band for eight runs in ten, the middle one and the mean.

mod sketch;

pub(crate) use sketch::draw;

/// Time or money saved, ready to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct SavedData {
    /// Name of the figure: `differences` or `money`.
    pub figure: &'static str,
    /// The finding.
    pub title: String,
    /// What was compared and what the signs mean.
    pub note: String,
    /// One for each job but the first.
    pub rows: Vec<SavedRow>,
}

/// What one job saves, in the unit of the figure; below 0 where it loses.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct SavedRow {
    /// Letter and name.
    pub name: String,
    /// P10 and P90.
    pub band: (f64, f64),
    /// The middle run.
    pub median: f64,
    /// The mean.
    pub mean: f64,
    /// Its 95 % interval.
    pub interval: Option<(f64, f64)>,
    /// The mean and the chance in words.
    pub words: String,
}

impl SavedData {
    /// Where the picture ends on the side of losses, if one of them would leave no room to see the rest: as far below 0
    /// as the greatest gain is above, and half as far again; without gains so many times the least loss.
    pub(crate) fn edge(&self) -> Option<f64> {
        let gains = self.rows.iter().filter(|row| row.mean > 0.0).map(|row| row.band.1.max(row.mean));
        let gain = gains.fold(0.0, f64::max);
        let losses = self.rows.iter().map(|row| -row.band.0.min(row.mean)).filter(|loss| *loss > 0.0);
        let reach =
            if gain > 0.0 { GAIN * gain } else { LOSS * losses.clone().fold(f64::INFINITY, f64::min) };
        losses.fold(0.0, f64::max).gt(&(1.2 * reach)).then_some(-reach)
    }
}

/// How far below 0 a picture with gains goes, in the greatest of them (our own choice).
const GAIN: f64 = 1.5;
/// How far it goes without gains, in the least loss (our own choice).
const LOSS: f64 = 4.0;
