//! Who sets the pace, and how that is said.

use super::Part;
use crate::findings::{lower, percent};

/// The handful of shares that decide what is said.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Crew {
    loaders: usize,
    rakers: usize,
    room: f64,
    face: f64,
    pass: f64,
    delivery: f64,
    /// Nothing left to load, while heaps are still raked out.
    done: f64,
    raker_waits: f64,
}

/// Shares under this are not worth a title (our own choice).
const HARDLY: f64 = 0.05;
/// Where the lesser of two waits is at least this share of the greater, both sides set the pace (our own choice).
const ALIKE: f64 = 0.6;

enum Pace {
    Even,
    Both,
    Raking,
    Loader,
    Face,
    Pass,
    Delivery,
}

impl Crew {
    pub(super) fn new(loaders: &[Part], rakers: &[Part], loader_count: usize, raker_count: usize) -> Self {
        let share = |parts: &[Part], key| parts.iter().find(|p| p.key == key).map_or(0.0, |p| p.share);
        Self {
            loaders: loader_count,
            rakers: raker_count,
            room: share(loaders, "waiting_for_room"),
            face: share(loaders, "waiting_for_face"),
            pass: share(loaders, "waiting_for_pass"),
            delivery: share(loaders, "waiting_for_delivery"),
            done: if raker_count > 0 { share(loaders, "done") } else { 0.0 },
            raker_waits: share(rakers, "waiting"),
        }
    }

    /// Who sets the pace: those for whom the others wait. Rakers who wait behind a loader that queues wait for the queue.
    fn pace(&self) -> Pace {
        let queues = [(self.face, 0), (self.pass, 1), (self.delivery, 2)];
        let (longest, which) = queues.into_iter().fold((0.0, 0), |a, b| if b.0 > a.0 { b } else { a });
        let for_the_rake = self.for_the_rake();
        if longest >= HARDLY && longest >= for_the_rake {
            return [Pace::Face, Pace::Pass, Pace::Delivery].into_iter().nth(which).unwrap_or(Pace::Even);
        }
        let (less, more) = (for_the_rake.min(self.raker_waits), for_the_rake.max(self.raker_waits));
        if more < HARDLY {
            Pace::Even
        } else if less >= ALIKE * more {
            Pace::Both
        } else if for_the_rake >= self.raker_waits {
            Pace::Raking
        } else {
            Pace::Loader
        }
    }

    /// Time in which a loader stands because raking is behind: no room to dump, or nothing left to load.
    fn for_the_rake(&self) -> f64 {
        if self.rakers > 0 { self.room + self.done } else { self.room }
    }

    pub(super) fn title(&self) -> String {
        let (loader, raker) = (self.loader("waits", "wait"), self.raker("waits", "wait"));
        match self.pace() {
            Pace::Even if self.rakers == 0 => self.loader("hardly ever waits", "hardly ever wait"),
            Pace::Even => "Nobody waits for long: loading and raking keep pace".into(),
            Pace::Both => format!(
                "{loader} for the rake {}, and the other way round {}",
                part_of_the_time(self.for_the_rake()),
                part_of_the_time(self.raker_waits)
            ),
            Pace::Raking => format!("{loader} for the rake {}", part_of_the_time(self.for_the_rake())),
            Pace::Loader => {
                let whom = if self.loaders == 1 { "the loader" } else { "the loaders" };
                format!("{raker} for {whom} {}", part_of_the_time(self.raker_waits))
            }
            Pace::Face => format!("{loader} for a turn at the pile {}", part_of_the_time(self.face)),
            Pace::Pass => format!("{loader} at the gate {}", part_of_the_time(self.pass)),
            Pace::Delivery => format!("{loader} for deliveries {}", part_of_the_time(self.delivery)),
        }
    }

    /// A few words, fit for a column.
    pub(super) fn short(&self) -> String {
        let loader = if self.loaders == 1 { "loader" } else { "loaders" };
        let raker = if self.rakers == 1 { "raker" } else { "rakers" };
        let rake = self.for_the_rake();
        match self.pace() {
            Pace::Even => "hardly anybody".into(),
            Pace::Both => format!("by turns, {} and {}", percent(rake), percent(self.raker_waits)),
            Pace::Raking => format!("{loader} for the rake, {}", percent(rake)),
            Pace::Loader => format!("{raker} for the {loader}, {}", percent(self.raker_waits)),
            Pace::Face => format!("{loader} at the pile, {}", percent(self.face)),
            Pace::Pass => format!("{loader} at the gate, {}", percent(self.pass)),
            Pace::Delivery => format!("{loader} for a delivery, {}", percent(self.delivery)),
        }
    }

