//! The catalogue of changes and sweeps that cannot be, each with its exact message.

use crate::bad_input::SOUND;
use scenarios::{JobFile, Selection, Texts, Variant, Vary, grid};

fn file() -> JobFile {
    JobFile::of_text(SOUND, "sound.toml", Texts::default()).unwrap_or_else(|refusal| panic!("{refusal}"))
}

/// What is typed after `--change`, several with `;` between them, and what is said of it.
const CHANGES: &[(&str, &str)] = &[
    (
        "loader.tractr.heaped = 22 ft3",
        "sound.toml: --change \"loader.tractr.heaped = 22 ft3\": there is no loader called \"tractr\"; the nearest is \"tractor\"",
    ),
    (
        "loader.tractor.heapd = 22 ft3",
        "sound.toml: --change \"loader.tractor.heapd = 22 ft3\": this key is not known; the nearest known key is \"heaped\"",
    ),
    (
        "lodaer.tractor.heaped = 22 ft3",
        "sound.toml: --change \"lodaer.tractor.heaped = 22 ft3\": \"lodaer\" is not known; the nearest known key is \"loader\"",
    ),
    (
        "heaped = 22 ft3",
        "sound.toml: --change \"heaped = 22 ft3\": it is not said of what; write \"loader.tractor.heaped\"",
    ),
    (
        "loader.heaped = 22 ft3",
        "sound.toml: --change \"loader.heaped = 22 ft3\": it is not said of what; write \"loader.tractor.heaped\"",
    ),
    (
        "loader.tractor = 22 ft3",
        "sound.toml: --change \"loader.tractor = 22 ft3\": this is a whole table, not one of its keys; write a key of the file, such as \"loader.compact tractor.heaped = 22 ft3\", or one of rakers, loaders, bucket, haul and room",
    ),
    (
        "loader.tractor.heaped = 22 lb",
        "sound.toml: --change \"loader.tractor.heaped = 22 lb\": this is a mass; a volume is wanted, such as \"14 ft3\" or \"0.4 m3\"",
    ),
    (
        "loader.tractor.heaped = 22",
        "sound.toml: --change \"loader.tractor.heaped = 22\": the unit is missing; a volume is wanted, such as \"14 ft3\" or \"0.4 m3\"",
    ),
    (
        "loader.tractor.heaped = -22 ft3",
        "sound.toml: --change \"loader.tractor.heaped = -22 ft3\": this is less than nothing; it may be from 1 l to 50 m3, such as \"14 ft3\" or \"0.4 m3\"",
    ),
    (
        "loader.tractor.heaped = 22 bucketfuls",
        "sound.toml: --change \"loader.tractor.heaped = 22 bucketfuls\": the unit \"bucketfuls\" is not known; a volume is wanted, such as \"14 ft3\" or \"0.4 m3\"",
    ),
    (
        "loader.tractor.bucket_mass = 8 ft3",
        "sound.toml: --change \"loader.tractor.bucket_mass = 8 ft3\": this is a volume; a mass is wanted, such as \"180 lb\" or \"80 kg\"",
    ),
    (
        "loader.tractor.loading = { low = \"9 lb\", typical = \"12 s\", high = \"20 s\" }",
        "sound.toml: --change \"loader.tractor.loading = { low = \"9 lb\", typical = \"12 s\", high = \"20 s\" }\": loader \"tractor\".loading.low = \"9 lb\": this is a mass; a length of time is wanted, such as \"20 s\" or \"1.5 min\"",
    ),
    (
        "loader.tractor.loading = { low = \"9 s\"",
        "sound.toml: --change \"loader.tractor.loading = { low = \"9 s\"\": not valid TOML: unclosed inline table, expected `}`; texts stand in quotes inside brackets, as in [ \"12:00-12:30\" ]",
    ),
    (
        "shift.breaks = 12:00-12:30",
        "sound.toml: --change \"shift.breaks = 12:00-12:30\": this is a text, where a list of breaks is wanted; write breaks = [ \"12:00-12:30\" ]",
    ),
    (
        "shift.end = 07:00",
        "sound.toml: --change \"shift.end = 07:00\": the day ends before it begins, at 08:00; write a later time; work over midnight is not covered",
    ),
    (
        "raker.helper.count = two",
        "sound.toml: --change \"raker.helper.count = two\": this is a text, where a count is wanted; write a whole number from 0 to 64, without quotes",
    ),
    (
        "raker.helper.count = 0",
        "sound.toml: --change \"raker.helper.count = 0\": nobody is left to rake; write [[raker]] with a name, or spread_share = \"100 %\" under [crew] if the loader spreads it all",
    ),
    (
        "rakers = 0",
        "sound.toml: --change \"rakers = 0\": nobody is left to rake; write [[raker]] with a name, or spread_share = \"100 %\" under [crew] if the loader spreads it all",
    ),
    (
        "rakers = 2.5",
        "sound.toml: --change \"rakers = 2.5\": this is a number, where a count is wanted; write a whole number from 0 to 64, without quotes",
    ),
    (
        "rakers = 65",
        "sound.toml: --change \"rakers = 65\": this is absurdly many; write a whole number from 0 to 64, without quotes",
    ),
    (
        "rakers = \"2\"",
        "sound.toml: --change \"rakers = \"2\"\": this is a text, where a count is wanted; write a whole number from 0 to 64, without quotes",
    ),
    (
        "loaders = 0",
        "sound.toml: --change \"loaders = 0\": none at all is not a count; write a whole number from 1 to 64, without quotes",
    ),
    (
        "bucket = 22 ft",
        "sound.toml: --change \"bucket = 22 ft\": this is a length (a \"yard\" of material is a cubic yard, written yd3); a volume is wanted, such as \"14 ft3\" or \"0.4 m3\"",
    ),
    (
        "bucket = 900 m3",
        "sound.toml: --change \"bucket = 900 m3\": this is absurdly large; it may be from 1 l to 50 m3, such as \"14 ft3\" or \"0.4 m3\"",
    ),
    (
        "haul = 20 yd3",
        "sound.toml: --change \"haul = 20 yd3\": this is a volume; a length is wanted, such as \"25 yd\" or \"23 m\"",
    ),
    (
        "haul = -1 m",
        "sound.toml: --change \"haul = -1 m\": this is less than nothing; it may be from 0 m to 20 km, such as \"25 yd\" or \"23 m\"",
    ),
    (
        "room = 0",
        "sound.toml: --change \"room = 0\": none at all is not a count; write a whole number from 1 to 1000, without quotes",
    ),
    ("raters = 2", "sound.toml: --change \"raters = 2\": \"raters\" is not known; the nearest is \"rakers\""),
    (
        "alternative.other.name = x",
        "sound.toml: --change \"alternative.other.name = x\": alternatives cannot be changed; an alternative changes the job, not another alternative",
    ),
    (
        "zone..room = 2",
        "sound.toml: --change \"zone..room = 2\": this is not a path of keys; write a key of the file, such as \"loader.compact tractor.heaped = 22 ft3\", or one of rakers, loaders, bucket, haul and room",
    ),
    (
        "zone.north.volume.low = 3 m3",
        "sound.toml: --change \"zone.north.volume.low = 3 m3\": \"volume\" has no keys of its own; change the whole of \"volume\" instead",
    ),
    (
        "zone.south.room = 2",
        "sound.toml: --change \"zone.south.room = 2\": there is no zone called \"south\"; there are \"north\"",
    ),
    (
        "material.name = wood chip",
        "sound.toml: --change \"material.name = wood chip\": this can be one of several materials, which differ; write one of \"wood chips, green\" (474 lb/yd3, settles 25 %), \"wood chips, dry\" (270 lb/yd3, settles 25 %), \"wood chips and bark with soil\" (801 lb/yd3, settles 25 %), or give density and fill_factor yourself",
    ),
    (
        "spread.days.dya = 3 %",
        "sound.toml: --change \"spread.days.dya = 3 %\": this key is not known; the nearest known key is \"day\"",
    ),
    (
        "stockpile.pile.carriage = 40",
        "sound.toml: --change \"stockpile.pile.carriage = 40\": the currency is missing; a sum of money is wanted, such as \"$380\" or \"380 EUR\"",
    ),
    (
        "money.mobilisation = $45/h",
        "sound.toml: --change \"money.mobilisation = $45/h\": this is a cost per time; a sum of money is wanted, such as \"$380\" or \"380 EUR\"",
    ),
    (
        "zone.north.room = 2; stockpile.pile.on_hand = 0 yd3",
        "sound.toml: --change \"zone.north.room = 2\", --change \"stockpile.pile.on_hand = 0 yd3\": stockpile \"pile\": there is nothing to move; give on_hand = \"20 yd3\", or deliveries",
    ),
    (
        "loader.tractor.heaped = 22 lb; rakers = 0",
        "sound.toml: --change \"loader.tractor.heaped = 22 lb\": this is a mass; a volume is wanted, such as \"14 ft3\" or \"0.4 m3\"",
    ),
];

