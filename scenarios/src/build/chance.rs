//! How days and loads differ: what the quantities of a file say about it, what `[spread]` says, and the built-in rest.

use super::makings::{Sense, inverse, inverted};
use crate::defaults::{self, COMMON};
use crate::diagnostics::{At, Diagnostics, Place, Read};
use crate::materials::Material;
use crate::quantity::given::{By, FIT, Given, describe, fit};
use crate::raw::{Raw, RawSpread, Switched};
use crate::source::Source;
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
pub(crate) fn statements(raw: &Raw, source: &Source<'_>) -> Read<Statements> {
    let mut statements = Statements::default();
    if raw.spread.switched == Switched::None {
        return Read::made(statements);
    }
    let wrong: Diagnostics = quantities(raw).filter_map(|quantity| statements.add(quantity)).collect();
    let contradictions = statements.contradictions(&raw.spread, source);
    Read { made: Some(statements), diagnostics: [wrong, contradictions].into_iter().collect() }
}

/// A quantity with the job factor it tells of, and the kind of noise.
struct Quantity<'r> {
    given: &'r Option<At<Given>>,
    sense: Sense,
    factor: &'static str,
    noise: Option<&'static str>,
}

fn quantities(raw: &Raw) -> impl Iterator<Item = Quantity<'_>> {
    let (direct, inverted) = (Sense::Direct, Sense::Inverted);
    let mut all = Vec::new();
    let mut add = |given, sense, factor, noise| all.push(Quantity { given, sense, factor, noise });
    if let Some(material) = &raw.material {
        add(&material.fill_factor, direct, "fill", Some("fill"));
    }
    for loader in &raw.loaders {
        add(&loader.loading, direct, "loader_pace", Some("loading"));
        add(&loader.dumping, direct, "loader_pace", Some("dump"));
        add(&loader.spread_time, direct, "loader_pace", None);
        add(&loader.speed_loaded, inverted, "travel", None);
        add(&loader.speed_empty, inverted, "travel", None);
        add(&loader.start_and_stop, direct, "travel", None);
    }
    raw.passes.iter().for_each(|pass| add(&pass.passing, direct, "travel", None));
    raw.rakers.iter().for_each(|raker| add(&raker.rate, inverted, "raker_pace", Some("raking")));
    for zone in &raw.zones {
        [&zone.volume, &zone.area, &zone.depth].into_iter().for_each(|size| add(size, direct, "need", None));
    }
    for pile in &raw.stockpiles {
        let volumes = std::iter::once(&pile.on_hand).chain(pile.deliveries.iter().map(|d| &d.volume));
        volumes.for_each(|volume| add(volume, direct, "bulk", None));
    }
    all.into_iter()
}

impl Statements {
    fn add(&mut self, quantity: Quantity<'_>) -> Option<Diagnostics> {
        let Quantity { given, sense, factor, noise } = quantity;
        let at = given.as_ref()?;
        let one = |says| Statement { place: at.place.clone(), typed: at.typed.clone(), says };
        let of_law = |law: &Distribution| {
            let law = if sense == Sense::Inverted { &inverse(law) } else { law };
            one(Says::Law(law.relative()))
        };
        match (&at.value, noise) {
            (Given::Days(three), _) => {
                let three = if sense == Sense::Inverted { inverted(*three) } else { *three };
                let Some(three) = relative(three) else {
                    let right = "give what is most likely, above zero";
                    return Some(Diagnostics::of_value(at, "typical may not be zero", right));
                };
                self.days.entry(factor).or_default().push(one(Says::Three(three)));
            }
            (Given::Law(law, By::Days), _) => self.days.entry(factor).or_default().push(of_law(law)),
            (Given::Law(law, By::Loads), Some(noise)) => {
                self.loads.entry(noise).or_default().push(of_law(law));
            }
            (Given::Figure(_) | Given::Law(..), _) => {}
        }
        None
    }

