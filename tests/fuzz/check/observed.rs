//! A file of observed values is read into every kind of quantity that takes them.

use super::{quoted, reading};

/// Name of the file.
const CSV: &str = "observed.csv";

/// Where observed values are taken: the line of the file below that they go into.
const TAKEN: [(&str, &str); 5] = [
    ("heaped = \"14 ft3\"", "loading"),
    ("name = \"helper\"", "rate"),
    ("[spread.loads]", "haul"),
    ("[shift]", "set_up"),
    ("on_hand = \"2 yd3\"", "deliveries"),
];

const JOB: &str = r#"[material]
name = "wood chips, green"
[[zone]]
name = "north"
volume = "10 yd3"
distance = "20 yd"
[[stockpile]]
name = "pile"
on_hand = "2 yd3"
[[loader]]
name = "tractor"
heaped = "14 ft3"
[[raker]]
name = "helper"
[shift]
[spread.loads]
fill = "none"
"#;

/// The first byte says where the values go, the rest of its line the column; the second line is the unit, if there is any;
/// the rest is the file.
pub(crate) fn check(bytes: &[u8]) {
    let Some((place, rest)) = bytes.split_first() else { return };
    let mut lines = rest.splitn(3, |b| *b == b'\n');
    let [column, unit, csv] = [(); 3].map(|()| lines.next().unwrap_or_default());
    let [column, unit] = [column, unit].map(|line| quoted(&String::from_utf8_lossy(line)));
    let unit = if unit == "\"\"" { String::new() } else { format!(", unit = {unit}") };
    let files = [(CSV, csv)].into_iter().collect();
    let (line, key) = TAKEN[usize::from(*place) % TAKEN.len()];
    let law = format!("{{ family = \"observed\", file = \"{CSV}\", column = {column}{unit} }}");
    let entry = match key {
        "deliveries" => format!("deliveries = [ {{ at = \"9:00\", volume = \"9 yd3\", late = {law} }} ]"),
        key => format!("{key} = {law}"),
    };
    reading::check(&JOB.replace(line, &format!("{line}\n{entry}")), &files);
}
