//! Which zone gets the next load, and from which pile.

use super::Run;
use super::state::{Scratch, Stage};
use crate::job::FillOrder;
use crate::plan::Plan;

/// What a loader finds when it looks for the next load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Choice {
    /// A zone, and the way to it from the pile to load at.
    Go { zone: usize, route: usize },
    /// No pile has material for it now, but some is due; or the surplus will be its work once others are served.
    AwaitDelivery,
    /// No more work for this loader.
    Nothing,
}

/// A zone that could be served, and how it ranks: lower goes first.
pub(super) struct Candidate {
    zone: usize,
    route: usize,
    rank: f64,
    has_room: bool,
}

/// A pile that holds a need but for rounding holds it.
const ROUNDED_OFF: f64 = 1.0 - 1e-9;

impl Scratch {
    /// Whether the zone needs more, surplus apart.
    #[inline]
    fn needs_more(&self, zone: usize) -> bool {
        self.zones[zone].open >= self.zones[zone].least
    }

    /// Whether the zone still takes material.
    #[inline]
    pub(super) fn wants(&self, plan: &Plan, zone: usize) -> bool {
        self.needs_more(zone) || self.takes_surplus(plan, zone)
    }

    /// Whether the zone takes whatever is left: the job clears its piles, and no other zone can be given more now.
    #[inline]
    pub(super) fn takes_surplus(&self, plan: &Plan, zone: usize) -> bool {
        plan.surplus_zone == Some(zone)
            && (0..plan.zones.len()).all(|other| {
                other == zone || !self.needs_more(other) || !self.can_be_served_now(plan, other)
            })
    }

    /// Whether some loader can reach the zone from a pile that has material.
    fn can_be_served_now(&self, plan: &Plan, zone: usize) -> bool {
        (0..plan.loaders.len()).any(|loader| {
            plan.routes.to(loader, zone).any(|r| self.has_material(plan, plan.routes.get(r).pile, zone))
        })
    }

    /// Whether some loader can reach the zone from a pile that has material or will get some.
    fn can_be_served(&self, plan: &Plan, zone: usize) -> bool {
        (0..plan.loaders.len()).any(|loader| self.can_serve(plan, loader, zone))
    }

    /// Whether the loader can reach the zone from a pile that has material or will get some.
    fn can_serve(&self, plan: &Plan, loader: usize, zone: usize) -> bool {
        plan.routes.to(loader, zone).any(|route| {
            let pile = plan.routes.get(route).pile;
            self.has_material(plan, pile, zone) || self.piles[pile].due > 0
        })
    }

    /// Whether the pile has material for the zone. What remains of it is no crumb to a small zone that needs no more.
    #[inline]
    pub(super) fn has_material(&self, plan: &Plan, pile: usize, zone: usize) -> bool {
        let stock_m3 = self.piles[pile].stock;
        let is_small = || self.zones[zone].least < plan.nothing_m3 && self.needs_more(zone);
        stock_m3 >= self.piles[pile].least
            || (is_small() && stock_m3 >= self.zones[zone].open * ROUNDED_OFF)
    }

    /// Whether nothing more can be loaded by anybody, now or later.
    pub(super) fn nothing_more(&self, plan: &Plan) -> bool {
        (0..plan.zones.len()).all(|zone| !self.wants(plan, zone) || !self.can_be_served(plan, zone))
    }

    /// The best choice for a loader that is bound for no zone.
    fn best(&self, plan: &Plan, loader: usize) -> Choice {
        let (mut best, mut best_with_room): (Option<Candidate>, Option<Candidate>) = (None, None);
        let mut awaits = self.awaits_the_surplus(plan, loader);
        for zone in (0..plan.zones.len()).filter(|zone| self.wants(plan, *zone)) {
            let mut routes = plan.routes.to(loader, zone);
            let pile_of = |route: usize| plan.routes.get(route).pile;
            let Some(route) = routes.clone().find(|r| self.has_material(plan, pile_of(*r), zone)) else {
                awaits |= routes.any(|r| self.piles[pile_of(r)].due > 0);
                continue;
            };
            let candidate = self.candidate(plan, zone, route);
            let beats =
                |held: &Option<Candidate>| held.as_ref().is_none_or(|held| candidate.rank < held.rank);
            if candidate.has_room && beats(&best_with_room) {
                best_with_room = Some(candidate);
            } else if beats(&best) {
                best = Some(candidate);
            }
        }
        match best_with_room.or(best) {
            Some(Candidate { zone, route, .. }) => Choice::Go { zone, route },
            None if awaits => Choice::AwaitDelivery,
            None => Choice::Nothing,
        }
    }

    /// Whether the loader can only take the surplus, and that is not open yet.
    fn awaits_the_surplus(&self, plan: &Plan, loader: usize) -> bool {
        plan.surplus_zone.is_some_and(|zone| !self.wants(plan, zone) && self.can_serve(plan, loader, zone))
    }

    #[inline]
    fn candidate(&self, plan: &Plan, zone: usize, route: usize) -> Candidate {
        let room_left = f64::from(self.zones[zone].free) - f64::from(self.zones[zone].bound);
        let distance_m = plan.routes.get(route).distance_m;
        let rank = match plan.fill_order {
            FillOrder::AsListed => zone as f64,
            FillOrder::FarthestFirst => -distance_m,
            FillOrder::NearestFirst => distance_m,
            FillOrder::InTurn => match self.last_zone {
                // Those after the last come first, then those from the beginning up to it.
                Some(last) if zone <= last => (zone + plan.zones.len()) as f64,
                _ => zone as f64,
            },
            FillOrder::MostRoom if plan.zones[zone].room == u32::MAX => f64::NEG_INFINITY,
            FillOrder::MostRoom => -room_left,
        };
        Candidate { zone, route, rank, has_room: room_left >= 1.0 }
    }
}

impl<O: crate::observe::Observer> Run<'_, O> {
    /// Chooses for a loader that is bound for no zone, and binds it.
    pub(super) fn choose(&mut self, loader: usize) -> Choice {
        let choice = self.s.best(self.plan, loader);
        if let Choice::Go { zone, route } = choice {
            self.s.last_zone = Some(zone);
            self.s.zones[zone].bound += 1;
            let state = &mut self.s.loaders[loader];
            (state.zone, state.route, state.bound) = (zone, route, true);
            state.pile = self.plan.routes.get(route).pile;
        }
        choice
    }

    /// Gives up the zone a loader was bound for.
    pub(super) fn unbind(&mut self, loader: usize) {
        let state = &mut self.s.loaders[loader];
        if std::mem::take(&mut state.bound) {
            self.s.zones[state.zone].bound -= 1;
        }
    }

    /// Wakes the loaders that wait for a delivery or the surplus: they choose again, in a rest not before it is over.
    pub(super) fn wake_those_who_wait(&mut self) {
        for loader in 0..self.s.loaders.len() {
            let state = &mut self.s.loaders[loader];
            if let Stage::AwaitingDelivery(place) = state.stage {
                state.stage = Stage::Choosing(place);
                match self.s.resting {
                    None => self.s.pending |= 1 << loader,
                    Some(_) => self.s.held |= 1 << loader,
                }
            }
        }
    }
}
