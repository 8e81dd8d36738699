//! What blocks what, for a run that can make no progress.

use super::Run;
use crate::observe::Observer;

impl<O: Observer> Run<'_, O> {
    pub(super) fn stuck(&self) -> String {
        let loaders = self.s.loaders.iter().enumerate().map(|(i, l)| {
            let place = if l.bound { format!(" (zone {})", l.zone + 1) } else { String::new() };
            format!("loader {} is {}{place}", i + 1, l.stage.activity().words())
        });
        let crews = self.s.crews.iter().enumerate().map(|(i, c)| {
            format!(
                "raker {} is {} in zone {}",
                self.plan.crews[i].first_raker + 1,
                c.activity.words(),
                c.zone + 1
            )
        });
        let zones = self.s.zones.iter().enumerate().map(|(i, z)| {
            format!(
                "zone {} lacks {:.3} m3 and holds {} heaps to rake",
                i + 1,
                z.open.max(0.0),
                z.heaps.len()
            )
        });
        let piles =
            self.s.piles.iter().enumerate().map(|(i, p)| format!("pile {} holds {:.3} m3", i + 1, p.stock));
        let all: Vec<String> = loaders.chain(crews).chain(zones).chain(piles).collect();
        format!(
            "can make no progress after {:.1} min: {}",
            self.now as f64 / (60 * crate::activity::SECOND) as f64,
            all.join("; ")
        )
    }
}
