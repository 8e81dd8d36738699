//! Hand barrows in place of a machine.

use crate::assumption::Assumption;
use crate::caution;
use crate::defaults::{self, Usual};
use crate::scenario::{Scenario, StatedLoader};
use crate::units::{bucket, duration, mass, speed};
use sim::Loader;

/// Heaped capacity, about 3.5 ft3 \[m3\].
const HEAPED: f64 = 0.1;
/// Width \[m\].
const WIDTH: f64 = 0.65;
/// What a person wheels \[kg\].
const LIFT: f64 = 80.0;
/// Wheeling it full and empty, a walking pace \[m/s\].
const LOADED: f64 = 0.9;
const EMPTY: f64 = 1.2;
/// Tipping it, and starting and stopping on each leg \[s\].
const DUMPING: f64 = 10.0;
const START_AND_STOP: f64 = 3.0;
/// Filling it with a fork or shovel: light material, and the least \[m3/h\].
const FILLING: f64 = 3.0;
const FILLING_LEAST: f64 = 1.0;
const LIGHT: f64 = 300.0;

/// How fast one person fills a barrow \[m3/h\]: 3 m3/h of light material, less in proportion for heavier, as what is lifted is a
/// mass, but no less than the published 1 m3/h of sand.
fn filling(density_kg_per_m3: f64) -> Usual {
    let value = (FILLING * (LIGHT / density_kg_per_m3).min(1.0)).max(FILLING_LEAST);
    let from = if value > FILLING_LEAST {
        "built-in table: 3 m3/h by fork or shovel up to 300 kg/m3, less in proportion for heavier; common practice, no source"
    } else {
        "loading sand by hand takes 1 h for each m3: table of labour constants of a New Zealand training academy, read in the \
         source"
    };
    Usual { value, from }
}

/// The scenario with hand barrows in place of one loader (index in `scenario.job.loaders`), each with one person at the
/// operator's cost of that loader, without machine cost or fuel. Days and loads differ as they do for the machine. If no
/// machine is left, there is none to bring and take away either. How it was made stands among its assumptions.
///
/// ```
/// use scenarios::{Selection, Texts, barrow, read_text, shipped};
/// let (name, text) = shipped().iter().find(|(name, _)| *name == "riding-arena").unwrap();
/// let arena = read_text(text, name, Texts::default(), &Selection::default()).unwrap();
/// let by_hand = barrow(&arena, 0, 3).unwrap();
/// assert_eq!(by_hand.job.loaders.len(), 3);
/// assert_eq!(by_hand.job.loaders[2].name, "hand barrow 3");
/// assert_eq!(by_hand.job.loaders[0].machine_cost_per_h, 0.0);
/// ```
///
/// # Errors
/// In words, if there is no such loader, no barrow or too many, or the job cannot be done so.
pub fn barrow(scenario: &Scenario, loader: usize, count: u32) -> Result<Scenario, String> {
    let Some(machine) = scenario.job.loaders.get(loader) else {
        return Err(format!("there is no loader {}; the job has {}", loader + 1, scenario.job.loaders.len()));
    };
    let others = scenario.job.loaders.len() - 1;
    let most = sim::MOST_LOADERS.saturating_sub(others);
    if count == 0 || count as usize > most {
        return Err(format!("{count} barrows cannot be; give 1 to {most}"));
    }
    let mut changed = scenario.clone();
    let barrows = barrows(scenario, machine, count);
    let stated = vec![StatedLoader::default(); barrows.len()];
    changed.job.loaders.splice(loader..=loader, barrows);
    if loader < changed.stated.loaders.len() {
        changed.stated.loaders.splice(loader..=loader, stated);
    }
    if others == 0 {
        changed.stated.fixed.mobilisation = 0.0;
        changed.job.prices.material = changed.stated.fixed.sum();
    }
    sim::Plan::check(&changed.job).map_err(|error| error.to_string())?;
    let own = format!("loader.{}.", machine.name);
    changed.assumptions.retain(|assumption| !assumption.key.starts_with(&own));
    changed.assumptions.extend(assumed(scenario, machine));
    changed.cautions = caution::all(&changed.job, &changed.stated, changed.ordered_m3, changed.units);
    Ok(changed)
}

/// What a barrow carries \[m3\]: its mean fill, or what a person wheels.
fn carried_m3(scenario: &Scenario) -> f64 {
    let material = &scenario.job.material;
    (HEAPED * material.fill_factor).min(LIFT / material.density_kg_per_m3)
}

fn load_s(scenario: &Scenario) -> f64 {
    carried_m3(scenario) / filling(scenario.job.material.density_kg_per_m3).value * 3600.0
}

fn barrows(scenario: &Scenario, machine: &Loader, count: u32) -> Vec<Loader> {
    let taken = |name: &str| scenario.job.loaders.iter().any(|loader| loader.name == name);
    let raking = defaults::raking(scenario.job.material.density_kg_per_m3).value;
    let names =
        (1..).map(|i| if count == 1 && i == 1 { "hand barrow".into() } else { format!("hand barrow {i}") });
    let names = names.filter(|name: &String| !taken(name)).take(count as usize);
    let one = |name| Loader {
        name,
        heaped_m3: HEAPED,
        struck_m3: None,
        lift_kg: Some(LIFT),
        width_m: WIDTH,
        loaded_m_per_s: LOADED,
        empty_m_per_s: EMPTY,
        load_s: load_s(scenario),
        dump_s: DUMPING,
        start_stop_s: START_AND_STOP,
        spread_s_per_m3: if scenario.job.raking.spread_share > 0.0 { 3600.0 / raking } else { 0.0 },
        machine_cost_per_h: 0.0,
        operator_cost_per_h: machine.operator_cost_per_h,
        fuel_working_l_per_h: 0.0,
        fuel_idling_l_per_h: 0.0,
        stoppages: None,
    };
    names.map(one).collect()
}

fn assumed(scenario: &Scenario, machine: &Loader) -> Vec<Assumption> {
    let system = scenario.units;
    let filling = filling(scenario.job.material.density_kg_per_m3);
    let practice = defaults::COMMON;
    let mut all = Vec::new();
    let mut assume = |key: &str, words: String, from: &str| {
        all.push(Assumption { key: format!("hand barrow.{key}"), words, from: from.into() });
    };
    let load = duration(load_s(scenario));
    assume("heaped", format!("a hand barrow holds {} heaped", bucket(HEAPED, system)), practice);
    assume("lift", format!("a person wheels {} at most", mass(LIFT, system)), practice);
    assume("loading", format!("filling a barrow by hand takes {load}"), filling.from);
    assume(
        "dumping",
        format!(
            "tipping it takes {}, starting and stopping {} on each leg",
            duration(DUMPING),
            duration(START_AND_STOP)
        ),
        practice,
    );
    assume(
        "speed",
        format!("it is wheeled {} full and {} empty", speed(LOADED, system), speed(EMPTY, system)),
        practice,
    );
    assume("width", format!("it is {} wide", crate::units::short_length(WIDTH, system)), practice);
    if scenario.job.raking.spread_share > 0.0 {
        assume("spread_time", "who wheels it spreads as fast as a raker rakes".into(), practice);
    }
    let words = format!(
        "one person wheels each, at what the operator of {} costs; no machine, no fuel",
        machine.name
    );
    assume("cost", words, "follows from the change asked for");
    assume(
        "spread",
        "days and loads differ as they do for the machine; nobody tires at a barrow".into(),
        practice,
    );
    all
}

#[cfg(test)]
mod tests;
