use crate::Scenario;
use crate::testing::{accepted, assumed, changed, made, refused_with};
use crate::units::System;
use sim::{Chance, Distribution, FillOrder, FinishRule, Way};

const YARD3: f64 = 0.764_554_857_984;

fn close(a: f64, b: f64) {
    assert!((a - b).abs() <= 1e-12 * b.abs().max(1e-3), "{a} is not {b}");
}

#[test]
fn a_small_job_becomes_si_with_the_built_in_defaults() {
    let scenario = made(&[]);
    let job = &scenario.job;
    close(job.zones[0].need_m3, 10.0 * YARD3);
    close(job.stockpiles[0].on_hand_m3, 12.0 * YARD3);
    close(scenario.ordered_m3, 12.0 * YARD3);
    close(job.zones[0].ways[0].distance_m, 18.288);
    close(job.loaders[0].heaped_m3, 0.396_435_852_288);
    assert_eq!(
        (job.loaders[0].load_s, job.loaders[0].dump_s, job.loaders[0].start_stop_s),
        (20.0, 12.0, 6.0)
    );
    close(job.loaders[0].loaded_m_per_s, 3.0 * 0.447_04);
    close(job.material.density_kg_per_m3, 281.0);
    assert_eq!((job.fill_order, job.finish), (FillOrder::AsListed, FinishRule::AreaCovered));
    assert_eq!((job.shift.start_s, job.shift.end_s), (8.0 * 3600.0, None));
    assert!(job.raking.stand_clear);
    assert_eq!(
        (scenario.title.as_str(), scenario.units, scenario.currency.as_str()),
        ("job", System::Us, "")
    );
}

#[test]
fn every_default_used_is_listed_with_its_source() {
    let scenario = made(&[]);
    for key in [
        "material.density",
        "material.fill_factor",
        "zone.north.room",
        "loader.tractor.loading",
        "loader.tractor.dumping",
        "loader.tractor.start_and_stop",
        "loader.tractor.speed_loaded",
        "loader.tractor.speed_empty",
        "loader.tractor.hydraulic_lift",
        "loader.tractor.stoppages",
        "raker.helper.rate",
        "shift.start",
        "shift.end",
        "shift.set_up",
        "finish.rule",
        "money",
        "units",
    ] {
        assert!(!assumed(&scenario, key).is_empty());
    }
    for (kind, ..) in crate::defaults::DAYS {
        assumed(&scenario, &format!("spread.days.{kind}"));
    }
    for (kind, ..) in crate::defaults::LOADS {
        assumed(&scenario, &format!("spread.loads.{kind}"));
    }
    assert!(scenario.assumptions.iter().all(|a| !a.from.is_empty() && !a.words.is_empty()));
    let density = scenario.assumptions.iter().find(|a| a.key == "material.density").unwrap();
    assert!(
        density.from.contains("read in the source") && !density.from.contains("settling"),
        "{}",
        density.from
    );
}

#[test]
fn what_is_given_is_not_assumed() {
    let scenario = made(&[(
        "heaped = \"14 ft3\"",
        "heaped = \"14 ft3\"\nloading = \"18 s\"\nhydraulic_lift = \"1000 lb\"",
    )]);
    assert!(
        scenario
            .assumptions
            .iter()
            .all(|a| a.key != "loader.tractor.loading" && a.key != "loader.tractor.hydraulic_lift")
    );
    assert!(assumed(&scenario, "loader.tractor.hydraulic_lift_share").contains("50 %"));
}

