//! The figures of a forecast, as SVG.
//!
//! One figure a file. Each first *prepares* plain numbers from what the simulator yields, in the units the reader will
//! see, with a title that states the finding; then *draws* them. Drawing is pure: numbers in, text out, the same text
//! every time.
//!
//! | figure | question it answers |
//! |---|---|
//! | [`completion`] | when will it be done, and how likely is that |
//! | [`progress`] | how far will it be at what time |
//! | [`waiting`] | who waits for whom |
//! | [`relief`] | what would help |
//! | [`risk`] | how likely is it to lose money at a price |
//! | [`rivals`] | which of several jobs is done sooner |
//! | [`saved`] | what each of several jobs or buckets saves |
//! | [`curve`], [`heat`] | where going on stops to pay, over one thing or two |
//! | [`timeline`] | what happens in one run, minute by minute |
//!
//! What every figure keeps to: it is understood without colour; labels neither overlap nor are cut off, whatever the
//! names; every axis has its unit; text of the reader's own sans-serif; no script, nothing fetched; a title and a
//! description for people who cannot see it. [`Size::PAGE`] serves a page and print and is still legible at the width of
//! a phone; [`Size::PHONE`] is drawn for it.

mod axis;
pub(crate) mod completion;
pub(crate) mod curve;
mod days;
mod doing;
mod figures;
pub(crate) mod heat;
mod ink;
mod legend;
mod letters;
pub(crate) mod palette;
mod paper;
pub(crate) mod progress;
pub(crate) mod relief;
pub(crate) mod risk;
pub(crate) mod rivals;
mod rows;
pub(crate) mod saved;
mod seal;
mod spread;
mod stroke;
mod ticks;
mod time_axis;
pub(crate) mod timeline;
pub(crate) mod waiting;
pub(crate) mod words;

#[cfg(test)]
mod fixtures;
#[cfg(test)]
pub(crate) mod legibility;
#[cfg(test)]
mod preview;

pub(crate) use figures::Figure;
pub(crate) use figures::add;

/// How large a figure is drawn \[px\]. It scales to any width; the letters are sized so that it stays legible at a phone's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Size {
    /// Width, at least 300.
    pub width: u32,
    /// Height; figures with many rows grow beyond it.
    pub height: u32,
}

impl Size {
    /// For a page and for print.
    pub(crate) const PAGE: Self = Self { width: 720, height: 460 };
    /// For a wide page.
    pub(crate) const WIDE: Self = Self { width: 900, height: 480 };
    /// For a phone held upright.
    pub(crate) const PHONE: Self = Self { width: 390, height: 430 };

    /// Whether a figure of this size has room for its labels.
    pub(crate) fn check(self) -> Result<(), ChartError> {
        let Self { width, height } = self;
        if width < 300 || height < 200 { Err(ChartError::TooSmall { width, height }) } else { Ok(()) }
    }

    /// Size of running text \[px\].
    pub(crate) fn text(self) -> f64 {
        (13.6 + (f64::from(self.width) - 390.0) / 330.0 * 3.4).clamp(11.0, 24.0)
    }
}

/// Why a figure could not be drawn.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub(crate) enum ChartError {
    /// There is nothing to show.
    #[error("nothing to draw: {0}")]
    Nothing(&'static str),
    /// The size asked for has no room for a figure.
    #[error(
        "a figure {width} wide and {height} high has no room for its labels; at least 300 by 200 is wanted"
    )]
    TooSmall {
        /// Width asked for \[px\].
        width: u32,
        /// Height asked for \[px\].
        height: u32,
    },
    /// The drawing library failed.
    #[error("drawing failed: {0}")]
    Drawing(String),
}
