//! How days and loads differ: what the quantities of a file say about it, what `[spread]` says, and the built-in rest.

use super::{Sense, inverted};
use crate::defaults::{self, COMMON};
use crate::diagnostics::{At, Diagnostics, Place};
use crate::materials::Material;
use crate::quantity::{By, FIT, Given, describe, fit};
use crate::raw::{Raw, RawSpread, Switched};
use crate::units::figure;
use sim::{Chance, Distribution, JobFactors, LoadNoise, LowTypicalHigh};
use std::collections::BTreeMap;

/// What the quantities of a file say about one job factor or kind of noise.
#[derive(Debug)]
struct Statement {
    place: Place,
    typed: String,
    says: Says,
}

#[derive(Debug)]
enum Says {
    /// Relative low, typical (1) and high.
    Three(LowTypicalHigh),
    /// A multiplier with mean 1.
    Law(Distribution),
}

/// All that the quantities of a file say about chance.
#[derive(Debug, Default)]
pub(crate) struct Statements {
    days: BTreeMap<&'static str, Vec<Statement>>,
    loads: BTreeMap<&'static str, Vec<Statement>>,
}

/// What every quantity of a file says; contradictions are problems.
pub(crate) fn statements(raw: &Raw, diagnostics: &mut Diagnostics<'_>) -> Statements {
    let mut statements = Statements::default();
    if raw.spread.switched == Switched::None {
        return statements;
    }
    let direct = Sense::Direct;
    if let Some(material) = &raw.material {
        statements.add(&material.fill_factor, direct, "fill", Some("fill"), diagnostics);
    }
    for loader in &raw.loaders {
        statements.add(&loader.loading, direct, "loader_pace", Some("loading"), diagnostics);
        statements.add(&loader.dumping, direct, "loader_pace", Some("dump"), diagnostics);
        statements.add(&loader.spread_time, direct, "loader_pace", None, diagnostics);
        statements.add(&loader.speed_loaded, Sense::Inverted, "travel", None, diagnostics);
        statements.add(&loader.speed_empty, Sense::Inverted, "travel", None, diagnostics);
        statements.add(&loader.start_and_stop, direct, "travel", None, diagnostics);
    }
    for pass in &raw.passes {
        statements.add(&pass.passing, direct, "travel", None, diagnostics);
    }
    for raker in &raw.rakers {
        statements.add(&raker.rate, Sense::Inverted, "raker_pace", Some("raking"), diagnostics);
    }
    for zone in &raw.zones {
        for size in [&zone.volume, &zone.area, &zone.depth] {
            statements.add(size, direct, "need", None, diagnostics);
        }
    }
    for pile in &raw.stockpiles {
        let volumes = std::iter::once(&pile.on_hand).chain(pile.deliveries.iter().map(|d| &d.volume));
        volumes.for_each(|volume| statements.add(volume, direct, "bulk", None, diagnostics));
    }
    statements.contradictions(&raw.spread, diagnostics);
    statements
}

impl Statements {
    fn add(
        &mut self,
        given: &Option<At<Given>>,
        sense: Sense,
        factor: &'static str,
        noise: Option<&'static str>,
        diagnostics: &mut Diagnostics<'_>,
    ) {
        let Some(at) = given else { return };
        let one = |says| Statement { place: at.place.clone(), typed: at.typed.clone(), says };
        match (&at.value, noise) {
            (Given::Figure(_), _) => {}
            (Given::Days(three), _) => {
                let three = if sense == Sense::Inverted { inverted(*three) } else { *three };
                match relative(three) {
                    Some(three) => self.days.entry(factor).or_default().push(one(Says::Three(three))),
                    None => diagnostics.wrong_at(
                        at,
                        "typical may not be zero",
                        "give what is most likely, above zero",
                    ),
                }
            }
            (Given::Law(law, By::Days), _) => {
                let law = if sense == Sense::Inverted { inverse(law) } else { law.clone() };
                self.days.entry(factor).or_default().push(one(Says::Law(law.relative())));
            }
            (Given::Law(law, By::Loads), Some(noise)) => {
                let law = if sense == Sense::Inverted { inverse(law) } else { law.clone() };
                self.loads.entry(noise).or_default().push(one(Says::Law(law.relative())));
            }
            (Given::Law(..), None) => {}
        }
    }