#[test]
fn no_end_and_no_breaks_are_not_assumed_where_the_file_says_so() {
    let listed = |shift: &str| {
        let scenario = made(&[("name = \"helper\"", &format!("name = \"helper\"\n[shift]\n{shift}"))]);
        assert_eq!((scenario.job.shift.end_s, scenario.job.shift.breaks.len()), (None, 0));
        let keys = scenario.assumptions.into_iter().map(|a| a.key);
        keys.filter(|key| key == "shift.end" || key == "shift.breaks").collect::<Vec<_>>()
    };
    assert_eq!(listed("start = \"8:00\""), ["shift.end", "shift.breaks"]);
    assert_eq!(listed("end = \"none\""), ["shift.breaks"]);
    assert_eq!(listed("breaks = []"), ["shift.end"]);
    assert_eq!(listed("end = \"none\"\nbreaks = []"), [""; 0]);
}

#[test]
fn area_and_depth_give_a_volume_that_allows_for_settling() {
    let zone = "area = \"324 ft2\"\ndepth = \"1 in\"";
    let scenario = made(&[("volume = \"10 yd3\"", zone)]);
    // 1 yd3 covers 324 ft2 one inch deep; chips lose a quarter of their depth.
    close(scenario.job.zones[0].need_m3, YARD3 / 0.75);
    assert!(assumed(&scenario, "material.settling").contains("25 %"));
    let stated = scenario.stated.zones[0];
    close(stated.depth_m.unwrap(), 0.0254);
    assert_eq!(stated.settling, Some(0.25));
    let zone = "length = \"6 m\"\nwidth = \"5 m\"\ndepth = \"10 cm\"";
    let job = made(&[("volume = \"10 yd3\"", zone), ("green\"", "green\"\nsettling = 0")]).job;
    close(job.zones[0].need_m3, 3.0);
}

#[test]
fn copies_are_numbered_and_alike() {
    let scenario = made(&[
        ("name = \"tractor\"", "name = \"tractor\"\ncount = 3"),
        ("name = \"helper\"", "name = \"helper\"\ncount = 2"),
    ]);
    let job = &scenario.job;
    let names: Vec<_> = job.loaders.iter().map(|loader| loader.name.as_str()).collect();
    assert_eq!(names, ["tractor 1", "tractor 2", "tractor 3"]);
    assert!(assumed(&scenario, "stockpile.pile.face").contains("one loader at a time"));
    assert_eq!(
        job.rakers.iter().map(|raker| raker.name.as_str()).collect::<Vec<_>>(),
        ["helper 1", "helper 2"]
    );
}

#[test]
fn a_loader_or_raker_counted_none_is_left_out() {
    let two = "heaped = \"14 ft3\"\n[[loader]]\nname = \"mini\"\nheaped = \"8 ft3\"\ncount = 0";
    assert_eq!(made(&[("heaped = \"14 ft3\"", two)]).job.loaders.len(), 1);
}

const TWO_ZONES: &str = r#"
[material]
name = "gravel"
density = "1.5 t/m3"
fill_factor = 0.9
price = "$20/m3"
[[zone]]
name = "a"
volume = "2 m3"
ways = [ { from = "p", distance = "40 m", passes = [ "g", { pass = "h", share = "70 %" } ] }, { from = "q", distance = "9 m" } ]
walk = { b = "30 m" }
[[zone]]
name = "b"
volume = "1 m3"
ways = [ { from = "q", distance = "12 m" } ]
walk = { a = "20 m", c = "5 m" }
[[zone]]
name = "c"
volume = "1 m3"
ways = [ { from = "q", distance = "12 m" } ]
[[stockpile]]
name = "p"
on_hand = "1 m3"
[[stockpile]]
name = "q"
deliveries = [ { at = "8:30", volume = "2 m3" }, { at = "day 2 09:00", volume = "2 m3" }, { at = "10:00", volume = "3 m3" } ]
face = 2
[[pass]]
name = "g"
width = "2 m"
[[pass]]
name = "h"
width = "6 ft"
passing = "5 s"
at_once = 2
[[loader]]
name = "l"
heaped = "300 l"
width = "72 in"
machine_cost = "$25/h"
fuel_working = "1 gal/h"
[[raker]]
name = "r"
rate = "4 m3/h"
start = "b"
[finish]
rule = "pile cleared"
[money]
fuel_price = "$4/gal"
[crew]
together = true
crowding = "90 %"
fatigue = { loss = "5 %/h", least = "60 %" }
spread_share = 0.25
[shift]
start = "07:30"
end = "5 pm"
breaks = [ "9:30-9:45", { from = "12:00", to = "12:30 pm" } ]
set_up = "15 min"
"#;

