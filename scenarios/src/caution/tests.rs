use super::all;
use super::entry::{Weight, named};
use crate::testing::{accepted, changed, made, warnings};
use crate::units::System;

const HEAPED: &str = "heaped = \"14 ft3\"";

fn loader(more: &str) -> Vec<&'static str> {
    warnings(&made(&[(HEAPED, &format!("{HEAPED}\nhydraulic_lift = \"2000 lb\"\n{more}"))]))
}

#[track_caller]
fn cause(changes: &[(&str, &str)], kind: &str) -> String {
    let scenario = made(changes);
    let found = scenario.cautions.iter().find(|caution| caution.kind == kind);
    found.map_or_else(
        || panic!("no {kind} among {:?}", warnings(&scenario)),
        |c| format!("{} {}", c.cause, c.remedy),
    )
}

#[test]
fn a_sound_job_has_no_warning_but_all_the_usual_cautions() {
    let scenario = made(&[(HEAPED, "heaped = \"14 ft3\"\nhydraulic_lift = \"2000 lb\"")]);
    assert_eq!(warnings(&scenario), Vec::<&str>::new());
    let usual: Vec<_> =
        scenario.cautions.iter().filter(|c| c.weight == Weight::Usual).map(|c| c.kind).collect();
    assert_eq!(usual, ["ballast", "carry-low", "slopes", "people-near-loader", "manual-first"]);
}

#[test]
fn nothing_is_ever_called_safe() {
    for (_, text) in crate::shipped() {
        let scenario =
            crate::read_text(text, "x.toml", crate::Texts::shipped(), &crate::Selection::default()).unwrap();
        for caution in &scenario.cautions {
            let words = format!("{} {}", caution.cause, caution.remedy).to_lowercase();
            assert!(!words.contains("safe"), "{words}");
            assert!(caution.cause.ends_with('.') && caution.remedy.ends_with('.'), "{words}");
        }
    }
}

#[test]
fn a_bucket_heavier_than_the_loader_may_lift_is_told_with_its_weight() {
    let text = cause(&[(HEAPED, "heaped = \"14 ft3\"\nhydraulic_lift = \"400 lb\"")], "bucket-over-lift");
    // 14 ft3 x 0.95 x 281 kg/m3 = 106 kg = 233 lb, half of 400 lb is 200 lb, that is 85.7 % of the bucket.
    for figure in ["233 lb", "200 lb", "50 %", "85.7 %"] {
        assert!(text.contains(figure), "{figure} is not in {text}");
    }
    assert!(loader("hydraulic_lift_share = 0.8").is_empty());
    let wet = warnings(&made(&[(HEAPED, "heaped = \"14 ft3\"\nhydraulic_lift = \"600 lb\"")]));
    assert_eq!(wet, ["bucket-over-lift-when-heavy"]);
    let unknown = made(&[]);
    assert_eq!(warnings(&unknown), ["lift-not-given"]);
    let told = unknown.cautions.iter().find(|caution| caution.kind == "lift-not-given").unwrap();
    let words = ["hydraulic lift", "rated operating capacity", "tipping load", "the machine's manual"];
    assert!(words.iter().all(|word| told.remedy.contains(word)) && !told.remedy.contains('_'), "{told:?}");
}

#[test]
fn heaped_far_above_struck_is_doubtful() {
    assert_eq!(loader("struck = \"8 ft3\""), ["bucket-figures"]);
    assert!(loader("struck = \"11 ft3\"").is_empty());
}

fn gate(width: &str, around: &str) -> String {
    let ways = format!("ways = [ {{ distance = \"20 yd\", passes = [ \"gate\" ] }}{around} ]");
    let pass = format!(
        "hydraulic_lift = \"2000 lb\"\nwidth = \"58 in\"\n[[pass]]\nname = \"gate\"\nwidth = \"{width}\""
    );
    changed(&[("distance = \"20 yd\"", &ways), (HEAPED, &format!("{HEAPED}\n{pass}"))])
}

#[test]
fn a_gate_too_narrow_is_told_by_how_much() {
    let scenario = accepted(&gate("46 in", ", { distance = \"90 yd\" }"));
    assert_eq!(warnings(&scenario), ["machine-wider-than-gate"]);
    assert!(scenario.cautions[0].cause.contains("12 in too narrow"), "{}", scenario.cautions[0].cause);
    let refused = crate::testing::refused(&gate("46 in", ""));
    assert!(refused.iter().all(|said| said.contains("12 in too much")), "{refused:?}");
    assert_eq!(warnings(&accepted(&gate("62 in", ""))), ["gate-tight"]);
    assert_eq!(warnings(&accepted(&gate("6 ft", ""))), Vec::<&str>::new());
}

#[test]
fn room_for_fewer_heaps_than_loaders_or_for_one_is_told() {
    let lift = (HEAPED, "heaped = \"14 ft3\"\nhydraulic_lift = \"2000 lb\"\ncount = 3");
    let text = cause(&[lift, ("distance =", "room = 2\ndistance =")], "room-too-small");
    assert!(text.contains("fewer heaps") && text.contains("(3)"), "{text}");
    let text = cause(&[("distance =", "room = 1\ndistance =")], "room-too-small");
    assert!(text.contains("one heap only"), "{text}");
    let rakers = ("name = \"helper\"", "name = \"helper\"\ncount = 4");
    let text = cause(&[rakers, ("distance =", "room = 3\ndistance =")], "rakers-outnumber-room");
    assert!(text.contains("3 heaps in all, but 4 rakers"), "{text}");
}

