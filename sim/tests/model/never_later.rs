//! Better means never make it later - where that is so. A job is a schedule, and schedules have anomalies: Graham ("Bounds on
//! multiprocessing timing anomalies", SIAM Journal on Applied Mathematics 17, 1969, from memory) showed that more hands and
//! shorter tasks can make the whole take longer. So the promise has limits, and both sides of them are tested here.
//!
//! **It holds, run by run and with any random numbers**, for one loader, one zone and pile, rakers of one pace each on a heap of their own,
//! without fatigue, stand clear, stoppages, breaks, end of day and deliveries: for more room, another raker, faster raking,
//! shorter ways, quicker loading and dumping. Proof: with `b` places and `c` rakers, heap `n` is dumped from `max(A_n, the (n - b)th
//! smallest of R_1 .. R_(n-1))` and raked from `max(F_n, the (n - c)th smallest of them)`; sums, maxima and order statistics rise
//! with all they are made of, and each of these means makes one of those times or an index smaller.
//!
//! **A larger bucket** makes it no later with constant times, one loader, one zone and pile, no limit of room, and one raker who
//! spreads everything (or none, and the loader does): loads come no later and with more in all by each of them, and completion is the
//! latest, over loads, of a load's dump and the raking of what it brings and what comes after it. It must place no more than the
//! smaller one, which may leave a rest that counts as nothing.
//!
//! **It does not hold** in general for several loaders, several zones, an end of day, or breaks with stand clear: the smallest
//! cases found are below, each with its reason. In a search over thousands of jobs without chance about one in a hundred with
//! two loaders or an end of day came out later by some of these means, with several zones and no limit of room one in fifteen.

use super::any_job::Numbers;
use super::jobs::*;
use sim::*;

/// A job of the kind for which the promise is given.
fn plain(n: &mut Numbers) -> Job {
    let mut job = one_and_one();
    if !n.once_in(3) {
        job = with_lognormal_noise(job, n.between(0.0, 0.3), n.between(0.05, 1.0));
        job.chance.loads.fill = Distribution::Uniform { least: 0.7, greatest: 1.3 };
    }
    job.zones[0].need_m3 = n.between(1.0, 15.0);
    job.stockpiles[0].on_hand_m3 = n.between(5.0, 30.0);
    job.zones[0].room = n.one_of(&[None, Some(1), Some(2), Some(3), Some(5)]);
    job.zones[0].ways[0].distance_m = n.between(0.0, 80.0);
    let loader = &mut job.loaders[0];
    (loader.heaped_m3, loader.load_s, loader.dump_s) =
        (n.between(0.4, 1.6), n.between(0.0, 60.0), n.between(0.0, 30.0));
    (loader.start_stop_s, loader.spread_s_per_m3) = (n.between(0.0, 5.0), n.between(0.0, 20.0));
    job.raking.spread_share = n.one_of(&[0.0, 0.0, 0.3]);
    let rate_m3_per_h = n.between(15.0, 150.0);
    let raker = |i| Raker { rate_m3_per_h, ..raker(&format!("raker {i}"), 0) };
    job.rakers = (0..=n.below(3)).map(raker).collect();
    job
}

type Improve = fn(&mut Job, f64);

/// What helps, each by a share from 0 to 1.
const MEANS: [(&str, Improve); 6] = [
    ("room for more heaps", |job, by| {
        let more = 1 + (4.0 * by) as u32;
        job.zones.iter_mut().filter_map(|zone| zone.room.as_mut()).for_each(|room| *room += more);
    }),
    ("no limit of room", |job, _| job.zones.iter_mut().for_each(|zone| zone.room = None)),
    ("more rakers", |job, by| {
        let copy = job.rakers[job.rakers.len() - 1].clone();
        job.rakers.extend(std::iter::repeat_n(copy, 1 + (3.0 * by) as usize));
    }),
    ("faster raking", |job, by| job.rakers.iter_mut().for_each(|raker| raker.rate_m3_per_h *= 1.0 + by)),
    ("shorter ways", |job, by| {
        job.zones.iter_mut().flat_map(|zone| &mut zone.ways).for_each(|way| way.distance_m *= 1.0 - by);
    }),
    ("quicker loading and dumping", |job, by| {
        job.loaders
            .iter_mut()
            .for_each(|l| (l.load_s, l.dump_s) = (l.load_s * (1.0 - by), l.dump_s * (1.0 - by)));
    }),
];

