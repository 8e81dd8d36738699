//! Families of distributions as they are typed.

use crate::diagnostics::Diagnostics;
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

impl Item<'_> {
    /// Reads a table with a family: the law, in the unit its kind is kept in, and the name of the family.
    pub(super) fn family(
        &self,
        table: &Table,
        kind: Kind,
        diagnostics: &mut Diagnostics<'_>,
    ) -> Option<(Distribution, String)> {
        let node = table.get("family")?;
        let place = self.place.key("family");
        let family =
            Item { node, place: place.clone() }.text("write the name of a family in quotes", diagnostics)?;
        let name = family.value.to_lowercase();
        let Some((_, keys)) = FAMILIES.iter().find(|(known, _)| *known == name) else {
            let all = FAMILIES.iter().map(|(known, _)| *known).collect::<Vec<_>>().join(", ");
            let right = nearest(&name, FAMILIES.iter().map(|(known, _)| *known)).map_or_else(
                || format!("known families are {all}"),
                |near| format!("the nearest is \"{near}\"; known families are {all}"),
            );
            diagnostics.wrong(&place, node, "this family is not known", right);
            return None;
        };
        let known: Vec<&str> = ["family", "by"].iter().chain(*keys).copied().collect();
        let fields = Fields::open(table, self.place.clone().at(&self.node.span), &[], &known, diagnostics);
        let law = if name == "observed" {
            let values = observed::read(self, &fields, kind, diagnostics)?;
            Distribution::Observed(values.into())
        } else {
            let figures =
                keys.iter().map(|key| figure(&fields, key, &name, kind, diagnostics)).collect::<Vec<_>>();
            made(&name, &figures.into_iter().collect::<Option<Vec<f64>>>()?)?
        };
        match law.check() {
            Ok(()) => Some((law, name)),
            Err(error) => {
                self.wrong(chance_words(error), chance_remedy(error), diagnostics);
                None
            }
        }
    }
}

fn figure(
    fields: &Fields<'_>,
    key: &str,
    family: &str,
    kind: Kind,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<f64> {
    let own = match key {
        "cv" => Kind::Spread,
        "shape" => Kind::Shape,
        _ => kind,
    };
    let item = fields.need(key, &format!("a distribution of the family {family} has it"), diagnostics)?;
    let value = item.measure(own, diagnostics)?;
    let edge = matches!(key, "least" | "sd") && value == 0.0;
    (edge || item.believable(value, own, diagnostics)).then_some(value)
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
