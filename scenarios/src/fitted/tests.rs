use super::*;
use crate::{BucketList, JobFile, Selection, Texts, buckets_text, shipped, shipped_files};

fn arena(change: &str) -> Scenario {
    let (name, text) = shipped().iter().find(|(name, _)| *name == "riding-arena").unwrap();
    let changes = if change.is_empty() { Vec::new() } else { vec![change.parse().unwrap()] };
    let file = JobFile::of_text(text, name, Texts::default()).unwrap();
    file.scenario(&Selection { changes, ..Selection::default() }).unwrap()
}

fn list() -> BucketList {
    let (name, text) = shipped_files()[0];
    buckets_text(text, name).unwrap()
}

fn bucket(text: &str) -> Bucket {
    buckets_text(&format!("name,heaped,struck,width,mass\n{text}\n"), "b.csv").unwrap().buckets.remove(0)
}

#[test]
fn todays_bucket_gives_todays_job() {
    let (arena, list) = (arena(""), list());
    let today = list.find("today's bucket").unwrap();
    let fitted = with_bucket(&arena, 0, today, Some(today));
    assert_eq!(fitted.job.as_ref(), Some(&arena.job));
    assert_eq!(fitted.cautions, arena.cautions);
    assert_eq!((fitted.lift.lift, fitted.lift.extra_kg), (Lift::Within, Some(0.0)));
}

#[test]
fn a_larger_bucket_is_the_same_job_as_with_its_figures_typed() {
    let larger = arena("bucket = 12 ft3");
    let fitted = with_bucket(&arena(""), 0, &bucket("x,12 ft3,,,"), None);
    let job = fitted.job.unwrap();
    assert_eq!(job.loaders[0].heaped_m3, larger.job.loaders[0].heaped_m3);
    assert_eq!((job.loaders[0].struck_m3, job.loaders[0].lift_kg), (None, arena("").job.loaders[0].lift_kg));
    assert!(fitted.assumptions.iter().any(|a| a.key == "bucket.x.mass" && a.words.contains("not known")));
    assert!(fitted.assumptions.iter().any(|a| a.key == "bucket.x.times"));
}

#[test]
fn what_a_bucket_weighs_more_than_todays_is_taken_from_what_may_be_lifted() {
    let arena = arena("");
    // Half of 2,800 lb is 1,400 lb; 200 lb more than today's 230 lb leaves 1,200 lb.
    let fitted = with_bucket(&arena, 0, &bucket("heavy,14 ft3,11 ft3,66 in,430 lb"), None);
    let lb = 0.453_592_37;
    assert!((fitted.lift.may_kg.unwrap() / lb - 1_200.0).abs() < 1e-9);
    let material = &arena.job.material;
    let full = 14.0 * 0.3048_f64.powi(3) * material.fill_factor * material.density_kg_per_m3;
    assert!((fitted.lift.load_kg - full).abs() < 1e-9);
    assert!((fitted.lift.share.unwrap() - full / (1_200.0 * lb)).abs() < 1e-9);
    let loader = &fitted.job.as_ref().unwrap().loaders[0];
    assert!((loader.lift_kg.unwrap() - 1_200.0 * lb).abs() < 1e-9);
    assert_eq!(fitted.lift.lift, Lift::Cut);
    assert!((fitted.lift.cut_to_m3.unwrap() - 1_200.0 * lb / material.density_kg_per_m3).abs() < 1e-12);
    assert!(fitted.lift.words.contains("The machine's manual decides"), "{}", fitted.lift.words);
    assert!(fitted.cautions.iter().any(|caution| caution.kind == "bucket-over-lift"));
    // A row of the list named as today's counts before the file's own figure.
    let today = bucket("today,10 ft3,,,430 lb");
    let same = with_bucket(&arena, 0, &bucket("heavy,12 ft3,,,430 lb"), Some(&today));
    assert_eq!((same.lift.extra_kg, same.lift.lift), (Some(0.0), Lift::Within));
    let lighter = with_bucket(&arena, 0, &bucket("light,12 ft3,,,90 lb"), None);
    assert!((lighter.lift.may_kg.unwrap() / lb - 1_400.0).abs() < 1e-9, "a lighter bucket is no credit");
}

#[test]
fn a_bucket_that_leaves_nothing_to_lift_with_is_an_answer_and_no_job() {
    let fitted = with_bucket(&arena(""), 0, &bucket("iron,12 ft3,,,1700 lb"), None);
    assert_eq!((fitted.lift.lift, fitted.job, fitted.cautions.len()), (Lift::Nothing, None, 0));
    assert!(
        fitted.lift.words.contains("1470 lb more than today's bucket, which leaves nothing"),
        "{}",
        fitted.lift.words
    );
}

