//! Done by when: the answer, large.

use crate::findings::{self, Calendar, DoneBy, DoneRow, PLAN_SHARE};
use crate::forecast::run::Forecast;
use crate::render::page::cautions;
use crate::render::page::charts::Charts;
use crate::render::page::fold::{Part, more};
use crate::render::page::table::{Row, Table};
use crate::render::page::words::tight;
use maud::{Markup, html};
use sim::Sorted;

pub(super) fn answer(forecast: &Forecast) -> Markup {
    let findings = findings::done_by(forecast);
    html! {
        section id="range" {
            h2 { "Done by when" }
            (cautions::heed(&forecast.scenario.cautions))
            div.answer {
                @if findings.order.enough { p.big { (large(&findings)) } } @else { p.plan { (tight(&findings.plan_on)) } }
                @if !findings.range.is_empty() { p { (tight(&findings.range)) } }
                @if findings.order.enough { p.plan { (tight(&findings.plan_on)) } }
                @if let Some(by) = &findings.by { p { (tight(&by.sentence)) } }
            }
        }
    }
}

/// The chance of every time; nothing where nothing is left to chance.
pub(super) fn part(forecast: &Forecast, charts: &Charts<'_>) -> Option<Part> {
    let findings = findings::done_by(forecast);
    let differ = findings.rows.iter().any(|row| row.finish_working_s != findings.plan.finish_working_s);
    (differ || charts.has("completion")).then(|| {
        let body = html! {
            (charts.figure("completion"))
            @if differ {
                (more("Times and chances in figures", html! {
                    div.pair {
                        (rows(&findings))
                        (chances(forecast))
                    }
                    p.note { (findings.intervals) }
                }))
            }
        };
        Part::open("chance", "How likely by when", body)
    })
}

/// The clock times of the good day and of the bad one.
fn large(findings: &DoneBy) -> Markup {
    match (findings.rows.first(), findings.bad_day()) {
        (Some(first), Some(last)) if first.clock != last.clock => html! {
            span { (first.clock) } " to " span { (last.clock) }
        },
        (Some(only), _) => html! { span { (only.clock) } },
        _ => html! { span { (findings.plan.clock) } },
    }
}

fn rows(findings: &DoneBy) -> Markup {
    let done = if findings.order.enough { "Done by" } else { "Crew stops by" };
    let row = |row: &DoneRow| {
        let head = html! { (row.odds) " " span.soft.nowrap { "(" (row.label) ")" } };
        Row::new(head, [&row.duration, &row.clock, &row.known].map(|words| html! { (tight(words)) }))
            .plan(row.share == PLAN_SHARE)
    };
    Table::new(["Kept on", "Time on the job", done, "Simulation error"])
        .rows(findings.rows.iter().map(row))
        .draw()
}

/// The chance of a handful of round clock times, for those who would rather ask it the other way round.
fn chances(forecast: &Forecast) -> Markup {
    let start_s = forecast.scenario.job.shift.start_s;
    let finish = forecast.study.sorted(|o| start_s + o.finish.clock.as_secs_f64());
    let times = round_times(&finish, forecast.scenario.job.shift.end_s);
    let calendar = Calendar::of(&forecast.scenario, forecast.units);
    let row = |at: &f64| {
        let by = sim::Duration::try_from_secs_f64(at - start_s).unwrap_or(sim::Duration::MAX);
        let chance = findings::percent(forecast.study.share_done_by(by).value);
        Row::new(html! { (tight(&calendar.clock(*at))) }, [html! { (tight(&chance)) }])
    };
    html! { @if times.len() > 1 { (Table::new(["Done by", "Chance"]).rows(times.iter().map(row)).draw()) } }
}

/// Round times of the clock \[s after midnight of the first day\] between a nearly hopeless and a nearly certain one: a
/// handful within a day; noon and the end of the day where the job may end on one of several.
fn round_times(finish: &Sorted, end_s: Option<f64>) -> Vec<f64> {
    const STEPS_MIN: [f64; 8] = [1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 120.0];
    const MOST: f64 = 5.0;
    const DAY_S: f64 = 86_400.0;
    let (low, high) = (finish.percentile(0.02).value, finish.percentile(0.98).value);
    if low >= high {
        return Vec::new();
    }
    if let Some(end_s) = end_s.filter(|_| (low / DAY_S).floor() != (high / DAY_S).floor()) {
        let days = (low / DAY_S).floor() as u32..=(high / DAY_S).floor() as u32;
        let of_day = |day: u32| [DAY_S / 2.0, end_s].map(|s| f64::from(day) * DAY_S + s);
        return days.flat_map(of_day).filter(|at| (low..high + DAY_S / 2.0).contains(at)).take(8).collect();
    }
    let step =
        STEPS_MIN.iter().map(|min| min * 60.0).find(|step| (high - low) / step <= MOST).unwrap_or(7_200.0);
    let first = (low / step).ceil() as u32;
    (first..).map(|n| f64::from(n) * step).take_while(|at| *at < high + step).take(8).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn round_times_span_what_may_happen() {
        let finish = Sorted::new((0..=100).map(|i| 36_000.0 + 60.0 * f64::from(i)));
        let times: Vec<f64> = round_times(&finish, None).iter().map(|s| s / 60.0).collect();
        assert_eq!(times, [630.0, 660.0, 690.0, 720.0]);
    }

    #[test]
    fn a_job_that_may_end_on_several_days_is_asked_at_noon_and_at_the_end_of_each() {
        let finish = Sorted::new((0..=100).map(|i| 15.0 * 3600.0 + 0.3 * 3600.0 * f64::from(i)));
        let hours: Vec<f64> = round_times(&finish, Some(16.5 * 3600.0)).iter().map(|s| s / 3600.0).collect();
        assert_eq!(hours, [16.5, 36.0, 40.5]);
    }

    #[test]
    fn where_nothing_is_left_to_chance_no_chances_are_told() {
        assert!(round_times(&Sorted::new([5.0; 20]), None).is_empty());
    }
}
