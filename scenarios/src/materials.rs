//! The built-in table of materials.

use sim::LowTypicalHigh;
use std::sync::OnceLock;

const TABLE: &str = include_str!("../materials.csv");

/// A material of the built-in table.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// Name.
    pub name: String,
    /// Loose bulk density: lowest, typical, highest met \[kg/m3\].
    pub density_kg_per_m3: [f64; 3],
    /// Fill factor: low, typical, high \[-\].
    pub fill_factor: [f64; 3],
    /// Share of the depth lost by settling \[-\].
    pub settling: f64,
    /// Where the figures come from.
    pub source: String,
    /// How the source was met: SEEN, second hand or MEMORY.
    pub status: String,
}

impl Material {
    /// Where its density comes from, with the status of the source.
    pub fn density_from(&self) -> String {
        let status = in_words(&self.status);
        format!("built-in table of materials: {}; typical value {status}", self.part("density"))
    }

    /// Where its fill factor comes from.
    pub fn fill_from(&self) -> String {
        format!("built-in table of materials: {}", self.part("fill"))
    }

    /// Where its settling comes from.
    pub fn settling_from(&self) -> String {
        format!("built-in table of materials: {}", self.part("settling"))
    }

    /// The part of the source that tells of one figure.
    fn part(&self, figure: &str) -> String {
        let parts = self.source.split("; ");
        let part = parts.filter_map(|part| part.strip_prefix(figure)?.strip_prefix(": ")).next();
        in_words(part.unwrap_or(&self.source))
    }

    pub(crate) fn fill(&self) -> LowTypicalHigh {
        let [low, typical, high] = self.fill_factor;
        LowTypicalHigh { low, typical, high }
    }
}

/// The status of a source as a person says it.
fn in_words(status: &str) -> String {
    status.replace("SEEN", "read in the source").replace("MEMORY", "from memory")
}

/// All materials of the built-in table.
pub fn materials() -> &'static [Material] {
    static MATERIALS: OnceLock<Vec<Material>> = OnceLock::new();
    MATERIALS.get_or_init(|| parse(TABLE).unwrap_or_default())
}

/// The material of a name, or of words that only one has; letters may be large or small.
pub(crate) fn find(name: &str) -> Option<&'static Material> {
    match materials_called(name).as_slice() {
        [only] => Some(*only),
        _ => None,
    }
}

/// The share of the depth that a material of the table loses by settling; of any other none is known \[-\].
pub(crate) fn settling_of(name: &str) -> f64 {
    find(name).map_or(0.0, |material| material.settling)
}

/// The materials that common words can mean, in the order of the table: the one of that name alone, or all in whose name
/// the words stand or for which they are used.
///
/// ```
/// let names = |words| scenarios::materials_called(words).iter().map(|m| m.name.clone()).collect::<Vec<_>>();
/// assert_eq!(names("Sand"), ["sand, dry", "sand, damp", "sand, wet", "gravel and sand, dry", "gravel and sand, wet"]);
/// assert_eq!(names("green wood chips"), ["wood chips, green"]);
/// assert!(names("moon dust").is_empty());
/// ```
pub fn materials_called(words: &str) -> Vec<&'static Material> {
    let wanted = words_of(words);
    if wanted.is_empty() || words.len() > LONGEST {
        return Vec::new();
    }
    let all = materials().iter();
    let exact = all.clone().find(|material| material.name.eq_ignore_ascii_case(words.trim()));
    let same = || all.clone().find(|material| alike(&words_of(&material.name), &wanted));
    if let Some(only) = exact.or_else(same) {
        return vec![only];
    }
    all.filter(|material| wanted.iter().all(|word| means(word, material))).collect()
}

/// Longest name that is looked for \[bytes\].
const LONGEST: usize = 200;

/// Words that people use for materials of the table, besides those of its names.
const ALSO_CALLED: &[(&str, &[&str])] = &[
    ("arborist", &["wood chips, green"]),
    ("ballast", &["coarse stone", "crushed stone", "crushed stone, wet"]),
    ("base", &["crushed stone", "crushed stone, wet", "crushed limestone"]),
    ("dirt", &["topsoil, dry", "topsoil, moist", "topsoil, wet", "sandy loam, wet", "earth and gravel, dry"]),
    ("earth", &["topsoil, dry", "topsoil, moist", "topsoil, wet"]),
    ("garden", &["yard waste"]),
    ("gravel", &["crushed stone", "crushed stone, wet", "crushed limestone"]),
    ("humus", &["compost", "compost, wet"]),
    ("leaf", &["leaves"]),
    ("loam", &["topsoil, dry", "topsoil, moist", "topsoil, wet"]),
    ("mulch", &["wood chips, green", "wood chips, dry"]),
    ("pebble", &["pea gravel"]),
    ("road", &["crushed stone", "crushed stone, wet", "crushed limestone"]),
    ("rock", &["crushed stone", "crushed stone, wet", "crushed limestone", "coarse stone"]),
    ("soil", &["topsoil, dry", "topsoil, moist", "topsoil, wet", "sandy loam, wet", "earth and gravel, dry"]),
    ("stone", &["crushed limestone", "pea gravel"]),
    ("woodchip", &["wood chips, green", "wood chips, dry"]),
];

