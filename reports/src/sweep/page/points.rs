//! Every point of a sweep in a table.

use crate::findings::capital;
use crate::render::page::fold::Part;
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use crate::sweep::Sweep;
use crate::sweep::findings::{Mark, PointSays, SweepSays, Thing};
use maud::{Markup, html};

pub(super) fn part(sweep: &Sweep, says: &SweepSays) -> Part {
    let body = html! {
        p.note { (says.how) }
        @if says.points.len() > MOST_TOLD {
            (marked(says))
        } @else if sweep.things.len() == 1 {
            (table(says, 0..says.points.len(), &says.things[0]).draw())
        } @else {
            (grid(sweep, says))
        }
        (legend(says))
    };
    Part::folded("points", "Every point", body)
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
            (table(says, number * row..(number + 1) * row, &says.things[1]).caption(caption).draw())
        }
    }
}

fn table(says: &SweepSays, points: std::ops::Range<usize>, thing: &Thing) -> Table {
    let (priced, place) = (says.money.is_some(), says.things.len() - 1);
    let asked = says.by.as_ref().map(|by| format!("Done by {}", by.clock));
    let cost = if priced { &["Cost, middle", "Cost, 8 in 10 within"][..] } else { &[] };
    let heads = [thing.heading(), "Takes 8 days in 10, h:min".into(), "8 days in 10 done by".into()];
    let heads = heads.into_iter().chain(asked.clone()).chain(["Saves".to_owned()]);
    let heads = heads.chain(cost.iter().map(|head| (*head).to_owned())).chain(["Loads".to_owned()]);
    Table::new(heads).rows(points.map(|point| {
        let (told, letters) = (&says.points[point], says.letters(point));
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
pub(super) fn waits(says: &SweepSays) -> Part {
    let is_told = |point: &usize| says.things.len() == 1 || !says.letters(*point).is_empty();
    let told: Vec<usize> = (0..says.points.len()).filter(is_told).take(MOST_WAITS).collect();
    let row = |point: &usize| {
        let told = &says.points[*point];
        Row::new(html! { (tight(&capital(&told.words))) }, [html! { (tight(&told.who_waits_in_full)) }])
    };
    let body = html! {
        (Table::new(["Point", "Who waits"]).rows(told.iter().map(row)).draw())
        @if told.len() < says.points.len() {
            p.note { "sweep.csv has it for " (says.points.len() - told.len()) " more." }
        }
    };
    Part::folded("waits", "Who waits", body)
}
