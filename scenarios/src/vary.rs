//! One thing swept over a range of values.

mod value;

pub use value::Value;

use crate::change::{Change, outside_quotes};
use crate::knob::Knob;
use crate::nearest::nearest;
use crate::problem::Refusal;
use crate::reading::{Asked, JobFile};
use crate::scenario::{Scenario, Selection};
use crate::signs::first_hidden;
use std::fmt;
use std::str::FromStr;
pub(crate) use value::Written;
use value::not_a_count;

/// Most values of one thing.
const MOST: usize = 40;
/// Steps of a range for which none is named.
const STEPS: usize = 5;

/// One thing and the values it is to take, rising, 1 to 40 of them.
///
/// Typed as `rakers 1..4`, `loaders 1..3`, `bucket 0.2..0.6 m3 by 0.1`, `haul 10..80 m by 10`, `room 1..6`,
/// `bucket 8.5, 13, 14 ft3`, or a key of the file: `loader.compact tractor.heaped = 10..22 ft3 by 2`. Without `by` a count
/// steps by one and anything else in five equal steps.
///
/// ```
/// use scenarios::{JobFile, Selection, Texts, Vary};
/// let (name, text) = scenarios::shipped()[6];
/// let file = JobFile::of_text(text, name, Texts::default()).unwrap();
/// let rakers: Vary = "rakers 1..3".parse().unwrap();
/// let scenarios = rakers.scenarios(&file, &Selection::default()).unwrap();
/// assert_eq!(scenarios.iter().map(|s| s.job.rakers.len()).collect::<Vec<_>>(), [1, 2, 3]);
/// assert_eq!(scenarios[1].name(), "rakers = 2");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Vary {
    /// What is turned.
    pub knob: Knob,
    /// The values it takes, rising.
    pub values: Vec<Value>,
}

impl Vary {
    /// The change that turns it to a value: as if typed with `--change`.
    pub fn change(&self, value: &Value) -> Change {
        Change { key: self.knob.to_string(), value: value.to_string() }
    }

    /// The job of a file, changed as selected, at each value: exactly what the selection gives with
    /// [`Vary::change`] added to its changes.
    ///
    /// # Errors
    /// Every value that the job does not accept, each a problem that begins with `rakers = 0`.
    pub fn scenarios(&self, file: &JobFile, selection: &Selection) -> Result<Vec<Scenario>, Refusal> {
        grid(std::slice::from_ref(self), file, selection)
    }
}

/// The job of a file, changed as selected, at each combination of the values of several things: the last one changes
/// fastest. Of one thing that is [`Vary::scenarios`], of none the job as selected.
///
/// # Errors
/// Every combination that the job does not accept; of each thing alone first.
pub fn grid(varies: &[Vary], file: &JobFile, selection: &Selection) -> Result<Vec<Scenario>, Refusal> {
    if varies.len() > 1 {
        refused(varies.iter().flat_map(|vary| alone(vary, file, selection)))?;
    }
    let mut points: Vec<Vec<Change>> = vec![Vec::new()];
    for vary in varies {
        let with = |point: &Vec<Change>| {
            let point = point.clone();
            vary.values.iter().map(move |value| [point.clone(), vec![vary.change(value)]].concat())
        };
        points = points.iter().flat_map(with).collect();
    }
    refused(points.iter().map(|point| at(point, file, selection)))
}

fn alone<'v>(
    vary: &'v Vary,
    file: &'v JobFile,
    selection: &'v Selection,
) -> impl Iterator<Item = Result<Scenario, Refusal>> + 'v {
    vary.values.iter().map(move |value| at(&[vary.change(value)], file, selection))
}

fn at(point: &[Change], file: &JobFile, selection: &Selection) -> Result<Scenario, Refusal> {
    let own = selection.changes.iter().map(Asked::by_change);
    let asked: Vec<Asked> = own.chain(point.iter().map(Asked::by_value)).collect();
    file.changed(selection, &asked)
}

/// All scenarios, or all problems of those refused.
fn refused(all: impl Iterator<Item = Result<Scenario, Refusal>>) -> Result<Vec<Scenario>, Refusal> {
    let (mut scenarios, mut refusal): (Vec<Scenario>, Option<Refusal>) = (Vec::new(), None);
    for one in all {
        match (one, &mut refusal) {
            (Ok(scenario), _) => scenarios.push(scenario),
            (Err(other), None) => refusal = Some(other),
            (Err(other), Some(refusal)) => refusal.problems.extend(other.problems),
        }
        if refusal.as_ref().is_some_and(|refusal| refusal.problems.len() >= crate::diagnostics::MOST_PROBLEMS)
        {
            break;
        }
    }
    match refusal {
        None => Ok(scenarios),
        Some(mut refusal) => {
            refusal.problems.dedup();
            Err(refusal)
        }
    }
}

impl fmt::Display for Vary {
    /// The knob and its values, as typed one by one: `rakers 1, 2, 3`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let equals = if matches!(self.knob, Knob::Key(_)) { " =" } else { "" };
        write!(f, "{}{equals}", self.knob)?;
        for (i, value) in self.values.iter().enumerate() {
            write!(f, "{} {value}", if i > 0 { "," } else { "" })?;
        }
        Ok(())
    }
}

