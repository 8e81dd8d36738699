//! `report.html`: the forecast as one page to read on a phone, show to a client and print for the crew.
//!
//! Everything stands in the one file: no script, nothing fetched, figures inline. Each file here is one section, in the
//! order people ask; what is said comes from [`crate::findings`], the figures from whoever drew them. All that a scenario
//! says is escaped.

mod amounts;
mod assumed;
mod buckets;
mod cautions;
mod charts;
mod comparison;
mod crew_sheet;
mod foot;
mod frame;
mod halfway;
mod handbook;
mod help;
mod job;
mod quote;
mod range;
mod style;
mod sweep;
mod typical;
mod waits;
mod words;

#[cfg(test)]
mod tests;

pub use buckets::buckets_page;
pub use comparison::comparison_page;
pub use quote::{client_page, quote_page};
pub use sweep::sweep_page;

use crate::chart::Figure;
use crate::forecast::Forecast;
use charts::Charts;
use frame::{frame, heading};
use maud::html;

/// The whole page. The figures are those of [`chart::figures`](crate::chart::figures), drawn once for a page and for
/// paper (`wide`), once for a phone (`narrow`); one that is missing in one of them is shown as in the other, one that
/// is missing in both is left out.
pub fn page(forecast: &Forecast, wide: &[Figure], narrow: &[Figure]) -> String {
    let charts = Charts { wide, narrow };
    let (scenario, units) = (&forecast.scenario, forecast.units);
    frame(
        &scenario.title,
        html! {
            (heading(scenario))
            (job::section(scenario, units))
            (range::section(forecast, &charts))
            (handbook::section(forecast))
            (waits::section(forecast, &charts))
            (help::section(forecast, &charts))
            (halfway::section(forecast, &charts))
            (amounts::section(forecast))
            (cautions::section(&scenario.cautions))
            (crew_sheet::section(forecast))
            (typical::section(forecast, &charts))
            (assumed::section(&scenario.assumptions))
            (foot::section(forecast))
        },
    )
}