#[test]
fn too_little_material_is_told_with_how_much_how_likely_and_how_many_trucks() {
    let text = cause(&[("on_hand = \"12 yd3\"", "on_hand = \"8 yd3\"")], "short-of-need");
    for words in ["needs 10 yd3 and 8 yd3 is ordered, 2 yd3 too little", "1 truckload of 19.6 yd3"] {
        assert!(text.contains(words), "\"{words}\" is not in {text}");
    }
    let text = cause(&[("on_hand = \"12 yd3\"", "on_hand = \"10 yd3\"")], "short-of-need");
    assert!(text.contains("times in 100"), "{text}");
    let truck = "deliveries = [ { at = \"8:30\", volume = \"1 yd3\" } ]";
    let text = cause(&[("on_hand = \"12 yd3\"", truck)], "short-of-need");
    assert!(text.contains("10 truckloads of 1 yd3"), "{text}");
}

/// With need and supply lognormal the chance of a shortage has a closed form: P(need > supply) = Phi(ln(n / s) / sigma)
/// with the medians n, s and sigma2 the sum of both.
#[test]
fn the_chance_of_running_short_agrees_with_its_closed_form() {
    let scenario = made(&[("on_hand = \"12 yd3\"", "on_hand = \"10.5 yd3\"")]);
    let days = &scenario.job.chance.days;
    let (need, bulk) = (&days.need, &days.bulk);
    let sigma = |law: &sim::Distribution| law.quantile(0.841_344_746).ln() - law.quantile(0.5).ln();
    let both = sigma(need).hypot(sigma(bulk));
    let z = (need.quantile(0.5) * 10.0 / (bulk.quantile(0.5) * 10.5)).ln() / both;
    // The unit lognormal with cv so that sigma is 1 gives Phi by its quantiles: find p with ln q(p) = z + mu.
    let unit = sim::Distribution::Lognormal { mean: 0.5_f64.exp(), cv: (1.0_f64.exp() - 1.0).sqrt() };
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..50 {
        let p = f64::midpoint(low, high);
        if unit.quantile(p).ln() < z { low = p } else { high = p }
    }
    let short = super::supply::shortages(&scenario.job, scenario.job.zones[0].need_m3);
    let seen = short.iter().filter(|short| **short > 0.0).count() as f64 / short.len() as f64;
    // 20,000 cases: one standard error is below 0.0036.
    assert!((seen - low).abs() < 4.0 * 0.0036, "{seen} seen, {low} in closed form");
}

#[test]
fn far_too_much_material_is_told() {
    assert_eq!(warnings(&made(&[("12 yd3", "20 yd3")])).last(), Some(&"far-more-than-needed"));
}

#[test]
fn deliveries_out_of_hours_and_an_empty_pile_in_the_morning_are_told() {
    let hours = "name = \"helper\"\n[shift]\nend = \"4 pm\"";
    let at =
        |at: &str| format!("on_hand = \"9 yd3\"\ndeliveries = [ {{ at = \"{at}\", volume = \"3 yd3\" }} ]");
    for (time, warned) in
        [("06:30", true), ("5 pm", true), ("day 2 07:00", true), ("day 2 09:00", false), ("10:00", false)]
    {
        let scenario = made(&[("on_hand = \"12 yd3\"", &at(time)), ("name = \"helper\"", hours)]);
        assert_eq!(warnings(&scenario).contains(&"delivery-out-of-hours"), warned, "{time}");
    }
    let late = "deliveries = [ { at = \"9:30\", volume = \"12 yd3\" } ]";
    let text = cause(&[("on_hand = \"12 yd3\"", late)], "nothing-to-load-at-first");
    assert!(text.contains("9:30 am") && text.contains("1 h 30 min"), "{text}");
}

#[test]
fn a_distance_of_zero_and_a_racing_loader_are_doubtful() {
    assert!(cause(&[("\"20 yd\"", "\"0 yd\"")], "distance-zero").contains("\"north\" is zero"));
    assert!(loader("speed_loaded = \"20 mph\"").contains(&"speed-high"));
}

#[test]
fn a_loader_that_reaches_no_work_is_told() {
    let crate::Scenario { mut job, stated, .. } = made(&[]);
    job.zones[0].ways[0].stockpile = 7;
    let kinds: Vec<_> = all(&job, &stated, 9.0, System::Us).iter().map(|c| c.kind).collect();
    assert!(kinds.contains(&"loader-without-work"), "{kinds:?}");
}

#[test]
fn names_are_listed_as_people_list_them() {
    assert_eq!(named(&["a"]), "\"a\"");
    assert_eq!(named(&["a", "b"]), "\"a\" and \"b\"");
    assert_eq!(named(&["a", "b", "c"]), "\"a\", \"b\" and \"c\"");
    assert_eq!(named(&["a"; 9]), "\"a\", \"a\", \"a\", \"a\", \"a\", \"a\" and 3 more");
}

#[test]
fn small_zones_that_cannot_all_be_served_are_told() {
    // Ten pits of 15 l and 140 l ordered: 10 l too little, less than a twentieth of the bucket, but a pit gets nothing.
    let pit = |n: usize| format!("[[zone]]\nname = \"pit {n}\"\nvolume = \"15 l\"\ndistance = \"20 yd\"\n");
    let pits: String = (0..10).map(pit).collect();
    let zone = "[[zone]]\nname = \"north\"\nvolume = \"10 yd3\"\ndistance = \"20 yd\"\n";
    let lift = (HEAPED, "heaped = \"14 ft3\"\ntipping_load = \"2000 lb\"");
    let with = |ordered: &str| warnings(&made(&[(zone, &pits), ("\"12 yd3\"", ordered), lift]));
    assert_eq!(with("\"140 l\""), ["short-of-need"]);
    assert_eq!(with("\"200 l\""), Vec::<&str>::new());
}
