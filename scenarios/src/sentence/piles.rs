//! What lies at the piles, and what trucks bring.

use super::clause::{Add, Clause, Value};
use super::teller::{About, Teller, aside, clause, told, words};
use super::words::{beginning, within};
use crate::key::stockpile::{DELIVERY, KEYS};
use crate::raw::{RawDelivery, RawStockpile, piece};
use crate::starter::usual::DELIVERY_AT;
use crate::starter::usual_order;

const VOLUMES: [&[&str]; 2] = [
    &["5 yd3", "10 yd3", "20 yd3", "40 yd3", "60 yd3", "100 yd3"],
    &["5 m3", "10 m3", "15 m3", "30 m3", "45 m3", "80 m3"],
];
const TRUCKS: [&[&str]; 2] = [&["5 yd3", "10 yd3", "15 yd3", "20 yd3"], &["4 m3", "8 m3", "12 m3", "15 m3"]];
/// Steps of the clock for a truck \[s\].
const HALF_HOUR: f64 = 1800.0;
const LAST: f64 = 60.0 * crate::parse::clock::DAY - HALF_HOUR;

impl Teller<'_> {
    pub(super) fn piles(&self) -> Vec<Clause> {
        let piles = &self.raw.stockpiles;
        let mut clauses: Vec<Clause> = piles.iter().map(|pile| self.on_hand(pile)).collect();
        clauses.push(self.truckload());
        let any = piles.iter().any(|pile| !pile.deliveries.is_empty());
        for pile in piles {
            let mut all: Vec<Clause> =
                (0..pile.deliveries.len()).map(|at| self.delivery(pile, at, &pile.deliveries[at])).collect();
            if !any || piles.len() > 1 && all.is_empty() {
                let to = if piles.len() > 1 { self.to(pile) } else { String::new() };
                all.push(aside("delivery", vec![words(format!(" No truck comes{to}."))]));
            }
            if let Some(last) = all.last_mut() {
                let kind = format!("delivery.{}", pile.named.shown());
                last.add = Some(Add { kind, words: "another delivery".into() });
            }
            clauses.extend(all);
        }
        clauses
    }

    fn to(&self, pile: &RawStockpile) -> String {
        format!(" to {}", within(pile.named.shown()))
    }

    fn on_hand(&self, pile: &RawStockpile) -> Clause {
        let name = pile.named.shown();
        let about = About::of("stockpile", name, KEYS, "on_hand", "what lies there");
        let value = self.or_none(about, pile.on_hand.as_ref(), "nothing", VOLUMES);
        let need = self.need_m3();
        let truck = self.built.stated.truckload_m3;
        let starter = [crate::units::System::Us, crate::units::System::Metric]
            .map(|units| usual_order(need, truck, units));
        let usual = value.usual || self.raw.stockpiles.len() == 1 && starter.contains(&value.typed);
        let parts =
            vec![words(format!(" {} holds ", beginning(name))), told(Value { usual, ..value }), words(".")];
        aside("pile", parts)
    }

    fn truckload(&self) -> Clause {
        let said = self.raw.stockpiles.iter().find(|pile| pile.truckload.is_some());
        let pile = said.or(self.raw.stockpiles.first());
        let about = About::of(
            "stockpile",
            pile.map_or("", |pile| pile.named.shown()),
            KEYS,
            "truckload",
            "a truckload",
        );
        let at = pile.and_then(|pile| pile.truckload.as_ref());
        let value = self.or_usual(about, at, self.built.stated.truckload_m3, TRUCKS);
        let value = self.as_in_a_starter(value, &self.usual.truckload);
        aside("pile", vec![words(" A truck brings "), told(value), words(" at a time.")])
    }

    fn delivery(&self, pile: &RawStockpile, at: usize, raw: &RawDelivery) -> Clause {
        let about = |key: &str, title: &'static str| {
            let known = About::in_table("", DELIVERY, key, title);
            let key = format!("stockpile.{}.deliveries.{}.{key}", piece(pile.named.shown()), at + 1);
            About { key, ..known }
        };
        let mut parts = vec![words(" A truck brings ")];
        parts.extend(raw.volume.as_ref().map(|volume| {
            let value = self.given(about("volume", "what the truck brings"), volume, TRUCKS);
            told(self.as_in_a_starter(value, &self.usual.truckload))
        }));
        if self.raw.stockpiles.len() > 1 {
            parts.push(words(self.to(pile)));
        }
        if let Some(time) = &raw.at {
            let typed = super::figures::typed(time, self.text);
            let [less, more] = self.times(time.value, &typed, HALF_HOUR, [0.0, LAST]);
            let said = self.clock(time.value);
            let (joined, said) = match said.strip_prefix("day ").and_then(|rest| rest.split_once(' ')) {
                Some((day, time)) => (" on ", format!("day {day} at {time}")),
                None => (" at ", said),
            };
            let usual = typed == DELIVERY_AT;
            let value = Value { usual, ..about("at", "when it comes").value(said, typed) };
            let choices = ["08:00", "10:00", "12:00", "14:00", "day 2 08:00"].map(str::to_owned).to_vec();
            parts.extend([words(joined), told(Value { less, more, choices, ..value })]);
        }
        parts.push(words("."));
        let name = format!("{}.{}", pile.named.shown(), at + 1);
        Clause { name: Some(name), can_remove: true, ..clause("delivery", parts) }
    }
}