    fn contradictions(&self, spread: &RawSpread, diagnostics: &mut Diagnostics<'_>) {
        for (key, stated) in &self.days {
            let Some(said) = spread.days.get(key) else { continue };
            for one in stated {
                let what = format!(
                    "how days differ in {key} is said here and {}",
                    diagnostics.where_it_stands(&said.place)
                );
                let right = format!("keep this, or give one figure here and keep [spread.days] {key}");
                diagnostics.problem(&one.place, &one.typed, what, right);
            }
        }
        for (key, stated) in &self.loads {
            let said = spread
                .loads
                .get(key)
                .map(|said| (diagnostics.where_it_stands(&said.place), said.value.clone()));
            let first = stated.first().map(|one| (diagnostics.where_it_stands(&one.place), one.law()));
            let Some((at, law)) = said.or(first) else { continue };
            for one in stated.iter().filter(|one| !alike(&one.law(), &law)) {
                let what = format!("how loads differ in {key} is said here and, differently, {at}");
                let right = format!("all loaders share it: give it once under [spread.loads] {key}");
                diagnostics.problem(&one.place, &one.typed, what, right);
            }
        }
    }
}

impl Statement {
    fn law(&self) -> Distribution {
        match &self.says {
            Says::Law(law) => law.clone(),
            Says::Three(_) => Distribution::Constant(1.0),
        }
    }

    fn three(&self) -> LowTypicalHigh {
        match &self.says {
            Says::Three(three) => *three,
            Says::Law(law) => {
                let middle = law.quantile(0.5);
                LowTypicalHigh {
                    low: law.quantile(0.1) / middle,
                    typical: 1.0,
                    high: law.quantile(0.9) / middle,
                }
            }
        }
    }
}

fn relative(three: LowTypicalHigh) -> Option<LowTypicalHigh> {
    let by = three.typical;
    (by > 0.0).then(|| LowTypicalHigh { low: three.low / by, typical: 1.0, high: three.high / by })
}

/// The law of one over the quantity, for the families that have one here.
pub(crate) fn inverse(law: &Distribution) -> Distribution {
    match law {
        Distribution::Constant(value) => Distribution::Constant(1.0 / value),
        Distribution::Lognormal { mean, cv } => {
            Distribution::Lognormal { mean: (1.0 + cv * cv) / mean, cv: *cv }
        }
        Distribution::Observed(values) => Distribution::Observed(values.iter().map(|v| 1.0 / v).collect()),
        other => Distribution::Constant(1.0 / other.mean()),
    }
}

/// Whether two laws are the same but for rounding.
fn alike(a: &Distribution, b: &Distribution) -> bool {
    let same_family = std::mem::discriminant(a) == std::mem::discriminant(b);
    let close = |p: f64| (a.quantile(p) - b.quantile(p)).abs() <= 1e-9 * (a.quantile(p).abs() + 1e-9);
    same_family && [0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99].into_iter().all(close)
}

/// Makes the chance of the job. `table` is the material whose fill factor is taken from the built-in table.
pub(super) fn make(
    raw: &Raw,
    statements: &Statements,
    table: Option<&Material>,
    diagnostics: &mut Diagnostics<'_>,
) -> Chance {
    if raw.spread.switched == Switched::None {
        return Chance::none();
    }
    let mut day = |key| of_days(key, &raw.spread, statements, table, diagnostics);
    let days = JobFactors {
        day: day("day"),
        loader_pace: day("loader_pace"),
        travel: day("travel"),
        raker_pace: day("raker_pace"),
        fill: day("fill"),
        need: day("need"),
        bulk: day("bulk"),
    };
    let mut load = |key| of_loads(key, &raw.spread, statements, diagnostics);
    let loads = LoadNoise {
        fill: load("fill"),
        loading: load("loading"),
        haul: load("haul"),
        dump: load("dump"),
        return_leg: load("return"),
        raking: load("raking"),
    };
    Chance { days, loads }
}