/// What is typed after `--vary` and read as a sweep, and what is said of the values that the job refuses.
const SWEEPS: &[(&str, &str)] = &[
    (
        "rakers 0..3",
        "sound.toml: rakers = 0: nobody is left to rake; write [[raker]] with a name, or spread_share = \"100 %\" under [crew] if the loader spreads it all",
    ),
    (
        "room 0..2",
        "sound.toml: room = 0: none at all is not a count; write a whole number from 1 to 1000, without quotes",
    ),
    (
        "loaders 0..1",
        "sound.toml: loaders = 0: none at all is not a count; write a whole number from 1 to 64, without quotes",
    ),
    (
        "rakers 64..66",
        "sound.toml: rakers = 65: this is absurdly many; write a whole number from 0 to 64, without quotes\nsound.toml: rakers = 66: this is absurdly many; write a whole number from 0 to 64, without quotes",
    ),
    (
        "bucket 0..10 ft3 by 5",
        "sound.toml: bucket = 0 ft3: this may not be zero; it may be from 1 l to 50 m3, such as \"14 ft3\" or \"0.4 m3\"",
    ),
    (
        "haul 0..40 km by 20",
        "sound.toml: haul = 40 km: this is absurdly large; it may be from 0 m to 20 km, such as \"25 yd\" or \"23 m\"",
    ),
    (
        "loader.tractor.loading = 1..2 ft by 1",
        "sound.toml: loader.tractor.loading = 1 ft: this is a length (m is for metres, minutes are written min); a length of time is wanted, such as \"20 s\" or \"1.5 min\"\nsound.toml: loader.tractor.loading = 2 ft: this is a length (m is for metres, minutes are written min); a length of time is wanted, such as \"20 s\" or \"1.5 min\"",
    ),
    (
        "loader.tractr.heaped = 8..10 ft3 by 2",
        "sound.toml: loader.tractr.heaped = 8 ft3: there is no loader called \"tractr\"; the nearest is \"tractor\"\nsound.toml: loader.tractr.heaped = 10 ft3: there is no loader called \"tractr\"; the nearest is \"tractor\"",
    ),
    (
        "raker.helper.count = 0..1",
        "sound.toml: raker.helper.count = 0: nobody is left to rake; write [[raker]] with a name, or spread_share = \"100 %\" under [crew] if the loader spreads it all",
    ),
];

