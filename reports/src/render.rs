//! What every answer is shown with, one module a medium.

pub(crate) mod csv;
pub(crate) mod json;
pub(crate) mod page;
pub mod screen;

pub use csv::ExportError;
