//! Every point of a sweep in a table.

use crate::findings::capital;
use crate::findings::sweep::{Mark, PointSays, SweepSays, Thing};
use crate::page::words::tight;
use crate::sweep::Sweep;
use maud::{Markup, html};

pub(super) fn section(sweep: &Sweep, says: &SweepSays) -> Markup {
    html! {
        section id="points" {
            h2 { "Every point" }
            p.note { (says.how) }
            @if says.points.len() > MOST_TOLD {
                (marked(says))
            } @else if sweep.things.len() == 1 {
                (table(says, 0..says.points.len(), &says.things[0], None))
            } @else {
                (grid(sweep, says))
            }
            (legend(says))
        }
    }
}

/// More points would make a book of the page: the charts and `sweep.csv` have them.
const MOST_TOLD: usize = 120;

/// The points that bear a mark, and where the others are.
fn marked(says: &SweepSays) -> Markup {
    let points: Vec<usize> =
        (0..says.points.len()).filter(|point| !says.letters(*point).is_empty()).collect();
    html! {
        p { "The charts show all of them, and sweep.csv has every figure. Here are those that are marked:" }
        dl { @for point in points {
            @let told = &says.points[point];
            dt { (says.letters(point)) }
            dd {
                (tight(&crate::findings::capital(&told.words))) ": " (tight(&told.range)) " h:min, 8 days in 10 done by "
                (tight(&told.done_by[2]))
                @if let Some(chance) = &told.chance_words { ", done in time " (tight(chance)) }
                @if let Some(cost) = &told.cost_words { ", " (cost[1]) " in the middle" }
                "."
            }
        } }
    }
}

/// One table for each value of the first thing, over those of the second.
fn grid(sweep: &Sweep, says: &SweepSays) -> Markup {
    let row = sweep.row();
    html! {
        @for (number, label) in says.things[0].labels.iter().enumerate() {
            @let caption = format!("{}: {label}", says.things[0].heading());
            (table(says, number * row..(number + 1) * row, &says.things[1], Some(&caption)))
        }
    }
}

fn table(says: &SweepSays, points: std::ops::Range<usize>, thing: &Thing, caption: Option<&str>) -> Markup {
    let (priced, asked) = (says.money.is_some(), says.by.as_ref());
    let place = says.things.len() - 1;
    html! {
        div.scrolls { table.points {
            @if let Some(caption) = caption { caption { (caption) } }
            thead { tr {
                th scope="col" { (thing.heading()) }
                th scope="col" { "Takes 8 days in 10, h:min" }
                th scope="col" { "8 days in 10 done by" }
                @if let Some(by) = asked { th scope="col" { "Done by " (by.clock) } }
                th scope="col" { "Saves" }
                @if priced { th scope="col" { "Cost, middle" } th scope="col" { "Cost, 8 in 10 within" } }
                th scope="col" { "Loads" }
            } }
            tbody { @for point in points {
                @let told = &says.points[point];
                @let letters = says.letters(point);
                tr class=[(!letters.is_empty()).then_some("plan-row")] {
                    th scope="row" { (tight(&told.values[place].label)) @if !letters.is_empty() { " " b { (letters) } } }
                    td.nowrap { (told.range) }
                    td { (tight(&told.done_by[2])) " " span.soft.nowrap { "(" (told.known) ")" } }
                    @if asked.is_some() { td { (chance(told)) } }
                    td { (saves(told, place)) }
                    @if let Some(cost) = told.cost_words.as_ref().filter(|_| priced) { td { (cost[1]) } td { (cost[2]) } }
                    td { (format!("{:.0}", told.loads[1].value)) }
                }
            } }
        } }
    }
}

fn chance(told: &PointSays) -> Markup {
    let interval = told.chance.and_then(|chance| chance.low.zip(chance.high));
    html! {
        (tight(told.chance_words.as_deref().unwrap_or("")))
        @if let Some((low, high)) = interval {
            " " span.soft.nowrap { "(" (tight(&crate::findings::percent(low))) " to " (tight(&crate::findings::percent(high))) ")" }
        }
    }
}

fn saves(told: &PointSays, thing: usize) -> Markup {
    html! {
        @match told.saved.get(thing).and_then(|saved| saved.as_ref()) {
            None => {},
            Some(saved) if saved.known == "exactly" || saved.words == "nothing" => (tight(&saved.words)),
            Some(saved) => { (tight(&saved.words)) " " span.soft.nowrap { "(" (saved.known) ")" } },
        }
    }
}

fn legend(says: &SweepSays) -> Markup {
    let keys = Mark::ALL.into_iter().filter_map(|mark| Some((mark.letter(), says.meaning(mark)?)));
    html! {
        p.note {
            "\"Saves\" is the time saved against the line above. "
            @for (letter, meaning) in keys { b { (letter) } " " (meaning) ". " }
        }
    }
}

/// Points whose waiting is told in full.
const MOST_WAITS: usize = 24;

/// Of a line every point, of a grid those that are marked.
pub(super) fn waits(says: &SweepSays) -> Markup {
    let is_told = |point: &usize| says.things.len() == 1 || !says.letters(*point).is_empty();
    let told: Vec<usize> = (0..says.points.len()).filter(is_told).take(MOST_WAITS).collect();
    html! {
        section id="waits" {
            h2 { "Who waits" }
            table.short {
                tbody { @for told in told.iter().map(|point| &says.points[*point]) { tr {
                    th scope="row" { (tight(&capital(&told.words))) }
                    td { (tight(&told.who_waits_in_full)) }
                } } }
            }
            @if told.len() < says.points.len() {
                p.note { "sweep.csv has it for " (says.points.len() - told.len()) " more." }
            }
        }
    }
}