#[test]
fn where_no_lift_is_given_nothing_is_known_of_it() {
    let mut arena = arena("");
    arena.job.loaders[0].lift_kg = None;
    let fitted = with_bucket(&arena, 0, &bucket("x,30 ft3,,,900 lb"), None);
    assert_eq!((fitted.lift.lift, fitted.lift.share, fitted.lift.may_kg), (Lift::Unknown, None, None));
    assert!(fitted.job.is_some() && fitted.lift.words.contains("manual"));
    assert!(fitted.cautions.iter().any(|caution| caution.kind == "lift-not-given"));
}

#[test]
fn the_wider_of_machine_and_bucket_must_pass_the_gates() {
    let arena = arena("");
    let at = |width: &str| with_bucket(&arena, 0, &bucket(&format!("x,12 ft3,,{width},")), None);
    let narrow = at("40 in");
    assert_eq!((narrow.gates.through, narrow.gates.width_m), (Through::Every, 1.473_2));
    assert_eq!(narrow.gates.words, "It passes \"arena gate\" with 14 in to spare.");
    assert_eq!(at("").gates.width_m, 1.473_2);
    assert_eq!(at("72 in").gates.through, Through::Every, "a gate as wide as the bucket lets it through");
    let wide = at("84 in");
    assert_eq!(wide.gates.through, Through::Refused);
    assert_eq!(wide.job, None);
    assert_eq!(wide.gates.out_of_reach, ["far third", "middle third", "gate third"]);
    assert_eq!(wide.gates.words, "It does not pass \"arena gate\": 72 in clear, bucket 84 in.");
    assert!((wide.gates.passes[0].spare_m + 0.3048).abs() < 1e-9 && !wide.gates.passes[0].passes);
}

#[test]
fn where_another_loader_goes_there_or_a_way_leads_around_the_job_goes_on() {
    let mut two = arena("");
    let barrow = sim::Loader { name: "barrow".into(), width_m: 0.6, ..two.job.loaders[0].clone() };
    two.job.loaders.push(barrow);
    for zone in &mut two.job.zones[..1] {
        zone.ways[0].passes.clear();
    }
    let fitted = with_bucket(&two, 0, &bucket("x,12 ft3,,84 in,"), None);
    assert_eq!(fitted.gates.through, Through::Around);
    assert!(fitted.job.is_some());
    assert!(
        fitted.gates.words.ends_with("Other loaders serve \"middle third\" and \"gate third\"."),
        "{}",
        fitted.gates.words
    );
    let mut around = arena("");
    for zone in &mut around.job.zones {
        zone.ways.push(sim::Way { stockpile: 0, distance_m: 200.0, passes: vec![] });
    }
    let fitted = with_bucket(&around, 0, &bucket("x,12 ft3,,84 in,"), None);
    assert!(fitted.gates.words.ends_with("It goes the ways around."), "{}", fitted.gates.words);
    assert!(fitted.gates.out_of_reach.is_empty() && fitted.job.is_some());
}

#[test]
fn without_any_width_the_gates_are_not_checked() {
    let mut arena = arena("");
    arena.job.loaders[0].width_m = 0.0;
    let fitted = with_bucket(&arena, 0, &bucket("x,12 ft3,,,"), None);
    assert_eq!((fitted.gates.through, fitted.gates.passes.len()), (Through::Unknown, 0));
}

#[test]
fn of_the_shipped_list_one_is_too_wide_and_some_are_too_heavy_to_be_full() {
    let (arena, list) = (arena(""), list());
    let today = list.find("today's bucket").unwrap();
    let all: Vec<Fitted> =
        list.buckets.iter().map(|bucket| with_bucket(&arena, 0, bucket, Some(today))).collect();
    assert_eq!(all.iter().filter(|fitted| fitted.gates.through == Through::Refused).count(), 1);
    assert!(all.iter().any(|fitted| fitted.lift.lift == Lift::Cut));
    assert!(all.iter().any(|fitted| fitted.lift.lift == Lift::Within));
    for fitted in all {
        let words = format!("{} {}", fitted.lift.words, fitted.gates.words).to_lowercase();
        assert!(!words.contains("safe") && words.ends_with('.'), "{words}");
    }
}

#[test]
fn a_loader_that_is_not_there_changes_nothing() {
    let arena = arena("");
    let fitted = with_bucket(&arena, 9, &bucket("x,12 ft3,,,"), None);
    assert_eq!((fitted.job, fitted.lift.lift), (Some(arena.job), Lift::Unknown));
}
