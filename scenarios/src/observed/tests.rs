use crate::testing::{SOUND, accepted, changed};
use crate::{Refusal, Scenario, Selection, Texts, read_text};

/// One CSV file beside the job.
struct Beside(Texts);

impl Beside {
    fn with(bytes: &[u8]) -> Self {
        Self([("times.csv", bytes)].into_iter().collect())
    }

    fn read(&self, law: &str) -> Result<Scenario, Refusal> {
        let heaped = "heaped = \"14 ft3\"";
        let text = changed(&[(heaped, &format!("{heaped}\nloading = {{ family = \"observed\", {law} }}"))]);
        read_text(&text, "job.toml", self.0.clone(), &Selection::default())
    }

    #[track_caller]
    fn refused(&self, law: &str, words: &[&str]) {
        let said = self.read(law).unwrap_err().to_string();
        for word in words {
            assert!(said.contains(word), "\"{word}\" is not in: {said}");
        }
    }
}

const NAMED: &str = "file = \"times.csv\", column = \"loading\"";

#[test]
fn values_come_from_the_named_column_with_the_named_unit_or_their_own() {
    let beside = Beside::with(b"load, loading ,by\n1, 0.5, x\n2,,y\n3, 24 s ,z\n");
    let scenario = beside.read(&format!("{NAMED}, unit = \"min\"")).unwrap();
    assert_eq!(scenario.job.loaders[0].load_s, 27.0);
    assert_eq!(scenario.job.chance.loads.loading.quantile(1.0), 30.0 / 27.0);
}

#[test]
fn times_measured_in_a_unit_tell_how_loads_differ_whatever_their_mean() {
    for values in ["30, 40, 50", "3e-7, 4e-7, 5e-7"] {
        let spread = format!(
            "{SOUND}[spread.loads]\nhaul = {{ family = \"observed\", unit = \"s\", values = [ {values} ] }}"
        );
        let law = accepted(&spread).job.chance.loads.haul;
        assert!((law.mean() - 1.0).abs() < 1e-12 && (law.quantile(1.0) - 1.25).abs() < 1e-12, "{law:?}");
    }
}

#[test]
fn the_fingerprint_of_a_scenario_covers_its_observed_values() {
    let read = |bytes: &[u8]| Beside::with(bytes).read(&format!("{NAMED}, unit = \"s\"")).unwrap().hash;
    assert_eq!(read(b"loading\n20\n30\n"), read(b"loading\n20\n30\n"));
    assert_ne!(read(b"loading\n20\n30\n"), read(b"loading\n20\n31\n"));
}

#[test]
fn files_that_hold_no_values_are_refused_with_file_and_line() {
    let beside = Beside::with(b"loading,x\n20 s,1\n-3 s,1\n");
    beside.refused(NAMED, &["times.csv, line 3", "less than nothing", "column = \"loading\""]);
    beside.refused("file = \"time.csv\", column = \"loading\"", &["there is no such file"]);
    beside.refused("file = \"times.csv\", column = \"loadin\"", &["no such column", "\"loading\""]);
    beside.refused("file = \"times.csv\"", &["\"column\" is missing"]);
    beside.refused("file = \".\", column = \"loading\"", &["this is a folder"]);
    beside.refused(&format!("{NAMED}, unit = \"yd\""), &["the unit of a length"]);
    beside.refused(&format!("{NAMED}, unit = \"sek\""), &["not known", "\"sec\""]);
    beside.refused(&format!("{NAMED}, values = [ \"3 s\" ]"), &["both given"]);
    beside.refused("values = []", &["0 values"]);
    beside.refused("values = 3", &["not a list"]);
    beside.refused("unit = \"s\"", &["no observed values"]);
    beside.refused("values = [ \"3 s\", \"4 m\" ]", &["values = \"4 m\"", "a length"]);
}

#[test]
fn files_that_are_no_csv_are_refused() {
    for (bytes, words) in [
        (&b"loading,x\n20 s\n"[..], "line 2 has 1 columns where the heading has 2"),
        (b"loading\n20 s\n\xff\xfe\n", "line 3 is not UTF-8"),
        (b"", "no such column"),
        (b"loading\n20\n", "the unit is missing"),
        (b"loading\nlong\n", "this column is no list of figures"),
        (b"loading\n1e9 s\n", "absurdly large"),
        (b"loading\n\n\n", "0 values"),
    ] {
        Beside::with(bytes).refused(NAMED, &[words]);
    }
}
