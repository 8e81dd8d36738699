//! Timing alternately: what is to be compared is timed in turn within a second, so that a machine that drifts, or that others use
//! too, slows all of them alike. Of the ratios, one a round, the middle and the quartiles are told.

use std::time::Instant;

/// Rounds when nothing else is asked for.
pub const ROUNDS: usize = 15;

/// One thing to be timed: its name, in how many parts its time is told (loads, say), and how it is done.
pub struct Side<'a> {
    pub name: &'a str,
    pub parts: u64,
    pub go: Box<dyn FnMut() + 'a>,
}

impl<'a> Side<'a> {
    pub fn new(name: &'a str, parts: u64, go: impl FnMut() + 'a) -> Self {
        Self { name, parts, go: Box::new(go) }
    }
}

/// Seconds each side took in each round.
pub struct Times<'a> {
    sides: Vec<(&'a str, u64, Vec<f64>)>,
}

/// The middle of a figure over the rounds and its quartiles.
#[derive(Clone, Copy, Debug)]
pub struct Figure {
    pub low: f64,
    pub middle: f64,
    pub high: f64,
}

impl Figure {
    fn of(rounds: impl Iterator<Item = f64>) -> Self {
        let sorted = sim::Sorted::new(rounds);
        let [low, middle, high] = [0.25, 0.5, 0.75].map(|share| sorted.percentile(share).value);
        Self { low, middle, high }
    }

    /// In another unit.
    pub fn times(self, factor: f64) -> Self {
        Self { low: self.low * factor, middle: self.middle * factor, high: self.high * factor }
    }
}

/// Whether this is the run that only sees to it that nothing is broken (`cargo bench -- --test`).
pub fn only_a_try() -> bool {
    std::env::args().any(|arg| arg == "--test")
}

/// Whether the comparisons are wanted: not where one of criterion's own benchmarks is asked for by name.
pub fn wanted() -> bool {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    asked.iter().any(|arg| arg == "ratios") || asked.iter().all(|arg| arg == "--bench" || arg == "--test")
}

/// Times all sides alternately, every other round in the opposite order.
pub fn alternately<'a>(rounds: usize, sides: Vec<Side<'a>>) -> Times<'a> {
    let rounds = if only_a_try() { 1 } else { rounds };
    let mut times = Times { sides: sides.iter().map(|s| (s.name, s.parts, Vec::new())).collect() };
    let mut sides = sides;
    if !only_a_try() {
        sides.iter_mut().for_each(|side| (side.go)());
    }
    for round in 0..rounds {
        for turn in 0..sides.len() {
            let side = if round % 2 == 0 { turn } else { sides.len() - 1 - turn };
            let start = Instant::now();
            (sides[side].go)();
            times.sides[side].2.push(start.elapsed().as_secs_f64());
        }
    }
    times
}

impl<'a> Times<'a> {
    fn side(&self, name: &str) -> &(&'a str, u64, Vec<f64>) {
        self.sides.iter().find(|side| side.0 == name).unwrap()
    }

    /// Nanoseconds one part of a side took.
    pub fn ns_a_part(&self, name: &str) -> Figure {
        let (_, parts, seconds) = self.side(name);
        Figure::of(seconds.iter().map(|s| s * 1e9 / *parts as f64))
    }

    /// Seconds a side took.
    pub fn seconds(&self, name: &str) -> Figure {
        Figure::of(self.side(name).2.iter().copied())
    }

    /// Time for one part of `a` over time for one part of `b`.
    pub fn ratio(&self, a: &str, b: &str) -> Figure {
        let (a, b) = (self.side(a), self.side(b));
        let each = b.1 as f64 / a.1 as f64;
        Figure::of(a.2.iter().zip(&b.2).map(|(a, b)| a / b * each))
    }

    /// Seconds that `a` took more than `b`.
    pub fn seconds_more(&self, a: &str, b: &str) -> Figure {
        Figure::of(self.side(a).2.iter().zip(&self.side(b).2).map(|(a, b)| a - b))
    }
}

/// What a figure ought to be.
#[derive(Clone, Copy, Debug)]
pub enum Target {
    AtMost(f64),
    AtLeast(f64),
    /// None set.
    Open,
}

/// The heading of lines as `line` prints them.
pub fn heading(what: &str) {
    println!("\n{what:<68} {:>8}   {:<18} target", "middle", "quartiles");
}

/// One line: what was measured, the figure beside its target. A target missed is said, and no more: time is no test.
pub fn line(what: &str, Figure { low, middle, high }: Figure, target: Target) {
    let quartiles = format!("{low:.3} to {high:.3}");
    let (bound, met) = match target {
        Target::AtMost(most) => (format!("at most {most:.2}"), middle <= most),
        Target::AtLeast(least) => (format!("at least {least}"), middle >= least),
        Target::Open => return println!("  {what:<66} {middle:>8.3}   {quartiles}"),
    };
    let verdict = if met { "met" } else { "MISSED" };
    let verdict = if only_a_try() { "one pass tells nothing" } else { verdict };
    println!("  {what:<66} {middle:>8.3}   {quartiles:<18} {bound}: {verdict}");
}
