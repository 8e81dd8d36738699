//! How people work, and what things cost.

use super::clause::{Clause, Value};
use super::teller::{About, Teller, aside, told, words};
use super::words::{article, bare, beginning, capital, within};
use crate::defaults;
use crate::key::{crew, loader, material, money, raker, stockpile};
use crate::raw::{RawDelivery, RawStockpile, piece};

const RATES: [&[&str]; 2] = [
    &["5 yd3/h", "10 yd3/h", "15 yd3/h", "20 yd3/h", "25 yd3/h"],
    &["4 m3/h", "8 m3/h", "12 m3/h", "15 m3/h", "19 m3/h"],
];
const SHARES: [&[&str]; 2] = [&["0 %", "25 %", "50 %", "75 %"]; 2];
const HOURLY: [&[&str]; 2] = [&["$20/h", "$25/h", "$30/h", "$35/h", "$45/h"]; 2];
const BY_VOLUME: [&[&str]; 2] =
    [&["$12/yd3", "$18/yd3", "$25/yd3", "$35/yd3"], &["$15/m3", "$24/m3", "$32/m3", "$45/m3"]];
const SUMS: [&[&str]; 2] = [&["$90", "$120", "$180", "$400", "$800"]; 2];
const FUEL: [&[&str]; 2] = [&["$3.50/gal", "$4/gal", "$4.50/gal"], &["$1.60/l", "$1.80/l", "$2/l"]];

impl Teller<'_> {
    /// How fast people rake, and what the bucket spreads.
    pub(super) fn people(&self) -> Vec<Clause> {
        let density = self.built.job.material.density_kg_per_m3;
        let several = self.raw.rakers.len() > 1;
        let mut clauses: Vec<Clause> = Vec::new();
        for raker in &self.raw.rakers {
            let name = raker.named.shown();
            let about = About::of("raker", name, raker::KEYS, "rate", "raked in an hour, one person");
            let rate = self.or_usual(about, raker.rate.as_ref(), defaults::raking(density).value, RATES);
            let who = match (several, article(name)) {
                (false, _) => " One person rakes ".to_owned(),
                (true, "") => format!(" {} rakes ", beginning(name)),
                (true, _) => format!(" Each {name} rakes "),
            };
            clauses.push(aside("people", vec![words(who), told(rate), words(".")]));
        }
        if self.built.job.rakers.is_empty() {
            return clauses;
        }
        let about = About::in_table("crew", crew::KEYS, "spread_share", "spread by the bucket");
        let share = self.or_usual(about, self.raw.crew.spread_share.as_ref(), 0.0, SHARES);
        clauses.push(aside("people", vec![words(" The bucket spreads "), told(share), words(" of it.")]));
        clauses
    }

    /// What things cost, one sentence each.
    pub(super) fn prices(&self) -> Vec<Clause> {
        let mut clauses = self.material_prices();
        for loader in &self.raw.loaders {
            let name = loader.named.shown();
            let about = |key: &str, title| About::of("loader", name, loader::KEYS, key, title);
            let cost = |about, at: Option<&_>| self.or_none(about, at, "nothing", HOURLY);
            let machine = cost(about("machine_cost", "an hour of the machine"), loader.machine_cost.as_ref());
            let operator =
                cost(about("operator_cost", "an hour of the operator"), loader.operator_cost.as_ref());
            clauses.push(costs(&within(name), machine));
            clauses.push(costs("its operator", operator));
        }
        for raker in &self.raw.rakers {
            let name = raker.named.shown();
            let about = About::of("raker", name, raker::KEYS, "cost", "an hour of somebody raking");
            let who = match self.raw.rakers.len() {
                0 | 1 => "a person raking".to_owned(),
                _ => format!("each {}", bare(name)),
            };
            clauses.push(costs(&who, self.or_none(about, raker.cost.as_ref(), "nothing", HOURLY)));
        }
        let about = |key: &str, title| About::in_table("money", money::KEYS, key, title);
        let money = &self.raw.money;
        let fuel = self.or_none(about("fuel_price", "fuel"), money.fuel_price.as_ref(), "nothing", FUEL);
        let there = about("mobilisation", "getting the machine there and back");
        let there = self.or_none(there, money.mobilisation.as_ref(), "nothing", SUMS);
        clauses.extend([costs("fuel", fuel), costs("getting the machine there", there)]);
        clauses
    }

    /// By the volume, or pile by pile and truck by truck: never both, for it would be paid twice.
    fn material_prices(&self) -> Vec<Clause> {
        let mut clauses = Vec::new();
        let piles = &self.raw.stockpiles;
        let by_volume = self.raw.material.as_ref().and_then(|material| material.price.as_ref());
        let of_pile =
            |pile: &RawStockpile| pile.price.is_some() || pile.deliveries.iter().any(|d| d.price.is_some());
        if by_volume.is_some() || !piles.iter().any(of_pile) {
            let about = About::in_table("material", material::KEYS, "price", "the material");
            clauses.push(costs("the material", self.or_none(about, by_volume, "nothing", BY_VOLUME)));
        }
        for pile in piles {
            let name = pile.named.shown();
            let about = |key: &str, title| About::of("stockpile", name, stockpile::KEYS, key, title);
            let what = format!("what lies at {}", within(name));
            let price = pile.price.as_ref().map(|at| self.given(about("price", "what lies there"), at, SUMS));
            clauses.extend(price.map(|value| costs(&what, value)));
            let carriage =
                pile.carriage.as_ref().map(|at| self.given(about("carriage", "bringing it"), at, SUMS));
            clauses.extend(carriage.map(|value| costs("bringing that", value)));
            for (number, delivery) in pile.deliveries.iter().enumerate() {
                clauses.extend(self.delivery_prices(pile, number + 1, delivery));
            }
        }
        clauses
    }

    fn delivery_prices(&self, pile: &RawStockpile, number: usize, delivery: &RawDelivery) -> Vec<Clause> {
        let name = pile.named.shown();
        let about = |key: &str, title: &'static str| {
            let path = format!("stockpile.{}.deliveries.{number}.{key}", piece(name));
            About { key: path, ..About::in_table("", stockpile::DELIVERY, key, title) }
        };
        let to = if self.raw.stockpiles.len() > 1 { format!(" to {}", within(name)) } else { String::new() };
        let which = match pile.deliveries.len() {
            1 => format!("the load of the truck{to}"),
            _ => format!("the load of truck {number}{to}"),
        };
        let price =
            delivery.price.as_ref().map(|at| self.given(about("price", "what the truck brings"), at, SUMS));
        let carriage =
            delivery.carriage.as_ref().map(|at| self.given(about("carriage", "bringing it"), at, SUMS));
        let clauses =
            [price.map(|value| costs(&which, value)), carriage.map(|value| costs("bringing that", value))];
        clauses.into_iter().flatten().collect()
    }
}

fn costs(what: &str, value: Value) -> Clause {
    aside("price", vec![words(format!(" {} costs ", capital(what))), told(value), words(".")])
}
