//! The built-in table of materials, and where its figures come from.

use crate::render::screen::Layout;
use scenarios::Material;
use scenarios::units::{System, density, density_number, figure};

/// What each material weighs, how full it fills a bucket, how it settles, and where that is known from.
pub fn materials(all: &[&Material], units: System, columns: u16) -> String {
    let mut layout = Layout::new(columns);
    for material in all {
        layout.section(&material.name, [figures(material, units)]).section("", sources(material)).gap();
    }
    let note = "Write the name under [material]. What is weighed on the spot is better: give density, fill_factor and \
                settling yourself where you know them.";
    layout.section("In a file", [note.to_owned()]);
    layout.text()
}

fn figures(material: &Material, units: System) -> String {
    let [low, typical, high] = material.density_kg_per_m3;
    let range =
        |low: String, high: String| if low == high { String::new() } else { format!(" ({low} to {high})") };
    let weight = |kg_per_m3| figure(density_number(kg_per_m3, units).0);
    let share = |share: f64| figure(share * 100.0);
    let [least, fill, most] = material.fill_factor;
    format!(
        "{}{} loose; fills a bucket to {} %{} of heaped; settles {} %",
        density(typical, units),
        range(weight(low), weight(high)),
        share(fill),
        range(share(least), share(most)),
        share(material.settling)
    )
}

fn sources(material: &Material) -> Vec<String> {
    let named = [
        ("weight", material.density_from()),
        ("fill", material.fill_from()),
        ("settling", material.settling_from()),
    ];
    let plain = |from: &str| from.trim_start_matches("built-in table of materials: ").to_owned();
    named.iter().map(|(what, from)| format!("{what}: {}", plain(from))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_material_stands_there_with_its_figures_and_sources() {
        let all: Vec<&Material> = scenarios::materials().iter().collect();
        for units in [System::Us, System::Metric] {
            let text = anstream::adapter::strip_str(&materials(&all, units, 80)).to_string();
            assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
            let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
            for material in &all {
                let typical = density(material.density_kg_per_m3[1], units);
                assert!(flat.contains(&typical), "{typical} of {}", material.name);
            }
            assert_eq!(flat.matches("weight: ").count(), all.len());
            assert_eq!(flat.matches("settles ").count(), all.len());
            let foreign = if units == System::Us { "kg/m3" } else { "lb/yd3" };
            assert!(!flat.contains(foreign), "{flat}");
        }
    }
}
