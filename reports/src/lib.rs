//! The face of heapcast: what a forecast says, and how it is shown on the screen, in files, in charts and on a page.
//!
//! The way of the data: a checked [`scenarios::Scenario`] is run and becomes a [`forecast::Forecast`]; [`findings`] says
//! what it means in words and numbers; [`text`] lays that out for the screen, [`export`] for files, [`mod@chart`] as
//! figures, [`page`] as a report. All of these are pure: they return text or bytes. Only [`command`], [`say`] and
//! [`output_folder`] touch the world.

pub mod asked;
pub mod chart;
pub mod cli;
pub mod command;
pub mod documents;
pub mod export;
pub mod failure;
pub mod findings;
pub mod forecast;
pub mod interrupt;
pub mod load_story;
pub mod output_folder;
pub mod page;
pub mod progress;
pub mod provenance;
pub mod say;
pub mod text;

#[cfg(test)]
mod example;