fn replay(job: &Job, seed: u64, run: u32) -> Replay {
    Replay::new(&Plan::new(job).unwrap(), seed, run).unwrap()
}

/// Completion of a job in which nothing is left to chance \[s of working time\].
fn completion_s(job: &Job) -> f64 {
    replay(job, 1, 0).outcome.completion.working.as_secs_f64()
}

/// Completions of three runs of a job and of one changed, under the same random numbers.
fn completions(job: &Job, changed: &Job, seed: u64) -> Vec<(Duration, Duration)> {
    let plan = Plan::new(job).unwrap();
    let of = |plan: &Plan| Study::new(plan, seed, Runs::Exactly(3), |_| {}).unwrap().outcomes;
    let (before, after) = (of(&plan), of(&plan.variant(changed).unwrap()));
    before.iter().zip(after).map(|(one, two)| (one.completion.working, two.completion.working)).collect()
}

#[test]
fn better_means_never_make_the_plain_job_later_in_any_run() {
    let mut sooner = [0; MEANS.len()];
    for number in 0..1_000 {
        let n = &mut Numbers(number);
        let job = plain(n);
        for ((name, improve), sooner) in MEANS.iter().zip(&mut sooner) {
            let mut better = job.clone();
            improve(&mut better, n.between(0.0, 1.0));
            for (run, (before, after)) in completions(&job, &better, number).into_iter().enumerate() {
                assert!(after <= before, "job {number}, run {run}, {name}: {after}, not {before}");
                *sooner += u32::from(after < before);
            }
        }
    }
    assert!(sooner.iter().all(|runs| *runs > 200), "{sooner:?}");
}

#[test]
fn with_stand_clear_or_with_breaks_no_exception_was_found() {
    // Not proved: looked for. With both there are exceptions, see below.
    for number in 0..1_000 {
        let n = &mut Numbers(!number);
        let mut job = plain(n);
        job.raking.stand_clear = n.once_in(2);
        let (breaks, mut at) = (if job.raking.stand_clear { 0 } else { 3 }, 0.0);
        for _ in 0..breaks {
            let (from, lasts) = (at + n.between(5.0, 300.0), n.between(1.0, 200.0));
            job.shift.breaks.push(pause(&job, from, from + lasts));
            at = from + lasts;
        }
        for (name, improve) in MEANS {
            let mut better = job.clone();
            improve(&mut better, n.between(0.0, 1.0));
            for (run, (before, after)) in completions(&job, &better, number).into_iter().enumerate() {
                assert!(after <= before, "job {number}, run {run}, {name}: {after}, not {before}");
            }
        }
    }
}

#[test]
fn a_larger_bucket_never_makes_it_later_where_one_raker_or_none_follows_and_room_is_plenty() {
    let (mut compared, mut sooner) = (0, 0);
    for number in 0..4_000 {
        let n = &mut Numbers(number);
        let mut job = plain(n);
        (job.chance, job.zones[0].room, job.raking.spread_share) = (Chance::none(), None, 0.0);
        job.rakers.truncate(1);
        if n.once_in(4) {
            job = without_rakers(job);
        }
        let mut better = job.clone();
        better.loaders[0].heaped_m3 *= n.between(1.0, 2.0);
        let [before, after] = [&job, &better].map(|job| replay(job, 1, 0).outcome);
        if after.placed_m3 > before.placed_m3 + 1e-9 {
            continue;
        }
        // Raking times are rounded heap by heap.
        let rounding = Duration::from_micros(i64::from(before.loads + after.loads));
        let (before, after) = (before.completion.working, after.completion.working);
        assert!(after <= before + rounding, "job {number}: {after}, not {before}");
        compared += 1;
        sooner += u32::from(after + rounding < before);
    }
    assert!(compared > 3_000 && sooner > 1_000, "{compared} compared, {sooner} sooner");
}

