//! Area, depth and settling to loose volume, in both systems of units.

use super::comparison::{Comparison, Status};
use super::{job, read};

const YD3: f64 = 0.764_554_857_984;
const CHIPS: &str = "name = \"wood chips, green\"";

/// What a zone so described needs \[m3\].
fn need_m3(material: &str, zone: &str) -> f64 {
    read(&job(material, zone, "heaped = \"14 ft3\"")).job.zones[0].need_m3
}

pub(super) fn yards_on_the_ground() -> Comparison {
    let mut comparison = Comparison::new(
        "A cubic yard covers 324 square feet one inch deep, and area times depth is volume in any units",
        "exact definitions: 1 ft = 0.3048 m, 1 yd3 = 0.764554857984 m3",
        Status::Computed,
        0.0,
    );
    let unsettled = format!("{CHIPS}\nsettling = \"0 %\"");
    let mut covers = |zone: &str, m3: f64| {
        let what = zone.replace('\n', ", ").replace('"', "");
        comparison.exact(format!("{what}: m3"), need_m3(&unsettled, zone), m3, 1e-9 * m3);
    };
    covers("area = \"324 ft2\"\ndepth = \"1 in\"", YD3);
    covers("area = \"3240 ft2\"\ndepth = \"2 in\"", 20.0 * YD3);
    covers("length = \"27 ft\"\nwidth = \"12 ft\"\ndepth = \"1 in\"", YD3);
    covers("length = \"9 yd\"\nwidth = \"9 yd\"\ndepth = \"1 ft\"", 27.0 * YD3);
    covers("area = \"100 m2\"\ndepth = \"5 cm\"", 5.0);
    covers("length = \"25 m\"\nwidth = \"8 m\"\ndepth = \"75 mm\"", 15.0);
    covers("area = \"2 acres\"\ndepth = \"1 in\"", 2.0 * 43_560.0 / 324.0 * YD3);
    covers("area = \"0.5 ha\"\ndepth = \"10 cm\"", 500.0);
    comparison
}

pub(super) fn loose_depths() -> Comparison {
    let mut comparison = Comparison::new(
        "What settles by a quarter is laid a third deeper: 12 in for 9 in, 8 in for 6 in (divided by 0.75, not times 1.25)",
        "US CPSC publications 325, table 2, and 324 with ASTM F1148, loose fill that loses 25 % of its depth, as quoted \
         elsewhere; here over 100 ft2 and over 10 m2",
        Status::SecondHand,
        0.0,
    );
    // Material, finished depth and depth to lay, all in inches. Rubber is left out: the rule does not hold for it.
    let table = [
        ("sand", 9.0, 12.0),
        ("pea gravel", 9.0, 12.0),
        ("wood mulch", 9.0, 12.0),
        ("wood chips", 9.0, 12.0),
        ("any loose fill listed", 6.0, 8.0),
    ];
    for (name, finished, laid) in table {
        let material = format!(
            "name = \"{name}\"\ndensity = \"300 kg/m3\"\nfill_factor = \"100 %\"\nsettling = \"25 %\""
        );
        let us = need_m3(&material, &format!("area = \"100 ft2\"\ndepth = \"{finished} in\"")) / YD3;
        comparison.exact(
            format!("{name}, {finished} in, 100 ft2: yd3"),
            us,
            100.0 * laid / 12.0 / 27.0,
            1e-9,
        );
        let metric = need_m3(&material, &format!("area = \"10 m2\"\ndepth = \"{:.2} cm\"", finished * 2.54));
        comparison.exact(format!("{name}, {finished} in, 10 m2: m3"), metric, 10.0 * laid * 0.0254, 1e-9);
    }
    // Where the file says nothing of settling, the built-in table does.
    let built_in = need_m3(CHIPS, "area = \"324 ft2\"\ndepth = \"9 in\"") / YD3;
    comparison.exact("wood chips of the built-in table, 9 in, 324 ft2: yd3", built_in, 12.0, 1e-9);
    comparison
}

#[test]
fn area_depth_and_settling_make_the_volume_the_handbooks_give() {
    yards_on_the_ground().judge(8);
    loose_depths().judge(11);
}
