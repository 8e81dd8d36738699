//! The cost of every run in its parts.

use scenarios::Scenario;
use serde::Serialize;
use sim::{CostParts, Sorted, Study};

/// What a cost is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum CostPart {
    /// Operators and rakers at work, but for set-up and clean-up.
    Labour,
    /// The machines by the hour, but for set-up and clean-up.
    Machine,
    /// Fuel.
    Fuel,
    /// People and machines during set-up and clean-up.
    SetUpAndCleanUp,
    /// The material itself.
    Material,
    /// What it takes to bring it.
    Delivery,
    /// Getting the machine there and back.
    Mobilisation,
}

impl CostPart {
    /// All of them, in the order told.
    pub const ALL: [Self; 7] = [
        Self::Labour,
        Self::Machine,
        Self::Fuel,
        Self::SetUpAndCleanUp,
        Self::Material,
        Self::Delivery,
        Self::Mobilisation,
    ];

    /// Stable name for files.
    pub fn key(self) -> &'static str {
        match self {
            Self::Labour => "labour",
            Self::Machine => "machine",
            Self::Fuel => "fuel",
            Self::SetUpAndCleanUp => "set_up_and_clean_up",
            Self::Material => "material",
            Self::Delivery => "delivery",
            Self::Mobilisation => "mobilisation",
        }
    }

    /// What people call it.
    pub fn words(self) -> &'static str {
        match self {
            Self::SetUpAndCleanUp => "set-up and clean-up",
            other => other.key(),
        }
    }

    /// Whether it is the same whatever the day brings: charged beside the hours by those who bill by the hour.
    pub fn is_fixed(self) -> bool {
        matches!(self, Self::Material | Self::Delivery | Self::Mobilisation)
    }
}

/// What one run costs.
#[derive(Clone, Debug, PartialEq)]
pub struct RunCost {
    /// Which run, counted from 0.
    pub run: u32,
    /// Its parts, in the order of [`CostPart::ALL`] \[money\].
    pub parts: [f64; CostPart::ALL.len()],
    /// All of them together \[money\].
    pub total: f64,
    /// Time on the job, from the start of the first day to the finish, nights left out \[h\].
    pub hours: f64,
    /// What the zones still lack \[m3\].
    pub short_m3: f64,
    /// What is left at the piles \[m3\].
    pub left_over_m3: f64,
}

impl RunCost {
    /// What comes on top of the hours \[money\].
    pub fn fixed(&self) -> f64 {
        CostPart::ALL.iter().zip(self.parts).filter(|(part, _)| part.is_fixed()).map(|(_, sum)| sum).sum()
    }
}

/// What every run costs, in their order.
#[derive(Clone, Debug, PartialEq)]
pub struct Costs(pub Vec<RunCost>);

impl Costs {
    /// The costs of all runs of a job.
    pub fn of(scenario: &Scenario, study: &Study) -> Self {
        let fixed = scenario.stated.fixed;
        let one = |o: &sim::Outcome| {
            let parts = CostParts::of(&scenario.job, o);
            RunCost {
                run: o.run,
                parts: CostPart::ALL.map(|part| match part {
                    CostPart::Labour => parts.labour,
                    CostPart::Machine => parts.machine,
                    CostPart::Fuel => parts.fuel,
                    CostPart::SetUpAndCleanUp => parts.set_up_and_clean_up,
                    CostPart::Material => fixed.material,
                    CostPart::Delivery => fixed.delivery,
                    CostPart::Mobilisation => fixed.mobilisation,
                }),
                total: o.cost,
                hours: o.finish.working.as_secs_f64() / 3_600.0,
                short_m3: o.short_m3,
                left_over_m3: o.left_over_m3,
            }
        };
        Self(study.outcomes.iter().map(one).collect())
    }

    /// The cost of the job, in rising order.
    pub fn total(&self) -> Sorted {
        Sorted::new(self.0.iter().map(|run| run.total))
    }

    /// One part of it, in rising order.
    pub fn part(&self, part: CostPart) -> Sorted {
        Sorted::new(self.0.iter().map(|run| run.parts[part as usize]))
    }
}
