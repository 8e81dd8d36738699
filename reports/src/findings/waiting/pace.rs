//! Who sets the pace, and how that is said.
//!
//! Where it was tried what would help, that decides: what saves most, if it surely saves anything worth naming, names who sets
//! the pace. A queue at the pile or a gate, which nothing that is tried shortens, sets it where ending it could save more than
//! that. Without such tries the waiting decides.

use super::Part;
use crate::findings::relief::{improvement_words, worth_naming};
use crate::findings::{about_duration, lower, percent};
use sim::{Improvement, Relief};

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
    /// What would help, where it was tried.
    tried: Option<Tried>,
}

/// What saves most of each kind.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Tried {
    raking: Helps,
    loading: Helps,
    room: Helps,
    deliveries: Helps,
    /// About how long the job takes \[s\].
    job_s: f64,
}

/// What saves most, and how much \[s\]; 0 where nothing surely saves time worth naming.
#[derive(Clone, Copy, Debug, Default)]
struct Helps {
    saved_s: f64,
    by: Option<Improvement>,
}

impl Tried {
    /// From what was tried on a job that takes about so long \[s\].
    pub(super) fn new(all: &[Relief], job_s: f64) -> Self {
        let most = |of: &[Improvement]| {
            let helps = all.iter().filter(|r| {
                of.contains(&r.improvement) && r.saved_s.low > 0.0 && worth_naming(r.saved_s.value, job_s)
            });
            let best = helps.max_by(|a, b| a.saved_s.value.total_cmp(&b.saved_s.value));
            best.map_or_else(Helps::default, |r| Helps { saved_s: r.saved_s.value, by: Some(r.improvement) })
        };
        use Improvement as I;
        Self {
            raking: most(&[I::AnotherRaker, I::FasterRaking]),
            loading: most(&[I::AnotherLoader, I::LargerBucket, I::ShorterWays]),
            room: most(&[I::MoreRoom]),
            deliveries: most(&[I::EarlierDeliveries, I::AllThere]),
            job_s,
        }
    }

    fn all(&self) -> [(Helps, Pace); 4] {
        [
            (self.raking, Pace::Raking),
            (self.loading, Pace::Loader),
            (self.room, Pace::Room),
            (self.deliveries, Pace::Delivery),
        ]
    }

    fn best(&self) -> (Helps, Pace) {
        let none = (Helps::default(), Pace::Even);
        self.all()
            .into_iter()
            .fold(none, |best, next| if next.0.saved_s > best.0.saved_s { next } else { best })
    }
}

