//! The built-in figures beside published ones: sanity bands, not equalities. Where a default lies outside, the comparison
//! `outside` says by how much, and the page says why.

use super::comparison::{Comparison, Status};
use super::table::Table;
use super::{job, read};
use scenarios::{Material, materials};
use sim::Distribution;

/// Each built-in material, the published rows that bound its density (material and state, first words), and the rows that
/// bound its fill factor; none where no row speaks of it.
const ROWS: &[(&str, &[&str], &[&str])] = &[
    ("wood chips, green", &["wood chips, green", "wood chips (hardwood/softwood)"], &[]),
    ("wood chips, dry", &["wood chips, dry", "wood chips, shredded/dry"], &[]),
    ("wood chips and bark with soil", &["wood chips/bark with 30% soil"], &[]),
    ("bark mulch", &["mulch products"], &[]),
    ("bark mulch, wet", &["mulch products", "pine bark mulch, saturated"], &[]),
    ("shredded wood mulch", &["mulch products", "mixed wood mulch, saturated"], &[]),
    ("compost", &["finished compost", "compost (general)"], &[]),
    ("compost, wet", &["compost (general)", "compost, saturated"], &[]),
    ("leaves", &["leaves"], &[]),
    ("yard waste", &["yard waste", "yard debris"], &[]),
    ("topsoil, dry", &["earth loose dry", "earth dry loose", "soil blends"], &["soil"]),
    ("topsoil, moist", &["soil blends"], &["moist loam"]),
    ("topsoil, wet", &["soil blends", "earth excavated wet"], &["moist loam"]),
    ("sandy loam, wet", &["sandy loam, saturated", "earth loose dry"], &["moist loam"]),
    ("earth and gravel, dry", &["earth and gravel"], &["rock-dirt mixture"]),
    ("mud", &["mud"], &["wet clay"]),
    ("sand, dry", &["sand loose dry", "gravel and sand dry"], &["mixed moist aggregates"]),
    ("sand, damp", &["sand"], &["mixed moist aggregates"]),
    ("sand, wet", &["sand loose damp", "sand wet", "gravel and sand wet"], &["mixed moist aggregates"]),
    (
        "gravel and sand, dry",
        &["gravel and sand dry", "gravel or crushed stone loose dry"],
        &["mixed moist aggregates"],
    ),
    (
        "gravel and sand, wet",
        &["gravel and sand wet", "gravel or crushed stone wet"],
        &["mixed moist aggregates"],
    ),
    (
        "pea gravel",
        &["gravel as listed", "gravel or crushed stone loose dry", "gravel and sand dry"],
        &["uniform aggregate 1/8-3/8 in"],
    ),
    (
        "crushed stone",
        &["gravel or crushed stone loose dry", "rock and stone, crushed", "limestone, crushed"],
        &["uniform aggregate 1/2-3/4 in"],
    ),
    ("crushed stone, wet", &["gravel or crushed stone"], &["uniform aggregate 1/2-3/4 in"]),
    (
        "crushed limestone",
        &["limestone, crushed", "rock and stone, crushed"],
        &["uniform aggregate 1/2-3/4 in"],
    ),
    ("coarse stone", &["stone, graded", "gravel as listed"], &["uniform aggregate 1 in and over"]),
];

fn rows_of(material: &Material) -> (&'static [&'static str], &'static [&'static str]) {
    let found = ROWS.iter().find(|(name, ..)| *name == material.name);
    let (_, density, fill) = found.unwrap_or_else(|| panic!("{} has no published row", material.name));
    (density, fill)
}

/// Least and greatest of the rows that begin with one of these words.
fn hull(
    table: &Table,
    words: impl Fn(&csv::StringRecord) -> String,
    wanted: &[&str],
    unit: &str,
) -> (f64, f64) {
    let (low, high) = (format!("low{unit}"), format!("high{unit}"));
    let mut found = Vec::new();
    for want in wanted {
        let rows: Vec<_> = table.rows.iter().filter(|row| words(row).starts_with(want)).collect();
        assert!(!rows.is_empty(), "no row begins with {want}");
        found.extend(rows.iter().flat_map(|row| [table.number(row, &low), table.number(row, &high)]));
    }
    (found.iter().copied().fold(f64::INFINITY, f64::min), found.iter().copied().fold(0.0, f64::max))
}

