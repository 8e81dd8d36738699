//! `report.html`: the forecast as one page to read on a phone, show to a client and print for the crew.
//!
//! Everything stands in the one file: no script, nothing fetched, figures inline. Each file here is one section, in the
//! order people ask; what is said comes from [`crate::findings`], the figures from whoever drew them. All that a scenario
//! says is escaped.

mod amounts;
mod foot;
pub(crate) mod halfway;
mod handbook;
mod help;
mod range;
mod typical;
mod waits;

#[cfg(test)]
mod tests;

use crate::chart::Figure;
use crate::crew_sheet;
use crate::forecast::run::Forecast;
use crate::render::page::charts::Charts;
use crate::render::page::fold::Part;
use crate::render::page::frame::{heading, whole};
use crate::render::page::{assumed, cautions, job};

/// The whole page. The figures are those of [`figures`](super::figures::figures), drawn once for a page and for
/// paper (`wide`), once for a phone (`narrow`); one that is missing in one of them is shown as in the other, one that
/// is missing in both is left out.
pub(crate) fn page(forecast: &Forecast, wide: &[Figure], narrow: &[Figure]) -> String {
    let charts = Charts { wide, narrow };
    let (scenario, units) = (&forecast.scenario, forecast.units);
    let parts: Vec<Part> = [
        range::part(forecast, &charts),
        Some(waits::part(forecast, &charts)),
        Some(help::part(forecast, &charts)),
        Some(amounts::part(forecast)),
        Some(cautions::part(&scenario.cautions)),
        Some(crew_sheet::part(forecast)),
        Some(halfway::part(forecast, &charts)),
        Some(handbook::part(forecast)),
        Some(job::part(scenario, units)),
        typical::part(forecast, &charts),
        Some(assumed::part(&scenario.assumptions)),
        Some(foot::part(forecast)),
    ]
    .into_iter()
    .flatten()
    .collect();
    whole(&scenario.title, &heading(scenario), &range::answer(forecast), &parts)
}
