//! What must hold in every run whatever the job: time accounts that close, volumes that add up, and nowhere more machines,
//! heaps or rakers than allowed. Checked from the event log, on every run any test here looks at.

use super::log::{clock, lines};
use super::waits;
use sim::*;

/// Something somebody occupies from one time to another.
#[derive(Clone, Copy, Debug)]
struct Stay {
    from: Duration,
    to: Duration,
    load: u32,
    actor: usize,
}

/// Checks one run; the message of a failure carries the whole log.
#[track_caller]
pub(crate) fn check(job: &Job, run: &Replay) {
    let complaints = complaints(job, run);
    assert!(complaints.is_empty(), "{}\n\n{}", complaints.join("\n"), lines(job, run).join("\n"));
}

fn complaints(job: &Job, run: &Replay) -> Vec<String> {
    let mut all = Vec::new();
    times(run, &mut all);
    volumes(job, run, &mut all);
    money(job, run, &mut all);
    places(job, run, &mut all);
    rakers(job, run, &mut all);
    rests(run, &mut all);
    all.extend(waits::complaints(job, run));
    all
}

/// Says what is wrong if it does not hold.
fn need(all: &mut Vec<String>, holds: bool, else_say: impl FnOnce() -> String) {
    if !holds {
        all.push(else_say());
    }
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * (1.0 + a.abs().max(b.abs()))
}

/// Every resource's times add up to the time on the job exactly, and are those of the log.
fn times(run: &Replay, all: &mut Vec<String>) {
    let (outcome, accounts) = (&run.outcome, &run.accounts);
    for (i, times) in accounts.loaders.iter().enumerate() {
        let sum = times.total();
        need(all, sum == outcome.finish.working, || format!("loader {}: {sum} in its time accounts", i + 1));
        let stays = stays(run, |event| match event {
            Event::Loader { loader, activity, .. } if *loader == i => Some(*activity as usize),
            _ => None,
        });
        need(all, LoaderActivity::ALL.iter().all(|a| stays[*a as usize] == times.time(*a)), || {
            format!("loader {}: time accounts {times:?}, log {stays:?}", i + 1)
        });
        let nights = stays[LoaderActivity::Night as usize];
        need(all, nights == outcome.finish.clock - outcome.finish.working, || {
            format!("loader {}: {nights} of night", i + 1)
        });
    }
    for (i, times) in accounts.rakers.iter().enumerate() {
        let sum = times.total();
        need(all, sum == outcome.finish.working, || format!("raker {}: {sum} in the time accounts", i + 1));
        let stays = stays(run, |event| match event {
            Event::Raker { raker, activity, .. } if *raker == i => Some(*activity as usize),
            _ => None,
        });
        need(all, RakerActivity::ALL.iter().all(|a| stays[*a as usize] == times.time(*a)), || {
            format!("raker {}: time accounts {times:?}, log {stays:?}", i + 1)
        });
    }
    for activity in LoaderActivity::ALL {
        let sum: Duration = accounts.loaders.iter().map(|times| times.time(activity)).sum();
        need(all, outcome.loaders.time(activity) == sum, || format!("all loaders {}", activity.words()));
    }
    for activity in RakerActivity::ALL {
        let sum: Duration = accounts.rakers.iter().map(|times| times.time(activity)).sum();
        need(all, outcome.rakers.time(activity) == sum, || format!("all rakers {}", activity.words()));
    }
    let last = raked_out(run).map(|(at, ..)| at).last();
    need(all, last.is_none_or(|at| at == outcome.completion.clock), || {
        "completion is not the last heap".into()
    });
    need(all, run.log.is_sorted_by_key(|entry| entry.at), || "the log runs backwards".into());
}

/// Time on the clock by what an actor does, nights last.
fn stays(run: &Replay, of: impl Fn(&Event) -> Option<usize>) -> [Duration; LoaderActivity::COUNT + 1] {
    let mut total = [Duration::ZERO; LoaderActivity::COUNT + 1];
    let turns: Vec<(Duration, usize)> =
        run.log.iter().filter_map(|entry| Some((entry.at, of(&entry.event)?))).collect();
    let ends = turns.iter().skip(1).map(|(at, _)| *at).chain([run.outcome.finish.clock]);
    for ((from, activity), to) in turns.iter().zip(ends) {
        total[*activity] += to - *from;
    }
    total
}

