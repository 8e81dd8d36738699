use super::*;
use crate::{JobFile, Selection, Texts, shipped};

fn read(name: &str, change: &str) -> Scenario {
    let (name, text) = shipped().iter().find(|(shipped, _)| *shipped == name).unwrap();
    let changes = if change.is_empty() { Vec::new() } else { vec![change.parse().unwrap()] };
    let file = JobFile::of_text(text, name, Texts::shipped()).unwrap();
    file.scenario(&Selection { changes, ..Selection::default() }).unwrap()
}

#[test]
fn barrows_take_the_place_of_the_machine_and_cost_their_people_only() {
    let paddock = read("paddock-track", "");
    assert!(paddock.stated.fixed.mobilisation > 0.0);
    let by_hand = barrow(&paddock, 0, 2).unwrap();
    let left = paddock.job.loaders.len() - 1;
    assert_eq!(by_hand.job.loaders.len(), left + 2);
    assert_eq!(by_hand.stated.loaders.len(), left + 2);
    let one = &by_hand.job.loaders[0];
    assert_eq!((one.machine_cost_per_h, one.fuel_working_l_per_h), (0.0, 0.0));
    assert_eq!(one.operator_cost_per_h, paddock.job.loaders[0].operator_cost_per_h);
    assert_eq!(one.name, "hand barrow 1");
    assert_eq!(by_hand.job.chance, paddock.job.chance);
    assert!(by_hand.assumptions.iter().any(|assumption| assumption.key == "hand barrow.loading"));
}

#[test]
fn where_no_machine_is_left_none_is_brought() {
    let arena = read("riding-arena", "money.mobilisation = $90");
    let by_hand = barrow(&arena, 0, 1).unwrap();
    assert_eq!(by_hand.job.loaders[0].name, "hand barrow");
    assert_eq!(by_hand.stated.fixed.mobilisation, 0.0);
    assert!((arena.job.prices.material - by_hand.job.prices.material - 90.0).abs() < 1e-9);
    assert!(
        !by_hand.assumptions.iter().any(|assumption| assumption.key.starts_with("loader.compact tractor."))
    );
}

#[test]
fn heavy_material_is_cut_to_what_a_person_wheels_and_filled_more_slowly() {
    let light = read("round-pen", "material.density = 281 kg/m3");
    let heavy = read("riding-arena", "material.density = 1600 kg/m3");
    assert!((filling(281.0).value - 3.0).abs() < 1e-12 && (filling(1600.0).value - 1.0).abs() < 1e-12);
    assert!((filling(450.0).value - 2.0).abs() < 1e-12);
    // 80 kg of 1,600 kg/m3 are 0.05 m3, at 1 m3/h 180 s.
    assert!((barrow(&heavy, 0, 1).unwrap().job.loaders[0].load_s - 180.0).abs() < 1e-9);
    let fill = light.job.material.fill_factor;
    assert!((barrow(&light, 0, 1).unwrap().job.loaders[0].load_s - 0.1 * fill / 3.0 * 3600.0).abs() < 1e-9);
    assert!(filling(1600.0).from.contains("1 h for each m3") && filling(281.0).from.contains("no source"));
}

/// Practitioners report 1 to 3 yd3 of mulch placed by hand a person and hour, barrow included (trade forum threads, not a
/// standard). Filling, 25 m there and back, and tipping, without spreading, must come to more than that least, or the
/// figures here would be too slow, and to less than twice the most.
#[test]
fn a_barrow_brings_what_practitioners_report() {
    let one = barrow(&read("round-pen", ""), 0, 1).unwrap().job.loaders[0].clone();
    let fill = read("round-pen", "").job.material.fill_factor;
    let cycle = one.load_s
        + one.dump_s
        + 2.0 * one.start_stop_s
        + 25.0 / one.loaded_m_per_s
        + 25.0 / one.empty_m_per_s;
    let yd3_per_h = one.heaped_m3 * fill / cycle * 3600.0 / 0.764_554_857_984;
    assert!((1.0..6.0).contains(&yd3_per_h), "{yd3_per_h:.2} yd3/h");
}

#[test]
fn barrows_that_cannot_be_are_told_in_words() {
    let arena = read("riding-arena", "");
    assert!(barrow(&arena, 3, 1).unwrap_err().contains("there is no loader 4; the job has 1"));
    assert!(barrow(&arena, 0, 0).unwrap_err().contains("give 1 to 64"));
    assert!(barrow(&arena, 0, 65).is_err());
    let names: Vec<String> = barrow(&barrow(&arena, 0, 2).unwrap(), 0, 2)
        .unwrap()
        .job
        .loaders
        .into_iter()
        .map(|l| l.name)
        .collect();
    assert_eq!(names.len(), 3);
    let mut unique = names.clone();
    unique.sort();
    unique.dedup();
    assert_eq!(unique.len(), 3, "{names:?}");
}
