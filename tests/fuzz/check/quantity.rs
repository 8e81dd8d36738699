//! A quantity is read or refused; what is shown of one that was read can be typed again, and means the same within what
//! is rounded away.

use super::{quoted, reading};
use scenarios::units::{self, System};
use scenarios::{Scenario, Selection, Texts, read_text, typed};

/// A place for a quantity: the key that is set, the quantity read there, how it is shown, and what is rounded away then.
struct Place {
    below: &'static str,
    key: &'static str,
    read: fn(&Scenario) -> f64,
    show: fn(f64, System) -> String,
    rounded: fn(f64) -> f64,
}

const PLACES: [Place; 15] = [
    place("[[zone]]", "volume", |s| s.job.zones[0].need_m3, units::volume),
    place("[[zone]]", "distance", |s| s.job.zones[0].ways[0].distance_m, units::way),
    place("[[stockpile]]", "on_hand", |s| s.job.stockpiles[0].on_hand_m3, units::volume),
    place("[[loader]]", "heaped", |s| s.job.loaders[0].heaped_m3, units::bucket),
    place("[[loader]]", "rated_operating_capacity", |s| s.job.loaders[0].lift_kg.unwrap_or(0.0), units::mass),
    place("[[loader]]", "width", |s| s.job.loaders[0].width_m, units::short_length),
    place("[[loader]]", "speed_loaded", |s| s.job.loaders[0].loaded_m_per_s, units::speed),
    place("[[loader]]", "fuel_working", |s| s.job.loaders[0].fuel_working_l_per_h, units::fuel_rate),
    place("[[raker]]", "rate", |s| s.job.rakers[0].rate_m3_per_h, units::rate),
    place("[material]", "density", |s| s.job.material.density_kg_per_m3, units::density),
    Place {
        rounded: seconds_away,
        ..place("[[loader]]", "loading", |s| s.job.loaders[0].load_s, |value, _| units::duration(value))
    },
    Place {
        rounded: seconds_away,
        ..place("[shift]", "set_up", |s| s.job.shift.set_up_s.mean(), |value, _| units::duration(value))
    },
    Place { rounded: |_| 0.0, ..place("[shift]", "start", |s| s.job.shift.start_s, units::clock) },
    Place {
        rounded: |value| if value < 99.995 { 0.0051 } else { 0.51 },
        ..place("[[stockpile]]", "price", |s| s.job.prices.material, |value, _| units::money(value, "$"))
    },
    place("[crew]", "spread_share", |s| s.job.raking.spread_share, |value, _| units::figure(value)),
];

const fn place(
    below: &'static str,
    key: &'static str,
    read: fn(&Scenario) -> f64,
    show: fn(f64, System) -> String,
) -> Place {
    Place { below, key, read, show, rounded: digits_away }
}

/// Half of the third digit; less than a billionth is not shown.
fn digits_away(value: f64) -> f64 {
    0.0051 * value.abs() + 1e-9
}

fn seconds_away(value: f64) -> f64 {
    match value {
        v if v < 9.95 => 0.051,
        v if v < 599.5 => 0.51,
        _ => 30.01,
    }
}

/// The job without the lines that are set.
const JOB: [(&str, &[(&str, &str)]); 7] = [
    ("", &[("spread", "\"none\"")]),
    ("[material]", &[("name", "\"chips\""), ("density", "\"280 kg/m3\""), ("fill_factor", "1")]),
    ("[[zone]]", &[("name", "\"north\""), ("volume", "\"2 m3\""), ("distance", "\"20 m\"")]),
    ("[[stockpile]]", &[("name", "\"pile\""), ("on_hand", "\"3 m3\"")]),
    ("[[loader]]", &[("name", "\"tractor\""), ("heaped", "\"0.5 m3\"")]),
    ("[[raker]]", &[("name", "\"helper\"")]),
    ("[shift]\nset_up = \"0 s\"\n[crew]", &[]),
];

fn job(place: &Place, typed: &str) -> String {
    let mut text = String::new();
    for (heading, lines) in JOB {
        text.push_str(heading);
        text.push('\n');
        for (key, value) in lines.iter().filter(|(key, _)| (heading, *key) != (place.below, place.key)) {
            text.push_str(&format!("{key} = {value}\n"));
        }
    }
    let line = format!("{}\n{} = {}\n", place.below, place.key, quoted(typed));
    let text = if place.key == "set_up" { text.replace("set_up = \"0 s\"\n", "") } else { text };
    text.replace(&format!("{}\n", place.below), &line)
}

fn read(place: &Place, typed: &str) -> Result<f64, String> {
    let text = job(place, typed);
    let read = read_text(&text, reading::FILE, Texts::default(), &Selection::default());
    reading::answer(&read, &text);
    read.map(|scenario| (place.read)(&scenario)).map_err(|refusal| refusal.to_string())
}

/// The same as a figure of the command line.
fn on_the_command_line(text: &str) {
    let one = |read: Result<f64, String>| read.map(|figure| [figure; 2]);
    for read in [
        one(typed::percent(text)),
        one(typed::duration(text)),
        one(typed::bucket(text)),
        one(typed::mass(text)),
        one(typed::money(text).map(|(sum, _)| sum)),
        one(typed::rate(text).map(|(rate, _)| rate)),
        typed::range(text),
    ] {
        match read {
            Ok([low, high]) => {
                assert!(low >= 0.0 && high.is_finite() && low <= high, "{text}: {low}, {high}")
            }
            Err(said) => reading::printable(&said),
        }
    }
}

/// The first byte says which quantity it is, the rest is what is typed.
pub(crate) fn check(bytes: &[u8]) {
    let Some((which, typed)) = bytes.split_first() else { return };
    let typed = String::from_utf8_lossy(typed);
    on_the_command_line(&typed);
    let place = &PLACES[usize::from(*which) % PLACES.len()];
    let Ok(value) = read(place, &typed) else { return };
    assert!(value.is_finite() && value >= 0.0, "{typed} is {value}");
    for system in [System::Us, System::Metric] {
        let shown = (place.show)(value, system);
        match read(place, &shown) {
            Ok(again) => {
                let off = (again - value).abs();
                assert!(off <= (place.rounded)(value), "{typed:?} is {value}, shown {shown:?}, {again}");
            }
            // Thousands are shown with commas, which are not read; rounding may go past what is believable.
            Err(said) => {
                let known = ["comma", "absurdly", "may not be zero", "loads", "nothing"];
                assert!(known.iter().any(|word| said.contains(word)), "{typed:?} is shown {shown:?}: {said}");
            }
        }
    }
}
