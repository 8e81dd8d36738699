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
    pub(crate) fn density_from(&self) -> String {
        let status = in_words(&self.status);
        format!("built-in table of materials: {}; typical value {status}", self.part("density"))
    }

    /// Where its fill factor comes from.
    pub(crate) fn fill_from(&self) -> String {
        format!("built-in table of materials: {}", self.part("fill"))
    }

    /// Where its settling comes from.
    pub(crate) fn settling_from(&self) -> String {
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

/// The material of a name; letters may be large or small.
pub(crate) fn find(name: &str) -> Option<&'static Material> {
    materials().iter().find(|material| material.name.eq_ignore_ascii_case(name.trim()))
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
            assert!(crate::quantity::fit(material.fill()).is_ok(), "{}", material.name);
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
        assert_eq!(find("moon dust"), None);
    }
}
