//! A sweep on one screen.

mod grid;
mod rows;

use crate::card::{Card, row};
use crate::findings::{assumed, the_job_in_short, warnings};
use crate::render::screen::{Layout, assumed_line, cares, titled};
use crate::sweep::findings::{Mark, SweepFindings, Thing};
use crate::sweep::{FILES, Sweep};
use std::path::Path;

/// Everything a person needs to know of a sweep, the answers first.
pub(crate) fn sweep(sweep: &Sweep, findings: &SweepFindings, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    let width = layout.body_width();
    let base = &sweep.base;
    layout.section("The job", [titled(base), the_job_in_short(base)]).section("Swept", swept(findings)).gap();
    if let Some(short) = &findings.short {
        layout.section("First", [short.clone()]).gap();
    }
    if let Some(by) = &findings.by {
        layout.section(&format!("By {}", by.clock), [by.sentence.clone()]).gap();
    }
    layout.section("What pays", pays(findings)).gap();
    match (&findings.money, findings.unpriced) {
        (Some(money), _) => layout.section("Money", [money.sentence.clone()]).gap(),
        (None, Some(why)) => layout.section("Money", [format!("Not known: {why}.")]).gap(),
        _ => &mut layout,
    };
    if sweep.things.len() == 1 {
        layout.section("Every point", rows::lines_of(findings, width)).gap();
        layout.section("Who waits", rows::waits(findings, width));
    } else {
        layout.section("Every point", grid::lines_of(sweep, findings, width));
    }
    let (warnings, assumed) = (warnings(&sweep.cautions()), assumed(&sweep.assumptions()));
    layout.gap();
    cares(&mut layout, &base.file, &warnings, &assumed_line(&base.file, &assumed.all));
    layout.text()
}

/// Where the files are and how to get the same answer again.
pub(crate) fn sweep_files(sweep: &Sweep, folder: &Path, columns: u16) -> String {
    crate::render::screen::files(
        folder,
        "sweep.csv and charts",
        format!("{} at every point", sweep.provenance.words()),
        columns,
    )
}

fn swept(findings: &SweepFindings) -> Vec<String> {
    let range = |(i, thing): (usize, &Thing)| {
        let words = if i == 0 { thing.heading() } else { thing.words.clone() };
        match (thing.labels.first(), thing.labels.last()) {
            (Some(first), Some(last)) if first != last => format!("{words} from {first} to {last}"),
            (Some(only), _) => format!("{words} at {only}"),
            _ => words,
        }
    };
    let things: Vec<String> = findings.things.iter().enumerate().map(range).collect();
    vec![format!("{}. {}", things.join(", "), findings.how)]
}

fn pays(findings: &SweepFindings) -> Vec<String> {
    let mut lines = vec![format!("{} {}", findings.knee.steps, findings.knee.sentence).trim().to_owned()];
    lines.extend(findings.later.iter().cloned());
    lines
}

/// What the letters in a table mean.
fn legend(findings: &SweepFindings) -> Option<String> {
    let each = Mark::ALL
        .into_iter()
        .filter_map(|mark| Some(format!("{} {}", mark.letter(), findings.meaning(mark)?)));
    Some(each.collect::<Vec<_>>().join("; "))
        .filter(|words| !words.is_empty())
        .map(|words| format!("{words}."))
}

/// So many places of `count`, evenly spread, with the first, the last and those wanted among them.
fn thinned(count: usize, most: usize, wanted: impl Fn(usize) -> bool) -> Vec<usize> {
    if count <= most {
        return (0..count).collect();
    }
    let kept = (0..count).filter(|place| wanted(*place)).count().min(most.saturating_sub(2));
    let even = (most - kept).max(2);
    let evenly: Vec<usize> = (0..even).map(|i| i * (count - 1) / (even - 1)).collect();
    let mut places: Vec<usize> = (0..count).filter(|p| evenly.contains(p) || wanted(*p)).collect();
    places.truncate(most.max(2));
    places
}

/// The answer to a sweep.
pub(super) fn card(sweep: &Sweep, findings: &SweepFindings) -> Card {
    let (warnings, assumed) = (warnings(&sweep.cautions()), assumed(&sweep.assumptions()).all);
    let job = row("The job", titled(&sweep.base));
    let mut card = Card::new(findings.verdict.clone(), job, &warnings, &assumed);
    if let Some(short) = &findings.short {
        card.row("First", short.clone());
    }
    if let Some(by) = &findings.by {
        card.row(format!("By {}", by.clock), by.sentence.clone());
    }
    let pays = format!("{} {}", findings.knee.steps, findings.knee.sentence);
    card.row("What pays", without_error(pays.trim()));
    if let Some(money) = &findings.money {
        card.row("Money", without_error(&money.sentence));
    }
    card.files = &FILES;
    card
}

/// Without simulation errors: `a second raker saves 27 min (± 3 min)`. They come with `--full` and stand in the report.
fn without_error(words: &str) -> String {
    let mut kept = String::new();
    let mut rest = words;
    while let Some(at) = rest.find(" (±") {
        kept.push_str(&rest[..at]);
        rest = rest[at..].find(')').map_or("", |end| &rest[at + end + 1..]);
    }
    kept + rest
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sweep::Deadline;
    use crate::sweep::findings::tests::made;

    fn plain(sweep: &Sweep, columns: u16) -> String {
        anstream::adapter::strip_str(&super::sweep(sweep, &crate::sweep::findings::sweep(sweep), columns))
            .to_string()
    }

    fn rakers(count: usize) -> Sweep {
        let costs = |point: usize| 500.0 + 20.0 * point as f64;
        let minutes = |point: usize, run: u32| 100.0 + 200.0 / (1.0 + point as f64) + f64::from(run % 7);
        let mut sweep = made(&[&format!("rakers 1..{count}")], 50, minutes, Some(&costs));
        sweep.deadline = Some(Deadline { by_s: 14.0 * 3600.0, chance: 0.8 });
        sweep
    }

    fn grid(rows: usize, columns: usize) -> Sweep {
        let things = [format!("rakers 1..{rows}"), format!("room 1..{columns}")];
        let minutes = |point: usize, run: u32| 400.0 - point as f64 / 2.0 + f64::from(run % 7);
        made(&[&things[0], &things[1]], 20, minutes, None)
    }

    #[test]
    fn a_sweep_fits_one_screen_whatever_its_range() {
        for sweep in [rakers(4), rakers(40), grid(4, 6), grid(20, 20), grid(10, 40)] {
            let text = plain(&sweep, 100) + &sweep_files(&sweep, Path::new("sweep"), 100);
            assert!(text.lines().count() <= 48, "{} lines:\n{text}", text.lines().count());
        }
    }

    #[test]
    fn no_line_is_wider_than_the_screen() {
        for sweep in [rakers(4), rakers(40), grid(4, 6), grid(20, 20)] {
            crate::example::assert_fits(|columns| plain(&sweep, columns));
        }
    }

    #[test]
    fn the_answers_come_before_the_table() {
        let text = plain(&rakers(4), 100);
        let headings = ["The job", "Swept", "By 2:00 pm", "What pays", "Money", "Every point", "Who waits"];
        let places: Vec<usize> = headings.iter().map(|h| text.find(h).expect(h)).collect();
        assert!(places.is_sorted(), "{text}");
    }

    #[test]
    fn thinning_keeps_the_ends_and_what_is_marked() {
        assert_eq!(thinned(4, 9, |_| false), [0, 1, 2, 3]);
        let places = thinned(40, 12, |place| place == 7);
        assert!(places.len() <= 12 && places.contains(&0) && places.contains(&39) && places.contains(&7));
    }
}
