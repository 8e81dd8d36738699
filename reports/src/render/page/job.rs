//! The job in words: what, how much, from where to where, with what, by whom, when.

use super::fold::Part;
use super::words::{self, and_list, count, sentence, tight};
use crate::findings;
use maud::{Markup, html};
use scenarios::Scenario;
use scenarios::units::{
    System, area, bucket, clock, density, duration, length, rate, short_length, volume, way,
};
use sim::{FinishRule, Job, Loader, Raker, Shift, Stockpile, Zone};

pub(crate) fn part(scenario: &Scenario, units: System) -> Part {
    let job = &scenario.job;
    let body = html! {
            p.lead { (sentence(&findings::the_job(scenario))) }
            dl {
                dt { "Material" } dd { (material(job, units)) }
                dt { "From" } dd { (lines(job.stockpiles.iter().map(|pile| from(pile, units)))) }
                dt { "To" } dd { (lines((0..job.zones.len()).map(|z| ground(scenario, units, z)))) }
                @if !job.passes.is_empty() {
                    dt { "Through" } dd { (lines(passes(job, units).into_iter())) }
                }
                dt { "Machines" } dd { (lines(loaders(&job.loaders, units).into_iter())) }
                dt { "People" } dd { (lines(people(job, units).into_iter())) }
                dt { "Hours" } dd { (hours(&job.shift, units)) }
                dt { "Finished" } dd { (finished(job)) }
            }
    };
    Part::folded("job", "The job", body)
}

fn lines(all: impl Iterator<Item = String>) -> Markup {
    html! { ul { @for line in all { li { (tight(&line)) } } } }
}

fn material(job: &Job, units: System) -> String {
    let m = &job.material;
    format!(
        "{}: {} loose; a bucket holds {:.0} % of its heaped capacity on average",
        m.name,
        density(m.density_kg_per_m3, units),
        m.fill_factor * 100.0
    )
}

fn from(pile: &Stockpile, units: System) -> String {
    let mut parts = Vec::new();
    if pile.on_hand_m3 > 0.0 || pile.deliveries.is_empty() {
        parts.push(format!("{} there at the start", volume(pile.on_hand_m3, units)));
    }
    parts.extend(
        pile.deliveries
            .iter()
            .map(|d| format!("{} due at {}", volume(d.volume_m3, units), clock(d.at_s, units))),
    );
    format!("{}: {}", pile.name, and_list(&parts))
}

/// A zone with its volume, its measures where they were given, and the shortest way to it.
fn ground(scenario: &Scenario, units: System, index: usize) -> String {
    let job = &scenario.job;
    let zone = &job.zones[index];
    let mut text = format!("{}: {}", zone.name, volume(zone.need_m3, units));
    let stated = scenario.stated.zones.get(index).copied().unwrap_or_default();
    if let (Some(m2), Some(m)) = (stated.area_m2, stated.depth_m) {
        text += &format!(" ({}, {} deep)", area(m2, units), short_length(m, units));
    }
    if let Some(nearest) = nearest(job, zone) {
        text += &format!(", {}", nearest_words(job, nearest, units));
    }
    text
}

fn nearest<'a>(job: &Job, zone: &'a Zone) -> Option<&'a sim::Way> {
    let reached = zone.ways.iter().filter(|way| job.loaders.iter().any(|loader| loader.fits(job, way)));
    reached.min_by(|a, b| a.distance_m.total_cmp(&b.distance_m))
}

fn nearest_words(job: &Job, nearest: &sim::Way, units: System) -> String {
    let distance = way(nearest.distance_m, units);
    match job.stockpiles.get(nearest.stockpile) {
        Some(pile) if job.stockpiles.len() > 1 => format!("{distance} from {}", pile.name),
        _ => format!("{distance} away"),
    }
}

fn passes(job: &Job, units: System) -> Vec<String> {
    let at_once =
        |n| if n == 1 { "one machine at a time".to_owned() } else { format!("{n} machines at once") };
    let words = |pass: &sim::Pass| {
        format!("{}, {} wide, {}", pass.name, length(pass.width_m, units), at_once(pass.at_once))
    };
    job.passes.iter().map(words).collect()
}

/// Loaders that differ by their names alone are told in one line.
fn loaders(all: &[Loader], units: System) -> Vec<String> {
    let alike = |a: &Loader, b: &Loader| Loader { name: b.name.clone(), ..a.clone() } == *b;
    let words = |group: Vec<&Loader>| {
        let names: Vec<&str> = group.iter().map(|loader| loader.name.as_str()).collect();
        let each = if names.len() > 1 { ", each with a bucket of " } else { ", bucket " };
        format!("{}{each}{} heaped", words::names(&names), bucket(group[0].heaped_m3, units))
    };
    groups(all, alike).into_iter().map(words).collect()
}