/// What is typed after `--vary` and is no sweep.
const NO_SWEEPS: &[(&str, &str)] = &[
    (
        "",
        "it is not said what is to vary; write a range or a list, such as \"rakers 1..4\", \"bucket 10..22 ft3 by 2\", \"haul 20, 40, 60 yd\" or \"loader.compact tractor.heaped = 10..22 ft3 by 2\"",
    ),
    (
        "rakers",
        "no values are named; write a range or a list, such as \"rakers 1..4\", \"bucket 10..22 ft3 by 2\", \"haul 20, 40, 60 yd\" or \"loader.compact tractor.heaped = 10..22 ft3 by 2\"",
    ),
    ("rakers 4..1", "the range from 4 to 1 does not rise; the smaller value comes first"),
    ("rakers 1..4.5", "\"4.5\" is not a count; write \"rakers 1..4\""),
    ("rakers 1-4", "\"1-4\" is not a number with its unit; a range is written with two dots, as in \"1..4\""),
    (
        "rakrs 1..4",
        "\"rakrs\" is not known here; the nearest is \"rakers\"; write a range or a list, such as \"rakers 1..4\", \"bucket 10..22 ft3 by 2\", \"haul 20, 40, 60 yd\" or \"loader.compact tractor.heaped = 10..22 ft3 by 2\"",
    ),
    (
        "loader.tractor.heaped 9..12 ft3",
        "\"loader.tractor.heaped\" is not known here; write a range or a list, such as \"rakers 1..4\", \"bucket 10..22 ft3 by 2\", \"haul 20, 40, 60 yd\" or \"loader.compact tractor.heaped = 10..22 ft3 by 2\"",
    ),
    (
        "bucket 8..20",
        "\"8\": this is a share or plain number; a volume is wanted, such as \"bucket 8..20 ft3\"",
    ),
    ("bucket 8..20 ft", "\"8 ft\": this is a length; a volume is wanted, such as \"bucket 8..20 ft3\""),
    ("haul 8..20 ft3", "\"8 ft3\": this is a volume; a length is wanted, such as \"haul 10..80 yd\""),
    ("bucket 8 ft3..0.6 m3", "\"ft3\" and \"m3\" are both named; give all values in one unit"),
    ("bucket 8, 8 ft3", "8 ft3 stands there twice"),
    (
        "bucket 8..20 ft3 by 0.1",
        "this range has 121 values; at most 40 are taken: name a larger step, as in \"haul 10..80 m by 10\"",
    ),
    ("bucket 8..20 ft3 by 0", "a step of 0 ft3 leads nowhere; name one above 0"),
    ("bucket 8..20 furlongs", "\"8 furlongs\": the unit \"furlongs\" is not known"),
    (
        "fill_order = as listed, in turn",
        "\"as listed\" is not a number with its unit; hold words against each other with compare, each as a change of its own",
    ),
];

