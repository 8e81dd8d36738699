//! Faces, passes and rooms: so many at once, first come, first served.

use super::Run;
use super::state::{Scratch, Stage};
use crate::observe::Observer;

impl Scratch {
    pub(super) fn cleaning(&self) -> bool {
        self.finish.is_some()
    }

    /// Notes whether somebody in the queue of this server can be served.
    fn look_at(&mut self, server: usize) {
        let can_serve = self.servers[server].free > 0 && !self.servers[server].queue.is_empty();
        match self.ready.iter().position(|s| *s == server) {
            Some(place) if !can_serve => {
                self.ready.swap_remove(place);
            }
            None if can_serve && (self.resting.is_none() || self.cleaning()) => self.ready.push(server),
            _ => {}
        }
    }

    /// Notes anew which queues can be served.
    pub(super) fn look_at_all_queues(&mut self) {
        self.ready.clear();
        (0..self.servers.len()).for_each(|server| self.look_at(server));
    }
}

impl<O: Observer> Run<'_, O> {
    pub(super) fn face_of(&self, pile: usize) -> usize {
        pile
    }

    pub(super) fn pass(&self, pass: usize) -> usize {
        self.plan.piles.len() + pass
    }

    pub(super) fn room_of(&self, zone: usize) -> usize {
        self.plan.piles.len() + self.plan.passes.len() + zone
    }

    /// Is served at once if nobody stands before it, and otherwise joins the queue. During a rest nobody begins a load,
    /// but a cycle in hand goes on where it need not wait.
    pub(super) fn arrive(&mut self, loader: usize, stage: Stage, server: usize) {
        (self.s.loaders[loader].stage, self.s.loaders[loader].server) = (stage, server);
        let at = &mut self.s.servers[server];
        let held_back = stage == Stage::AtFace && self.s.resting.is_some();
        if at.free > 0 && at.queue.is_empty() && !held_back {
            return self.serve(loader, server);
        }
        at.queue.push_back(loader);
        self.s.loaders[loader].place_in_queue = self.s.next_place_in_queue;
        self.s.next_place_in_queue += 1;
        self.s.look_at(server);
        self.turn_to_waiting(loader);
    }

    /// Serves the first of the queue whose first has stood longest.
    pub(super) fn a_queue_is_served(&mut self) -> bool {
        let first = |server: usize| self.s.servers[server].queue.front().copied();
        let longest = self.s.ready.iter().filter_map(|server| Some((*server, first(*server)?)));
        let Some((server, loader)) = longest.min_by_key(|(_, l)| self.s.loaders[*l].place_in_queue) else {
            return false;
        };
        self.s.servers[server].queue.pop_front();
        self.serve(loader, server);
        self.s.look_at(server);
        true
    }

    fn serve(&mut self, loader: usize, server: usize) {
        match self.s.loaders[loader].stage {
            Stage::AtPass(leg) => self.go_through(loader, leg, server),
            Stage::AtRoom => self.dump(loader, server),
            _ => self.turn_at_face(loader),
        }
    }

    /// The loader takes one of the server's places.
    pub(super) fn occupy(&mut self, loader: usize, server: usize) {
        self.s.servers[server].free -= 1;
        self.s.loaders[loader].server = server;
    }

    /// Gives a place of the server back.
    pub(super) fn release(&mut self, server: usize) {
        self.s.servers[server].free += 1;
        if !self.s.servers[server].queue.is_empty() {
            self.s.look_at(server);
        }
    }
}
