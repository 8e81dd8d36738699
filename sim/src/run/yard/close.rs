//! The end of a run through a yard.

use super::{Next, Run};
use crate::activity::{LoaderActivity as L, Micros, RakerActivity as R};
use crate::outcome::{Books, Moment, Outcome};
use crate::run::tally::Tally;

impl Run<'_> {
    /// Everybody cleans up, loaders still on their way as soon as they are back; then the books are closed.
    pub(super) fn close(&mut self, run: u32, books: &mut Books) -> Outcome {
        let over = self.over.unwrap_or(self.now);
        let finish = over + self.clean_up;
        for loader in 0..self.s.loaders.len() {
            self.close_loader(loader, over, finish);
        }
        for state in self.s.crews.iter_mut() {
            state.times[state.activity as usize] += over - state.since;
            state.times[R::CleanUp as usize] += self.clean_up;
        }
        let moment = |at: Micros| Moment { working: at, clock: at };
        let (completion, finish) = (moment(self.s.completion), moment(finish));
        let mut tally = Tally::new(self.plan, run, completion, finish, &self.s.raked_out, books);
        for (loader, state) in self.s.loaders.iter().enumerate() {
            tally.loader(loader, &state.times, state.loads);
        }
        for (crew, state) in self.s.crews.iter().enumerate() {
            tally.crew(crew, &state.times);
        }
        for (zone, state) in self.s.zones.iter().enumerate() {
            tally.zone(zone, state.loads, state.placed, state.needs);
        }
        tally.outcome(self.s.next_load, self.s.stocks.iter().sum())
    }

    fn close_loader(&mut self, loader: usize, over: Micros, finish: Micros) {
        let state = &mut self.s.loaders[loader];
        match state.next {
            // Done, or at the face for a load that somebody else has taken.
            Next::None | Next::TurnAtFace => {
                let stood = if state.last_leg { L::Done } else { L::WaitingForFace };
                let until = over.max(state.since);
                state.times[stood as usize] += until - state.since;
                state.times[L::CleanUp as usize] += finish - until;
            }
            // Still on its way back: what was entered beyond the finish is cut off.
            _ => {
                let ends = state.entered.iter().skip(1);
                for ((activity, from), to) in STRETCH.into_iter().zip(state.entered).zip(ends) {
                    state.times[activity as usize] -= (to - from.max(finish)).max(0);
                }
            }
        }
    }
}

/// What a loader does between the times of its stretch.
const STRETCH: [L; 3] = [L::WaitingForPass, L::Passing, L::Returning];
