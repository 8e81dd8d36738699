//! Which zone gets the next load, and from which pile.

use super::Run;
use super::loader::{Place, Stage};
use super::options::Candidate;
use super::row::bits;
use super::state::Scratch;
use crate::job::FillOrder;
use crate::plan::Plan;

/// What a loader finds when it looks for the next load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Choice {
    /// A zone, and a pile to load at.
    Go,
    /// No pile has material for it now, but some is due; or the surplus will be its work once others are served.
    AwaitDelivery,
    /// No more work for this loader.
    Nothing,
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
        self.surplus_is_open && plan.surplus_zone == Some(zone)
    }

    /// To be called when a need or a pile is used up or something was delivered.
    pub(super) fn options_change(&mut self, plan: &Plan) {
        self.changes += 1;
        self.surplus_is_open = plan.surplus_zone.is_some_and(|surplus| {
            let has_to_be_served = |zone| self.needs_more(zone) && self.can_be_served_now(plan, zone);
            (0..plan.zones.len()).all(|zone| zone == surplus || !has_to_be_served(zone))
        });
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
        let is_small = || self.zones[zone].least < plan.negligible_m3 && self.needs_more(zone);
        stock_m3 >= self.piles[pile].least || (is_small() && stock_m3 >= self.zones[zone].open * ROUNDED_OFF)
    }

    /// Whether nothing more can be loaded by anybody, now or later.
    pub(super) fn nothing_more(&self, plan: &Plan) -> bool {
        (0..plan.zones.len()).all(|zone| !self.wants(plan, zone) || !self.can_be_served(plan, zone))
    }

    /// Notes what the loader could choose.
    fn note_options(&mut self, plan: &Plan, loader: usize) {
        let mut options = std::mem::take(&mut self.loaders[loader].options);
        options.as_of = self.changes;
        options.awaits = self.awaits_the_surplus(plan, loader);
        options.all.clear();
        for zone in (0..plan.zones.len()).filter(|zone| self.wants(plan, *zone)) {
            let mut routes = plan.routes.to(loader, zone);
            let pile_of = |route: usize| plan.routes.get(route).pile;
            match routes.clone().find(|r| self.has_material(plan, pile_of(*r), zone)) {
                Some(route) => {
                    let distance_m = plan.routes.get(route).distance_m;
                    options.all.push(Candidate { zone, route, pile: pile_of(route), distance_m });
                }
                None => options.awaits |= routes.any(|r| self.piles[pile_of(r)].due > 0),
            }
        }
        let nearer = |a: &Candidate, b: &Candidate| a.distance_m.total_cmp(&b.distance_m);
        match plan.fill_order {
            FillOrder::NearestFirst => {
                options.all.sort_unstable_by(|a, b| nearer(a, b).then(a.zone.cmp(&b.zone)));
            }
            FillOrder::FarthestFirst => {
                options.all.sort_unstable_by(|a, b| nearer(b, a).then(a.zone.cmp(&b.zone)));
            }
            FillOrder::AsListed | FillOrder::InTurn | FillOrder::MostRoom => {}
        }
        self.loaders[loader].options = options;
    }

    /// The best of the loader's options: the first in order that has room, else the first.
    #[inline(always)]
    fn best(&self, plan: &Plan, loader: usize) -> Option<Candidate> {
        let all = &self.loaders[loader].options.all[..];
        let has_room =
            |option: &&Candidate| self.zones[option.zone].free > i64::from(self.zones[option.zone].bound);
        let first = match (plan.fill_order, self.last_zone) {
            _ if all.len() < 2 => return all.first().copied(),
            (FillOrder::MostRoom, _) => return self.with_most_room(plan, all),
            (FillOrder::InTurn, Some(last)) => all.iter().position(|o| o.zone > last).unwrap_or(0),
            _ => 0,
        };
        let (before, after) = all.split_at(first);
        after.iter().find(has_room).or_else(|| before.iter().find(has_room)).or(after.first()).copied()
    }

    /// The first of those with the most places free for heaps, less the loaders bound for them.
    fn with_most_room(&self, plan: &Plan, all: &[Candidate]) -> Option<Candidate> {
        let room_left = |option: &Candidate| match plan.zones[option.zone].room {
            u32::MAX => i64::MAX,
            _ => self.zones[option.zone].free - i64::from(self.zones[option.zone].bound),
        };
        all.iter().copied().min_by_key(|option| std::cmp::Reverse(room_left(option)))
    }

    /// Whether the loader can only take the surplus, and that is not open yet.
    fn awaits_the_surplus(&self, plan: &Plan, loader: usize) -> bool {
        plan.surplus_zone.is_some_and(|zone| !self.wants(plan, zone) && self.can_serve(plan, loader, zone))
    }
}

impl<O: crate::observe::Observer> Run<'_, O> {
    /// Chooses for a loader that is bound for no zone, and binds it.
    #[inline(always)]
    pub(super) fn choose(&mut self, loader: usize) -> Choice {
        if self.s.loaders[loader].options.as_of != self.s.changes {
            self.s.note_options(self.plan, loader);
        }
        match self.s.best(self.plan, loader) {
            Some(Candidate { zone, route, pile, .. }) => {
                self.s.last_zone = Some(zone);
                self.s.zones[zone].bound += 1;
                let state = &mut self.s.loaders[loader];
                (state.zone, state.route, state.pile, state.bound) = (zone, route, pile, true);
                Choice::Go
            }
            None if self.s.loaders[loader].options.awaits => Choice::AwaitDelivery,
            None => Choice::Nothing,
        }
    }

    /// Gives up the zone a loader was bound for.
    #[inline(always)]
    pub(super) fn unbind(&mut self, loader: usize) {
        let state = &mut self.s.loaders[loader];
        if std::mem::take(&mut state.bound) {
            self.s.zones[state.zone].bound -= 1;
        }
    }

    /// There is nothing to load now, but there will be.
    pub(super) fn awaits(&mut self, loader: usize, place: Place) {
        self.s.awaiting |= 1 << loader;
        self.s.loaders[loader].stage = Stage::AwaitingDelivery(place);
        self.turn_to_waiting(loader);
    }

    /// Wakes the loaders that wait for a delivery or the surplus: they choose again, in a rest not before it is over.
    pub(super) fn wake_those_who_wait(&mut self) {
        for loader in bits(std::mem::take(&mut self.s.awaiting)) {
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
