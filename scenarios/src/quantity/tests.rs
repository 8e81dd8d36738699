use super::*;
use crate::testing::{accepted, changed, made, refused_with};

const HEAPED: &str = "heaped = \"14 ft3\"";

fn with_loading(loading: &str) -> String {
    changed(&[(HEAPED, &format!("{HEAPED}\nloading = {loading}"))])
}

fn refused_loading(loading: &str, words: &[&str]) {
    refused_with(&[(HEAPED, &format!("{HEAPED}\nloading = {loading}"))], words);
}

#[test]
fn one_figure_is_the_mean_and_leaves_the_built_in_spread() {
    let job = accepted(&with_loading("\"18 s\"")).job;
    assert_eq!(job.loaders[0].load_s, 18.0);
    assert_eq!(job.chance.days.loader_pace, Distribution::Lognormal { mean: 1.0, cv: 0.10 });
    assert_eq!(job.chance.loads.loading, Distribution::Lognormal { mean: 1.0, cv: 0.25 });
}

#[test]
fn low_typical_and_high_are_the_percentiles_of_days() {
    let scenario = accepted(&with_loading("{ low = \"15 s\", typical = \"20 s\", high = \"30 s\" }"));
    let law = LowTypicalHigh { low: 15.0, typical: 20.0, high: 30.0 }.fit().unwrap();
    assert_eq!(scenario.job.loaders[0].load_s, law.mean());
    let days = &scenario.job.chance.days.loader_pace;
    let seconds = |p| days.quantile(p) * law.mean();
    assert!((seconds(0.1) - 15.0).abs() < 1e-6 && (seconds(0.9) - 30.0).abs() < 1e-6, "{days:?}");
    assert!((days.mean() - 1.0).abs() < 1e-12);
    assert!(crate::testing::assumed(&scenario, "spread.days.loader_pace").contains("PERT"));
}

#[test]
fn every_family_is_read_as_how_loads_differ() {
    for (text, law) in [
        ("family = \"constant\", value = \"20 s\"", Distribution::Constant(20.0)),
        (
            "family = \"uniform\", least = \"10 s\", greatest = \"30 s\"",
            Distribution::Uniform { least: 10.0, greatest: 30.0 },
        ),
        (
            "family = \"triangular\", least = \"10 s\", mode = \"20 s\", greatest = \"1 min\"",
            Distribution::Triangular { least: 10.0, mode: 20.0, greatest: 60.0 },
        ),
        (
            "family = \"PERT\", least = \"0 s\", mode = \"20 s\", greatest = \"1 min\"",
            Distribution::Pert { least: 0.0, mode: 20.0, greatest: 60.0 },
        ),
        ("family = \"normal\", mean = \"20 s\", sd = \"5 s\"", Distribution::Normal { mean: 20.0, sd: 5.0 }),
        (
            "family = \"lognormal\", mean = \"20 s\", cv = \"25 %\"",
            Distribution::Lognormal { mean: 20.0, cv: 0.25 },
        ),
        ("family = \"gamma\", mean = \"20 s\", cv = 0.25", Distribution::Gamma { mean: 20.0, cv: 0.25 }),
        (
            "family = \"weibull\", mean = \"20 s\", shape = 2",
            Distribution::Weibull { mean: 20.0, shape: 2.0 },
        ),
        ("family = \"exponential\", mean = \"20 s\"", Distribution::Exponential { mean: 20.0 }),
        (
            "family = \"observed\", values = [ \"18 s\", \"20 s\", \"0.5 min\" ]",
            Distribution::Observed([18.0, 20.0, 30.0].into()),
        ),
    ] {
        let job = accepted(&with_loading(&format!("{{ {text} }}"))).job;
        assert_eq!(job.loaders[0].load_s, law.mean(), "{text}");
        assert_eq!(job.chance.loads.loading, law.relative(), "{text}");
        assert_eq!(job.chance.days.loader_pace.sd(), 0.10_f64, "{text}");
    }
}

#[test]
fn a_distribution_by_days_moves_the_days_and_not_the_loads() {
    let job =
        accepted(&with_loading("{ family = \"gamma\", mean = \"20 s\", cv = \"40 %\", by = \"days\" }")).job;
    assert_eq!(job.chance.days.loader_pace, Distribution::Gamma { mean: 1.0, cv: 0.4 });
    assert_eq!(job.chance.loads.loading, Distribution::Lognormal { mean: 1.0, cv: 0.25 });
}

#[test]
fn low_of_zero_is_the_least_that_can_be_and_high_stays_the_90th_percentile() {
    let law = fit(LowTypicalHigh { low: 0.0, typical: 10.0, high: 40.0 }).unwrap();
    assert_eq!(law.quantile(0.0), 0.0);
    assert!((law.quantile(0.9) - 40.0).abs() < 1e-6, "{law:?}");
    let late = "{ at = \"9:00 am\", volume = \"5 yd3\", late = { low = \"0 min\", typical = \"10 min\", high = \"40 min\" } }";
    let stock = format!("on_hand = \"12 yd3\"\ndeliveries = [ {late} ]");
    let job = made(&[("on_hand = \"12 yd3\"", &stock)]).job;
    assert!((job.stockpiles[0].deliveries[0].late_s.quantile(0.9) - 2400.0).abs() < 1e-3);
}

#[test]
fn figures_that_are_no_range_are_refused() {
    refused_loading("{ low = \"30 s\", typical = \"20 s\", high = \"40 s\" }", &["do not rise"]);
    refused_loading("{ low = \"1 s\", typical = \"20 s\", high = \"10 min\" }", &["200 times"]);
    refused_loading("{ low = \"10 s\", high = \"40 s\" }", &["\"typical\" is missing"]);
    refused_loading("{ mean = \"10 s\" }", &["neither low, typical and high nor a family", "\"20 s\""]);
    refused_loading("{ low = \"0 s\", typical = \"0 s\", high = \"5 s\" }", &["typical may not be zero"]);
}

