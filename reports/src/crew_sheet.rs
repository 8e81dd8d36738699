//! The crew sheet: a page of its own to print, hand out and write on.

pub(super) mod loads;
mod times;

use crate::findings::load_story::load_stories;
use crate::findings::order;
use crate::forecast::Forecast;
use crate::render::page::cautions::KEEP_CLEAR;
use crate::render::page::fold::Part;
use crate::render::page::words::{self, date, number, tight};
use loads::{LoadPlan, load_plan};
use maud::{Markup, html};
use scenarios::units::volume;

pub(super) fn part(forecast: &Forecast) -> Part {
    let scenario = &forecast.scenario;
    let plan = load_plan(forecast);
    let body = html! {
        p.lead { (scenario.title) }
        @if let Some(day) = scenario.date { p.soft { (date(day)) } }
        @if let Some(first) = order(&forecast.study, scenario, forecast.units).first() { p.heed { (tight(first)) } }
        (heed(forecast))
        (by_the_clock(forecast))
        (crew(forecast, &plan))
        (loads_to_move(forecast, &plan))
    };
    Part::folded("crew-sheet", "Crew sheet", body)
}

/// The one caution that must be on every sheet handed out.
fn heed(forecast: &Forecast) -> Markup {
    let job = &forecast.scenario.job;
    html! {
        p.heed {
            @if job.raking.stand_clear && !job.rakers.is_empty() {
                "Nobody rakes in a zone while a loader dumps there. "
            }
            (KEEP_CLEAR)
        }
    }
}

fn by_the_clock(forecast: &Forecast) -> Markup {
    html! {
        h3 { "When" }
        table.short {
            thead { tr {
                th scope="col" { "Expected" }
                th scope="col" { "What" }
                th.write scope="col" { "Really at" }
            } }
            tbody { @for moment in times::times(forecast) { tr {
                td { (tight(&moment.when)) }
                td.name { (tight(&moment.what)) }
                td.blank {}
            } } }
        }
    }
}

fn crew(forecast: &Forecast, plan: &LoadPlan) -> Markup {
    let job = &forecast.scenario.job;
    html! {
        h3 { "Who" }
        table {
            thead { tr {
                th.post scope="col" { "Post" }
                th scope="col" { "Does" }
                th.nowrap scope="col" { "Loads, about" }
                th.write scope="col" { "Person" }
            } }
            tbody {
                @for (i, loader) in job.loaders.iter().enumerate() { tr {
                    th.name scope="row" { (loader.name) }
                    td.name { (hauls(forecast, i)) }
                    td { (number(plan.by_loader.get(i).copied().unwrap_or_default())) }
                    td.blank {}
                } }
                @for raker in &job.rakers { tr {
                    th.name scope="row" { (raker.name) }
                    td.name { (rakes(forecast, raker)) }
                    td { "–" }
                    td.blank {}
                } }
            }
        }
    }
}

/// Where a loader took its loads from and to in the typical run.
fn hauls(forecast: &Forecast, loader: usize) -> String {
    let job = &forecast.scenario.job;
    let stories = load_stories(&forecast.typical.log);
    let of_loader = || stories.iter().filter(|story| story.loader == loader);
    let piles = job.stockpiles.iter().enumerate();
    let piles = piles.filter(|(i, _)| of_loader().any(|story| story.stockpile == Some(*i)));
    let piles = named_or_counted(piles.map(|(_, pile)| pile.name.as_str()).collect(), "piles");
    let zones = job.zones.iter().enumerate();
    let zones = zones.filter(|(i, _)| of_loader().any(|story| story.zone == Some(*i)));
    let zones = named_or_counted(zones.map(|(_, zone)| zone.name.as_str()).collect(), "zones");
    let dumps = match job.raking.spread_share {
        share if share >= 1.0 => "spreads each load",
        share if share > 0.0 => "spreads part of each load",
        _ => "dumps heaps",
    };
    match (piles.is_empty(), zones.is_empty()) {
        (false, false) => format!("hauls from {piles} to {zones}, {dumps}"),
        _ => format!("loads, hauls, {dumps}"),
    }
}

