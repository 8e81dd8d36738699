//! Every point of a sweep in a table.

use crate::findings::capital;
use crate::render::page::fold::Part;
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use crate::sweep::Sweep;
use crate::sweep::findings::{Mark, PointFindings, SweepFindings, Thing};
use maud::{Markup, html};

pub(super) fn part(sweep: &Sweep, findings: &SweepFindings) -> Part {
    let body = html! {
        p.note { (findings.how) }
        @if findings.points.len() > MOST_TOLD {
            (marked(findings))
        } @else if sweep.things.len() == 1 {
            (table(findings, 0..findings.points.len(), &findings.things[0]).draw())
        } @else {
            (grid(sweep, findings))
        }
        (legend(findings))
    };
    Part::folded("points", "Every point", body)
}

/// More points would make the page too long: the charts and `sweep.csv` have them.
const MOST_TOLD: usize = 120;

/// The points that bear a mark, and where the others are.
fn marked(findings: &SweepFindings) -> Markup {
    let points: Vec<usize> =
        (0..findings.points.len()).filter(|point| !findings.letters(*point).is_empty()).collect();
    html! {
        p { "The charts show all of them, and sweep.csv has every figure. Here are those that are marked:" }
        dl { @for point in points {
            @let told = &findings.points[point];
            dt { (findings.letters(point)) }
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
fn grid(sweep: &Sweep, findings: &SweepFindings) -> Markup {
    let row = sweep.row();
    html! {
        @for (number, label) in findings.things[0].labels.iter().enumerate() {
            @let caption = format!("{}: {label}", findings.things[0].heading());
            (table(findings, number * row..(number + 1) * row, &findings.things[1]).caption(caption).draw())
        }
    }
}

fn table(findings: &SweepFindings, points: std::ops::Range<usize>, thing: &Thing) -> Table {
    let (priced, place) = (findings.money.is_some(), findings.things.len() - 1);
    let asked = findings.by.as_ref().map(|by| format!("Done by {}", by.clock));
    let cost = if priced { &["Cost, middle", "Cost, 8 in 10 within"][..] } else { &[] };
    let heads = [thing.heading(), "Takes 8 days in 10, h:min".into(), "8 days in 10 done by".into()];
    let heads = heads.into_iter().chain(asked.clone()).chain(["Saves".to_owned()]);
    let heads = heads.chain(cost.iter().map(|head| (*head).to_owned())).chain(["Loads".to_owned()]);
    Table::new(heads).rows(points.map(|point| {
        let (told, letters) = (&findings.points[point], findings.letters(point));
        let head =
            html! { (tight(&told.values[place].label)) @if !letters.is_empty() { " " b { (letters) } } };
        let mut cells = vec![
            html! { span.nowrap { (told.range) } },
            html! { (tight(&told.done_by[2])) " " span.soft.nowrap { "(" (told.known) ")" } },
        ];
        cells.extend(asked.as_ref().map(|_| chance(told)));
        cells.push(saves(told, place));
        if priced {
            let cost = |at: usize| told.cost_words.as_ref().map_or("not known", |cost| cost[at].as_str());
            cells.extend([1, 2].map(|at| html! { (cost(at)) }));
        }
        cells.push(html! { (format!("{:.0}", told.loads[1].value)) });
        Row::new(head, cells).plan(!letters.is_empty())
    }))
}

fn chance(told: &PointFindings) -> Markup {
    let interval = told.chance.and_then(|chance| chance.low.zip(chance.high));
    html! {
        (tight(told.chance_words.as_deref().unwrap_or("")))
        @if let Some((low, high)) = interval {
            " " span.soft.nowrap { "(" (tight(&crate::findings::percent(low))) " to " (tight(&crate::findings::percent(high))) ")" }
        }
    }
}

fn saves(told: &PointFindings, thing: usize) -> Markup {
    html! {
        @match told.saved.get(thing).and_then(|saved| saved.as_ref()) {
            None => {},
            Some(saved) if saved.known == "exactly" || saved.words == "nothing" => (tight(&saved.words)),
            Some(saved) => { (tight(&saved.words)) " " span.soft.nowrap { "(" (saved.known) ")" } },
        }
    }
}

fn legend(findings: &SweepFindings) -> Markup {
    let keys = Mark::ALL.into_iter().filter_map(|mark| Some((mark.letter(), findings.meaning(mark)?)));
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
pub(super) fn waits(findings: &SweepFindings) -> Part {
    let is_told = |point: &usize| findings.things.len() == 1 || !findings.letters(*point).is_empty();
    let told: Vec<usize> = (0..findings.points.len()).filter(is_told).take(MOST_WAITS).collect();
    let row = |point: &usize| {
        let told = &findings.points[*point];
        Row::new(html! { (tight(&capital(&told.words))) }, [html! { (tight(&told.who_waits_in_full)) }])
    };
    let body = html! {
        (Table::new(["Point", "Who waits"]).rows(told.iter().map(row)).draw())
        @if told.len() < findings.points.len() {
            p.note { "sweep.csv has it for " (findings.points.len() - told.len()) " more." }
        }
    };
    Part::folded("waits", "Who waits", body)
}
