//! Done by when, what holds it up, and what would help.

mod card;
mod figures;
mod files;
mod json;
pub(crate) mod page;
mod percentiles_csv;
mod question;
pub(crate) mod run;
mod screen;

pub(crate) use files::{FORECAST, of_forecast, summary};
pub(crate) use json::summary_json;
pub(crate) use page::page;
pub(crate) use percentiles_csv::percentiles_csv;
pub use question::QUESTION;
pub use run::{Forecast, Wanted, runs_in_all};

use crate::answer::{Answer, Document, RunRows};
use crate::ask::MOST_RUNS;
use crate::card::Card;
use crate::failure::Failure;
use crate::findings::{Estimate, Warning, done_by, warnings};
use crate::render::screen::first;
use scenarios::units::duration;
use std::path::Path;

impl Answer for Forecast {
    fn headline(&self) -> String {
        done_by(self).plan_on
    }

    fn card(&self) -> Card {
        card::card(self)
    }

    fn first(&self, folder: &Path, columns: u16) -> String {
        first(&self.card(), folder, "", columns)
    }

    fn full(&self, folder: &Path, columns: u16) -> String {
        screen::summary(self, columns) + &screen::files(self, folder, columns)
    }

    fn json(&self) -> Result<Vec<u8>, Failure> {
        summary(self)
    }

    fn doubtful(&self) -> Vec<Warning> {
        warnings(&self.scenario.cautions).doubtful
    }

    fn files(&self, rows: RunRows) -> Result<Vec<Document>, Failure> {
        of_forecast(self, rows)
    }

    fn runs(&self) -> u32 {
        self.study.runs()
    }

    fn besides(&self) -> Option<String> {
        let p80 = done_by(self).plan.finish_working_s;
        self.within_s.and_then(|within_s| missed(within_s, p80))
    }
}

/// What to say where even the most runs do not know the P80 as closely as was wanted.
fn missed(within_s: f64, p80: Estimate) -> Option<String> {
    let reached = p80.high.zip(p80.low).map(|(high, low)| (high - p80.value).max(p80.value - low));
    (reached.is_none_or(|half| half > within_s)).then(|| {
        let reached =
            reached.map_or_else(|| "not at all".to_owned(), |half| format!("to {}", duration(half)));
        format!("{MOST_RUNS} runs know the time to plan on {reached}, not to {}", duration(within_s))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_precision_that_is_not_reached_is_said() {
        let p80 = Estimate { value: 7_200.0, low: Some(7_190.0), high: Some(7_212.0) };
        assert_eq!(missed(12.0, p80), None);
        assert_eq!(
            missed(5.0, p80).as_deref(),
            Some("1000000 runs know the time to plan on to 12 s, not to 5 s")
        );
        assert!(
            missed(5.0, Estimate { high: None, ..p80 }).is_some_and(|words| words.contains("not at all"))
        );
    }
}
