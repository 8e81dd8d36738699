//! What is known of each loader, and of the gates they go through.

use super::clause::{Add, Clause, Part, Value};
use super::teller::{About, Teller, aside, clause, told, words};
use super::words::{article, beginning, within};
use crate::clearance::fits;
use crate::defaults::LOADING;
use crate::key::{loader, pass};
use crate::lift::LiftFigure;
use crate::raw::{RawLoader, RawPass};
use crate::starter::usual;
use crate::units::amount;
use crate::units::dimension::Dimension;

const NONE: [&[&str]; 2] = [&[], &[]];
const LOADINGS: [&[&str]; 2] = [&["10 s", "15 s", "20 s", "30 s", "45 s", "60 s"]; 2];
const WIDTHS: [&[&str]; 2] =
    [&["36 in", "42 in", "48 in", "54 in", "66 in"], &["0.9 m", "1.1 m", "1.3 m", "1.6 m", "1.9 m"]];
const GATES: [&[&str]; 2] =
    [&["4 ft", "5 ft", "6 ft", "8 ft", "10 ft"], &["1.2 m", "1.5 m", "1.8 m", "2.5 m", "3 m"]];
impl Teller<'_> {
    /// Loaders, up to three sentences each.
    pub(super) fn machines(&self) -> Vec<Clause> {
        self.raw.loaders.iter().flat_map(|loader| self.machine(loader)).collect()
    }

    fn machine(&self, raw: &RawLoader) -> [Clause; 3] {
        let name = raw.named.shown();
        let about = |key: &str, title: &'static str| About::of("loader", name, loader::KEYS, key, title);
        let the = beginning(name);
        let loading = about("loading", "filling the bucket");
        let loading = self.or_usual(loading, raw.loading.as_ref(), LOADING.value, LOADINGS);
        let width = about("width", "how wide it is");
        let width = self.or_none(width, raw.width.as_ref(), "narrow enough for every gate", WIDTHS);
        let wide = if raw.width.is_some() { " wide." } else { "." };
        let mut lifts = vec![words(format!(" By its manual {} has ", within(name)))];
        lifts.extend(self.lifts(raw));
        lifts.push(words("."));
        [
            aside("machine", vec![words(format!(" {the} fills its bucket in ")), told(loading), words(".")]),
            aside(
                "machine",
                vec![words(format!(" {the} is ")), told(self.within_gates(raw, width)), words(wide)],
            ),
            aside("machine", lifts),
        ]
    }

    /// A machine made wider than its gates would get nowhere.
    fn within_gates(&self, raw: &RawLoader, mut value: Value) -> Value {
        let widths =
            || self.raw.passes.iter().filter_map(|pass| pass.width.as_ref()).map(|width| width.value);
        let goes_through = |width: f64| widths().all(|gate| fits(width, gate));
        let goes_now = raw.width.as_ref().is_some_and(|width| goes_through(width.value));
        value.more = value.more.filter(|more| !goes_now || metres(more).is_some_and(goes_through));
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
            let value = of_the_manual(self.given(about(lift.figure), rated, NONE));
            parts.extend([words(format!("{before} {} of ", lift.figure.words())), told(value)]);
        }
        if parts.is_empty() {
            let about = about(LiftFigure::HydraulicLift);
            let value = self.or_none(about, raw.lifts[0].rated.as_ref(), "no figure", NONE);
            parts.extend([told(of_the_manual(value)), words(" of what it lifts")]);
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
        let first = if article(name).is_empty() { beginning(name) } else { name.to_owned() };
        let named = raw.named.name.as_ref().map(|at| self.name("pass", pass::KEYS, at, "the gate's name"));
        parts.extend(named.map(|value| told(Value { words: first, ..value })));
        if let Some(width) = &raw.width {
            let mut value =
                self.given(About::of("pass", name, pass::KEYS, "width", "how wide it is"), width, GATES);
            let machines = self.raw.loaders.iter().filter_map(|loader| loader.width.as_ref());
            let through = |gate: f64| machines.clone().filter(|machine| fits(machine.value, gate)).count();
            let today = through(width.value);
            value.less = value.less.filter(|less| metres(less).is_some_and(|less| through(less) == today));
            let value = self.as_in_a_starter(value, usual::gate(self.usual.units));
            parts.extend([words(" is "), told(value), words(" wide")]);
        }
        parts.push(words("."));
        Clause { name: Some(name.to_owned()), can_remove: true, ..clause("pass", parts) }
    }
}

/// A width as typed \[m\].
fn metres(typed: &str) -> Option<f64> {
    amount::parse(typed)
        .ok()
        .filter(|amount| amount.dimension == Dimension::LENGTH)
        .map(|it| it.in_units_of(1.0))
}

/// A figure that only the machine's manual can give: none is offered, nor a step from one, nor a unit alone, so that its name can be
/// typed before it.
fn of_the_manual(value: Value) -> Value {
    let [first, second, third] = LiftFigure::ALL.map(LiftFigure::words);
    let how = format!(
        "Take it from the machine's manual and type it with its unit. Without a name before it, it is taken as the {}; if another \
         figure stands there, type that one with its name: {first}, {second} or {third}.",
        value.title
    );
    Value { help: format!("{} {how}", value.help), units: Vec::new(), less: None, more: None, ..value }
}
