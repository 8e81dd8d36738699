//! What blocks what, for a run that can make no progress.

use super::Run;
use crate::duration::Duration;
use crate::error::Deadlock;
use crate::observe::Observer;

impl<O: Observer> Run<'_, O> {
    pub(super) fn deadlock(&self) -> Deadlock {
        let loaders = self.s.loaders.iter().map(|l| (l.stage.activity(), l.bound.then_some(l.zone)));
        let crews = self.plan.crews.iter().zip(self.s.crews.iter());
        Deadlock {
            at: Duration::from_micros(self.now),
            loaders: loaders.collect(),
            rakers: crews.map(|(plan, c)| (plan.first_raker, c.activity, c.zone)).collect(),
            zones: self.s.zones.iter().map(|z| (z.open.max(0.0), z.heaps.len())).collect(),
            stockpiles_m3: self.s.piles.iter().map(|p| p.stock).collect(),
        }
    }
}
