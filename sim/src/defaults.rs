//! What the parts of a job are where nothing is said.
//!
//! One rule for all: a figure that has a neutral value (no cost, no limit, no time lost, no chance) has it by default; one that
//! must be told is not a number by default, so that [`crate::Plan::new`] refuses a job in which it was forgotten and names it.

use crate::chance::Distribution;
use crate::job::*;

/// To be told.
const TOLD: f64 = f64::NAN;

/// Everything to be told but for the rules: in the order listed, until the area is covered, no chance, no prices.
impl Default for Job {
    fn default() -> Self {
        Self {
            material: Material::default(),
            zones: vec![],
            stockpiles: vec![],
            passes: vec![],
            loaders: vec![],
            rakers: vec![],
            raking: Raking::default(),
            fill_order: FillOrder::default(),
            finish: FinishRule::default(),
            shift: Shift::default(),
            chance: Chance::default(),
            prices: Prices::default(),
        }
    }
}

/// Fills the bucket to its heaped capacity. To be told: the density.
impl Default for Material {
    fn default() -> Self {
        Self { name: "material".into(), density_kg_per_m3: TOLD, fill_factor: 1.0 }
    }
}

/// The only zone, without limit of room. To be told: the need and at least one way; among several zones the walks.
impl Default for Zone {
    fn default() -> Self {
        Self { name: "zone".into(), need_m3: TOLD, room: None, ways: vec![], walks_m: vec![0.0] }
    }
}

/// From the first stockpile, through no pass. To be told: the distance.
impl Default for Way {
    fn default() -> Self {
        Self { stockpile: 0, distance_m: TOLD, passes: vec![] }
    }
}

/// No deliveries, one loader at a time. To be told: the stock on hand.
impl Default for Stockpile {
    fn default() -> Self {
        Self { name: "pile".into(), on_hand_m3: TOLD, deliveries: vec![], face: 1 }
    }
}

/// Not limited by lift, as narrow as any pass, no time lost in starting and stopping, costs nothing, never stopped. To be
/// told: the bucket, both speeds, the times to load and to dump.
impl Default for Loader {
    fn default() -> Self {
        Self {
            name: "loader".into(),
            heaped_m3: TOLD,
            struck_m3: None,
            lift_kg: None,
            width_m: 0.0,
            loaded_m_per_s: TOLD,
            empty_m_per_s: TOLD,
            load_s: TOLD,
            dump_s: TOLD,
            start_stop_s: 0.0,
            spread_s_per_m3: 0.0,
            machine_cost_per_h: 0.0,
            operator_cost_per_h: 0.0,
            fuel_working_l_per_h: 0.0,
            fuel_idling_l_per_h: 0.0,
            stoppages: None,
        }
    }
}

/// Begins in the first zone, costs nothing. To be told: how fast they rake and walk.
impl Default for Raker {
    fn default() -> Self {
        Self {
            name: "raker".into(),
            rate_m3_per_h: TOLD,
            start_zone: 0,
            walking_m_per_s: TOLD,
            cost_per_h: 0.0,
        }
    }
}

/// One machine at a time. To be told: the width and the time to go through.
impl Default for Pass {
    fn default() -> Self {
        Self { name: "gate".into(), width_m: TOLD, passing_s: TOLD, at_once: 1 }
    }
}

/// One raker a heap, who does not tire and stands clear of a loader that dumps; the loaders spread nothing.
impl Default for Raking {
    fn default() -> Self {
        Self { together: None, fatigue: None, spread_share: 0.0, stand_clear: true }
    }
}

/// From midnight on until the crew is done, without breaks, set-up and clean-up.
impl Default for Shift {
    fn default() -> Self {
        Self {
            start_s: 0.0,
            end_s: None,
            breaks: vec![],
            set_up_s: Distribution::Constant(0.0),
            clean_up_s: Distribution::Constant(0.0),
        }
    }
}

/// [`Chance::none`].
impl Default for Chance {
    fn default() -> Self {
        Self::none()
    }
}

/// Every multiplier is 1.
impl Default for JobFactors {
    fn default() -> Self {
        Chance::none().days
    }
}

/// Every multiplier is 1.
impl Default for LoadNoise {
    fn default() -> Self {
        Chance::none().loads
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::Plan;

    /// One loader and one raker, with all that must be told and nothing else.
    fn least() -> Job {
        Job {
            material: Material { density_kg_per_m3: 250.0, ..Material::default() },
            zones: vec![Zone {
                need_m3: 6.0,
                ways: vec![Way { distance_m: 10.0, ..Way::default() }],
                ..Zone::default()
            }],
            stockpiles: vec![Stockpile { on_hand_m3: 8.0, ..Stockpile::default() }],
            passes: vec![Pass { width_m: 2.0, passing_s: 4.0, ..Pass::default() }],
            loaders: vec![Loader {
                heaped_m3: 1.0,
                loaded_m_per_s: 1.0,
                empty_m_per_s: 2.0,
                load_s: 20.0,
                dump_s: 5.0,
                ..Loader::default()
            }],
            rakers: vec![Raker { rate_m3_per_h: 120.0, walking_m_per_s: 1.0, ..Raker::default() }],
            ..Job::default()
        }
    }

    #[test]
    fn what_has_a_neutral_value_need_not_be_told() {
        assert_eq!(Plan::check(&least()), Ok(()));
    }

    #[test]
    fn what_was_forgotten_is_named() {
        type Forget = fn(&mut Job);
        let forgotten: [(Forget, &str); 13] = [
            (|j| j.material = Material::default(), "density is NaN; it must be above 0"),
            (|j| j.zones[0].need_m3 = TOLD, "need of zone is NaN; it must be 0 or more"),
            (|j| j.zones[0].ways.clear(), "no way leads to zone"),
            (|j| j.zones[0].ways = vec![Way::default()], "distance to zone is NaN; it must be 0 or more"),
            (
                |j| j.stockpiles = vec![Stockpile::default()],
                "stock on hand at pile is NaN; it must be 0 or more",
            ),
            (|j| j.passes[0].width_m = TOLD, "width of gate is NaN; it must be 0 or more"),
            (|j| j.passes[0].passing_s = TOLD, "passing time of gate is NaN; it must be 0 or more"),
            (|j| j.loaders = vec![Loader::default()], "heaped capacity of loader is NaN; it must be above 0"),
            (|j| j.loaders[0].loaded_m_per_s = TOLD, "loaded speed of loader is NaN; it must be above 0"),
            (|j| j.loaders[0].empty_m_per_s = TOLD, "empty speed of loader is NaN; it must be above 0"),
            (|j| j.loaders[0].load_s = TOLD, "loading time of loader is NaN; it must be 0 or more"),
            (|j| j.loaders[0].dump_s = TOLD, "dumping time of loader is NaN; it must be 0 or more"),
            (|j| j.rakers = vec![Raker::default()], "raking rate of raker is NaN; it must be above 0"),
        ];
        for (forget, says) in forgotten {
            let mut job = least();
            forget(&mut job);
            assert_eq!(Plan::check(&job).unwrap_err().to_string(), says);
        }
        assert_eq!(
            Plan::check(&Job { loaders: vec![], ..least() }).unwrap_err().to_string(),
            "there are 0 loaders; from 1 to 64 are possible"
        );
    }
}