fn raked_out(run: &Replay) -> impl Iterator<Item = (Duration, u32, usize, f64)> + '_ {
    run.log.iter().filter_map(|entry| match entry.event {
        Event::HeapRakedOut { load, zone, volume_m3 } => Some((entry.at, load, zone, volume_m3)),
        _ => None,
    })
}

/// Volume in = placed + left; placed by the log, the outcome and the zones alike; short where it counts.
fn volumes(job: &Job, run: &Replay, all: &mut Vec<String>) {
    let (outcome, accounts) = (&run.outcome, &run.accounts);
    let placed: f64 = raked_out(run).map(|(.., volume)| volume).sum();
    let loads = raked_out(run).count();
    let zones: f64 = accounts.zones.iter().map(|zone| zone.placed_m3).sum();
    need(all, near(placed, outcome.placed_m3) && near(placed, zones), || {
        format!("placed {placed} by the log, {} by the outcome, {zones} by the zones", outcome.placed_m3)
    });
    let counts = [
        outcome.loads as usize,
        accounts.loads.iter().sum::<u64>() as usize,
        accounts.zones.iter().map(|zone| zone.loads).sum::<u64>() as usize,
    ];
    need(all, counts.iter().all(|count| *count == loads), || format!("{loads} heaps, but loads {counts:?}"));
    let brought = brought_m3(job, run.outcome.run);
    if let Some(brought) = brought {
        need(all, near(placed + outcome.left_over_m3, brought), || {
            format!("placed {placed} and left over {} of {brought}", outcome.left_over_m3)
        });
    }
    let nothing = 0.05 * job.loaders.iter().map(|l| l.heaped_m3).fold(f64::INFINITY, f64::min);
    let short: f64 = accounts.zones.iter().map(|zone| zone.short_m3).sum();
    need(all, near(short, outcome.short_m3), || format!("short {short} and {}", outcome.short_m3));
    for (zone, total) in job.zones.iter().zip(&accounts.zones) {
        let lacks = zone.need_m3 * need_factor(job, run.outcome.run) - total.placed_m3;
        // Less than counts is not short, but where nothing was brought all of it is.
        let expected = if lacks < nothing && total.loads > 0 { 0.0 } else { lacks.max(0.0) };
        let on_the_edge = (lacks - nothing).abs() < 1e-9 && total.loads > 0;
        need(all, on_the_edge || (expected - total.short_m3).abs() < 1e-9, || {
            format!("{} lacks {lacks}, told {}", zone.name, total.short_m3)
        });
    }
}

/// The seed of every run that is checked here.
pub(crate) const SEED: u64 = 1;

fn need_factor(job: &Job, run: u32) -> f64 {
    Sampler::new(&job.chance.days.need).at(Streams::new(SEED, run).factor(Factor::Need))
}

/// All that is delivered, each delivery with its own bulk, stock on hand included, pile by pile.
fn brought_m3(job: &Job, run: u32) -> Option<f64> {
    let (streams, bulk) = (Streams::new(SEED, run), Sampler::new(&job.chance.days.bulk));
    let ordered = job
        .stockpiles
        .iter()
        .flat_map(|pile| std::iter::once(pile.on_hand_m3).chain(pile.deliveries.iter().map(|d| d.volume_m3)));
    Some(ordered.enumerate().map(|(n, volume)| volume * bulk.at(streams.bulk(n))).sum())
}

