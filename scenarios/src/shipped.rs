//! The scenarios that come with the program.

macro_rules! shipped {
    ($($name:literal),* $(,)?) => {
        &[$(($name, include_str!(concat!("../scenarios/", $name, ".toml")))),*]
    };
}

const SHIPPED: &[(&str, &str)] = shipped![
    "allotment-barrow",
    "market-garden-paths",
    "nursery-yard",
    "orchard-rows",
    "paddock-track",
    "riding-arena",
    "round-pen",
    "show-ground",
    "vineyard-rows",
    "woodland-trail",
];

/// The shipped scenarios: name and text. One of them, `vineyard-rows`, needs a file of observed values, see
/// [`shipped_files`].
pub fn shipped() -> &'static [(&'static str, &'static str)] {
    SHIPPED
}

/// Files that go with shipped scenarios: of observed values (`vineyard-loads.csv`) and a list of buckets for
/// [`buckets_text`](crate::buckets_text) (`arena-buckets.csv`, for `riding-arena`). File name and text.
pub fn shipped_files() -> &'static [(&'static str, &'static str)] {
    &[
        ("arena-buckets.csv", include_str!("../scenarios/arena-buckets.csv")),
        ("vineyard-loads.csv", include_str!("../scenarios/vineyard-loads.csv")),
    ]
}
