//! Keys of a quantity that is given as a table: low, typical and high, or a distribution.

use super::family::FAMILIES;
use crate::key::{Holds, Key, LeftOut, key};
use crate::units::kind::Kind;

/// Low, typical and high.
pub(crate) const THREE: [&str; 3] = ["low", "typical", "high"];

const ITSELF: Holds = Holds::Itself("a figure of the quantity itself, with its unit");
const GOES: LeftOut = LeftOut::Taken("goes with the families that have it");

/// All keys such a table may have.
pub(crate) const KEYS: &[Key] = &[
    key("low", ITSELF, ALL_THREE, "\"15 s\"", "One day in ten is below this."),
    key("typical", ITSELF, ALL_THREE, "\"20 s\"", "What is most likely."),
    key(
        "high",
        ITSELF,
        ALL_THREE,
        "\"30 s\"",
        "One day in ten is above this. Also for speeds and rates the greatest of the three.",
    ),
    key(
        "family",
        Holds::Word(|| FAMILIES.iter().map(|(name, _)| *name).collect()),
        LeftOut::Taken("low, typical and high are wanted"),
        "\"lognormal\"",
        "The family of a distribution, for those who have measured.",
    ),
    key(
        "by",
        Holds::Word(|| vec!["loads", "days"]),
        LeftOut::Taken("\"loads\" where a quantity differs from load to load, else \"days\""),
        "\"days\"",
        "Whether the distribution tells how loads differ or how days differ.",
    ),
    key("value", ITSELF, GOES, "\"20 s\"", "The one value of a constant."),
    key("least", ITSELF, GOES, "\"12 s\"", "The least it can be."),
    key("mode", ITSELF, GOES, "\"18 s\"", "The most likely."),
    key("greatest", ITSELF, GOES, "\"40 s\"", "The greatest it can be."),
    key("mean", ITSELF, GOES, "\"20 s\"", "Its mean."),
    key("sd", ITSELF, GOES, "\"4 s\"", "Its standard deviation."),
    key(
        "cv",
        Holds::Figure(Kind::Spread),
        GOES,
        "\"25 %\"",
        "Its coefficient of variation: standard deviation over mean.",
    ),
    key("shape", Holds::Figure(Kind::Shape), GOES, "1.8", "The shape of a Weibull distribution."),
    key(
        "values",
        Holds::Itself("a list of figures, with their units or with unit beside it"),
        GOES,
        "[ \"18 s\", \"22 s\", \"20 s\" ]",
        "What was measured.",
    ),
    key(
        "file",
        Holds::Text,
        GOES,
        "\"loading-times.csv\"",
        "A CSV file with what was measured, beside the scenario file or in a folder below it. In place of values.",
    ),
    key("column", Holds::Text, GOES, "\"seconds\"", "The heading of its column."),
    key("unit", Holds::Text, GOES, "\"s\"", "The unit of figures that have none."),
];
const ALL_THREE: LeftOut = LeftOut::Needed("give all three of low, typical and high");