    pub(super) fn sentence(&self) -> String {
        let pace = match self.pace() {
            Pace::Even if self.rakers == 0 => "Only loading and hauling count",
            Pace::Even => "Nobody holds the others up much",
            Pace::Both => "Hauling and raking set the pace by turns",
            Pace::Raking => "Raking sets the pace",
            Pace::Loader => "Loading and hauling set the pace",
            Pace::Face => "The turn at the pile sets the pace",
            Pace::Pass => "The gate sets the pace",
            Pace::Delivery => "The deliveries set the pace",
        };
        let its = if self.loaders == 1 { "its" } else { "their" };
        let held = [
            (self.room, "for room to dump"),
            (self.face, "for a turn at the pile"),
            (self.pass, "at a gate"),
            (self.delivery, "for a delivery"),
            (self.done, "for the last heaps to be raked out"),
        ];
        let waits =
            held.iter().enumerate().filter(|(i, (share, _))| *share >= 0.005 || *i == 0 && self.rakers > 0);
        let waits: Vec<String> =
            waits.map(|(_, (share, what))| format!("{} {what}", percent(*share))).collect();
        let loader = lower(&self.loader("waits", "wait"));
        match (waits.is_empty(), self.rakers) {
            (true, _) => format!("{pace}."),
            (false, 0) => format!("{pace}: of {its} time {loader} {}.", waits.join(", ")),
            (false, _) => format!(
                "{pace}: of {its} time {loader} {}, {} {} for a heap.",
                waits.join(", "),
                lower(&self.raker("waits", "wait")),
                percent(self.raker_waits)
            ),
        }
    }

    fn loader(&self, one: &str, many: &str) -> String {
        if self.loaders == 1 { format!("The loader {one}") } else { format!("The loaders {many}") }
    }

    fn raker(&self, one: &str, many: &str) -> String {
        if self.rakers == 1 { format!("The raker {one}") } else { format!("The rakers {many}") }
    }
}

/// A share as people say it: `about a third of the time`.
fn part_of_the_time(share: f64) -> String {
    const PARTS: [(f64, &str); 13] = [
        (0.05, "a twentieth"),
        (0.1, "a tenth"),
        (0.2, "a fifth"),
        (0.25, "a quarter"),
        (1.0 / 3.0, "a third"),
        (0.4, "two fifths"),
        (0.5, "half"),
        (0.6, "three fifths"),
        (2.0 / 3.0, "two thirds"),
        (0.75, "three quarters"),
        (0.8, "four fifths"),
        (0.9, "nine tenths"),
        (1.0, "all"),
    ];
    match PARTS.iter().find(|(part, _)| (part - share).abs() <= 0.02) {
        Some((_, words)) => format!("about {words} of the time"),
        None => format!("about {} of the time", percent(share)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn crew() -> Crew {
        Crew { loaders: 1, rakers: 1, ..Crew::default() }
    }

    #[test]
    fn a_loader_that_waits_for_room_waits_for_the_rake() {
        let crew = Crew { room: 0.34, raker_waits: 0.03, ..crew() };
        assert_eq!(crew.title(), "The loader waits for the rake about a third of the time");
        assert_eq!(crew.short(), "loader for the rake, 34 %");
        assert_eq!(
            crew.sentence(),
            "Raking sets the pace: of its time the loader waits 34 % for room to dump, the raker waits 3 % for a heap."
        );
    }

    #[test]
    fn a_loader_that_is_done_early_waits_for_the_rake_too() {
        let crew = Crew { done: 0.3, raker_waits: 0.01, ..crew() };
        assert_eq!(crew.title(), "The loader waits for the rake about 30 % of the time");
        assert_eq!(
            crew.sentence(),
            "Raking sets the pace: of its time the loader waits 0 % for room to dump, 30 % for the last heaps to be \
             raked out, the raker waits 1 % for a heap."
        );
    }

    #[test]
    fn where_both_wait_about_as_long_neither_is_blamed_alone() {
        let crew = Crew { room: 0.06, done: 0.02, raker_waits: 0.1, ..crew() };
        assert!(
            crew.sentence().starts_with("Hauling and raking set the pace by turns: "),
            "{}",
            crew.sentence()
        );
        assert_eq!(
            crew.title(),
            "The loader waits for the rake about 8 % of the time, and the other way round about a tenth of the time"
        );
    }

    #[test]
    fn rakers_behind_a_queue_wait_for_the_queue_and_not_for_the_loader() {
        let crew = Crew { loaders: 3, rakers: 2, face: 0.3, raker_waits: 0.5, ..crew() };
        assert_eq!(crew.title(), "The loaders wait for a turn at the pile about 30 % of the time");
        assert_eq!(crew.short(), "loaders at the pile, 30 %");
        let crew = Crew { face: 0.01, ..crew };
        assert_eq!(crew.title(), "The rakers wait for the loaders about half of the time");
    }

    #[test]
    fn where_nobody_waits_that_is_said() {
        let alone = Crew { rakers: 0, ..crew() };
        assert_eq!(alone.title(), "The loader hardly ever waits");
        assert_eq!(alone.sentence(), "Only loading and hauling count.");
        assert_eq!(crew().title(), "Nobody waits for long: loading and raking keep pace");
        assert_eq!(
            crew().sentence(),
            "Nobody holds the others up much: of its time the loader waits 0 % for room to dump, the raker waits 0 % \
             for a heap."
        );
    }
}