#[test]
fn distributions_that_cannot_be_are_refused() {
    refused_loading(
        "{ family = \"normal\", mean = \"20 s\", sd = \"7 s\" }",
        &["0.3 of the mean", "lognormal"],
    );
    refused_loading("{ family = \"gamma\", mean = \"0 s\", cv = 0.2 }", &["spread or shape"]);
    refused_loading("{ family = \"uniform\", least = \"9 s\", greatest = \"8 s\" }", &["not in order"]);
    refused_loading("{ family = \"pareto\", mean = \"20 s\" }", &["family is not known", "weibull"]);
    refused_loading(
        "{ family = \"gamma\", mean = \"20 s\", cv = \"20 s\" }",
        &[".cv", "a share or plain number"],
    );
    refused_loading("{ family = \"weibull\", mean = \"20 s\", shape = 0.1 }", &[".shape", "absurdly small"]);
    refused_loading(
        "{ family = \"observed\", values = [ 0, 0 ], unit = \"s\" }",
        &["no observed value above 0"],
    );
}

#[test]
fn a_rate_by_loads_is_turned_into_times() {
    let rate = "name = \"helper\"\nrate = { family = \"lognormal\", mean = \"20 m3/h\", cv = \"30 %\" }";
    let job = made(&[("name = \"helper\"", rate)]).job;
    // E[1/X] of a lognormal is (1 + cv2) / mean, so the rate with the mean time is mean / (1 + cv2).
    assert!((job.rakers[0].rate_m3_per_h - 20.0 / 1.09).abs() < 1e-9);
    assert!((job.chance.loads.raking.sd() - 0.3).abs() < 1e-9);
    let rate = "name = \"helper\"\nrate = { family = \"observed\", values = [ \"10 m3/h\", \"30 m3/h\" ] }";
    let job = made(&[("name = \"helper\"", rate)]).job;
    assert!((job.rakers[0].rate_m3_per_h - 15.0).abs() < 1e-9);
}

#[test]
fn a_slow_speed_is_a_long_time() {
    let speed =
        format!("{HEAPED}\nspeed_empty = {{ low = \"1 m/s\", typical = \"2 m/s\", high = \"2.5 m/s\" }}");
    let job = made(&[(HEAPED, &speed)]).job;
    let times = LowTypicalHigh { low: 0.4, typical: 0.5, high: 1.0 }.fit().unwrap();
    assert!((job.loaders[0].empty_m_per_s - 1.0 / times.mean()).abs() < 1e-12);
    assert!((job.chance.days.travel.quantile(0.9) - 1.0 / times.mean()).abs() < 1e-6);
}

/// Gravel is ordered and paid by the ton: its density makes a volume of it, and the listing says which.
#[test]
fn what_is_ordered_by_the_ton_becomes_a_volume_by_its_density() {
    let gravel = |volume: &str, extra: &str| {
        let name = (
            "name = \"wood chips, green\"",
            "name = \"gravel\"\ndensity = \"1600 kg/m3\"\nfill_factor = 0.9",
        );
        let on_hand = format!("on_hand = \"{volume}\"{extra}");
        changed(&[name, ("on_hand = \"12 yd3\"", &on_hand)])
    };
    let short_ton = 907.184_74;
    for (typed, kg) in [
        ("20 tons", 20.0 * short_ton),
        ("20 short tons", 20.0 * short_ton),
        ("16 tonnes", 16e3),
        ("16 t", 16e3),
    ] {
        let scenario = accepted(&gravel(typed, ""));
        assert!((scenario.job.stockpiles[0].on_hand_m3 - kg / 1600.0).abs() < 1e-9, "{typed}");
        let said = crate::testing::assumed(&scenario, "stockpile.pile.on_hand");
        assert!(said.contains(typed) && said.contains("m3") && said.contains("yd3"), "{said}");
    }
    let priced = gravel("16 t", "").replace("fill_factor = 0.9", "fill_factor = 0.9\nprice = \"$40/t\"");
    let scenario = accepted(&priced);
    assert!((scenario.stated.fixed.material - 640.0).abs() < 1e-6, "{}", scenario.stated.fixed.material);
    assert!(crate::testing::assumed(&scenario, "material.price").contains("$64/m3"));
    // A bucketful by the pound is a mistake, not an order.
    let said = crate::testing::refused(&gravel("900 lb", ""));
    assert!(said[0].contains("this is a mass"), "{said:?}");
}

#[test]
fn a_round_zone_is_measured_by_its_diameter() {
    let zone = "diameter = \"20 m\"\ndepth = \"10 cm\"";
    let job = made(&[("volume = \"10 yd3\"", zone), ("green\"", "green\"\nsettling = 0")]).job;
    assert!((job.zones[0].need_m3 - 31.415_926_535_9).abs() < 1e-9);
    refused_with(
        &[("volume = \"10 yd3\"", "diameter = \"20 m\"\narea = \"9 m2\"\ndepth = \"3 cm\"")],
        &["diameter and area are both given"],
    );
    refused_with(
        &[("volume = \"10 yd3\"", "area = \"20 m diameter\"\ndepth = \"3 cm\"")],
        &["write it as diameter"],
    );
    refused_with(&[("volume = \"10 yd3\"", "diameter = \"20 m\"")], &["\"depth\" is missing"]);
    let strip = "area = \"60 m x 3 m\"\ndepth = \"10 cm\"";
    let job = made(&[("volume = \"10 yd3\"", strip), ("green\"", "green\"\nsettling = 0")]).job;
    assert!((job.zones[0].need_m3 - 18.0).abs() < 1e-9);
}
