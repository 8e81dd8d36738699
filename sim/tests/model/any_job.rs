//! Jobs put together by a fixed rule from a number, with every feature on or off. A test that fails names the number, and the
//! number is the job.

use super::jobs::*;
use sim::*;

/// Numbers by a fixed rule (SplitMix64 of Steele, Lea & Flood, OOPSLA 2014).
pub(crate) struct Numbers(pub(crate) u64);

impl Numbers {
    /// The next 64 bits.
    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// One of `0..n`.
    pub(crate) fn below(&mut self, n: u64) -> usize {
        (self.next() % n) as usize
    }

    /// Any value between the two, equally likely.
    pub(crate) fn between(&mut self, least: f64, greatest: f64) -> f64 {
        least + (greatest - least) * (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// True once in `n` times.
    pub(crate) fn once_in(&mut self, n: u64) -> bool {
        self.below(n) == 0
    }

    /// One of these, equally likely.
    pub(crate) fn one_of<T: Clone>(&mut self, all: &[T]) -> T {
        all[self.below(all.len() as u64)].clone()
    }
}

/// Round figures half of the time, so that many things fall on the same instant.
fn figure(n: &mut Numbers, least: f64, greatest: f64) -> f64 {
    let exact = n.between(least, greatest);
    if n.once_in(2) { (exact / 5.0).round() * 5.0 } else { exact }
}

fn law(n: &mut Numbers) -> Distribution {
    match n.below(4) {
        0 => Distribution::Constant(1.0),
        1 => Distribution::Uniform { least: 0.5, greatest: 1.5 },
        2 => Distribution::Exponential { mean: 1.0 },
        _ => Distribution::Observed([0.5, 1.0, 1.5].into()),
    }
}

fn some_chance(n: &mut Numbers) -> Chance {
    let mut chance = Chance::none();
    if n.once_in(2) {
        return chance;
    }
    let (days, loads) = (&mut chance.days, &mut chance.loads);
    (days.day, days.loader_pace, days.travel, days.raker_pace) = (law(n), law(n), law(n), law(n));
    let mild = Distribution::Uniform { least: 0.8, greatest: 1.2 };
    (days.fill, days.need, days.bulk, loads.fill) = (mild.clone(), mild.clone(), mild.clone(), mild);
    (loads.loading, loads.haul, loads.dump) = (law(n), law(n), law(n));
    (loads.return_leg, loads.raking) = (law(n), law(n));
    chance
}

fn some_zones(n: &mut Numbers, piles: usize, passes: usize) -> Vec<Zone> {
    let count = 1 + n.below(3);
    let mut zones = Vec::new();
    for i in 0..count {
        let mut ways = Vec::new();
        for stockpile in 0..piles {
            if stockpile == 0 || n.once_in(2) {
                ways.push(Way { stockpile, distance_m: figure(n, 0.0, 90.0), passes: vec![] });
            }
        }
        for way in &mut ways {
            let shares = [n.between(0.0, 0.5), n.between(0.5, 1.0)];
            for share in shares.into_iter().take(n.below(3)) {
                way.passes.extend((passes > 0).then(|| PassOnWay { pass: n.below(passes as u64), share }));
            }
        }
        let room = n.one_of(&[None, Some(1), Some(2), Some(4)]);
        let need_m3 = if n.once_in(8) { 0.0 } else { n.between(0.1, 9.0) };
        zones.push(Zone { name: format!("zone {i}"), need_m3, room, ways, walks_m: vec![] });
    }
    for (i, zone) in zones.iter_mut().enumerate() {
        let walks_m = (0..count).map(|other| if other == i { 0.0 } else { figure(n, 0.0, 60.0) });
        zone.walks_m = walks_m.collect();
    }
    zones
}

fn some_loader(n: &mut Numbers) -> Loader {
    let rated = n.one_of(&[None, Some(400.0)]);
    Loader {
        heaped_m3: n.between(0.2, 1.2),
        lift_kg: rated.map(|kg: f64| kg * 0.5),
        loaded_m_per_s: n.between(0.5, 2.5),
        empty_m_per_s: n.between(0.5, 3.0),
        load_s: figure(n, 0.0, 40.0),
        dump_s: figure(n, 0.0, 30.0),
        start_stop_s: figure(n, 0.0, 10.0),
        spread_s_per_m3: figure(n, 0.0, 30.0),
        machine_cost_per_h: n.between(0.0, 60.0),
        operator_cost_per_h: n.between(0.0, 60.0),
        fuel_working_l_per_h: n.between(0.0, 9.0),
        fuel_idling_l_per_h: n.between(0.0, 3.0),
        stoppages: n.once_in(3).then(|| Stoppages {
            mean_gap_s: n.between(50.0, 900.0),
            length_s: Distribution::Uniform { least: 0.0, greatest: 120.0 },
        }),
        ..loader("loader")
    }
}

fn some_shift(n: &mut Numbers) -> Shift {
    let start_s = 8.0 * 3_600.0;
    let mut breaks = Vec::new();
    let mut at = start_s;
    for _ in 0..n.below(4) {
        let start = at + 1.0 + figure(n, 0.0, 300.0);
        let end = start + 5.0 + figure(n, 0.0, 120.0);
        breaks.push(Break { start_s: start, end_s: end });
        at = end;
    }
    let end_s = n.once_in(2).then(|| at + 60.0 + figure(n, 0.0, 600.0));
    let (set_up, clean_up) = (figure(n, 0.0, 60.0), figure(n, 0.0, 60.0));
    let (set_up_s, clean_up_s) = (Distribution::Constant(set_up), Distribution::Constant(clean_up));
    Shift { start_s, end_s, breaks, set_up_s, clean_up_s }
}

/// The job of this number: always the same.
pub(crate) fn some_job(number: u64) -> Job {
    let n = &mut Numbers(number);
    let (piles, passes) = (1 + n.below(2), n.below(3));
    let zones = some_zones(n, piles, passes);
    let loaders: Vec<Loader> =
        (0..1 + n.below(3)).map(|i| Loader { name: format!("loader {i}"), ..some_loader(n) }).collect();
    let rakers: Vec<Raker> = (0..n.below(4))
        .map(|i| Raker {
            rate_m3_per_h: n.between(5.0, 120.0),
            walking_m_per_s: n.between(0.5, 1.5),
            cost_per_h: n.between(0.0, 40.0),
            ..raker(&format!("raker {i}"), n.below(zones.len() as u64))
        })
        .collect();
    let spread_share = if rakers.is_empty() || n.once_in(10) { 1.0 } else { n.one_of(&[0.0, 0.0, 0.3]) };
    let shift = some_shift(n);
    let stockpiles = (0..piles)
        .map(|i| Stockpile {
            face: 1 + n.below(2) as u32,
            deliveries: (0..n.below(3))
                .map(|_| Delivery {
                    at_s: shift.start_s + figure(n, -100.0, 1_500.0),
                    late_s: n
                        .one_of(&[Distribution::Constant(0.0), Distribution::Exponential { mean: 300.0 }]),
                    volume_m3: n.between(0.5, 6.0),
                })
                .collect(),
            ..pile(&format!("pile {i}"), n.between(0.0, 12.0))
        })
        .collect();
    let passes = (0..passes)
        .map(|i| Pass {
            name: format!("gate {i}"),
            passing_s: figure(n, 0.0, 20.0),
            at_once: 1 + n.below(2) as u32,
            width_m: n.one_of(&[0.9, 2.0]),
        })
        .collect();
    let surplus_zone = n.below(zones.len() as u64);
    let raking = Raking {
        together: n.once_in(4).then(|| n.between(0.6, 1.0)),
        fatigue: n.once_in(3).then_some(Fatigue { share_per_h: 0.3, floor: 0.4 }),
        spread_share,
        stand_clear: n.once_in(2),
    };
    let orders = [
        FillOrder::AsListed,
        FillOrder::FarthestFirst,
        FillOrder::NearestFirst,
        FillOrder::InTurn,
        FillOrder::MostRoom,
    ];
    Job {
        zones,
        stockpiles,
        passes,
        loaders,
        rakers,
        raking,
        fill_order: n.one_of(&orders),
        finish: n.one_of(&[FinishRule::AreaCovered, FinishRule::PileCleared { surplus_zone }]),
        shift,
        chance: some_chance(n),
        prices: Prices { fuel_per_l: 1.5, material: 200.0 },
        ..one_and_one()
    }
}

/// A job of [`some_job`] in which work is never interrupted.
pub(crate) fn undisturbed(number: u64) -> Job {
    let mut job = some_job(number);
    job.shift.breaks.clear();
    job.shift.end_s = None;
    job.raking.fatigue = None;
    job.loaders.iter_mut().for_each(|l| l.stoppages = None);
    for pile in &mut job.stockpiles {
        pile.on_hand_m3 += pile.deliveries.drain(..).map(|d| d.volume_m3).sum::<f64>();
    }
    job
}

/// One loader, one pile, one zone, and one crew or none; round times as well as drawn ones.
pub(crate) fn line(number: u64) -> Job {
    let mut job = undisturbed(number);
    job.loaders.truncate(1);
    job.stockpiles.truncate(1);
    job.zones.truncate(1);
    job.zones[0].ways.retain(|way| way.stockpile == 0);
    job.zones[0].walks_m.truncate(1);
    if job.finish != FinishRule::AreaCovered {
        job.finish = FinishRule::PileCleared { surplus_zone: 0 };
    }
    if job.raking.together.is_none() {
        job.rakers.truncate(1);
    }
    job.rakers.iter_mut().for_each(|r| r.start_zone = 0);
    job.zones[0].need_m3 *= 3.0;
    job.stockpiles[0].on_hand_m3 *= 4.0;
    job
}

/// Any number of everything; times are drawn.
pub(crate) fn yard(number: u64) -> Job {
    let mut job = undisturbed(number);
    job.finish = FinishRule::AreaCovered;
    if job.rakers.is_empty() {
        job.rakers.push(raker("raker", 0));
    }
    if number.is_multiple_of(3) {
        job.raking.spread_share = 0.0;
        job.zones.iter_mut().for_each(|z| z.need_m3 *= 3.0);
        job.stockpiles.iter_mut().for_each(|s| s.on_hand_m3 *= 4.0);
    }
    with_lognormal_noise(job, 0.1, 0.3)
}

/// As [`some_job`], longer and with up to eight loaders and six rakers more: more of them meet.
pub(crate) fn crowd(number: u64) -> Job {
    let mut job = some_job(number);
    let n = &mut Numbers(number ^ 0x5EED);
    for i in 0..n.below(9) {
        let alike = job.loaders[i % job.loaders.len()].clone();
        job.loaders.push(Loader { name: format!("more {i}"), ..alike });
    }
    for i in 0..n.below(7) {
        let zone = n.below(job.zones.len() as u64);
        job.rakers.push(Raker { rate_m3_per_h: n.between(5.0, 120.0), ..raker(&format!("more {i}"), zone) });
    }
    job.zones.iter_mut().for_each(|zone| zone.need_m3 *= 8.0);
    job.stockpiles.iter_mut().for_each(|pile| pile.on_hand_m3 *= 8.0);
    if n.once_in(3) { with_lognormal_noise(job, 0.1, 0.3) } else { job }
}
