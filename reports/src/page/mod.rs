//! `report.html`: the forecast as one page to read on a phone, show to a client and print for the crew.
//!
//! Everything stands in the one file: no script, nothing fetched, figures inline. Each file here is one section, in the
//! order people ask; what is said comes from [`crate::findings`], the figures from whoever drew them. All that a scenario
//! says is escaped.

mod amounts;
mod assumed;
mod cautions;
mod charts;
mod crew_sheet;
mod foot;
mod halfway;
mod handbook;
mod help;
mod job;
mod range;
mod style;
mod typical;
mod waits;
mod words;

#[cfg(test)]
mod tests;

use crate::chart::Figure;
use crate::forecast::Forecast;
use charts::Charts;
use maud::{DOCTYPE, Markup, html};

/// Nothing may be fetched and no script may run, whatever finds its way into the page.
const NOTHING_FETCHED: &str = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

/// The whole page. The figures are those of [`chart::figures`](crate::chart::figures), drawn once for a page and for
/// paper (`wide`), once for a phone (`narrow`); one that is missing in one of them is shown as in the other, one that
/// is missing in both is left out.
pub fn page(forecast: &Forecast, wide: &[Figure], narrow: &[Figure]) -> String {
    let charts = Charts { wide, narrow };
    let title = &forecast.scenario.title;
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta http-equiv="Content-Security-Policy" content=(NOTHING_FETCHED);
                meta name="color-scheme" content="light";
                title { (title) }
                (style::style(title))
            }
            body {
                main {
                    (heading(forecast))
                    (job::section(forecast))
                    (range::section(forecast, &charts))
                    (handbook::section(forecast))
                    (waits::section(forecast, &charts))
                    (help::section(forecast, &charts))
                    (halfway::section(forecast, &charts))
                    (amounts::section(forecast))
                    (cautions::section(forecast))
                    (crew_sheet::section(forecast))
                    (typical::section(forecast, &charts))
                    (assumed::section(forecast))
                    (foot::section(forecast))
                }
            }
        }
    }
    .into_string()
}

fn heading(forecast: &Forecast) -> Markup {
    let scenario = &forecast.scenario;
    let date = scenario.date.map(words::date);
    html! {
        header {
            h1 { (scenario.title) }
            @if date.is_some() || scenario.alternative.is_some() {
                p.soft {
                    @if let Some(date) = &date { (date) }
                    @if date.is_some() && scenario.alternative.is_some() { " · " }
                    @if let Some(alternative) = &scenario.alternative { "Alternative: " (alternative) }
                }
            }
        }
    }
}
