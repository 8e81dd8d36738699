//! A scenario file changed as a person would spoil it: lines exchanged, doubled, moved or left out, values put under other
//! keys, figures and units replaced by extreme ones. Bytes alone seldom get past the notation.

use std::ops::Range;

/// Values that are extreme, odd, or of another kind.
const VALUES: &[&str] = &[
    "0",
    "1",
    "-1",
    "2",
    "200",
    "1000",
    "0.5",
    "1e308",
    "1e-308",
    "5e-324",
    "-0.0",
    "nan",
    "inf",
    "true",
    "false",
    "[]",
    "{}",
    "[[]]",
    "\"\"",
    "\" \"",
    "\"none\"",
    "\"no limit\"",
    "\"usual\"",
    "9223372036854775807",
    "2026-04-18",
    "2026-04-18T10:00:00Z",
    "10:30:00",
    "\"24:00\"",
    "\"00:00\"",
    "\"day 2 09:00\"",
    "\"12:00 am\"",
    "\"100 %\"",
    "\"0 %\"",
    "\"0.0001 %\"",
    "\"pile cleared\"",
    "\"area covered\"",
    "\"in turn\"",
    "\"most room left\"",
    "\"nearest first\"",
    "\"farthest first\"",
    "\"0 s\"",
    "\"2 h\"",
    "\"10 s\"",
    "\"1e-12 s\"",
    "\"0 m\"",
    "\"20 km\"",
    "\"0 m3\"",
    "\"100000 m3\"",
    "\"1 l\"",
    "\"10 l\"",
    "\"0.01 m/s\"",
    "\"30 m/s\"",
    "\"0.01 m3/h\"",
    "\"1000 m3/h\"",
    "\"5 kg/m3\"",
    "\"10000 kg/m3\"",
    "\"1 kg\"",
    "\"0/h\"",
    "\"$1e5/h\"",
    "\"€ 3.50\"",
    "\"5 zł/l\"",
    "\"12 tons\"",
    "\"60 m x 3 m\"",
    "\"1,400 ft2\"",
    "\"2 1/2 in\"",
    "\"gravel\"",
    "\"us\"",
    "\"metric\"",
    "'''a\nb'''",
    "\"\\u001b[1m\"",
    "\"\\u202e\"",
    "\"é\u{301}\"",
    "{ low = \"0 s\", typical = \"1 s\", high = \"9 s\" }",
    "{ low = 0.5, typical = 1, high = 100 }",
    "{ family = \"exponential\", mean = \"60 s\" }",
    "{ family = \"gamma\", mean = 1, cv = 2 }",
    "{ family = \"weibull\", mean = 1, shape = 0.2 }",
    "{ family = \"normal\", mean = 1, sd = 0.3 }",
    "{ family = \"uniform\", least = 0, greatest = 2 }",
    "{ family = \"pert\", least = 0, mode = 0, greatest = 5 }",
    "{ family = \"triangular\", least = \"0 s\", mode = \"5 s\", greatest = \"5 s\" }",
    "{ family = \"lognormal\", mean = \"20 s\", cv = \"50 %\", by = \"days\" }",
    "{ family = \"observed\", values = [ 0, 0, 3 ] }",
    "{ family = \"observed\", values = [ 0, 7 ], unit = \"s\" }",
    "{ family = \"observed\", file = \"vineyard-loads.csv\", column = \"loading\", unit = \"s\" }",
];

const FIGURES: &[&str] = &[
    "0", "-1", "1", "2", "3", "1e308", "1e-308", "1e9", "0.001", "1e-10", "99", "100", "1e400", "00", "1_0",
    "1,5", ".5",
];

const UNITS: &[&str] = &[
    "yd3", "ft3", "m3", "l", "gal", "yd", "ft", "in", "m", "mi", "km", "mm", "ft2", "ha", "acre", "mph",
    "km/h", "m/s", "s", "min", "h", "lb", "t", "kg", "%", "lb/yd3", "kg/m3", "m3/h", "l/h", "s/m3", "$/h",
    "EUR", "%/h", "yd³", "",
];

/// Numbers by a fixed rule (SplitMix64 of Steele, Lea & Flood, OOPSLA 2014).
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    fn below(&mut self, n: usize) -> usize {
        (self.next() % n.max(1) as u64) as usize
    }

    fn one_of<'a>(&mut self, all: &[&'a str]) -> &'a str {
        all[self.below(all.len())]
    }
}

/// The text with one to four changes.
pub(crate) fn changed(text: &str, seed: u32) -> String {
    let n = &mut Numbers(u64::from(seed));
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    for _ in 0..1 + n.below(4) {
        if lines.is_empty() {
            lines.push(String::from("[material]"));
        }
        let at = n.below(lines.len());
        match n.below(11) {
            0 | 1 => set(&mut lines[at], n.one_of(VALUES)),
            2 | 3 => replace(&mut lines[at], char_is_of_a_figure, FIGURES, n),
            4 => replace(&mut lines[at], char::is_alphabetic, UNITS, n),
            5 => {
                let other = lines[n.below(lines.len())].clone();
                set(&mut lines[at], other.split_once('=').map_or("", |(_, value)| value.trim()));
            }
            6 => drop(lines.remove(at)),
            7 => {
                let line = lines.remove(at);
                lines.insert(n.below(lines.len() + 1), line);
            }
            8 => {
                let donors = scenarios::shipped();
                let donor: Vec<&str> = donors[n.below(donors.len())].1.lines().collect();
                lines.insert(at, donor[n.below(donor.len())].to_owned());
            }
            9 => {
                let block: Vec<String> = lines[block(&lines, at)].to_vec();
                lines.splice(at..at, block);
            }
            _ => drop(lines.drain(block(&lines, at))),
        }
    }
    lines.join("\n") + "\n"
}

fn char_is_of_a_figure(c: char) -> bool {
    c.is_ascii_digit() || c == '.'
}

/// Another value under the same key.
fn set(line: &mut String, value: &str) {
    if let Some((key, _)) = line.split_once('=') {
        *line = format!("{}= {value}", key);
    }
}

/// One of the runs of such characters replaced.
fn replace(line: &mut String, of: fn(char) -> bool, by: &[&str], n: &mut Numbers) {
    let begins = |(i, c): &(usize, char)| of(*c) && !line[..*i].ends_with(of);
    let starts: Vec<usize> = line.char_indices().filter(begins).map(|(i, _)| i).collect();
    if starts.is_empty() {
        return;
    }
    let start = starts[n.below(starts.len())];
    let length = line[start..].find(|c| !of(c)).unwrap_or(line.len() - start);
    line.replace_range(start..start + length, n.one_of(by));
}

/// The lines from one heading to the next.
fn block(lines: &[String], at: usize) -> Range<usize> {
    let heading = |line: &String| line.starts_with('[');
    let start = lines[..=at].iter().rposition(heading).unwrap_or(at);
    let end = lines[start + 1..].iter().position(heading).map_or(lines.len(), |i| start + 1 + i);
    start..end
}
