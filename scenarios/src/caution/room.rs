//! Room for heaps against the machines and people that work there.

use super::{Caution, named};
use crate::check::fits;
use sim::{Job, Zone};

pub(super) fn cautions(job: &Job) -> Vec<Caution> {
    let spreads_all = job.raking.spread_share >= 1.0;
    let mut all = Vec::new();
    let mut in_turn = Vec::new();
    for zone in &job.zones {
        let Some(room) = zone.room else { continue };
        let loaders = loaders_at(job, zone);
        if room == 1 && !spreads_all {
            in_turn.push(zone.name.as_str());
        } else if (room as usize) < loaders {
            let cause = format!(
                "\"{}\" has room for {room} heaps at once, but {loaders} loaders bring material there.",
                zone.name
            );
            let remedy =
                "Loaders will wait for room. Make more room, add a raker, or send some of them elsewhere.";
            all.push(Caution::warning("room-too-small", cause, remedy));
        }
    }
    if !in_turn.is_empty() {
        let has = if in_turn.len() == 1 { "has" } else { "have" };
        let cause = format!(
            "{} {has} room for one heap only, so the next bucket is not dumped before the last is raked out.",
            named(&in_turn)
        );
        let remedy = "Make room for a second heap, so that hauling and raking go on at the same time.";
        all.push(Caution::warning("room-too-small", cause, remedy));
    }
    all.extend(idle_rakers(job));
    all
}

fn loaders_at(job: &Job, zone: &Zone) -> usize {
    let reaches = |width: f64| {
        zone.ways.iter().any(|way| way.passes.iter().all(|entry| fits(width, job.passes[entry.pass].width_m)))
    };
    job.loaders.iter().filter(|loader| reaches(loader.width_m)).count()
}

fn idle_rakers(job: &Job) -> Option<Caution> {
    let rooms: Option<Vec<u32>> = job.zones.iter().map(|zone| zone.room).collect();
    let room = rooms?.iter().map(|room| *room as usize).sum::<usize>();
    let rakers = job.rakers.len();
    (job.raking.together.is_none() && rakers > room).then(|| {
        let cause = format!("There is room for {room} heaps in all, but {rakers} rakers work a heap each.");
        Caution::warning(
            "rakers-outnumber-room",
            cause,
            "Make more room, or let the crew work together on each heap.",
        )
    })
}