fn people(job: &Job, units: System) -> Vec<String> {
    let operators = count(job.loaders.len() as u64, "operator");
    let rakers = if job.rakers.is_empty() {
        "nobody rakes: the loaders spread all of it".to_owned()
    } else {
        let together =
            if job.raking.together.is_some() && job.rakers.len() > 1 { ", working together" } else { "" };
        format!("{}{together}", count(job.rakers.len() as u64, "raker"))
    };
    let alike = |a: &Raker, b: &Raker| a.rate_m3_per_h == b.rate_m3_per_h;
    let words = |group: Vec<&Raker>| {
        let names: Vec<&str> = group.iter().map(|raker| raker.name.as_str()).collect();
        let each = if names.len() > 1 { " each" } else { "" };
        format!("{}: {}{each} while fresh", words::names(&names), rate(group[0].rate_m3_per_h, units))
    };
    let mut all = vec![format!("{operators}; {rakers}")];
    all.extend(groups(&job.rakers, alike).into_iter().map(words));
    all
}

/// Those alike put together, in the order of their first; no group is empty.
fn groups<T>(all: &[T], alike: impl Fn(&T, &T) -> bool) -> Vec<Vec<&T>> {
    let mut groups: Vec<Vec<&T>> = Vec::new();
    for one in all {
        match groups.iter_mut().find(|group| alike(group[0], one)) {
            Some(group) => group.push(one),
            None => groups.push(vec![one]),
        }
    }
    groups
}

fn hours(shift: &Shift, units: System) -> String {
    let until = shift.end_s.map_or_else(|| "until done".into(), |end| format!("to {}", clock(end, units)));
    let mut parts = vec![format!("{} {until}", clock(shift.start_s, units))];
    let breaks: Vec<String> = shift
        .breaks
        .iter()
        .map(|b| format!("{} to {}", clock(b.start_s, units), clock(b.end_s, units)))
        .collect();
    if !breaks.is_empty() {
        let plural = if breaks.len() == 1 { "break" } else { "breaks" };
        parts.push(format!("{plural} {}", and_list(&breaks)));
    }
    for (what, time) in [("set-up", &shift.set_up_s), ("clean-up", &shift.clean_up_s)] {
        if time.mean() > 0.0 {
            parts.push(format!("{what} about {}", duration(time.mean())));
        }
    }
    parts.join("; ")
}

fn finished(job: &Job) -> String {
    match job.finish {
        FinishRule::AreaCovered => "when every zone has what it needs".into(),
        FinishRule::PileCleared { surplus_zone } => {
            let zone = job.zones.get(surplus_zone).map_or("the last zone", |zone| zone.name.as_str());
            format!("when everything delivered is placed; what no zone needs goes to {zone}")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn copies_of_a_loader_are_told_in_one_line() {
        let mut all = vec![example::job().loaders[0].clone(); 2];
        all[0].name = "tractor 1".into();
        all[1].name = "tractor 2".into();
        assert_eq!(
            loaders(&all, System::Us),
            ["tractor 1 and tractor 2, each with a bucket of 14.1 ft3 heaped"]
        );
        all[1].heaped_m3 = 1.0;
        assert_eq!(loaders(&all, System::Metric).len(), 2);
    }

    #[test]
    fn hours_tell_the_end_of_the_day_and_the_breaks() {
        let mut shift = example::job().shift;
        assert_eq!(hours(&shift, System::Us), "8:00 am until done");
        shift.end_s = Some(16.5 * 3600.0);
        shift.breaks = vec![sim::Break { start_s: 12.0 * 3600.0, end_s: 12.5 * 3600.0 }];
        shift.set_up_s = sim::Distribution::Constant(900.0);
        assert_eq!(
            hours(&shift, System::Metric),
            "08:00 to 16:30; break 12:00 to 12:30; set-up about 15 min"
        );
    }

    #[test]
    fn a_pile_tells_what_is_there_and_what_is_due() {
        let mut pile = example::job().stockpiles.remove(0);
        pile.deliveries.push(sim::Delivery {
            at_s: 10.5 * 3600.0,
            late_s: sim::Distribution::Constant(0.0),
            volume_m3: 10.0,
        });
        assert_eq!(from(&pile, System::Metric), "pile: 24 m3 there at the start and 10 m3 due at 10:30");
        pile.on_hand_m3 = 0.0;
        assert_eq!(from(&pile, System::Metric), "pile: 10 m3 due at 10:30");
    }
}