/// Shares under this are not worth a title (our own choice).
const HARDLY: f64 = 0.05;
/// Where the lesser of two waits is at least this share of the greater, both sides set the pace (our own choice).
const ALIKE: f64 = 0.6;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Pace {
    Even,
    Both,
    Raking,
    Loader,
    Room,
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
            tried: None,
        }
    }

    /// With what would help.
    pub(super) fn with(self, tried: Option<Tried>) -> Self {
        Self { tried, ..self }
    }

    fn pace(&self) -> Pace {
        match &self.tried {
            Some(tried) => self.pace_by_help(tried),
            None => self.pace_by_waiting(),
        }
    }

    /// Who sets the pace: those whose help saves most.
    fn pace_by_help(&self, tried: &Tried) -> Pace {
        let (best, pace) = tried.best();
        let (queue, of_queue) =
            if self.face >= self.pass { (self.face, Pace::Face) } else { (self.pass, Pace::Pass) };
        if queue >= HARDLY && queue * tried.job_s > best.saved_s {
            return of_queue;
        }
        let (less, more) = match (tried.raking.saved_s, tried.loading.saved_s) {
            (raking, loading) if raking < loading => (raking, loading),
            (raking, loading) => (loading, raking),
        };
        let between_them = matches!(pace, Pace::Raking | Pace::Loader);
        if between_them && less >= ALIKE * more { Pace::Both } else { pace }
    }

    /// Who sets the pace: those for whom the others wait. Rakers who wait behind a loader that queues wait for the queue.
    fn pace_by_waiting(&self) -> Pace {
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
        self.waits().unwrap_or_else(|| self.pace_and_help())
    }

    /// Who waits for whom, where that is worth a title.
    fn waits(&self) -> Option<String> {
        let (loader, raker) = (self.loader("waits", "wait"), self.raker("waits", "wait"));
        let (share, words) = match self.pace() {
            Pace::Even => return None,
            Pace::Both if self.for_the_rake() >= HARDLY && self.raker_waits >= HARDLY => {
                return Some(format!(
                    "{loader} for the rake {}, and the other way round {}",
                    part_of_the_time(self.for_the_rake()),
                    part_of_the_time(self.raker_waits)
                ));
            }
            Pace::Both => return None,
            Pace::Raking => (self.for_the_rake(), format!("{loader} for the rake")),
            Pace::Loader => {
                let whom = if self.loaders == 1 { "the loader" } else { "the loaders" };
                (self.raker_waits, format!("{raker} for {whom}"))
            }
            Pace::Room => (self.room, format!("{loader} for room to dump")),
            Pace::Face => (self.face, format!("{loader} for a turn at the pile")),
            Pace::Pass => (self.pass, format!("{loader} at the gate")),
            Pace::Delivery => (self.delivery, format!("{loader} for deliveries")),
        };
        (share >= HARDLY).then(|| format!("{words} {}", part_of_the_time(share)))
    }

    /// Who sets the pace although nobody waits long for them, and what would help.
    fn pace_and_help(&self) -> String {
        let best = self.tried.map(|tried| tried.best().0).unwrap_or_default();
        match best.by {
            Some(by) if self.pace() != Pace::Even => {
                let what = improvement_words(by).1;
                format!("{}: {what} saves about {}", self.pace_words(), about_duration(best.saved_s))
            }
            _ if self.rakers == 0 => self.loader("hardly ever waits", "hardly ever wait"),
            _ => "Nobody waits for long: loading and raking keep pace".into(),
        }
    }

    fn pace_words(&self) -> &'static str {
        match self.pace() {
            Pace::Even if self.rakers == 0 => "Only loading and hauling count",
            Pace::Even => "Nobody holds the others up much",
            Pace::Both => "Hauling and raking set the pace alternately",
            Pace::Raking => "Raking sets the pace",
            Pace::Loader => "Loading and hauling set the pace",
            Pace::Room => "Room to dump sets the pace",
            Pace::Face => "The turn at the pile sets the pace",
            Pace::Pass => "The gate sets the pace",
            Pace::Delivery => "The deliveries set the pace",
        }
    }

    /// A few words, fit for a column.
    pub(super) fn short(&self) -> String {
        let loader = if self.loaders == 1 { "loader" } else { "loaders" };
        let raker = if self.rakers == 1 { "raker" } else { "rakers" };
        let rake = self.for_the_rake();
        match self.pace() {
            Pace::Even => "hardly anybody".into(),
            Pace::Both => format!("alternately, {} and {}", percent(rake), percent(self.raker_waits)),
            Pace::Raking => format!("{loader} for the rake, {}", percent(rake)),
            Pace::Loader => format!("{raker} for the {loader}, {}", percent(self.raker_waits)),
            Pace::Room => format!("{loader} for room to dump, {}", percent(self.room)),
            Pace::Face => format!("{loader} at the pile, {}", percent(self.face)),
            Pace::Pass => format!("{loader} at the gate, {}", percent(self.pass)),
            Pace::Delivery => format!("{loader} for a delivery, {}", percent(self.delivery)),
        }
    }

    pub(super) fn sentence(&self) -> String {
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
        // Where the title says who sets the pace, it is not said again.
        let pace = if self.waits().is_some() || self.pace() == Pace::Even || self.tried.is_none() {
            format!("{}: of", self.pace_words())
        } else {
            "Of".into()
        };
        match (waits.is_empty(), self.rakers) {
            (true, _) => format!("{}.", self.pace_words()),
            (false, 0) => format!("{pace} {its} time {loader} {}.", waits.join(", ")),
            (false, _) => format!(
                "{pace} {its} time {loader} {}, {} {} for a heap.",
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

/// A share as people say it: `about a third of the time`; one that is a tenth off its name is told in per cent.
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
    match PARTS.iter().find(|(part, _)| (part - share).abs() <= 0.02_f64.min(0.1 * part)) {
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
            crew.sentence().starts_with("Hauling and raking set the pace alternately: "),
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

    fn tried(improvement: Improvement, minutes: f64) -> Relief {
        let mean = |value: f64| sim::Mean { value, low: value - 30.0, high: value + 30.0, sd: 1.0, n: 500 };
        Relief { improvement, saved_s: mean(minutes * 60.0), saved_cost: mean(0.0), done: None }
    }

    /// A job of four hours.
    fn helped(crew: Crew, all: &[Relief]) -> Crew {
        crew.with(Some(Tried::new(all, 14_400.0)))
    }

    #[test]
    fn a_short_wait_does_not_set_the_pace_of_a_job_in_which_one_more_loader_saves_an_hour() {
        let by_waiting = Crew { delivery: 0.08, raker_waits: 0.3, room: 0.02, ..crew() };
        assert!(
            by_waiting.sentence().starts_with("The deliveries set the pace"),
            "{}",
            by_waiting.sentence()
        );
        let loader = tried(Improvement::AnotherLoader, 60.0);
        let crew = helped(by_waiting, &[loader, tried(Improvement::AllThere, 9.0)]);
        assert_eq!(crew.title(), "The raker waits for the loader about 30 % of the time");
        assert!(crew.sentence().starts_with("Loading and hauling set the pace: "), "{}", crew.sentence());
        assert!(crew.sentence().contains("8 % for a delivery"), "what is waited is still told");
        let late =
            helped(by_waiting, &[tried(Improvement::AnotherLoader, 9.0), tried(Improvement::AllThere, 60.0)]);
        assert!(late.sentence().starts_with("The deliveries set the pace: "), "{}", late.sentence());
    }

    #[test]
    fn who_sets_the_pace_though_nobody_waits_is_named_with_what_would_help() {
        let crew = helped(Crew { raker_waits: 0.02, ..crew() }, &[tried(Improvement::AnotherLoader, 63.0)]);
        assert_eq!(crew.title(), "Loading and hauling set the pace: one more loader saves about 1 h 05 min");
        assert!(crew.sentence().starts_with("Of its time the loader waits "), "{}", crew.sentence());
        let none = helped(Crew { raker_waits: 0.02, ..crew }, &[tried(Improvement::AnotherLoader, 0.1)]);
        assert_eq!(none.title(), "Nobody waits for long: loading and raking keep pace");
    }

    #[test]
    fn room_to_dump_is_named_where_more_room_saves_most() {
        let crew = Crew { room: 0.2, ..crew() };
        let crew = helped(crew, &[tried(Improvement::MoreRoom, 20.0), tried(Improvement::AnotherRaker, 5.0)]);
        assert_eq!(crew.title(), "The loader waits for room to dump about a fifth of the time");
        assert!(crew.sentence().starts_with("Room to dump sets the pace: "), "{}", crew.sentence());
    }

    #[test]
    fn a_queue_that_nothing_tried_shortens_sets_the_pace_where_ending_it_could_save_more() {
        let crew = Crew { loaders: 3, face: 0.3, ..crew() };
        // 30 % of four hours are 72 min.
        let named = |minutes: f64| helped(crew, &[tried(Improvement::AnotherRaker, minutes)]);
        let queue = named(60.0).sentence();
        assert!(queue.starts_with("The turn at the pile sets the pace"), "{queue}");
        assert_eq!(named(80.0).title(), "Raking sets the pace: one more raker saves about 1 h 20 min");
    }

    #[test]
    fn where_both_help_alike_both_set_the_pace() {
        let both = [tried(Improvement::AnotherLoader, 20.0), tried(Improvement::AnotherRaker, 14.0)];
        let crew = helped(Crew { room: 0.1, raker_waits: 0.1, ..crew() }, &both);
        assert!(
            crew.sentence().starts_with("Hauling and raking set the pace alternately: "),
            "{}",
            crew.sentence()
        );
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