fn of_days(
    key: &str,
    spread: &RawSpread,
    statements: &Statements,
    table: Option<&Material>,
    diagnostics: &mut Diagnostics<'_>,
) -> Distribution {
    if let Some(said) = spread.days.get(key) {
        return said.value.clone();
    }
    let Some((_, cv, words)) = defaults::DAYS.iter().find(|(its, ..)| *its == key) else {
        return Distribution::Constant(1.0);
    };
    if let Some(law) = statements.days.get(key).and_then(|stated| together(key, stated, words, diagnostics)) {
        return law;
    }
    let path = format!("spread.days.{key}");
    if let (Some(row), true) = (table, key == "fill")
        && let Some(law) = relative(row.fill()).and_then(|three| fit(three).ok())
    {
        let words =
            format!("{words} from one day to the next as the material's low and high: {}", range(&law));
        diagnostics.assume(path, words, row.fill_from());
        return law.relative();
    }
    diagnostics.assume(
        path,
        format!("{words} by about {} % from one day to the next", figure(cv * 100.0)),
        COMMON,
    );
    Distribution::Lognormal { mean: 1.0, cv: *cv }
}

/// One law from all that is said: quantities that move together share good and bad days.
fn together(
    key: &str,
    stated: &[Statement],
    words: &str,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Distribution> {
    if let [Statement { says: Says::Law(law), .. }] = stated {
        return Some(law.clone());
    }
    let count = stated.len() as f64;
    let mean =
        |part: fn(LowTypicalHigh) -> f64| stated.iter().map(|one| part(one.three())).sum::<f64>() / count;
    let three = LowTypicalHigh { low: mean(|t| t.low), typical: 1.0, high: mean(|t| t.high) };
    let law = fit(three).ok()?;
    let names: Vec<&str> = stated.iter().map(|one| one.place.path.as_str()).take(6).collect();
    let (say, share) = match stated.len() {
        1 => ("says", ""),
        _ => ("say", "; they share good and bad days, so their ranges are averaged"),
    };
    let names = names.join(", ");
    let words = format!(
        "{words} from one day to the next as {names} {say}: {} ({}{share})",
        range(&law),
        describe(&law)
    );
    diagnostics.assume(format!("spread.days.{key}"), words, FIT);
    Some(law.relative())
}

fn range(law: &Distribution) -> String {
    let share = |p| figure(law.quantile(p) / law.mean() * 100.0);
    format!("one day in ten below {} %, one in ten above {} % of the mean", share(0.1), share(0.9))
}

fn of_loads(
    key: &str,
    spread: &RawSpread,
    statements: &Statements,
    diagnostics: &mut Diagnostics<'_>,
) -> Distribution {
    if let Some(said) = spread.loads.get(key) {
        return said.value.clone();
    }
    if let Some(one) = statements.loads.get(key).and_then(|stated| stated.first()) {
        return one.law();
    }
    let path = format!("spread.loads.{key}");
    let Some((_, cv, words)) = defaults::LOADS.iter().find(|(its, ..)| *its == key) else {
        return Distribution::Constant(1.0);
    };
    diagnostics.assume(path, format!("{words} by about {} % from load to load", figure(cv * 100.0)), COMMON);
    if key == "fill" {
        let [least, mode, greatest] = defaults::LOAD_FILL;
        return Distribution::Pert { least, mode, greatest }.relative();
    }
    Distribution::Lognormal { mean: 1.0, cv: *cv }
}