#[test]
fn ways_walks_and_passes_refer_by_index() {
    let job = accepted(TWO_ZONES).job;
    let Way { stockpile, distance_m, passes } = &job.zones[0].ways[0];
    assert_eq!((*stockpile, *distance_m, passes.len()), (0, 40.0, 2));
    close(passes[0].share, 1.0 / 3.0);
    close(passes[1].share, 0.7);
    assert_eq!(job.zones[1].ways[0].stockpile, 1);
    assert_eq!(job.zones[0].walks_m, [0.0, 30.0, 0.0]);
    assert_eq!(job.zones[1].walks_m, [20.0, 0.0, 5.0]);
    assert_eq!(job.zones[2].walks_m, [0.0, 5.0, 0.0]);
    // 6 ft and 72 in are the same width: the loader fits.
    assert_eq!(job.passes[1].width_m, job.loaders[0].width_m);
    assert_eq!(job.finish, FinishRule::PileCleared { surplus_zone: 2 });
    assert_eq!(job.rakers[0].start_zone, 1);
}

#[test]
fn hours_money_and_crew_are_kept_in_their_units() {
    let scenario = accepted(TWO_ZONES);
    let job = &scenario.job;
    assert_eq!((job.shift.start_s, job.shift.end_s), (27_000.0, Some(61_200.0)));
    assert_eq!(job.shift.breaks[1].end_s, 45_000.0);
    assert_eq!(job.shift.set_up_s, Distribution::Constant(900.0));
    assert_eq!(job.stockpiles[1].deliveries[1].at_s, 86_400.0 + 32_400.0);
    close(job.prices.fuel_per_l, 4.0 / 3.785_411_784);
    close(job.prices.material, 20.0 * 8.0);
    close(job.loaders[0].fuel_working_l_per_h, 3.785_411_784);
    close(job.loaders[0].machine_cost_per_h, 25.0);
    assert_eq!(job.raking.together, Some(0.9));
    assert_eq!(job.raking.fatigue.map(|f| (f.share_per_h, f.floor)), Some((0.05, 0.6)));
    assert_eq!(scenario.currency, "$");
    assert_eq!(scenario.stated.truckload_m3, 2.0);
    assert_eq!(scenario.units, System::Metric);
}

#[test]
fn without_chance_every_quantity_is_its_mean_and_nothing_breaks_down() {
    let loader = "heaped = \"14 ft3\"\nloading = { low = \"15 s\", typical = \"20 s\", high = \"30 s\" }\nstoppages = { gap = \"1 h\", length = \"5 min\" }";
    let text = changed(&[("heaped = \"14 ft3\"", loader)]);
    let text = format!(
        "spread = \"none\"\n{text}[shift]\nset_up = {{ family = \"exponential\", mean = \"10 min\" }}\n"
    );
    let scenario = accepted(&text);
    assert_eq!(scenario.job.chance, Chance::none());
    assert!(scenario.job.loaders[0].load_s > 20.0 && scenario.job.loaders[0].stoppages.is_none());
    assert_eq!(scenario.job.shift.set_up_s, Distribution::Constant(600.0));
    assert!(assumed(&scenario, "spread").contains("switched off"));
}