/// A few short names one by one, more or longer ones only by their number.
fn named_or_counted(names: Vec<&str>, what: &str) -> String {
    const LETTERS: usize = 60;
    let all = words::names(&names);
    if names.len() > 1 && all.chars().count() > LETTERS { format!("{} {what}", names.len()) } else { all }
}

fn rakes(forecast: &Forecast, raker: &sim::Raker) -> String {
    let job = &forecast.scenario.job;
    let together = if job.raking.together.is_some() && job.rakers.len() > 1 {
        "rakes heaps out with the other rakers"
    } else {
        "rakes heaps out"
    };
    match job.zones.get(raker.start_zone) {
        Some(zone) if job.zones.len() > 1 => format!("{together}, begins in {}", zone.name),
        _ => together.to_owned(),
    }
}

fn loads_to_move(forecast: &Forecast, plan: &LoadPlan) -> Markup {
    let job = &forecast.scenario.job;
    let several_piles = job.stockpiles.len() > 1;
    let most = plan.lines.iter().map(|line| line.loads).max().unwrap_or_default();
    let per_box = loads_per_box(most);
    html! {
        h3 { "Loads" }
        table {
            thead { tr {
                th.place scope="col" { "To" }
                th.place scope="col" { "From" }
                th scope="col" { "Volume, about" }
                th.nowrap scope="col" { "Loads, about" }
                th.write scope="col" { "Done at" }
            } }
            @for line in &plan.lines { tbody.line {
                tr.counted {
                    th.name scope="row" { (job.zones.get(line.zone).map_or("", |zone| zone.name.as_str())) }
                    td.name { (line.pile.and_then(|pile| job.stockpiles.get(pile)).map_or("–", |pile| pile.name.as_str())) }
                    td { (tight(&volume(line.volume_m3, forecast.units))) }
                    td { (number(line.loads)) }
                    td.blank {}
                }
                tr.tally { td colspan="5" { (boxes(line.loads, per_box)) } }
            } }
            tfoot { tr {
                th scope="row" { "Total" }
                td {}
                td { (tight(&volume(plan.volume_m3, forecast.units))) }
                td { (number(plan.total)) }
                td.blank {}
            } }
        }
        p.note {
            @if per_box == 1 { "On paper, one box for each load. " } @else { "On paper, one box for every " (per_box) " loads. " }
            "Volumes and loads are means of all runs"
            @if several_piles { "; how they divide among the piles is that of a typical run" }
            "."
        }
    }
}

/// So many loads that no line has more boxes than fit the sheet.
fn loads_per_box(most: u64) -> u64 {
    const MOST_BOXES: u64 = 60;
    [1, 2, 5, 10, 20, 50, 100]
        .into_iter()
        .find(|n| most.div_ceil(*n) <= MOST_BOXES)
        .unwrap_or(most.div_ceil(MOST_BOXES))
}

/// Boxes to tick off, in fives.
fn boxes(loads: u64, per_box: u64) -> Markup {
    let boxes = loads.div_ceil(per_box.max(1));
    let fives = (0..boxes.div_ceil(5)).map(|five| (boxes - five * 5).min(5));
    html! {
        div aria-hidden="true" { @for five in fives { span.five { @for _ in 0..five { i {} } } } }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_is_a_box_for_every_load() {
        assert_eq!(boxes(12, 1).into_string().matches("<i>").count(), 12);
        assert_eq!(boxes(12, 5).into_string().matches("<i>").count(), 3);
        assert_eq!(boxes(0, 1).into_string().matches("<i>").count(), 0);
    }

    #[test]
    fn a_long_job_has_a_box_for_several_loads() {
        assert_eq!([60, 61, 300, 7_000].map(loads_per_box), [1, 2, 5, 117]);
    }
}
