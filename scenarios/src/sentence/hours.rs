//! When: the day, the hours, the breaks, getting ready and cleaning up.

use super::clause::{Add, Clause, Value};
use super::teller::{About, Teller, aside, clause, told, words};
use crate::calendar;
use crate::defaults::START;
use crate::diagnostics::At;
use crate::key::{shift, top};
use crate::parse::clock::{DAY, clock_of};
use crate::raw::RawBreak;
use crate::units::{System, clock};

const MINUTE: f64 = 60.0;
/// Steps of the clock \[s\].
const QUARTER: f64 = 15.0 * MINUTE;
/// Breaks people have.
const BREAKS: [&str; 4] = ["12:00-12:30", "12:00-13:00", "10:00-10:15", "15:00-15:15"];
const STRETCHES: [&[&str]; 2] = [&["5 min", "10 min", "15 min", "20 min", "30 min", "1 h"]; 2];

impl Teller<'_> {
    pub(super) fn hours(&self) -> Vec<Clause> {
        let mut clauses = vec![self.date(), self.start(), self.end()];
        clauses.extend(self.breaks());
        clauses
    }

    fn date(&self) -> Clause {
        let known = top::DATE;
        let about = About { key: "date".into(), title: "the day", known };
        let value = match &self.raw.date {
            Some(at) => {
                let date = at.value;
                let day = |days: i64| calendar::later(date, days).map(|date| date.to_string());
                Value { less: day(-1), more: day(1), ..about.value(calendar::whole(date), date.to_string()) }
            }
            None => Value { usual: true, ..about.value("any day".into(), String::new()) },
        };
        aside("date", vec![words(", on "), told(value)])
    }

    /// The first time of the day at which something is fixed.
    fn first_fixed(&self) -> f64 {
        let breaks = self.raw.shift.breaks.first().map_or(DAY, |first| first.from.value);
        self.raw.shift.end.as_ref().map_or(breaks, |end| end.value.min(breaks))
    }

    fn started(&self) -> f64 {
        self.raw.shift.start.as_ref().map_or(START.value, |start| start.value)
    }

    fn start(&self) -> Clause {
        let about = About::in_table("shift", shift::KEYS, "start", "when work begins");
        let (at, typed) = match &self.raw.shift.start {
            Some(start) => (start.value, super::figures::typed(start, self.text)),
            None => (START.value, clock(START.value, self.clock_system())),
        };
        let choices = ["07:00", "07:30", "08:00", "08:30", "09:00", "13:00"].map(str::to_owned).to_vec();
        let [less, more] = self.times(at, &typed, QUARTER, [0.0, self.first_fixed() - QUARTER]);
        let value = Value { less, more, choices, ..about.value(self.clock(at), typed) };
        let usual = self.raw.shift.start.is_none() || value.typed == self.usual.start;
        clause("shift", vec![words(", from "), told(Value { usual, ..value })])
    }

    fn end(&self) -> Clause {
        let about = About::in_table("shift", shift::KEYS, "end", "when work ends for the day");
        let choices = ["15:30", "16:00", "16:30", "17:00", "18:00", "none"].map(str::to_owned).to_vec();
        let value = match &self.raw.shift.end {
            Some(end) => {
                let typed = super::figures::typed(end, self.text);
                let last = self.raw.shift.breaks.last().map_or(self.started() + 3600.0, |last| last.to.value);
                let [less, more] = self.times(end.value, &typed, QUARTER, [last, DAY]);
                Value { less, more, ..about.value(self.clock(end.value), typed) }
            }
            None => Value { usual: true, ..about.value("it is done".into(), String::new()) },
        };
        aside("shift", vec![words(" until "), told(Value { choices, ..value })])
    }

    /// The times before and after one, on whole steps, written as it is; none outside the limits.
    pub(super) fn times(
        &self,
        at: f64,
        typed: &str,
        step: f64,
        [least, most]: [f64; 2],
    ) -> [Option<String>; 2] {
        let (down, up) = (((at - 1.0) / step).floor() * step, (at / step).floor() * step + step);
        let system = clock_of(typed);
        let written = |time: f64| (least <= time && time <= most).then(|| clock_written(time, system));
        [written(down), written(up)]
    }

    fn breaks(&self) -> Vec<Clause> {
        let breaks = &self.raw.shift.breaks;
        let add = Some(Add { kind: "break".into(), words: "another break".into() });
        if breaks.is_empty() {
            let about = About::in_table("shift", shift::KEYS, "breaks", "breaks");
            let choices = BREAKS.map(str::to_owned).to_vec();
            let usual = !self.raw.shift.breaks_are_said;
            let value = Value { usual, choices, ..about.value("no break".into(), String::new()) };
            let parts = vec![words(", "), told(value), words(".")];
            return vec![Clause { add, ..clause("breaks", parts) }];
        }
        let mut clauses: Vec<Clause> = (0..breaks.len()).map(|at| self.one_break(at)).collect();
        if let Some(last) = clauses.last_mut() {
            last.parts.push(words("."));
            last.add = add;
        }
        clauses
    }

    fn one_break(&self, at: usize) -> Clause {
        let breaks = &self.raw.shift.breaks;
        let RawBreak { from, to } = &breaks[at];
        let before = match (at, breaks.len()) {
            (0, 1) => ", break ",
            (0, _) => ", breaks ",
            (at, count) => super::words::between(at, count, " and "),
        };
        let about = About::in_table("shift", shift::KEYS, "breaks", "a break");
        let said = format!("{} to {}", self.clock(from.value), self.clock(to.value));
        let typed = self.break_typed(from, to);
        let next = breaks.get(at + 1).map_or(DAY, |next| next.from.value);
        let most = self.raw.shift.end.as_ref().map_or(next, |end| next.min(end.value - 1.0));
        let system = clock_of(&typed);
        let with =
            |until: f64| format!("{}-{}", clock_written(from.value, system), clock_written(until, system));
        let (less, more) = (to.value - QUARTER, to.value + QUARTER);
        let value = Value {
            key: format!("shift.breaks.{}", at + 1),
            less: (less > from.value).then(|| with(less)),
            more: (more <= most).then(|| with(more)),
            choices: BREAKS.map(str::to_owned).to_vec(),
            ..about.value(said, typed)
        };
        let parts = vec![words(before), told(value)];
        Clause { name: Some((at + 1).to_string()), can_remove: true, ..clause("breaks", parts) }
    }

    /// A break in one text stands at the same place twice; of a table only its times are known.
    fn break_typed(&self, from: &At<f64>, to: &At<f64>) -> String {
        match from.place.span == to.place.span {
            true => super::figures::typed(from, self.text),
            false => {
                format!("{}-{}", super::figures::typed(from, self.text), super::figures::typed(to, self.text))
            }
        }
    }

    /// Getting ready before the first load, cleaning up after the last.
    pub(super) fn preparing(&self) -> Vec<Clause> {
        let set_up = About::in_table("shift", shift::KEYS, "set_up", "getting ready");
        let clean_up = About::in_table("shift", shift::KEYS, "clean_up", "cleaning up");
        let raw = &self.raw.shift;
        let takes = |what: &str, value| aside("hours", vec![words(what), told(value), words(".")]);
        let mut clauses = vec![
            takes(" Getting ready takes ", self.or_none(set_up, raw.set_up.as_ref(), "no time", STRETCHES)),
            takes(" Cleaning up takes ", self.or_none(clean_up, raw.clean_up.as_ref(), "no time", STRETCHES)),
        ];
        clauses.extend(self.finish());
        clauses
    }
}

/// As it is typed; the end of the day stays in the day.
fn clock_written(seconds: f64, system: System) -> String {
    if (DAY..DAY + 1.0).contains(&seconds) { "24:00".into() } else { clock(seconds, system) }
}
