use crate::testing::{SOUND, accepted, changed};
use crate::{Refusal, Scenario, Selection, read_text};
use std::path::PathBuf;

/// A folder of its own for one test, with one CSV file in it.
struct Folder(PathBuf);

impl Folder {
    fn with(test: &str, bytes: &[u8]) -> Self {
        let path = std::env::temp_dir().join(format!("heapcast-observed-{test}-{}", std::process::id()));
        std::fs::create_dir_all(&path).unwrap();
        std::fs::write(path.join("times.csv"), bytes).unwrap();
        Self(path)
    }

    fn read(&self, law: &str) -> Result<Scenario, Refusal> {
        let heaped = "heaped = \"14 ft3\"";
        let text = changed(&[(heaped, &format!("{heaped}\nloading = {{ family = \"observed\", {law} }}"))]);
        read_text(&text, "job.toml", &self.0, &Selection::default())
    }

    #[track_caller]
    fn refused(&self, law: &str, words: &[&str]) {
        let said = self.read(law).unwrap_err().to_string();
        for word in words {
            assert!(said.contains(word), "\"{word}\" is not in: {said}");
        }
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

const NAMED: &str = "file = \"times.csv\", column = \"loading\"";

#[test]
fn values_come_from_the_named_column_with_the_named_unit_or_their_own() {
    let folder = Folder::with("values", b"load, loading ,by\n1, 0.5, x\n2,,y\n3, 24 s ,z\n");
    let scenario = folder.read(&format!("{NAMED}, unit = \"min\"")).unwrap();
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
    let read =
        |test, bytes: &[u8]| Folder::with(test, bytes).read(&format!("{NAMED}, unit = \"s\"")).unwrap().hash;
    assert_eq!(read("same", b"loading\n20\n30\n"), read("again", b"loading\n20\n30\n"));
    assert_ne!(read("one", b"loading\n20\n30\n"), read("other", b"loading\n20\n31\n"));
}

#[test]
fn files_that_hold_no_values_are_refused_with_file_and_line() {
    let folder = Folder::with("faults", b"loading,x\n20 s,1\n-3 s,1\n");
    folder.refused(NAMED, &["times.csv, line 3", "less than nothing", "column = \"loading\""]);
    folder.refused("file = \"time.csv\", column = \"loading\"", &["there is no such file"]);
    folder.refused("file = \"times.csv\", column = \"loadin\"", &["no such column", "\"loading\""]);
    folder.refused("file = \"times.csv\"", &["\"column\" is missing"]);
    folder.refused("file = \".\", column = \"loading\"", &["this is a folder"]);
    folder.refused(&format!("{NAMED}, unit = \"yd\""), &["the unit of a length"]);
    folder.refused(&format!("{NAMED}, unit = \"sek\""), &["not known", "\"sec\""]);
    folder.refused(&format!("{NAMED}, values = [ \"3 s\" ]"), &["both given"]);
    folder.refused("values = []", &["0 values"]);
    folder.refused("values = 3", &["not a list"]);
    folder.refused("unit = \"s\"", &["no observed values"]);
    folder.refused("values = [ \"3 s\", \"4 m\" ]", &["values = \"4 m\"", "a length"]);
}

#[test]
fn files_that_are_no_csv_are_refused() {
    for (test, bytes, words) in [
        ("ragged", &b"loading,x\n20 s\n"[..], "line 2 has 1 columns where the heading has 2"),
        ("latin", b"loading\n20 s\n\xff\xfe\n", "line 3 is not UTF-8"),
        ("empty", b"", "no such column"),
        ("bare", b"loading\n20\n", "the unit is missing"),
        ("words", b"loading\nlong\n", "this column is no list of figures"),
        ("huge", b"loading\n1e9 s\n", "absurdly large"),
        ("blank", b"loading\n\n\n", "0 values"),
    ] {
        Folder::with(test, bytes).refused(NAMED, &[words]);
    }
}
