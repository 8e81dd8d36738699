//! What a loader may lift: three figures that stand in manuals, each with its usual share.

use crate::defaults::{self, Usual};
use crate::diagnostics::At;
use crate::units::{System, figure, mass};

/// Buckets below this are hand barrows and the like, for which no manual gives what may be lifted \[m3\].
pub(crate) const HAND_M3: f64 = 0.15;

/// A figure of the manual that says what a loader may lift. They are not the same thing, and each has its own usual share.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LiftFigure {
    /// What the hydraulics of a tractor's loader raise.
    HydraulicLift,
    /// Half of the tipping load, 35 % on tracks (ISO 14397-1): the share is taken already.
    RatedOperatingCapacity,
    /// The load at which the machine tips.
    TippingLoad,
}

/// What a loader may lift, and by which figure.
///
/// ```
/// use scenarios::{LiftFigure, StatedLift, units::System};
/// let lift = StatedLift { figure: LiftFigure::TippingLoad, rated_kg: 900.0, share: 0.35 };
/// assert_eq!(lift.may_kg(), 315.0);
/// assert_eq!(lift.words(System::Metric), "35 % of its tipping load of 900 kg");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StatedLift {
    /// Which figure.
    pub figure: LiftFigure,
    /// As it stands in the manual \[kg\].
    pub rated_kg: f64,
    /// The share of it that may be used \[above 0, at most 1\].
    pub share: f64,
}

impl LiftFigure {
    /// All of them, with the keys of the scenario file for the figure and its share.
    pub const ALL: [Self; 3] = [Self::HydraulicLift, Self::RatedOperatingCapacity, Self::TippingLoad];

    pub(crate) fn key(self) -> &'static str {
        match self {
            Self::HydraulicLift => "hydraulic_lift",
            Self::RatedOperatingCapacity => "rated_operating_capacity",
            Self::TippingLoad => "tipping_load",
        }
    }

    pub(crate) fn share_key(self) -> &'static str {
        match self {
            Self::HydraulicLift => "hydraulic_lift_share",
            Self::RatedOperatingCapacity => "rated_operating_capacity_share",
            Self::TippingLoad => "tipping_load_share",
        }
    }

    /// In words: `hydraulic lift`.
    pub fn words(self) -> &'static str {
        match self {
            Self::HydraulicLift => "hydraulic lift",
            Self::RatedOperatingCapacity => "rated operating capacity",
            Self::TippingLoad => "tipping load",
        }
    }

    /// The usual share of it.
    pub(crate) fn usual(self, on_tracks: bool) -> Usual {
        match self {
            Self::HydraulicLift => defaults::HYDRAULIC_LIFT_SHARE,
            Self::RatedOperatingCapacity => defaults::CAPACITY_SHARE,
            Self::TippingLoad if on_tracks => defaults::TIPPING_SHARE_ON_TRACKS,
            Self::TippingLoad => defaults::TIPPING_SHARE_ON_WHEELS,
        }
    }
}

impl StatedLift {
    /// What may be lifted by this figure \[kg\].
    pub fn may_kg(self) -> f64 {
        self.rated_kg * self.share
    }

    /// What it is of, in words: `50 % of its hydraulic lift of 500 kg`.
    pub fn words(self, system: System) -> String {
        let of = format!("its {} of {}", self.figure.words(), mass(self.rated_kg, system));
        if self.share == 1.0 { of } else { format!("{} % of {of}", figure(self.share * 100.0)) }
    }
}

/// A figure as typed, with the share of it if that is given.
#[derive(Clone, Debug)]
pub(crate) struct RawLift {
    pub(crate) figure: LiftFigure,
    pub(crate) rated: Option<At<f64>>,
    pub(crate) share: Option<At<f64>>,
}

