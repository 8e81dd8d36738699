//! The ground in the client's words, and what the client has to see to on it.

use super::when::{of_day, short_clock};
use crate::findings::OrderFindings;
use scenarios::Scenario;
use scenarios::units::{System, area, length, short_length, volume};
use sim::{Delivery, Job, Stockpile};
use time::Date;

/// Zones told one by one; more would not fit on the sheet.
const MOST_ZONES: usize = 6;
/// Deliveries told one by one.
const MOST_TRUCKS: usize = 3;

/// A line for each zone: its measures as far as they were given, and its volume.
/// No volume or depth where the material ordered does not cover the ground.
pub(super) fn zones(scenario: &Scenario, order: &OrderFindings, units: System) -> Vec<String> {
    let zones = &scenario.job.zones;
    let line = |index: usize| {
        let stated = scenario.stated.zones.get(index).copied().unwrap_or_default();
        let mut words = zones[index].name.clone();
        if let Some(m2) = stated.area_m2 {
            words = format!("{words}: {}", area(m2, units));
            if !order.enough {
                return words;
            }
            if let Some(m) = stated.depth_m {
                words = format!("{words}, {} deep when settled", short_length(m, units));
            }
            return format!("{words}, {}", volume(zones[index].need_m3, units));
        }
        if !order.enough {
            return words;
        }
        format!("{words}: {}", volume(zones[index].need_m3, units))
    };
    if zones.len() <= MOST_ZONES {
        return (0..zones.len()).map(line).collect();
    }
    let shown = MOST_ZONES - 1;
    let rest: f64 = zones[shown..].iter().map(|zone| zone.need_m3).sum();
    let more = match order.enough {
        true => format!("{} more, {} together", zones.len() - shown, volume(rest, units)),
        false => format!("{} more", zones.len() - shown),
    };
    (0..shown).map(line).chain([more]).collect()
}

/// What the client has to see to. Common practice, no source.
pub(super) fn see_to(scenario: &Scenario, units: System, clock: System) -> Vec<String> {
    let job = &scenario.job;
    let mut all = vec![way(job, units)];
    all.push(
        "People and animals, children above all, are kept well away from the machine, its way and the place where it loads \
         and tips, from start to finish."
            .into(),
    );
    all.extend(job.stockpiles.iter().map(|pile| place_of(pile, scenario.date, clock)));
    all.push(
        "We are told before the day of anything hidden in the ground or low above it: pipes, cables, drains, soft or steep \
         places, branches, wires."
            .into(),
    );
    all.push(
        "In heavy rain, frost or storm, or on soaked ground, nobody works; we then agree on another day."
            .into(),
    );
    all
}

fn way(job: &Job, units: System) -> String {
    let widest = job.loaders.iter().map(|loader| loader.width_m).fold(0.0, f64::max);
    let machine = if job.loaders.len() > 1 { "widest machine" } else { "machine" };
    let wide = if widest > 0.0 {
        format!("; the {machine} is {} wide and needs some room on both sides", width(widest, units))
    } else {
        String::new()
    };
    // What no machine fits through no machine uses.
    let narrowest = job.loaders.iter().map(|loader| loader.width_m).fold(f64::INFINITY, f64::min);
    let used = job.passes.iter().filter(|pass| pass.width_m >= narrowest);
    let names: Vec<&str> = used.map(|pass| pass.name.as_str()).collect();
    match names.as_slice() {
        [] => format!("The way from the material to the ground is clear{wide}."),
        [one] => format!("\"{one}\" is open and the way through it clear{wide}."),
        [first @ .., last] => {
            let first: Vec<String> = first.iter().map(|name| format!("\"{name}\"")).collect();
            format!("{} and \"{last}\" are open and the ways through them clear{wide}.", first.join(", "))
        }
    }
}

/// Widths of machines: inches below ten feet, as people measure gates.
fn width(m: f64, units: System) -> String {
    if m < 3.0 { short_length(m, units) } else { length(m, units) }
}

fn place_of(pile: &Stockpile, date: Option<Date>, clock: System) -> String {
    let name = &pile.name;
    let on_first_day = pile.deliveries.iter().all(|truck| truck.at_s < 86_400.0);
    let at = |truck: &Delivery| {
        if on_first_day { short_clock(truck.at_s, clock) } else { of_day(truck.at_s, date, clock) }
    };
    match pile.deliveries.as_slice() {
        [] => format!("Nothing blocks the way at \"{name}\", where the material lies."),
        [truck] => {
            format!("A truck comes at about {}: it can drive up to \"{name}\" and tip there.", at(truck))
        }
        trucks if trucks.len() <= MOST_TRUCKS => {
            let at: Vec<String> = trucks.iter().map(at).collect();
            format!("Trucks come at about {}: they can drive up to \"{name}\" and tip there.", at.join(", "))
        }
        trucks => {
            format!("{} trucks come: they can drive up to \"{name}\" and tip there.", trucks.len())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;
    use sim::{Distribution, Pass};

    fn gate(name: &str, width_m: f64) -> Pass {
        Pass { name: name.into(), width_m, passing_s: 5.0, at_once: 1 }
    }

    #[test]
    fn only_gates_that_a_machine_fits_through_have_to_be_open() {
        let mut scenario = example::scenario();
        scenario.job.loaders[0].width_m = 1.5;
        scenario.job.passes = vec![gate("field gate", 3.0), gate("kissing gate", 0.9)];
        assert_eq!(
            see_to(&scenario, System::Metric, System::Metric)[0],
            "\"field gate\" is open and the way through it clear; the machine is 150 cm wide and needs some room on both sides."
        );
        scenario.job.passes.clear();
        assert!(
            see_to(&scenario, System::Us, System::Us)[0]
                .starts_with("The way from the material to the ground is clear")
        );
    }

    #[test]
    fn a_truck_is_told_with_its_time_and_a_later_one_with_its_day() {
        let mut scenario = example::scenario();
        let truck = |hour: f64| Delivery {
            at_s: hour * 3_600.0,
            late_s: Distribution::Constant(0.0),
            volume_m3: 9.0,
        };
        scenario.job.stockpiles[0].deliveries = vec![truck(10.0)];
        assert!(
            see_to(&scenario, System::Us, System::Us)[2]
                .starts_with("A truck comes at about 10 am: it can drive up to \"pile\"")
        );
        scenario.job.stockpiles[0].deliveries.push(truck(33.5));
        scenario.date = scenarios::calendar::day(2026, 4, 18);
        assert!(
            see_to(&scenario, System::Us, System::Us)[2]
                .starts_with("Trucks come at about Saturday 10 am, Sunday 9:30 am: they")
        );
    }

    #[test]
    fn more_zones_than_the_sheet_holds_are_summed_up() {
        let mut scenario = example::scenario();
        scenario.job.zones = vec![scenario.job.zones[0].clone(); 9];
        let order = crate::findings::order_of([None].into_iter(), &scenario, System::Metric);
        let lines = zones(&scenario, &order, System::Metric);
        assert_eq!((lines.len(), lines[5].as_str()), (6, "4 more, 96 m3 together"));
    }
}