/// What is compared with what the promise does not cover: before and after, to the second.
#[track_caller]
fn later(job: &Job, worse: &Job, before_s: f64, after_s: f64) {
    let (before, after) = (completion_s(job), completion_s(worse));
    assert!(
        before < after && (before - before_s).abs() < 1e-3 && (after - after_s).abs() < 1e-3,
        "{before} s, {after} s"
    );
}

#[test]
fn another_raker_makes_it_later_when_a_slow_one_takes_the_last_heap() {
    // Two heaps, at 35 s and 80 s. Alone, the raker is done with them at 85 s and 135 s. A second one, ten times slower, is free
    // when the second heap comes and takes 500 s for it.
    let mut job = one_and_one();
    job.zones[0].need_m3 = 2.0;
    let mut helped = job.clone();
    helped.rakers.push(Raker { rate_m3_per_h: 7.2, ..raker("slow", 0) });
    later(&job, &helped, 135.0, 580.0);
}

#[test]
fn another_raker_makes_it_later_when_a_crew_on_one_heap_stands_in_its_own_way() {
    // One raker is 50 s at a heap; two together, at 0.4 of the sum of their rates, 62.5 s.
    let mut job = one_and_one();
    (job.zones[0].need_m3, job.raking.together) = (1.0, Some(0.4));
    let mut helped = job.clone();
    helped.rakers.push(raker("second", 0));
    later(&job, &helped, 85.0, 97.5);
}

#[test]
fn a_larger_bucket_makes_it_later_when_it_leaves_one_heap_for_two_rakers() {
    // Heaps of 1 m3 at 35 s and 80 s, raked side by side by 130 s; or one heap of 2 m3, and one raker is 100 s at it.
    let mut job = one_and_one();
    (job.zones[0].need_m3, job.rakers) = (2.0, vec![raker("a", 0), raker("b", 0)]);
    let mut larger = job.clone();
    larger.loaders[0].heaped_m3 = 2.0;
    later(&job, &larger, 130.0, 135.0);
}

#[test]
fn a_larger_bucket_makes_it_later_when_the_loader_spreads_longer_before_the_raker_can_begin() {
    // Half of each load is spread by the loader at 60 s/m3. Loads of 1 m3: dumped at 65 s, raked by 90 s; at 140 s, by 165 s. One
    // load of 2 m3: dumped at 95 s, raked by 145 s - sooner. But where raking is slow (100 s a half load) it is the start that
    // counts: 65 + 200 s against 95 + 200 s.
    let mut job = one_and_one();
    (job.zones[0].need_m3, job.raking.spread_share) = (2.0, 0.5);
    (job.loaders[0].spread_s_per_m3, job.rakers[0].rate_m3_per_h) = (60.0, 18.0);
    let mut larger = job.clone();
    larger.loaders[0].heaped_m3 = 2.0;
    later(&job, &larger, 265.0, 295.0);
}

#[test]
fn a_larger_bucket_makes_it_later_when_it_takes_a_rest_that_was_left_as_nothing() {
    // 1.04 m3 needed: a bucket of 1 m3 leaves 0.04 m3, which is less than a twentieth of it; a larger one brings all.
    let mut job = one_and_one();
    (job.zones[0].need_m3, job.stockpiles[0].on_hand_m3) = (1.04, 2.0);
    let mut larger = job.clone();
    larger.loaders[0].heaped_m3 = 1.1;
    later(&job, &larger, 85.0, 87.0);
}