/// Fuel, labour and cost by the time accounts; progress in order and complete.
fn money(job: &Job, run: &Replay, all: &mut Vec<String>) {
    use LoaderActivity as L;
    let outcome = &run.outcome;
    let on_the_job_h = outcome.finish.working.as_hours_f64();
    let (mut fuel, mut cost) = (0.0, job.prices.material);
    for (loader, times) in job.loaders.iter().zip(&run.accounts.loaders) {
        let hours = |of: &[L]| of.iter().map(|a| times.time(*a)).sum::<Duration>().as_hours_f64();
        let working = hours(&[L::Loading, L::Hauling, L::Returning, L::Passing, L::Dumping]);
        let waiting =
            hours(&[L::WaitingForFace, L::WaitingForPass, L::WaitingForRoom, L::WaitingForDelivery]);
        fuel += working * loader.fuel_working_l_per_h + waiting * loader.fuel_idling_l_per_h;
        cost += on_the_job_h * (loader.machine_cost_per_h + loader.operator_cost_per_h);
    }
    cost += job.rakers.iter().map(|raker| raker.cost_per_h * on_the_job_h).sum::<f64>();
    cost += fuel * job.prices.fuel_per_l;
    let labour = on_the_job_h * (job.loaders.len() + job.rakers.len()) as f64;
    need(all, near(fuel, outcome.fuel_l), || format!("fuel {fuel}, told {}", outcome.fuel_l));
    need(all, near(labour, outcome.labour_h), || format!("labour {labour}, told {}", outcome.labour_h));
    need(all, near(cost, outcome.cost), || format!("cost {cost}, told {}", outcome.cost));
    let mut so_far = 0.0;
    let heaps: Vec<(Duration, f64)> = raked_out(run)
        .map(|(at, .., volume)| {
            so_far += volume;
            (at, so_far)
        })
        .collect();
    for (i, told) in outcome.progress.iter().enumerate() {
        let share = so_far * (i + 1) as f64 / PROGRESS_PARTS as f64;
        let slack = 1e-9 * so_far;
        let earliest = heaps.iter().find(|(_, sum)| *sum >= share - slack).map(|(at, _)| *at);
        let latest = heaps.iter().find(|(_, sum)| *sum >= share + slack).or(heaps.last()).map(|(at, _)| *at);
        need(all, heaps.is_empty() || (earliest <= Some(*told) && Some(*told) <= latest), || {
            format!("progress {} is told as {}", i + 1, clock(*told))
        });
    }
}

/// Turns of one loader with a load, a stoppage counted to what it interrupts.
fn stays_of_loaders(run: &Replay, doing: LoaderActivity) -> Vec<(usize, Stay)> {
    let mut stays = Vec::new();
    for loader in 0..run.accounts.loaders.len() {
        let mut open: Option<(usize, Stay)> = None;
        for entry in &run.log {
            let Event::Loader { loader: who, activity, load, zone, stockpile, pass, .. } = entry.event else {
                continue;
            };
            if who != loader || activity == LoaderActivity::Stopped {
                continue;
            }
            let goes_on = activity == doing && open.is_some_and(|(_, stay)| Some(stay.load) == load);
            if goes_on && doing != LoaderActivity::Passing {
                continue;
            }
            if let Some((place, stay)) = open.take() {
                stays.push((place, Stay { to: entry.at, ..stay }));
            }
            let place = match doing {
                LoaderActivity::Loading => stockpile,
                LoaderActivity::Passing => pass,
                _ => zone,
            };
            if activity == doing {
                let stay =
                    Stay { from: entry.at, to: entry.at, load: load.unwrap_or(u32::MAX), actor: loader };
                open = Some((place.unwrap(), stay));
            }
        }
        if let Some((place, stay)) = open {
            stays.push((place, Stay { to: run.outcome.finish.clock, ..stay }));
        }
    }
    stays
}

/// The most that are there at once for any length of time.
fn most_at_once(stays: impl Iterator<Item = (Duration, Duration)>) -> (usize, Duration) {
    let mut changes: Vec<(Duration, i32)> =
        stays.filter(|(from, to)| to > from).flat_map(|(from, to)| [(from, 1), (to, -1)]).collect();
    changes.sort_unstable();
    let (mut now, mut most) = (0, (0, Duration::ZERO));
    for (at, change) in changes {
        now += change;
        if now > most.0 {
            most = (now, at);
        }
    }
    (most.0 as usize, most.1)
}

/// Never more at a face, in a pass or in a zone than allowed.
fn places(job: &Job, run: &Replay, all: &mut Vec<String>) {
    let (loading, passing) =
        (stays_of_loaders(run, LoaderActivity::Loading), stays_of_loaders(run, LoaderActivity::Passing));
    let at = |stays: &[(usize, Stay)], place: usize| {
        most_at_once(stays.iter().filter(|(p, _)| *p == place).map(|(_, stay)| (stay.from, stay.to)))
    };
    for (i, pile) in job.stockpiles.iter().enumerate() {
        let (most, when) = at(&loading, i);
        need(all, most <= pile.face as usize, || format!("{most} load at {} at {}", pile.name, clock(when)));
    }
    for (i, pass) in job.passes.iter().enumerate() {
        let (most, when) = at(&passing, i);
        need(all, most <= pass.at_once as usize, || format!("{most} in {} at {}", pass.name, clock(when)));
    }
    let dumping = stays_of_loaders(run, LoaderActivity::Dumping);
    for (i, zone) in job.zones.iter().enumerate() {
        let lies = |load: u32| raked_out(run).find(|(_, l, ..)| *l == load).map(|(at, ..)| at);
        let stays = dumping.iter().filter(|(z, _)| *z == i);
        let (most, when) = most_at_once(stays.filter_map(|(_, stay)| Some((stay.from, lies(stay.load)?))));
        let room = zone.room.map_or(usize::MAX, |room| room as usize);
        need(all, most <= room, || format!("{most} heaps in {} at {}", zone.name, clock(when)));
    }
}

