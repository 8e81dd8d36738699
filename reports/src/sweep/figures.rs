//! The figures of a sweep: a curve over one thing, or a field of cells over two; of the time, and of the cost where there
//! are prices.

use crate::chart::curve::{self, CurveData, Scale, Spot};
use crate::chart::heat::{self, Cell, HeatData};
use crate::chart::{ChartError, Figure, Size};
use crate::findings::about_money;
use crate::findings::{days_in, hours_and_minutes};
use crate::sweep::Sweep;
use crate::sweep::findings::{Keeps, Mark, PointFindings, Range, SweepFindings};
use scenarios::units::figure;

/// Seconds of a day.
const DAY_S: f64 = 86_400.0;

/// Every figure of a sweep there is something to show in: `sweep`, and `cost` where there are prices.
pub(crate) fn sweep_figures(
    sweep: &Sweep,
    findings: &SweepFindings,
    size: Size,
) -> Result<Vec<Figure>, ChartError> {
    let mut figures = Vec::new();
    let (time, cost) = if sweep.things.len() == 1 {
        let time = time_curve(sweep, findings);
        let cost = cost_curve(sweep, findings);
        let cost = cost.map(|data| (data.title.clone(), curve::draw(&data, size)));
        ((time.title.clone(), curve::draw(&time, size)), cost)
    } else {
        let time = time_heat(findings);
        let cost = cost_heat(sweep, findings);
        let cost = cost.map(|data| (data.title.clone(), heat::draw(&data, size)));
        ((time.title.clone(), heat::draw(&time, size)), cost)
    };
    figures.push(Figure { name: "sweep", title: time.0, svg: time.1? });
    if let Some((title, svg)) = cost {
        figures.push(Figure { name: "cost", title, svg: svg? });
    }
    Ok(figures)
}

fn runs_note(sweep: &Sweep) -> String {
    let runs = sweep.points.first().map_or(0, |point| point.runs.len());
    match runs {
        1 => "1 run at every point".into(),
        n => format!("{} runs at every point, on the same days and loads", figure(n as f64)),
    }
}

fn spots(findings: &SweepFindings, range: impl Fn(&PointFindings) -> Option<Range>) -> Vec<Spot> {
    let spot = |(at, told): (usize, &PointFindings)| {
        let [low, middle, plan, high] = range(told)?.map(|estimate| estimate.value);
        let value = told.values.first()?;
        let marks = findings.marks(at).into_iter().map(|mark| name(mark).to_owned()).collect::<Vec<_>>();
        Some(Spot {
            x: value.number,
            label: figure(value.number),
            low,
            middle,
            plan,
            high,
            marks: marks.join(", "),
        })
    };
    findings.points.iter().enumerate().filter_map(spot).collect()
}

fn name(mark: Mark) -> &'static str {
    match mark {
        Mark::Knee => "knee",
        Mark::Cheapest => "cheapest",
        Mark::InTime => "in time",
        Mark::AsItStands => "as it stands",
    }
}

fn time_curve(sweep: &Sweep, findings: &SweepFindings) -> CurveData {
    let last_clock = findings.points.iter().map(|told| told.finish_clock_s[3].value).fold(0.0, f64::max);
    let nights = findings.points.iter().any(|told| {
        let start_s = told.finish_clock_s[3].value - told.finish_working_s[3].value;
        !(0.0..DAY_S).contains(&start_s) || told.finish_clock_s[3].value >= DAY_S
    });
    let one_start = sweep.points.windows(2).all(|pair| pair[0].start_s() == pair[1].start_s());
    let by_clock = !nights && one_start && last_clock < DAY_S;
    let spots =
        spots(findings, |told| Some(if by_clock { told.finish_clock_s } else { told.finish_working_s }));
    let line = findings.by.as_ref().filter(|by| by_clock && by.clock_s < DAY_S);
    CurveData {
        figure: "sweep",
        title: findings.knee.title.clone(),
        x_name: findings.things.first().map_or_else(String::new, |thing| thing.axis()),
        y_name: if by_clock { "done by" } else { "working time to the end" }.into(),
        scale: if by_clock { Scale::Clock(sweep.units) } else { Scale::Duration },
        spots,
        line: line.map(|by| (by.clock_s, format!("by {}", by.clock))),
        note: runs_note(sweep),
    }
}

