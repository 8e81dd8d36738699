//! Results as files: pure functions from results to bytes, one format a file.
//!
//! Headers never depend on the data. Units stand in the names of columns; volumes and fuel stand in metric and in US
//! units. What is unknown is an empty field in CSV and `null` in JSON, never 0. Times are exact to the microsecond, in tables of many
//! runs to 0.1 s.

mod buckets_csv;
mod buckets_json;
mod comparison_csv;
mod comparison_json;
mod events_csv;
mod loads_csv;
mod paired_runs_csv;
mod percentiles_csv;
mod quote_csv;
mod quote_json;
mod runs_csv;
mod summary_json;
mod sweep_csv;
mod sweep_json;
mod table;

pub use buckets_csv::buckets_csv;
pub use buckets_json::buckets_json;
pub use comparison_csv::{comparison_csv, differences_csv};
pub use comparison_json::comparison_json;
pub use events_csv::events_csv;
pub use loads_csv::loads_csv;
pub use paired_runs_csv::paired_runs_csv;
pub use percentiles_csv::percentiles_csv;
pub use quote_csv::{cost_csv, risk_csv, run_costs_csv};
pub use quote_json::quote_json;
pub use runs_csv::{run_csv, runs_csv};
pub use summary_json::{check_json, replay_json, summary_json};
pub use sweep_csv::sweep_csv;
pub use sweep_json::sweep_json;
pub use table::ExportError;