#[test]
fn quantities_that_move_together_share_good_and_bad_days() {
    let loader = "heaped = \"14 ft3\"\nloading = { low = \"16 s\", typical = \"20 s\", high = \"30 s\" }\ndumping = { low = \"9 s\", typical = \"10 s\", high = \"12 s\" }";
    let scenario = made(&[("heaped = \"14 ft3\"", loader)]);
    // Relative to typical: 0.8 to 1.5 and 0.9 to 1.2, on average 0.85 to 1.35.
    let law = sim::LowTypicalHigh { low: 0.85, typical: 1.0, high: 1.35 }.fit().unwrap();
    let days = &scenario.job.chance.days.loader_pace;
    for p in [0.1, 0.5, 0.9] {
        close(days.quantile(p), law.relative().quantile(p));
    }
    let words = assumed(&scenario, "spread.days.loader_pace");
    assert!(words.contains("loader.tractor.loading, loader.tractor.dumping"), "{words}");
}

#[test]
fn spreads_may_be_given_outright_and_replace_the_built_in_ones() {
    let spread = "\n[spread.days]\nday = \"none\"\ntravel = \"12 %\"\nneed = { low = \"85 %\", typical = \"100 %\", high = \"125 %\" }\n[spread.loads]\nreturn = { family = \"gamma\", mean = 2, cv = 0.2 }\n";
    let scenario = accepted(&format!("{}{spread}", changed(&[])));
    let chance = &scenario.job.chance;
    assert_eq!(chance.days.day, Distribution::Constant(1.0));
    assert_eq!(chance.days.travel, Distribution::Lognormal { mean: 1.0, cv: 0.12 });
    close(chance.days.need.mean(), 1.0);
    close(chance.days.need.quantile(0.9) / chance.days.need.quantile(0.1), 1.25 / 0.85);
    assert_eq!(chance.loads.return_leg, Distribution::Gamma { mean: 1.0, cv: 0.2 });
    assert!(
        scenario.assumptions.iter().all(|a| a.key != "spread.days.travel" && a.key != "spread.loads.return")
    );
}

#[test]
fn contradictions_about_chance_are_refused() {
    let loading = "heaped = \"14 ft3\"\nloading = { low = \"16 s\", typical = \"20 s\", high = \"30 s\" }";
    let days = "name = \"helper\"\n[spread.days]\nloader_pace = \"10 %\"";
    refused_with(
        &[("heaped = \"14 ft3\"", loading), ("name = \"helper\"", days)],
        &["loader_pace", "line 17"],
    );
    let law = |cv: &str, name: &str| {
        format!(
            "name = \"{name}\"\nheaped = \"8 ft3\"\nloading = {{ family = \"gamma\", mean = \"20 s\", cv = {cv} }}\n"
        )
    };
    let two =
        |cv| format!("heaped = \"14 ft3\"\n[[loader]]\n{}[[loader]]\n{}", law("0.2", "b"), law(cv, "c"));
    made(&[("heaped = \"14 ft3\"", &two("\"20 %\""))]);
    refused_with(&[("heaped = \"14 ft3\"", &two("0.3"))], &["differently", "[spread.loads] loading"]);
}

#[test]
fn fixed_costs_are_kept_apart_and_add_up() {
    let fixed = |changes: &[(&str, &str)]| {
        let scenario = made(changes);
        let fixed = scenario.stated.fixed;
        assert_eq!(scenario.job.prices.material, fixed.sum());
        [fixed.material, fixed.delivery, fixed.mobilisation]
    };
    let truck = "deliveries = [ { at = \"9:00\", volume = \"4 yd3\", price = \"$60\", carriage = \"$45\" } ]";
    let pile = format!("\"12 yd3\"\nprice = \"$200\"\ncarriage = \"$30\"\n{truck}");
    let money = ("name = \"helper\"", "name = \"helper\"\n[money]\nmobilisation = \"$90\"");
    assert_eq!(fixed(&[("\"12 yd3\"", &pile), money]), [260.0, 75.0, 90.0]);
    let by_volume = ("green\"", "green\"\nprice = \"$18/yd3\"");
    let [material, delivery, _] = fixed(&[by_volume, ("\"12 yd3\"", "\"12 yd3\"\ncarriage = \"$30\"")]);
    assert!((material - 216.0).abs() < 1e-9 && delivery == 30.0);
    assert_eq!(fixed(&[]), [0.0; 3]);
    let scenario = made(&[by_volume]);
    assert!(assumed(&scenario, "money.mobilisation").contains("costs nothing"));
    assert!(assumed(&scenario, "stockpile.carriage").contains("in its price"));
}

