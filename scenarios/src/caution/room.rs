//! Room for heaps against the machines and people that work there.

use super::entry::{Caution, named};
use crate::clearance::fits;
use sim::{Job, Zone};

pub(super) fn cautions(job: &Job) -> Vec<Caution> {
    let spreads_all = job.raking.spread_share >= 1.0;
    let mut all = Vec::new();
    let (mut one_only, mut too_few) = (Vec::new(), Vec::new());
    for zone in &job.zones {
        match zone.room {
            Some(1) if !spreads_all => one_only.push(zone.name.as_str()),
            Some(room) if (room as usize) < loaders_at(job, zone) => too_few.push(zone.name.as_str()),
            _ => {}
        }
    }
    if !one_only.is_empty() {
        let cause = format!(
            "{} {} room for one heap only, so the next load is not dumped before the last is raked out.",
            named(&one_only),
            has(&one_only)
        );
        let remedy = "Make room for a second heap, so that hauling and raking go on at the same time.";
        all.push(Caution::warning("room-too-small", cause, remedy));
    }
    if !too_few.is_empty() {
        let loaders = job.zones.iter().map(|zone| loaders_at(job, zone)).max().unwrap_or_default();
        let cause = format!(
            "{} {} room for fewer heaps at once than there are loaders to bring them ({loaders}).",
            named(&too_few),
            has(&too_few)
        );
        let remedy =
            "Loaders may wait for room. Make more room, add a raker, or send some of them elsewhere.";
        all.push(Caution::warning("room-too-small", cause, remedy));
    }
    all.extend(idle_rakers(job));
    all
}

fn has(names: &[&str]) -> &'static str {
    if names.len() == 1 { "has" } else { "have" }
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
