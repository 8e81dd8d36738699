//! Families of distributions as they are typed.

use crate::diagnostics::Read;
use crate::document::Table;
use crate::fields::{Fields, Item};
use crate::nearest::nearest;
use crate::observed;
use crate::units::kind::Kind;
use sim::{ChanceError, Distribution};

/// The families that can be named, and the keys of each.
pub(crate) const FAMILIES: &[(&str, &[&str])] = &[
    ("constant", &["value"]),
    ("uniform", &["least", "greatest"]),
    ("triangular", &["least", "mode", "greatest"]),
    ("pert", &["least", "mode", "greatest"]),
    ("normal", &["mean", "sd"]),
    ("lognormal", &["mean", "cv"]),
    ("gamma", &["mean", "cv"]),
    ("weibull", &["mean", "shape"]),
    ("exponential", &["mean"]),
    ("observed", &["values", "file", "column", "unit"]),
];

impl<'d> Item<'d> {
    /// Reads a table with a family: the law, in the unit its kind is kept in, and the name of the family.
    pub(super) fn family(&self, table: &'d Table, kind: Kind) -> Read<(Distribution, String)> {
        Read::of(|diagnostics| {
            let item = self.inner(table.get("family")?, self.place.key("family"));
            let name = item.text("write the name of a family in quotes").join(diagnostics)?;
            let name = name.value.to_lowercase();
            let Some((_, keys)) = FAMILIES.iter().find(|(known, _)| *known == name) else {
                return item.wrong("this family is not known", known_families(&name)).join(diagnostics);
            };
            let known: Vec<&str> = ["family", "by"].iter().chain(*keys).copied().collect();
            let law = self.table_of(table, &[], &known, |fields| {
                if name == "observed" {
                    let values = observed::read(self, fields, kind)?;
                    return Some(Distribution::Observed(values.into()));
                }
                let figures: Vec<_> = keys.iter().map(|key| figure(fields, key, &name, kind)).collect();
                made(&name, &figures.into_iter().collect::<Option<Vec<f64>>>()?)
            });
            let law = law.join(diagnostics)?;
            match law.check() {
                Ok(()) => Some((law, name)),
                Err(error) => self.wrong(chance_words(error), chance_remedy(error)).join(diagnostics),
            }
        })
    }
}

fn known_families(name: &str) -> String {
    let all = FAMILIES.iter().map(|(known, _)| *known).collect::<Vec<_>>().join(", ");
    match nearest(name, FAMILIES.iter().map(|(known, _)| *known)) {
        None => format!("known families are {all}"),
        Some(near) => format!("the nearest is \"{near}\"; known families are {all}"),
    }
}

fn figure(fields: &mut Fields<'_>, key: &str, family: &str, kind: Kind) -> Option<f64> {
    let own = match key {
        "cv" => Kind::Spread,
        "shape" => Kind::Shape,
        _ => kind,
    };
    let item = fields.need(key, &format!("a distribution of the family {family} has it"))?;
    let value = fields.take(item.measure(own))?;
    let edge = matches!(key, "least" | "sd") && value == 0.0;
    if edge { Some(value) } else { fields.take(item.believable(value, own)) }
}

fn made(family: &str, figures: &[f64]) -> Option<Distribution> {
    Some(match (family, figures) {
        ("constant", [value]) => Distribution::Constant(*value),
        ("uniform", [least, greatest]) => Distribution::Uniform { least: *least, greatest: *greatest },
        ("triangular", [least, mode, greatest]) => {
            Distribution::Triangular { least: *least, mode: *mode, greatest: *greatest }
        }
        ("pert", [least, mode, greatest]) => {
            Distribution::Pert { least: *least, mode: *mode, greatest: *greatest }
        }
        ("normal", [mean, sd]) => Distribution::Normal { mean: *mean, sd: *sd },
        ("lognormal", [mean, cv]) => Distribution::Lognormal { mean: *mean, cv: *cv },
        ("gamma", [mean, cv]) => Distribution::Gamma { mean: *mean, cv: *cv },
        ("weibull", [mean, shape]) => Distribution::Weibull { mean: *mean, shape: *shape },
        ("exponential", [mean]) => Distribution::Exponential { mean: *mean },
        _ => return None,
    })
}

fn chance_words(error: ChanceError) -> String {
    format!("this distribution cannot be: {error}")
}

fn chance_remedy(error: ChanceError) -> &'static str {
    match error {
        ChanceError::NotFinite | ChanceError::Negative => "use figures that are 0 or more",
        ChanceError::OutOfOrder => "write least, mode and greatest in rising order",
        ChanceError::Spread => "give a mean above 0, a cv up to 200 % and a shape from 0.2 to 100",
        ChanceError::NormalTooWide => "use a lognormal or gamma distribution, which are never negative",
        ChanceError::NothingObserved => "give at least one observed value above 0",
    }
}