/// What is typed after `--change` and is no change.
const NO_CHANGES: &[(&str, &str)] = &[
    (
        "rakers 2",
        "there is no \"=\" in \"rakers 2\"; write KEY = VALUE, such as \"rakers = 2\" or \"loader.compact tractor.heaped = 22 ft3\"",
    ),
    (
        "= 2",
        "no key stands before the \"=\"; write KEY = VALUE, such as \"rakers = 2\" or \"loader.compact tractor.heaped = 22 ft3\"",
    ),
    (
        "rakers =",
        "no value stands after the \"=\"; write KEY = VALUE, such as \"rakers = 2\" or \"loader.compact tractor.heaped = 22 ft3\"",
    ),
    (": rakers = 2", "no name stands before the \":\"; write NAME: KEY = VALUE, or leave the \":\" out"),
    ("two:", "nothing is changed; write KEY = VALUE, several with \";\" between them"),
];

#[test]
fn each_bad_change_gets_its_exact_message() {
    for (typed, expected) in CHANGES {
        let variant: Variant = typed.parse().unwrap_or_else(|said| panic!("{typed}: {said}"));
        let selection = Selection { changes: variant.changes, ..Selection::default() };
        match file().scenario(&selection) {
            Ok(scenario) => panic!("{typed}: accepted as \"{}\"", scenario.name()),
            Err(refusal) => assert_eq!(refusal.to_string(), *expected, "{typed}"),
        }
    }
}

#[test]
fn each_bad_sweep_names_the_values_refused() {
    for (typed, expected) in SWEEPS {
        let vary: Vary = typed.parse().unwrap_or_else(|said| panic!("{typed}: {said}"));
        match grid(&[vary], &file(), &Selection::default()) {
            Ok(all) => panic!("{typed}: accepted with {} values", all.len()),
            Err(refusal) => assert_eq!(refusal.to_string(), *expected, "{typed}"),
        }
    }
}

#[test]
fn what_is_no_change_or_sweep_is_told_before_a_file_is_read() {
    for (typed, expected) in NO_SWEEPS {
        assert_eq!(typed.parse::<Vary>().expect_err(typed), *expected, "{typed}");
    }
    for (typed, expected) in NO_CHANGES {
        assert_eq!(typed.parse::<Variant>().expect_err(typed), *expected, "{typed}");
    }
}