pub(super) fn densities() -> Comparison {
    let mut comparison = Comparison::new(
        "The densities of the built-in table of materials lie within the published ones, to half a kilogram",
        "state waste agencies, US Army TM 9-2320-366-10-1, table 2-15, soil yards and trade pages (bulk_density.csv names \
         each row's source); of the rows used one is from memory, one second hand, the rest seen",
        Status::Seen,
        0.0,
    );
    let table = Table::read("bulk_density.csv");
    let words = |row: &csv::StringRecord| format!("{} {}", &row[0], &row[1]);
    for material in materials() {
        let (low, high) = hull(&table, words, rows_of(material).0, "_kg_per_m3");
        for (name, value) in ["low", "typical", "high"].iter().zip(material.density_kg_per_m3) {
            let what = format!("{}, {name}: kg/m3", material.name);
            comparison.within(what, value, low - 0.5, high + 0.5);
        }
    }
    comparison
}

pub(super) fn fill_factors() -> Comparison {
    let mut comparison = Comparison::new(
        "The fill factors of the built-in table lie within the handbooks' (wood, bark and compost stand in none)",
        "Peurifoy et al., Construction Planning, Equipment, and Methods, loaders; Nunnally, Construction Methods and \
         Management, excavators (fill_factors.csv)",
        Status::Memory,
        0.0,
    );
    let table = Table::read("fill_factors.csv");
    for material in materials() {
        let rows = rows_of(material).1;
        if rows.is_empty() {
            continue;
        }
        let (low, high) = hull(&table, |row| row[0].to_owned(), rows, "");
        for (name, value) in ["low", "typical", "high"].iter().zip(material.fill_factor) {
            comparison.within(format!("{}, {name}", material.name), value, low, high);
        }
    }
    comparison
}

/// What the reader takes where a file says nothing: the raker's rate \[m3/h\], and how loads differ.
fn defaults(material: &str) -> sim::Job {
    let material = format!("name = \"{material}\"");
    read(&job(&material, "volume = \"100 yd3\"", "heaped = \"14 ft3\"")).job
}

/// Coefficient of variation.
fn cv(law: &Distribution) -> f64 {
    law.sd() / law.mean()
}

pub(super) fn outside() -> Comparison {
    let mut comparison = Comparison::new(
        "Where a default lies outside published figures: how many times as large it is (said here, not claimed to be right)",
        "hand work: trade forum reports (seen), ILO norms for labour-based works (from memory); load-to-load spread: a field \
         study of forest machines (field_variability.csv, seen)",
        Status::Seen,
        0.0,
    );
    let rate = |material| defaults(material).rakers[0].rate_m3_per_h;
    let chips = rate("wood chips, green");
    comparison.exact(
        "raking chips over the quickest report of mulch placed by hand, 2.294 m3/h",
        chips / 2.294,
        8.3,
        0.05,
    );
    comparison.exact("raking chips over the slowest, 0.765 m3/h", chips / 0.765, 25.0, 0.5);
    comparison.exact(
        "raking dry sand over spreading in road works, 1.6875 m3/h",
        rate("sand, dry") / 1.6875,
        2.4,
        0.05,
    );
    let table = Table::read("field_variability.csv");
    let published = |element: &str| {
        let row = table.rows.iter().find(|row| &row[0] == element).unwrap();
        table.number(row, "cv_COMPUTED")
    };
    let noise = defaults("wood chips, green").chance.loads;
    let pairs = [
        ("loading", &noise.loading, "loading, productive", 0.445),
        ("the loaded leg", &noise.haul, "driving loaded, productive", 0.158),
        ("dumping", &noise.dump, "unloading, productive", 0.455),
        ("the empty leg", &noise.return_leg, "driving empty, productive", 0.179),
    ];
    for (what, law, element, times) in pairs {
        let what = format!("spread of {what} from load to load over \"{element}\"");
        comparison.exact(what, cv(law) / published(element), times, 0.0005);
    }
    comparison
}

#[test]
fn built_in_densities_lie_within_published_ones() {
    densities().judge(26 * 3);
}

#[test]
fn built_in_fill_factors_lie_within_the_handbooks() {
    fill_factors().judge(16 * 3);
}

#[test]
fn where_a_default_lies_outside_published_figures_it_is_said_by_how_much() {
    outside().judge(7);
}