/// The figure that allows least, with where it was typed; the first of several.
pub(crate) fn least(lifts: &[RawLift], on_tracks: bool) -> Option<(StatedLift, &At<f64>)> {
    let all = lifts.iter().filter_map(|lift| {
        let rated = lift.rated.as_ref()?;
        let share = lift.share.as_ref().map_or(lift.figure.usual(on_tracks).value, |share| share.value);
        Some((StatedLift { figure: lift.figure, rated_kg: rated.value, share }, rated))
    });
    all.min_by(|(a, _), (b, _)| a.may_kg().total_cmp(&b.may_kg()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{made, refused_with, warnings};

    const HEAPED: &str = "heaped = \"14 ft3\"";

    fn with(lines: &str) -> crate::Scenario {
        made(&[(HEAPED, &format!("{HEAPED}\n{lines}"))])
    }

    #[track_caller]
    fn may_lift(lines: &str, kg: f64, words: &str) {
        let scenario = with(lines);
        let lift = scenario.stated.loaders[0].lift.unwrap();
        assert_eq!((scenario.job.loaders[0].lift_kg, lift.may_kg()), (Some(kg), kg));
        assert_eq!(lift.words(System::Metric), words);
    }

    #[test]
    fn each_figure_has_its_own_share() {
        may_lift("hydraulic_lift = \"600 kg\"", 300.0, "50 % of its hydraulic lift of 600 kg");
        may_lift("rated_operating_capacity = \"600 kg\"", 600.0, "its rated operating capacity of 600 kg");
        may_lift("tipping_load = \"600 kg\"", 300.0, "50 % of its tipping load of 600 kg");
        let tracks = "tipping_load = \"600 kg\"\ntracks = ";
        may_lift(&format!("{tracks}true"), 210.0, "35 % of its tipping load of 600 kg");
        may_lift(&format!("{tracks}false"), 300.0, "50 % of its tipping load of 600 kg");
        // Of the rated operating capacity the 35 % are taken already.
        let capacity = "rated_operating_capacity = \"210 kg\"\ntracks = true";
        may_lift(capacity, 210.0, "its rated operating capacity of 210 kg");
    }

    #[test]
    fn a_share_of_ones_own_counts_before_the_usual_one() {
        let lines = "hydraulic_lift = \"600 kg\"\nhydraulic_lift_share = \"40 %\"";
        may_lift(lines, 240.0, "40 % of its hydraulic lift of 600 kg");
        let lines = "tipping_load = \"600 kg\"\ntipping_load_share = 0.25\ntracks = true";
        may_lift(lines, 150.0, "25 % of its tipping load of 600 kg");
    }

    #[test]
    fn of_several_figures_the_one_that_allows_least_decides() {
        let tipping =
            "hydraulic_lift = \"900 kg\"\nrated_operating_capacity = \"450 kg\"\ntipping_load = \"880 kg\"";
        may_lift(tipping, 440.0, "50 % of its tipping load of 880 kg");
        let hydraulic = "hydraulic_lift = \"700 kg\"\nrated_operating_capacity = \"450 kg\"";
        may_lift(hydraulic, 350.0, "50 % of its hydraulic lift of 700 kg");
    }

    fn assumed_lifts(scenario: &crate::Scenario) -> Vec<String> {
        let lifts = scenario.assumptions.iter().filter(|a| a.words.contains("lift"));
        lifts.map(|a| format!("{}: {}", a.key, a.words)).collect()
    }

    #[test]
    fn a_share_that_was_not_typed_is_listed_as_assumed() {
        assert_eq!(
            assumed_lifts(&with(
                "rated_operating_capacity = \"450 kg\"\ntipping_load = \"900 kg\"\ntracks = true"
            )),
            [
                "loader.tractor.rated_operating_capacity_share: tractor: all of its rated operating capacity may be lifted",
                "loader.tractor.tipping_load_share: tractor: 35 % of its tipping load may be lifted",
            ]
        );
        let typed = with("hydraulic_lift = \"900 kg\"\nhydraulic_lift_share = \"50 %\"");
        assert_eq!(assumed_lifts(&typed), Vec::<String>::new());
    }

    #[test]
    fn of_a_hand_barrow_nothing_is_asked() {
        let barrow = made(&[(HEAPED, "heaped = \"3.5 ft3\"")]);
        assert_eq!((assumed_lifts(&barrow), warnings(&barrow)), (vec![], vec![]));
        let machine = made(&[]);
        assert_eq!((assumed_lifts(&machine).len(), warnings(&machine)), (1, vec!["lift-not-given"]));
    }

    #[test]
    fn a_share_of_a_figure_that_is_not_there_is_told() {
        refused_with(
            &[(HEAPED, &format!("{HEAPED}\ntipping_load_share = 0.5"))],
            &["loader \"tractor\".tipping_load_share = 0.5", "no tipping_load", "give tipping_load as well"],
        );
    }

    #[test]
    fn a_former_key_is_refused_with_the_keys_to_use() {
        for (line, right) in [
            (
                "rated_lift = \"500 kg\"",
                "write hydraulic_lift, rated_operating_capacity or tipping_load, whichever",
            ),
            (
                "lift_share = 0.5",
                "write hydraulic_lift_share, rated_operating_capacity_share or tipping_load_share",
            ),
        ] {
            refused_with(&[(HEAPED, &format!("{HEAPED}\n{line}"))], &["this key is not known", right]);
        }
    }
}
