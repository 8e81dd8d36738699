//! The face of heapcast: what a forecast says, and how it is shown on the screen, in files, in charts and on a page.
//!
//! The way of the data: a checked [`scenarios::Scenario`] is run and becomes a [`forecast::Forecast`]; [`findings`] says
//! what it means in words and numbers; [`text`] lays that out for the screen, [`export`] for files, [`chart`] as
//! figures, [`page`] as a report. All of these are pure: they return text or bytes. Only [`command`] and
//! [`output_folder`] touch the world.

pub mod findings;
pub mod forecast;
