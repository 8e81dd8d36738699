//! The first screen of a forecast as data.

use crate::card::{Card, Help, Mark, Picture, row};
use crate::findings::{
    Amount, Calendar, DoneBy, DoneRow, ReliefLine, amounts, assumed, capital, done_by, done_rows, relief,
    sentence, warnings, who_waits,
};
use crate::forecast::files::FORECAST;
use crate::forecast::run::Forecast;
use crate::render::screen::titled;
use scenarios::{Knob, units};

/// The answer to a forecast.
pub(super) fn card(forecast: &Forecast) -> Card {
    let (scenario, done) = (&forecast.scenario, done_by(forecast));
    let relief = relief(forecast);
    let (warnings, assumed) = (warnings(&scenario.cautions), assumed(&scenario.assumptions).all);
    let job = row("The job", titled(scenario));
    let mut card = Card::new(done.plan_on.clone(), job, &warnings, &assumed);
    card.row(if done.order.enough { "Plan on" } else { "First" }, plan_on(&done));
    if !done.certain {
        let heading = if done.order.enough { "Range" } else { "Crew at work" };
        card.row(heading, done.range.replace(", then the crew stops", ""));
    }
    if let Some(by) = &done.by {
        card.row("In time", by.sentence.clone());
    }
    card.row("What holds it up", sentence(&who_waits(forecast).title));
    card.row("What would help", sentence(&relief.title));
    if done.order.enough {
        card.row("Order", done.order.sentence.clone());
    }
    if let Some(cost) = amounts(forecast).iter().find(|amount| amount.key == "cost") {
        card.row("Cost", cost_words(cost));
    }
    card.picture = if done.certain { None } else { picture(forecast, &done) };
    // What surely costs time is named too, but is no help.
    let helps =
        relief.lines.iter().filter(|line| line.helps && (line.saved_min > 0.0 || line.done_after.is_some()));
    card.helps = helps.map(|line| help(line, forecast)).collect();
    card.files = &FORECAST;
    card
}

/// The heading says "Plan on" already.
fn plan_on(done: &DoneBy) -> String {
    match done.plan_on.strip_prefix("Plan on ") {
        Some(rest) => capital(rest),
        None => done.plan_on.clone(),
    }
}

fn cost_words(cost: &Amount) -> String {
    match (&cost.said, &cost.unknown) {
        (Some(said), _) if said.p10 == said.p90 => format!("{}.", said.p50),
        (Some(said), _) => format!("About {}; 8 days in 10 from {} to {}.", said.p50, said.p10, said.p90),
        (None, Some(why)) => format!("Not known: {why}."),
        (None, None) => "Not known.".into(),
    }
}

/// The range, whatever percentiles were asked for.
fn picture(forecast: &Forecast, done: &DoneBy) -> Option<Picture> {
    let calendar = Calendar::of(&forecast.scenario, forecast.units);
    let start_s = forecast.scenario.job.shift.start_s;
    let mut marks =
        done_rows(&forecast.study, start_s, &[0.1, 0.5, 0.8, 0.9], calendar).into_iter().map(mark);
    Some(Picture {
        enough: done.order.enough,
        low: marks.next()?,
        middle: marks.next()?,
        plan: marks.next()?,
        high: marks.next()?,
    })
}

fn mark(row: DoneRow) -> Mark {
    Mark { clock_s: row.finish_clock_s, clock: row.clock, duration: row.duration }
}

fn help(line: &ReliefLine, forecast: &Forecast) -> Help {
    Help {
        words: capital(&line.what),
        saves: line.saves.clone(),
        cost: line.cost.clone(),
        change: change(line.key, forecast),
    }
}

/// The change that makes the same job as an improvement, where there is one.
fn change(key: &str, forecast: &Forecast) -> Option<String> {
    let (job, units) = (&forecast.scenario.job, forecast.units);
    let one_more = |knob: Knob| Some(format!("{knob} = {}", knob.of_job(job)? + 1.0));
    match key {
        "another_raker" if !job.rakers.is_empty() => one_more(Knob::Rakers),
        "another_loader" => one_more(Knob::Loaders),
        "more_room" if job.zones.iter().all(|zone| zone.room == job.zones[0].room) => one_more(Knob::Room),
        "larger_bucket" if job.loaders.len() == 1 => {
            let heaped_m3 = Knob::Bucket.of_job(job)? * 1.1;
            Some(format!("{} = {}", Knob::Bucket, units::bucket(heaped_m3, units)))
        }
        "shorter_ways" => {
            let haul_m = Knob::Haul.of_job(job)? * 0.9;
            Some(format!("{} = {}", Knob::Haul, units::way(haul_m, units)))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::answer::Answer;
    use crate::example;

    #[test]
    fn the_picture_is_the_range_whatever_percentiles_are_asked_for() {
        let mut forecast = example::forecast();
        let picture = forecast.card().picture.unwrap();
        forecast.percentiles = vec![0.5];
        assert_eq!(forecast.card().picture.as_ref(), Some(&picture));
        assert_eq!((picture.plan.clock.as_str(), picture.plan.duration.as_str()), ("10:40 am", "2 h 40 min"));
        let marks = [picture.low, picture.middle, picture.plan, picture.high];
        assert!(marks.is_sorted_by(|a, b| a.clock_s.value < b.clock_s.value));
        forecast.study.outcomes.truncate(1);
        assert_eq!(forecast.card().picture, None);
    }

    #[test]
    fn what_would_help_can_be_tried_by_a_change_that_makes_the_same_job() {
        let forecast = example::forecast();
        let count = forecast.scenario.job.rakers.len();
        assert_eq!(change("another_raker", &forecast), Some(format!("rakers = {}", count + 1)));
        assert_eq!(change("all_there", &forecast), None);
        for key in ["another_raker", "another_loader", "larger_bucket", "shorter_ways"] {
            let typed = change(key, &forecast).unwrap();
            assert!(typed.parse::<scenarios::Change>().is_ok(), "{typed}");
        }
    }
}
