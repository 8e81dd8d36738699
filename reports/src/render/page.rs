//! What every page is put together from: its frame, parts that fold, tables, charts, and the parts that more than one page has.
//!
//! Everything stands in the one file: no script, nothing fetched, figures inline. All that a scenario says is escaped.

pub(crate) mod assumed;
pub(crate) mod cautions;
pub(crate) mod charts;
pub(crate) mod fold;
pub(crate) mod frame;
pub(crate) mod job;
pub(crate) mod made_with;
mod style;
pub(crate) mod table;
pub(crate) mod words;