#[test]
fn more_room_makes_it_later_when_a_full_zone_sent_the_loader_to_the_next() {
    // Two zones of three heaps, a raker in each, a kilometre apart; 500 s a heap. With room for one heap in the first zone, the
    // second heap goes to the second zone at 80 s and both rakers have work: the last heap is dumped at 1,595 s. With room for
    // three, the second heap too waits in the first zone, and the idle raker of the second sets out for it: there at 1,080 s
    // when all is taken, back at 2,080 s, and then three heaps, two of them dumped only when the one before is gone.
    let zones = vec![zone("first", 3.0, 0, 20.0), Zone { room: Some(1), ..zone("second", 3.0, 0, 20.0) }];
    let mut job = with_zones(one_and_one(), zones, 1_000.0);
    job.rakers = [0, 1].map(|z| Raker { rate_m3_per_h: 7.2, ..raker(["a", "b"][z], z) }).into();
    job.zones[0].room = Some(1);
    let mut roomy = job.clone();
    roomy.zones[0].room = Some(3);
    later(&job, &roomy, 2_095.0, 3_590.0);
}

#[test]
fn a_shorter_way_makes_it_later_when_a_slow_loader_is_back_first_for_the_last_load() {
    // Three loads. The first loader is quick loaded (4 m/s) and slow empty (1 m/s), the second the other way round. Over 21 m the
    // first is back at 66.25 s, takes the last load, and has it dumped 45.25 s later. Over 19 m the second is back first, at 63.019 s
    // against 63.75 s, and takes 63 s for it.
    let mut job = without_rakers(with_loaders(one_and_one(), 2));
    (job.zones[0].need_m3, job.zones[0].ways[0].distance_m, job.stockpiles[0].face) = (3.0, 21.0, 2);
    let (first, second) = job.loaders.split_at_mut(1);
    (first[0].loaded_m_per_s, first[0].empty_m_per_s, first[0].dump_s) = (4.0, 1.0, 20.0);
    (second[0].loaded_m_per_s, second[0].empty_m_per_s, second[0].dump_s) = (0.5, 1_000.0, 5.0);
    let mut shorter = job.clone();
    shorter.zones[0].ways[0].distance_m = 19.0;
    later(&job, &shorter, 111.5, 126.019);
}

#[test]
fn a_shorter_way_costs_working_time_when_it_lets_the_loader_begin_a_load_before_the_day_ends() {
    // The day ends after 91 s. Over 21 m the loader is back at 92 s and everybody goes home; next morning 44.5 s are left of the
    // second heap, and the third, there at 35.5 s, is raked by 94.5 s: 92 + 94.5 s. Over 20 m it is back at 90 s, begins the third
    // load and is out until 135 s while the raker may not rake; next morning 44 + 50 s are left: 135 + 94 s, though the
    // clock says half a second less.
    let mut job = one_and_one();
    (job.zones[0].need_m3, job.zones[0].ways[0].distance_m) = (3.0, 21.0);
    job.shift.end_s = Some(job.shift.start_s + 91.0);
    let mut shorter = job.clone();
    shorter.zones[0].ways[0].distance_m = 20.0;
    later(&job, &shorter, 186.5, 229.0);
    let clock = |job: &Job| replay(job, 1, 0).outcome.completion.clock;
    assert_eq!(clock(&job) - clock(&shorter), Duration::from_micros(500_000));
}

#[test]
fn a_shorter_way_makes_it_later_when_a_dump_that_fell_into_the_break_holds_the_raker_up_before_it() {
    // Break from 75 s to 175 s, rakers stand clear. Over 20 m the second dump begins at 75 s, in the break: 10 s of the first heap
    // and 50 s of the second are left at 175 s. Over 16 m the raker, at it since 33 s, stands clear from 69 s to 74 s: 13 s are left.
    let mut job = one_and_one();
    (job.zones[0].need_m3, job.raking.stand_clear) = (2.0, true);
    job.shift.breaks = vec![pause(&job, 75.0, 175.0)];
    let mut shorter = job.clone();
    shorter.zones[0].ways[0].distance_m = 16.0;
    later(&job, &shorter, 235.0, 238.0);
}