/// Times a raker rakes, with the load.
fn stays_of_rakers(run: &Replay) -> Vec<(usize, Stay)> {
    let mut stays = Vec::new();
    for raker in 0..run.accounts.rakers.len() {
        let turns: Vec<(Duration, RakerActivity, Option<u32>, usize)> = run
            .log
            .iter()
            .filter_map(|entry| match entry.event {
                Event::Raker { raker: who, activity, load, zone } if who == raker => {
                    Some((entry.at, activity, load, zone))
                }
                _ => None,
            })
            .collect();
        let ends = turns.iter().skip(1).map(|turn| turn.0).chain([run.outcome.finish.clock]);
        for ((from, activity, load, zone), to) in turns.iter().zip(ends) {
            if let (RakerActivity::Raking, Some(load)) = (activity, load) {
                stays.push((*zone, Stay { from: *from, to, load: *load, actor: raker }));
            }
        }
    }
    stays
}

/// One raker a heap, in the order of dumping, and nobody rakes where a loader dumps.
fn rakers(job: &Job, run: &Replay, all: &mut Vec<String>) {
    let (raking, dumping) = (stays_of_rakers(run), stays_of_loaders(run, LoaderActivity::Dumping));
    for (zone, rake) in &raking {
        let in_the_way =
            dumping.iter().find(|(z, dump)| z == zone && dump.from.max(rake.from) < dump.to.min(rake.to));
        need(all, !job.raking.stand_clear || in_the_way.is_none(), || {
            format!("raker {} rakes at {} under a bucket", rake.actor + 1, clock(rake.from))
        });
        let dump = dumping.iter().find(|(_, dump)| dump.load == rake.load);
        need(all, dump.is_some_and(|(z, dump)| z == zone && dump.to <= rake.from), || {
            format!("load {} is raked before it lies there", rake.load)
        });
        let shared = raking.iter().any(|(_, other)| other.load == rake.load && other.actor != rake.actor);
        need(all, job.raking.together.is_some() || !shared, || format!("two rake load {}", rake.load));
    }
    for zone in 0..job.zones.len() {
        let mut order: Vec<(Duration, Duration, u32)> = Vec::new();
        for (_, dump) in dumping.iter().filter(|(z, _)| *z == zone) {
            let taken = run.log.iter().find_map(|entry| match entry.event {
                Event::Raker { load: Some(load), .. } if load == dump.load => Some(entry.at),
                _ => None,
            });
            order.extend(taken.map(|taken| (dump.to, taken, dump.load)));
        }
        order.sort_unstable_by_key(|(dumped, ..)| *dumped);
        let in_order = order.windows(2).all(|pair| pair[0].0 == pair[1].0 || pair[0].1 <= pair[1].1);
        need(all, in_order, || format!("heaps of {} are taken out of order", job.zones[zone].name));
    }
}

/// In a rest nobody rakes, walks or begins a load.
fn rests(run: &Replay, all: &mut Vec<String>) {
    let mut since: Option<Duration> = None;
    let mut cleaning = false;
    let mut in_hand: Vec<Option<u32>> = vec![None; run.accounts.loaders.len()];
    for entry in &run.log {
        match entry.event {
            Event::WorkPauses { .. } => since = Some(entry.at),
            Event::WorkResumes => since = None,
            Event::Loader { activity: LoaderActivity::CleanUp, .. } => cleaning = true,
            Event::Raker { raker, activity, .. } => {
                let works = matches!(activity, RakerActivity::Raking | RakerActivity::Walking);
                need(all, !works || since.is_none(), || {
                    format!("raker {} works in a rest at {}", raker + 1, clock(entry.at))
                });
            }
            Event::Loader { loader, activity, load, .. } => {
                let begins = activity == LoaderActivity::Loading && in_hand[loader] != load;
                need(all, !begins || (since.is_none() && !cleaning), || {
                    format!("loader {} begins a load in a rest at {}", loader + 1, clock(entry.at))
                });
                in_hand[loader] = load;
            }
            _ => {}
        }
    }
}
