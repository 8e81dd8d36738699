//! One loader, one raker, one zone and pile: the engine against the largest-of-two recursion on the same draws
//! (model section 8): `S_n = max(A_n, R_{n-b})`, `F_n = S_n + D_n`, `R_n = max(F_n, R_{n-1}) + W_n`,
//! `A_{n+1} = F_n + return_n + load_{n+1} + haul_{n+1}`.

use super::jobs::*;
use sim::*;

fn whole(seconds: f64) -> i64 {
    (seconds * 1e6).round_ties_even() as i64
}

/// The laws of a job's chance, ready to be drawn from.
struct Laws {
    days: [Sampler; 7],
    loads: [Sampler; 6],
}

impl Laws {
    fn new(chance: &Chance) -> Self {
        let (d, l) = (&chance.days, &chance.loads);
        Self {
            days: [&d.day, &d.loader_pace, &d.travel, &d.raker_pace, &d.fill, &d.need, &d.bulk]
                .map(Sampler::new),
            loads: [&l.fill, &l.loading, &l.haul, &l.dump, &l.return_leg, &l.raking].map(Sampler::new),
        }
    }
}

/// Completion by the recursion, with the draws taken from the laws and the streams, not from the engine.
fn completion_by_recursion(job: &Job, laws: &Laws, seed: u64, run: u32) -> (i64, u32) {
    let streams = Streams::new(seed, run);
    let [day, loader_pace, travel, raker_pace, by_day_fill, need, bulk] = &laws.days;
    let [by_fill, by_load, by_haul, by_dump, by_return, by_rake] = &laws.loads;
    let day = day.at(streams.factor(Factor::Day));
    let pace = day * loader_pace.at(streams.factor(Factor::LoaderPace));
    let travel = day * travel.at(streams.factor(Factor::Travel));
    let rake = day * raker_pace.at(streams.factor(Factor::RakerPace));
    let fill = job.material.fill_factor * by_day_fill.at(streams.factor(Factor::Fill));
    let (machine, zone, raker) = (&job.loaders[0], &job.zones[0], &job.rakers[0]);
    let nothing = 0.05 * machine.heaped_m3;
    let mut open = zone.need_m3 * need.at(streams.factor(Factor::Need));
    let mut stock = job.stockpiles[0].on_hand_m3 * bulk.at(streams.bulk(0));
    let room = zone.room.map_or(usize::MAX, |r| r as usize);
    let distance = zone.ways[0].distance_m;
    let (haul_s, return_s) = (
        distance / machine.loaded_m_per_s + machine.start_stop_s,
        distance / machine.empty_m_per_s + machine.start_stop_s,
    );

    let mut raked: Vec<i64> = Vec::new();
    let mut at_pile = whole(job.shift.set_up_s.mean());
    for load in 0.. {
        if open < nothing || stock < nothing {
            break;
        }
        let own = streams.load(load);
        let volume = (fill * by_fill.at(own.bits(LoadDraw::Fill)) * machine.heaped_m3).min(stock).min(open);
        open -= volume;
        stock -= volume;
        let arrives = at_pile
            + whole(machine.load_s * pace * by_load.at(own.bits(LoadDraw::Loading)))
            + whole(haul_s * travel * by_haul.at(own.bits(LoadDraw::Haul)));
        let n = raked.len();
        let place_free = n.checked_sub(room).map_or(0, |earlier| raked[earlier]);
        let dumped =
            arrives.max(place_free) + whole(machine.dump_s * pace * by_dump.at(own.bits(LoadDraw::Dump)));
        let last = raked.last().copied().unwrap_or(0);
        let raking_s = volume * 3600.0 / raker.rate_m3_per_h;
        raked.push(dumped.max(last) + whole(raking_s * rake * by_rake.at(own.bits(LoadDraw::Raking))));
        at_pile = dumped + whole(return_s * travel * by_return.at(own.bits(LoadDraw::Return)));
    }
    (raked.last().copied().unwrap_or(at_pile), raked.len() as u32)
}

#[test]
fn the_engine_agrees_with_the_recursion_on_the_same_draws_for_many_jobs() {
    // Parameters by a fixed rule, spread over fast and slow rakers, tight and wide room, dry and ample piles.
    let mut compared = 0;
    for case in 0..300_u32 {
        let spread = |steps: u32, stride: u32| f64::from((case * stride) % steps) / f64::from(steps - 1);
        let mut job =
            with_lognormal_noise(one_and_one(), 0.05 + 0.25 * spread(7, 3), 0.05 + 0.9 * spread(11, 5));
        job.zones[0].need_m3 = 2.0 + 60.0 * spread(13, 4);
        job.zones[0].room = [None, Some(1), Some(2), Some(3), Some(7)][case as usize % 5];
        job.zones[0].ways[0].distance_m = 80.0 * spread(9, 2);
        job.stockpiles[0].on_hand_m3 = 70.0 * (0.3 + spread(6, 5));
        job.loaders[0].heaped_m3 = 0.2 + spread(5, 3);
        job.loaders[0].start_stop_s = 4.0 * spread(3, 1);
        job.rakers[0].rate_m3_per_h = 20.0 + 200.0 * spread(8, 7);
        job.shift.set_up_s = Distribution::Constant(300.0 * spread(4, 3));
        let plan = Plan::new(&job).unwrap();
        let laws = Laws::new(&job.chance);
        let study = Study::new(&plan, u64::from(case), Runs::Exactly(20), |_| {}).unwrap();
        for outcome in &study.outcomes {
            let (completion, loads) = completion_by_recursion(&job, &laws, u64::from(case), outcome.run);
            assert_eq!(outcome.loads, loads, "case {case}, run {}", outcome.run);
            // Products of factors may be rounded in another order: one microsecond a step.
            let slack = 5 * i64::from(loads);
            let off = (outcome.completion.clock.as_micros() - completion).abs();
            assert!(off <= slack.min(40), "case {case}, run {}: {off} us apart", outcome.run);
            compared += 1;
        }
    }
    assert_eq!(compared, 6_000);
}
