//! The clock: set-up, deliveries, breaks, nights and the clean-up.

use super::Run;
use super::crew::Doing;
use super::loader::Stage;
use super::state::Rest;
use super::what::What;
use crate::activity::{LoaderActivity, RakerActivity};
use crate::calendar::END_OF_TIME;
use crate::observe::{Event, Observer};
use crate::plan::Switch;

impl<O: Observer> Run<'_, O> {
    /// Everybody sets up; what came before the start lies at its pile.
    pub(super) fn begin(&mut self) {
        for crew in 0..self.s.crews.len() {
            self.turn_crew(crew, RakerActivity::SetUp);
            self.s.calendar.set(self.s.slot_of_crew(crew), self.s.set_up, What::Raker);
        }
        for loader in 0..self.s.loaders.len() {
            self.turn(loader, LoaderActivity::SetUp);
            self.s.calendar.set(self.s.slot_of_loader(loader), self.s.set_up, What::Step);
        }
        self.s.completion = self.s.set_up;
        self.deliver();
        self.look_at_clock();
        self.end_all();
    }

    /// Notes when the clock next lets something in or stops the work.
    fn look_at_clock(&mut self) {
        let switch =
            self.plan.daily.get(self.s.next_switch).map(|(at, switch)| (self.s.day_start + at, switch));
        let (mut opens, mut closes) = (self.s.deliveries.get(self.s.next_delivery).map(|(at, ..)| *at), None);
        match switch {
            Some((at, Switch::BreakBegins | Switch::DayEnds)) => closes = Some(at),
            Some((at, Switch::BreakEnds | Switch::DayStarts)) => {
                opens = Some(opens.map_or(at, |d| d.min(at)))
            }
            None => {}
        }
        let closing = self.s.closing_slot();
        for (slot, at, what) in [(0, opens, What::Opening), (closing, closes, What::Closing)] {
            self.s.calendar.clear_slot(slot);
            if let Some(at) = at {
                self.s.calendar.set(slot, at, what);
            }
        }
        self.s.next_closing = closes.unwrap_or(END_OF_TIME);
        self.s.next_change = self.s.next_closing.min(opens.unwrap_or(END_OF_TIME));
    }

    /// Whether a delivery is still to come.
    pub(super) fn a_delivery_comes(&self) -> bool {
        self.s.next_delivery < self.s.deliveries.len()
    }

    /// Trucks due by now tip their loads.
    fn deliver(&mut self) {
        let mut came = false;
        while let Some(&(at, pile, volume)) = self.s.deliveries.get(self.s.next_delivery)
            && at <= self.now
        {
            self.s.next_delivery += 1;
            let at = &mut self.s.piles[pile];
            at.stock += volume;
            at.due -= 1;
            if volume > 0.0 {
                at.least = self.plan.least_m3(at.stock);
            }
            self.observer.see(self.now, || Event::Delivered { stockpile: pile, volume_m3: volume });
            came = true;
        }
        if came {
            self.s.options_change(self.plan);
            self.wake_those_who_wait();
        }
    }

    /// Deliveries arrive; a break or night ends.
    pub(super) fn opens(&mut self) {
        self.deliver();
        if let Some(&(at, switch)) = self.plan.daily.get(self.s.next_switch)
            && self.s.day_start + at == self.now
            && matches!(switch, Switch::BreakEnds | Switch::DayStarts)
        {
            self.s.next_switch += 1;
            if switch == Switch::DayStarts {
                self.day_starts();
            }
            if self.s.resting.is_some() {
                self.work_resumes();
            }
        }
        self.look_at_clock();
    }

    fn day_starts(&mut self) {
        (self.s.day_start, self.s.next_switch) = (self.now, 0);
        for crew in self.s.crews.iter_mut() {
            let raking_now = if crew.activity == RakerActivity::Raking { self.now - crew.since } else { 0 };
            crew.raked_before_today = crew.times[RakerActivity::Raking as usize] + raking_now;
            crew.tires(self.plan, 0);
        }
        if let Some(since) = self.s.night_since.take() {
            self.s.nights += self.now - since;
        }
    }

    /// A break or the working day is over.
    pub(super) fn closes(&mut self) {
        let Some(&(_, switch)) = self.plan.daily.get(self.s.next_switch) else { return };
        self.s.next_switch += 1;
        let rest = if switch == Switch::DayEnds { Rest::AfterHours } else { Rest::Break };
        self.s.resting = Some(rest);
        self.s.note_what_is_unusual();
        self.observer.see(self.now, || Event::WorkPauses { end_of_day: rest == Rest::AfterHours });
        for crew in 0..self.s.crews.len() {
            if !matches!(self.s.crews[crew].doing, Doing::SetUp) {
                self.puts_down(crew);
                self.turn_crew(crew, RakerActivity::OnBreak);
            }
        }
        for loader in 0..self.s.loaders.len() {
            if self.s.loaders[loader].stage.stands() {
                self.turn(loader, LoaderActivity::OnBreak);
            }
        }
        self.forget_turns();
        self.look_at_clock();
    }

    fn work_resumes(&mut self) {
        self.s.resting = None;
        self.s.note_what_is_unusual();
        self.observer.see(self.now, || Event::WorkResumes);
        for crew in 0..self.s.crews.len() {
            self.takes_up(crew, self.s.crews[crew].left);
        }
        for loader in 0..self.s.loaders.len() {
            let stage = self.s.loaders[loader].stage;
            if stage.stands() || stage == Stage::Done {
                self.turn(loader, stage.activity());
            }
        }
        self.s.pending |= std::mem::take(&mut self.s.held);
        self.s.rakers_look = true;
        self.look_at_all_queues();
    }

    /// After hours, once the last of the crew has stopped, the night begins.
    pub(super) fn night_may_fall(&mut self) {
        if self.s.resting != Some(Rest::AfterHours) || self.s.night_since.is_some() || self.s.finish.is_some()
        {
            return;
        }
        if !self.s.somebody_is_busy() {
            self.s.night_since = Some(self.now);
            (0..self.s.crews.len()).for_each(|crew| self.turn_crew(crew, RakerActivity::Night));
            (0..self.s.loaders.len()).for_each(|loader| self.turn(loader, LoaderActivity::Night));
        }
    }

    /// After the last heap, in working hours, everybody cleans up; loaders still on their way join when they are back.
    pub(super) fn clean_up_begins(&mut self) -> bool {
        if self.s.finish.is_some() || (self.s.resting.is_some() && self.s.clean_up > 0) {
            return false;
        }
        self.s.finish = Some(self.now + self.s.clean_up);
        self.s.note_what_is_unusual();
        self.forget_turns();
        self.s.calendar.clear_slot(0);
        self.s.calendar.clear_slot(self.s.closing_slot());
        (self.s.next_closing, self.s.next_change) = (END_OF_TIME, END_OF_TIME);
        for crew in 0..self.s.crews.len() {
            self.s.calendar.clear_slot(self.s.slot_of_crew(crew));
            self.s.crews[crew].doing = Doing::CleanUp;
            self.turn_crew(crew, RakerActivity::CleanUp);
        }
        for loader in 0..self.s.loaders.len() {
            let stage = self.s.loaders[loader].stage;
            if stage == Stage::Done || (stage.stands() && !matches!(stage, Stage::AtPass(_))) {
                self.s.loaders[loader].stage = Stage::CleanUp;
                self.turn(loader, LoaderActivity::CleanUp);
            }
        }
        self.leave_queues();
        true
    }

    /// Nobody queues for a load any more; those at a pass still go through.
    fn leave_queues(&mut self) {
        let loaders = &self.s.loaders;
        for queue in &mut self.s.queues {
            queue.retain(|loader| matches!(loaders[loader].stage, Stage::AtPass(_)));
        }
        self.look_at_all_queues();
    }
}

impl Stage {
    /// Whether a loader at this stage stands and waits.
    fn stands(self) -> bool {
        matches!(
            self,
            Self::Choosing(_) | Self::AwaitingDelivery(_) | Self::AtFace | Self::AtPass(_) | Self::AtRoom
        )
    }
}