#[test]
fn what_todays_bucket_weighs_is_kept_for_every_copy() {
    let scenario = made(&[("14 ft3\"", "14 ft3\"\nbucket_mass = \"80 kg\"\ncount = 2")]);
    assert_eq!(scenario.stated.loaders.iter().map(|l| l.bucket_mass_kg).collect::<Vec<_>>(), [Some(80.0); 2]);
}

#[test]
fn the_arena_costs_the_same_however_its_sand_is_brought() {
    let (name, text) = crate::shipped().iter().find(|(name, _)| *name == "riding-arena").unwrap();
    let file = crate::JobFile::of_text(text, name, crate::Texts::default()).unwrap();
    for alternative in [None, Some("all sand there at eight".to_owned())] {
        let selection = crate::Selection { alternative, ..crate::Selection::default() };
        let fixed = file.scenario(&selection).unwrap().stated.fixed;
        assert_eq!((fixed.material, fixed.delivery, fixed.sum()), (1380.0, 360.0, 1740.0));
    }
}

/// What is listed as assumed is what is used: the usual truckload only where something could run short and no truck is named,
/// walking only where somebody walks, a gate only where there is one on a way, breaks only where nothing is said of them.
#[test]
fn what_is_not_used_is_not_assumed() {
    let listed = |scenario: &Scenario, key: &str| scenario.assumptions.iter().any(|a| a.key == key);
    let truck = "stockpile.truckload";
    let plain = made(&[]);
    assert!(listed(&plain, truck) && plain.stated.truckload_m3 == 15.0);
    let from = &plain.assumptions.iter().find(|a| a.key == truck).unwrap().from;
    assert!(from.contains("common practice, no source"), "{from}");
    let said = made(&[("\"12 yd3\"", "\"12 yd3\"\ntruckload = \"8 m3\"")]);
    assert!(!listed(&said, truck) && said.stated.truckload_m3 == 8.0);
    let cleared = accepted(&format!("{}[finish]\nrule = \"pile cleared\"\n", changed(&[])));
    assert!(!listed(&cleared, truck));
    let walk = |distance: &str| {
        let zones = format!(
            "distance = \"20 yd\"\nwalk = {{ south = \"{distance}\" }}\n[[zone]]\nname = \"south\"\nvolume = \"1 yd3\"\ndistance = \"9 yd\""
        );
        made(&[("distance = \"20 yd\"", &zones)])
    };
    assert!(listed(&walk("30 m"), "raker.helper.walking") && !listed(&walk("0 m"), "raker.helper.walking"));
    let gate = |way: &str| {
        let pass = format!("{way}\n[[pass]]\nname = \"gate\"\nwidth = \"2 m\"");
        made(&[("distance = \"20 yd\"", &pass)])
    };
    let through = gate("ways = [ { from = \"pile\", distance = \"20 yd\", passes = [ \"gate\" ] } ]");
    assert!(listed(&through, "pass.gate.passing") && listed(&through, "loader.tractor.width"));
    let beside = gate("distance = \"20 yd\"");
    assert!(!listed(&beside, "pass.gate.passing") && !listed(&beside, "loader.tractor.width"));
    let said = accepted(&format!("{}[shift]\nend = \"none\"\nbreaks = []\n", changed(&[])));
    assert!(!listed(&said, "shift.end") && !listed(&said, "shift.breaks"));
    assert!(listed(&plain, "shift.end") && listed(&plain, "shift.breaks"));
}