const SUCH: &str = "write a range or a list, such as \"rakers 1..4\", \"bucket 10..22 ft3 by 2\", \"haul 20, 40, 60 yd\" or \
                    \"loader.compact tractor.heaped = 10..22 ft3 by 2\"";

impl FromStr for Vary {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        if text.len() > 1000 {
            return Err(format!("this is too long; {SUCH}"));
        }
        if let Some(sign) = first_hidden(text.trim()) {
            return Err(format!("this has a sign in it that cannot be seen ({sign}); {SUCH}"));
        }
        let (knob, rest) = match outside_quotes(text, '=').next() {
            Some(at) => (text[..at].trim(), &text[at + 1..]),
            None => text.trim().split_once(char::is_whitespace).unwrap_or((text.trim(), "")),
        };
        let knob = match Knob::of(knob) {
            Knob::Key(key) if key.is_empty() => {
                return Err(format!("it is not said what is to vary; {SUCH}"));
            }
            Knob::Key(key) if !text.contains('=') => {
                let near = nearest(&key, Knob::WORDS).map(|near| format!("; the nearest is \"{near}\""));
                let near = near.unwrap_or_default();
                return Err(format!("\"{key}\" is not known here{near}; {SUCH}"));
            }
            knob => knob,
        };
        let written = written(rest.trim(), &knob)?;
        let values: Vec<Value> =
            written.into_iter().map(|one| Value::new(&knob, one)).collect::<Result<_, _>>()?;
        Ok(Self { knob, values })
    }
}

/// The values of a range or a list, rising.
fn written(text: &str, knob: &Knob) -> Result<Vec<Written>, String> {
    if text.is_empty() {
        return Err(format!("no values are named; {SUCH}"));
    }
    let ends = text.split_once("..").or_else(|| text.split_once(" to "));
    match ends {
        Some((first, rest)) => range(first, rest, knob),
        None => list(text),
    }
}

fn list(text: &str) -> Result<Vec<Written>, String> {
    let mut all = text.split(',').map(Written::parse).collect::<Result<Vec<_>, _>>()?;
    agree(&mut all)?;
    all.sort_by(|a, b| a.number.total_cmp(&b.number));
    if let Some(pair) = all.windows(2).find(|pair| pair[0].number == pair[1].number) {
        return Err(format!("{} stands there twice", pair[0]));
    }
    if all.len() > MOST {
        return Err(format!("these are {} values; at most {MOST} are taken", all.len()));
    }
    Ok(all)
}

fn range(first: &str, rest: &str, knob: &Knob) -> Result<Vec<Written>, String> {
    let (last, by) = match rest.split_once(" by ") {
        Some((last, by)) => (last, Some(by)),
        None => (rest, None),
    };
    let mut all = vec![Written::parse(first)?, Written::parse(last)?];
    all.extend(by.map(Written::parse).transpose()?);
    agree(&mut all)?;
    if let (true, Some(other)) = (knob.is_count(), all.iter().find(|one| !one.is_count())) {
        return Err(not_a_count(knob, other));
    }
    let (low, high) = (all[0].number, all[1].number);
    if low >= high {
        return Err(format!(
            "the range from {} to {} does not rise; the smaller value comes first",
            all[0], all[1]
        ));
    }
    let count = all[0].is_count() && all[1].is_count();
    let step = match all.get(2) {
        Some(step) if step.number > 0.0 => step.number,
        Some(step) => return Err(format!("a step of {step} leads nowhere; name one above 0")),
        None if count => 1.0,
        None => (high - low) / STEPS as f64,
    };
    // A hair more, so that the end of 0.2..0.6 by 0.1 is met.
    let steps = ((high - low) / step + 1e-9).floor();
    if steps + 1.0 > MOST as f64 {
        let right = "name a larger step, as in \"haul 10..80 m by 10\"";
        return Err(format!("this range has {} values; at most {MOST} are taken: {right}", steps + 1.0));
    }
    let like = all.swap_remove(0);
    Ok((0..=steps as usize).map(|i| like.with(low + i as f64 * step)).collect())
}

/// All values take the one unit and currency that are named.
fn agree(all: &mut [Written]) -> Result<(), String> {
    let named = |word: fn(&Written) -> &str| {
        let mut words = all.iter().map(word).filter(|word| !word.is_empty()).collect::<Vec<_>>();
        words.dedup();
        match words.as_slice() {
            [] => Ok(String::new()),
            [one] => Ok((*one).to_owned()),
            [one, other, ..] => {
                Err(format!("\"{one}\" and \"{other}\" are both named; give all values in one unit"))
            }
        }
    };
    let (before, after) = (named(|one| &one.before)?, named(|one| &one.after)?);
    for one in all {
        (one.before, one.after) = (before.clone(), after.clone());
    }
    Ok(())
}

#[cfg(test)]
mod tests;
