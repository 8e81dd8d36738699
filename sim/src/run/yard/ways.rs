//! Every way of a plan, out and back, cut at its passes.

use super::Next;
use crate::activity::Micros;
use crate::plan::{Plan, whole};
use crate::run::state::Leg;

/// From one pass, or the beginning of the leg, to the next pass or the end.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stretch {
    /// How much of the leg's driving lies behind its end.
    share: f64,
    /// What a loader does at its end, and at which pass.
    pub(super) next: Next,
    pub(super) pass: usize,
    pub(super) passing_us: f64,
}

/// All stretches of all ways, one after the other; each leg ends with one that leads to no pass.
#[derive(Clone, Debug)]
pub(super) struct Ways {
    stretches: Vec<Stretch>,
    /// Where the legs of each route begin: out, back.
    begins: Vec<[usize; 2]>,
}

impl Stretch {
    /// What of this much driving lies behind its end. At the end of a leg, all of it.
    #[inline(always)]
    pub(super) fn driven(&self, driving: Micros) -> Micros {
        whole(driving as f64 * self.share)
    }
}

impl Ways {
    pub(super) fn new(plan: &Plan) -> Self {
        let mut all = Self { stretches: Vec::new(), begins: Vec::new() };
        for route in plan.routes.all() {
            let legs = [
                (&route.passes, Next::PassOut, Next::Zone),
                (&route.passes_back, Next::PassBack, Next::Face),
            ];
            all.begins.push(legs.map(|(passes, next, at_the_end)| {
                let begin = all.stretches.len();
                let to_a_pass = |&(pass, share): &(usize, f64)| {
                    let passing_us = plan.passes[pass].passing_us;
                    Stretch { share, next, pass, passing_us }
                };
                all.stretches.extend(passes.iter().map(to_a_pass));
                all.stretches.push(Stretch { share: 1.0, next: at_the_end, pass: 0, passing_us: 0.0 });
                begin
            }));
        }
        all
    }

    /// The first stretch of a leg.
    #[inline(always)]
    pub(super) fn begin(&self, route: usize, leg: Leg) -> usize {
        self.begins[route][leg as usize]
    }

    #[inline(always)]
    pub(super) fn get(&self, stretch: usize) -> &Stretch {
        &self.stretches[stretch]
    }
}