fn cost_curve(sweep: &Sweep, findings: &SweepFindings) -> Option<CurveData> {
    let spots = spots(findings, |told| told.cost);
    (!spots.is_empty()).then(|| CurveData {
        figure: "cost",
        title: cheapest(sweep, findings),
        x_name: findings.things.first().map_or_else(String::new, |thing| thing.axis()),
        y_name: format!("cost of the job{}", in_currency(&sweep.base.currency)),
        scale: Scale::Money,
        spots,
        line: None,
        note: runs_note(sweep),
    })
}

fn in_currency(currency: &str) -> String {
    if currency.is_empty() { String::new() } else { format!(", {currency}") }
}

fn cheapest(sweep: &Sweep, findings: &SweepFindings) -> String {
    let at = findings.money.as_ref().map_or(0, |money| money.at);
    let told = &findings.points[at];
    let middle = told.cost.map_or(0.0, |cost| cost[1].value);
    format!("Cheapest: {}, at {} in the middle", told.words, about_money(middle, &sweep.base.currency))
}

fn heat_of(
    findings: &SweepFindings,
    figure: &'static str,
    title: String,
    what: String,
    cell: impl Fn(&PointFindings) -> (f64, String),
) -> HeatData {
    let cells = findings.points.iter().enumerate().map(|(at, told)| {
        let (value, words) = cell(told);
        Cell { value, words, letters: findings.letters(at) }
    });
    let numbers = |thing: usize, stride: usize| {
        let labels = findings.points.iter().step_by(stride).take(findings.things[thing].labels.len());
        labels.map(|told| scenarios::units::figure(told.values[thing].number)).collect::<Vec<String>>()
    };
    let row = findings.things[1].labels.len();
    HeatData {
        figure,
        title,
        what,
        down: (findings.things[0].axis(), numbers(0, row)),
        across: (findings.things[1].axis(), numbers(1, 1)),
        cells: cells.collect(),
        keys: Mark::ALL
            .into_iter()
            .filter_map(|mark| Some(format!("{}\u{a0}{}", mark.letter(), findings.meaning(mark)?)))
            .collect(),
    }
}

fn time_heat(findings: &SweepFindings) -> HeatData {
    match &findings.by {
        Some(by) => {
            let wanted = format!("done by {} {}", by.clock, days_in(by.wanted));
            let least = if findings.money.is_some() { "cheapest" } else { "least" };
            let title = match (by.keeps, by.at) {
                (Keeps::Surely, Some(at)) => format!("{least} {wanted}: {}", findings.points[at].words),
                (Keeps::Perhaps, Some(at)) => format!("Perhaps {wanted}: {}", findings.points[at].words),
                _ => format!("Nothing here is {wanted}"),
            };
            let what = format!("chance of being done by {}, %", by.clock);
            let percent = |told: &PointFindings| {
                let chance = told.chance.map_or(0.0, |chance| chance.value) * 100.0;
                // Only what is certain is called 0 or 100.
                let whole =
                    if chance > 0.0 && chance < 100.0 { chance.round().clamp(1.0, 99.0) } else { chance };
                (-chance, format!("{whole:.0}"))
            };
            heat_of(findings, "sweep", crate::findings::capital(&title), what, percent)
        }
        None => {
            let hours = |told: &PointFindings| {
                let s = told.finish_working_s[2].value;
                (s, hours_and_minutes(s))
            };
            heat_of(
                findings,
                "sweep",
                findings.knee.title.clone(),
                "time on the job, 8 days in 10 no longer, h:min".into(),
                hours,
            )
        }
    }
}

fn cost_heat(sweep: &Sweep, findings: &SweepFindings) -> Option<HeatData> {
    findings.money.as_ref()?;
    let what = format!("cost in the middle{}", in_currency(&sweep.base.currency));
    let cost = |told: &PointFindings| {
        let middle = told.cost.map_or(0.0, |cost| cost[1].value);
        (middle, format!("{middle:.0}"))
    };
    Some(heat_of(findings, "cost", cheapest(sweep, findings), what, cost))
}

#[cfg(test)]
mod tests;
