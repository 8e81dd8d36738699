//! The tables of the trade, from the scenario file to the job: coverage and settling, buckets and what they weigh, and the
//! built-in figures beside published ones. Sources and their status stand with each comparison.
//!
//! In none of this is anything drawn, so what was found is kept in `evidence/trade_figures.csv`, which the page of evidence
//! prints; a test here says when it is out of date.

#[allow(dead_code, reason = "shared with the evidence, which uses more of it")]
#[path = "evidence/comparison.rs"]
mod comparison;
#[allow(dead_code, reason = "shared with the evidence, which uses more of it")]
#[path = "evidence/kept.rs"]
mod kept;
#[path = "evidence/table.rs"]
mod table;

mod bands;
mod buckets;
mod coverage;

use comparison::Comparison;
use scenarios::{Scenario, Selection, Texts, Weight, read_text};

/// A job with a few lines of its own: what the zone needs, the material, the loader.
fn job(material: &str, zone: &str, loader: &str) -> String {
    format!(
        "[material]\n{material}\n[[zone]]\nname = \"north\"\ndistance = \"20 yd\"\n{zone}\n[[stockpile]]\nname = \"pile\"\n\
         on_hand = \"500 yd3\"\n[[loader]]\nname = \"tractor\"\n{loader}\n[[raker]]\nname = \"helper\"\n"
    )
}

fn read(text: &str) -> Scenario {
    read_text(text, "job.toml", Texts::default(), &Selection::default())
        .unwrap_or_else(|refusal| panic!("{refusal}"))
}

/// How many warnings of a kind a scenario draws.
fn warnings(scenario: &Scenario, kind: &str) -> f64 {
    let doubtful = scenario.cautions.iter().filter(|c| c.weight == Weight::Warning && c.kind == kind);
    doubtful.count() as f64
}

fn comparisons() -> Vec<Comparison> {
    vec![
        coverage::yards_on_the_ground(),
        coverage::loose_depths(),
        buckets::struck_and_heaped(),
        buckets::weights(),
        buckets::limits(),
        bands::densities(),
        bands::fill_factors(),
        bands::outside(),
    ]
}

#[test]
fn the_kept_figures_are_those_found() {
    let (found, file) = (kept::table_of(&comparisons()), "evidence/trade_figures.csv");
    if let Some(folder) = kept::asked_for() {
        kept::write(&folder.join(file), &found);
        return;
    }
    let at_home = std::fs::read_to_string(kept::at_home().join(file)).unwrap();
    assert!(found == at_home, "{file} is out of date: make the page of evidence again (see DEVELOPERS.md)");
}
