//! Scenario files.
