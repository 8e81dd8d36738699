//! What is known of each loader, and of the gates they go through.

use super::clause::{Add, Clause, Part, Value};
use super::teller::{About, Teller, aside, clause, told, words};
use super::words::article;
use crate::defaults::LOADING;
use crate::key::{loader, pass};
use crate::lift::LiftFigure;
use crate::raw::{RawLoader, RawPass};

const LOADINGS: [&[&str]; 2] = [&["10 s", "15 s", "20 s", "30 s", "45 s", "60 s"]; 2];
const WIDTHS: [&[&str]; 2] =
    [&["36 in", "42 in", "48 in", "54 in", "66 in"], &["0.9 m", "1.1 m", "1.3 m", "1.6 m", "1.9 m"]];
const GATES: [&[&str]; 2] =
    [&["4 ft", "5 ft", "6 ft", "8 ft", "10 ft"], &["1.2 m", "1.5 m", "1.8 m", "2.5 m", "3 m"]];
/// A figure of the manual with what it could be.
const LIFTS: [&[&str]; 2] = [
    &["hydraulic lift 1300 lb", "rated operating capacity 900 lb", "tipping load 1800 lb"],
    &["hydraulic lift 600 kg", "rated operating capacity 400 kg", "tipping load 800 kg"],
];

impl Teller<'_> {
    /// Loaders, up to three sentences each.
    pub(super) fn machines(&self) -> Vec<Clause> {
        self.raw.loaders.iter().flat_map(|loader| self.machine(loader)).collect()
    }

    fn machine(&self, raw: &RawLoader) -> [Clause; 3] {
        let name = raw.named.shown();
        let about = |key: &str, title: &'static str| About::of("loader", name, loader::KEYS, key, title);
        let the = if article(name).is_empty() { format!(" {name}") } else { format!(" The {name}") };
        let loading = about("loading", "filling the bucket");
        let loading = self.or_usual(loading, raw.loading.as_ref(), LOADING.value, LOADINGS);
        let width = about("width", "how wide it is");
        let width = self.or_none(width, raw.width.as_ref(), "narrow enough for every gate", WIDTHS);
        let wide = if raw.width.is_some() { " wide." } else { "." };
        let mut lifts =
            vec![words(format!(" By its manual {} has ", the.trim_start().replacen("The ", "the ", 1)))];
        lifts.extend(self.lifts(raw));
        lifts.push(words("."));
        [
            aside("machine", vec![words(format!("{the} fills its bucket in ")), told(loading), words(".")]),
            aside(
                "machine",
                vec![words(format!("{the} is ")), told(self.within_gates(raw, width)), words(wide)],
            ),
            aside("machine", lifts),
        ]
    }

    /// A machine made wider than its gates would get nowhere.
    fn within_gates(&self, raw: &RawLoader, mut value: Value) -> Value {
        let narrowest =
            self.raw.passes.iter().filter_map(|pass| pass.width.as_ref()).map(|width| width.value);
        let narrowest = narrowest.fold(f64::INFINITY, f64::min);
        let room = raw.width.as_ref().map_or(0.0, |width| narrowest - width.value);
        value.more = value.more.filter(|_| room > STEP || room < 0.0 && raw.width.is_some());
        value
    }

    /// The figures of the manual that are given; else that none is.
    fn lifts(&self, raw: &RawLoader) -> Vec<Part> {
        let about = |figure: LiftFigure| {
            About::of("loader", raw.named.shown(), loader::KEYS, figure.key(), figure.words())
        };
        let mut parts = Vec::new();
        for (lift, rated) in raw.lifts.iter().filter_map(|lift| Some((lift, lift.rated.as_ref()?))) {
            let before = if parts.is_empty() { "a" } else { " and a" };
            let mut value = self.given(about(lift.figure), rated, [&[], &[]]);
            value.choices = self.pick(LIFTS);
            parts.extend([words(format!("{before} {} of ", lift.figure.words())), told(value)]);
        }
        if parts.is_empty() {
            let value = self.or_none(
                about(LiftFigure::HydraulicLift),
                raw.lifts[0].rated.as_ref(),
                "no figure",
                LIFTS,
            );
            parts.extend([told(value), words(" of what it lifts")]);
        }
        parts
    }

    /// Gates, one sentence each.
    pub(super) fn passes(&self) -> Vec<Clause> {
        let mut clauses: Vec<Clause> = self.raw.passes.iter().map(|pass| self.pass(pass)).collect();
        if clauses.is_empty() {
            clauses.push(aside("pass", vec![words(" There is no gate on the way.")]));
        }
        if let Some(last) = clauses.last_mut() {
            last.add = Some(Add { kind: "pass".into(), words: "another gate".into() });
        }
        clauses
    }

    fn pass(&self, raw: &RawPass) -> Clause {
        let name = raw.named.shown();
        let mut parts = vec![words(if article(name).is_empty() { " " } else { " The " })];
        parts.extend(
            raw.named.name.as_ref().map(|at| told(self.name("pass", pass::KEYS, at, "the gate's name"))),
        );
        if let Some(width) = &raw.width {
            let mut value =
                self.given(About::of("pass", name, pass::KEYS, "width", "how wide it is"), width, GATES);
            let machines = self.raw.loaders.iter().filter_map(|loader| loader.width.as_ref());
            let next = machines.map(|machine| machine.value).filter(|machine| *machine <= width.value);
            let room = next.fold(f64::INFINITY, |room, machine| room.min(width.value - machine));
            value.less = value.less.filter(|_| room > STEP);
            let value = self.as_in_a_starter(value, crate::edit::usual_gate(self.usual.units));
            parts.extend([words(" is "), told(value), words(" wide")]);
        }
        parts.push(words("."));
        Clause { name: Some(name.to_owned()), can_remove: true, ..clause("pass", parts) }
    }
}

/// The greatest step of a width \[m\].
const STEP: f64 = 0.1525;