    fn contradictions(&self, spread: &RawSpread, source: &Source<'_>) -> Diagnostics {
        let mut diagnostics = Diagnostics::default();
        for (key, stated) in &self.days {
            let Some(said) = spread.days.get(key) else { continue };
            let there = source.where_it_stands(&said.place);
            for one in stated {
                let what = format!("how days differ in {key} is said here and {there}");
                let right = format!("keep this, or give one figure here and keep [spread.days] {key}");
                diagnostics.problem(&one.place, &one.typed, what, right);
            }
        }
        for (key, stated) in &self.loads {
            let said = spread.loads.get(key).map(|said| (&said.place, said.value.clone()));
            let first = stated.first().map(|one| (&one.place, one.law()));
            let Some((place, law)) = said.or(first) else { continue };
            let there = source.where_it_stands(place);
            for one in stated.iter().filter(|one| !alike(&one.law(), &law)) {
                let what = format!("how loads differ in {key} is said here and, differently, {there}");
                let right = format!("all loaders share it: give it once under [spread.loads] {key}");
                diagnostics.problem(&one.place, &one.typed, what, right);
            }
        }
        diagnostics
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

/// Whether two laws are the same but for rounding.
fn alike(a: &Distribution, b: &Distribution) -> bool {
    let same_family = std::mem::discriminant(a) == std::mem::discriminant(b);
    let close = |p: f64| (a.quantile(p) - b.quantile(p)).abs() <= 1e-9 * (a.quantile(p).abs() + 1e-9);
    same_family && [0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99].into_iter().all(close)
}

/// Makes the chance of the job. `table` is the material whose fill factor is taken from the built-in table.
pub(super) fn make(raw: &Raw, statements: &Statements, table: Option<&Material>) -> Read<Chance> {
    if raw.spread.switched == Switched::None {
        return Read::made(Chance::none());
    }
    Read::of(|diagnostics| {
        let mut day = |key| of_days(key, &raw.spread, statements, table).join(diagnostics);
        let days = JobFactors {
            day: day("day")?,
            loader_pace: day("loader_pace")?,
            travel: day("travel")?,
            raker_pace: day("raker_pace")?,
            fill: day("fill")?,
            need: day("need")?,
            bulk: day("bulk")?,
        };
        let mut load = |key| of_loads(key, &raw.spread, statements).join(diagnostics);
        let loads = LoadNoise {
            fill: load("fill")?,
            loading: load("loading")?,
            haul: load("haul")?,
            dump: load("dump")?,
            return_leg: load("return")?,
            raking: load("raking")?,
        };
        Some(Chance { days, loads })
    })
}

fn of_days(
    key: &str,
    spread: &RawSpread,
    statements: &Statements,
    table: Option<&Material>,
) -> Read<Distribution> {
    if let Some(said) = spread.days.get(key) {
        return Read::made(said.value.clone());
    }
    let Some((_, cv, words)) = defaults::DAYS.iter().find(|(its, ..)| *its == key) else {
        return Read::made(Distribution::Constant(1.0));
    };
    if let Some(law) = statements.days.get(key).and_then(|stated| together(key, stated, words)) {
        return law;
    }
    let path = format!("spread.days.{key}");
    if let (Some(row), true) = (table, key == "fill")
        && let Some(law) = relative(row.fill()).and_then(|three| fit(three).ok())
    {
        let words =
            format!("{words} from one day to the next as the material's low and high: {}", range(&law));
        return Read::assumed(law.relative(), path, words, row.fill_from());
    }
    let words = format!("{words} by about {} % from one day to the next", figure(cv * 100.0));
    Read::assumed(Distribution::Lognormal { mean: 1.0, cv: *cv }, path, words, COMMON)
}

/// One law from all that is said: quantities that move together share good and bad days.
fn together(key: &str, stated: &[Statement], words: &str) -> Option<Read<Distribution>> {
    if let [Statement { says: Says::Law(law), .. }] = stated {
        return Some(Read::made(law.clone()));
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
    Some(Read::assumed(law.relative(), format!("spread.days.{key}"), words, FIT))
}

fn range(law: &Distribution) -> String {
    let share = |p| figure(law.quantile(p) / law.mean() * 100.0);
    format!("one day in ten below {} %, one in ten above {} % of the mean", share(0.1), share(0.9))
}

fn of_loads(key: &str, spread: &RawSpread, statements: &Statements) -> Read<Distribution> {
    if let Some(said) = spread.loads.get(key) {
        return Read::made(said.value.clone());
    }
    if let Some(one) = statements.loads.get(key).and_then(|stated| stated.first()) {
        return Read::made(one.law());
    }
    let Some((_, cv, words)) = defaults::LOADS.iter().find(|(its, ..)| *its == key) else {
        return Read::made(Distribution::Constant(1.0));
    };
    let law = match key {
        "fill" => {
            let [least, mode, greatest] = defaults::LOAD_FILL;
            Distribution::Pert { least, mode, greatest }.relative()
        }
        _ => Distribution::Lognormal { mean: 1.0, cv: *cv },
    };
    let words = format!("{words} by about {} % from load to load", figure(cv * 100.0));
    Read::assumed(law, format!("spread.loads.{key}"), words, COMMON)
}