/// The words of a name, singular and in small letters, without those that join others.
fn words_of(name: &str) -> Vec<String> {
    let lower = name.to_lowercase();
    let words = lower.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty());
    let singular = |word: &str| match word.strip_suffix('s') {
        Some(one) if one.len() > 2 && !one.ends_with('s') => one.to_owned(),
        _ => word.to_owned(),
    };
    words.map(singular).filter(|word| !["and", "of", "with", "the", "for"].contains(&word.as_str())).collect()
}

/// Whether two names have the same words, in whatever order.
fn alike(one: &[String], other: &[String]) -> bool {
    one.len() == other.len() && one.iter().all(|word| other.contains(word))
}

fn means(word: &String, material: &Material) -> bool {
    let also = ALSO_CALLED.iter().find(|(known, _)| known == word);
    words_of(&material.name).contains(word)
        || also.is_some_and(|(_, names)| names.contains(&material.name.as_str()))
}

fn parse(text: &str) -> Option<Vec<Material>> {
    let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).from_reader(text.as_bytes());
    let rows = reader.records().map(|row| {
        let row = row.ok()?;
        let text = |i: usize| row.get(i).map(str::to_owned);
        let number = |i: usize| row.get(i)?.parse::<f64>().ok();
        Some(Material {
            name: text(0)?,
            density_kg_per_m3: [number(1)?, number(2)?, number(3)?],
            fill_factor: [number(4)?, number(5)?, number(6)?],
            settling: number(7)?,
            source: text(8)?,
            status: text(9)?,
        })
    });
    rows.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_of_the_table_is_read_and_believable() {
        assert_eq!(materials().len(), TABLE.trim().lines().count() - 1);
        assert!(materials().len() > 10);
        for material in materials() {
            for three in [material.density_kg_per_m3, material.fill_factor] {
                assert!(three[0] <= three[1] && three[1] <= three[2], "{}", material.name);
            }
            assert!((50.0..3000.0).contains(&material.density_kg_per_m3[1]), "{}", material.name);
            assert!((0.0..0.5).contains(&material.settling), "{}", material.name);
            assert!(crate::quantity::given::fit(material.fill()).is_ok(), "{}", material.name);
            assert!(!material.source.is_empty() && !material.status.is_empty(), "{}", material.name);
            for figure in ["density", "fill", "settling"] {
                let part = material.part(figure);
                assert!(!part.is_empty() && part != material.source, "{}: {figure}", material.name);
            }
        }
    }

    #[test]
    fn a_material_is_found_however_its_name_is_written() {
        assert_eq!(find("Wood chips, GREEN").unwrap().name, "wood chips, green");
        assert_eq!(find("green wood-chips").unwrap().name, "wood chips, green");
        assert_eq!(find("moon dust"), None);
    }

    #[test]
    fn common_words_find_their_material_or_a_list_to_choose_from() {
        for (words, count) in [
            ("sand", 5),
            ("gravel", 7),
            ("topsoil", 3),
            ("mulch", 5),
            ("stone", 5),
            ("stones", 5),
            ("chips", 3),
            ("wood chips", 3),
            ("woodchips", 2),
            ("soil", 6),
            ("dirt", 5),
            ("earth", 4),
            ("loam", 4),
            ("rock", 4),
            ("crushed stone", 1),
            ("compost", 1),
            ("pea stone", 1),
            ("road base", 3),
            ("limestone", 1),
            ("garden waste", 1),
            ("leaf", 1),
            ("wet sand", 1),
            ("dust", 0),
            ("", 0),
            (",", 0),
        ] {
            let found: Vec<&str> =
                materials_called(words).iter().map(|material| material.name.as_str()).collect();
            assert_eq!(found.len(), count, "{words}: {found:?}");
        }
        for (word, names) in ALSO_CALLED {
            for name in *names {
                assert!(materials().iter().any(|material| material.name == *name), "{word}: {name}");
            }
        }
    }
}
