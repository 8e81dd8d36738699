//! The trade's words, each for several keys of a file.

use super::draft::{Draft, Step};
use super::fault::Fault;
use super::key::names;
use super::set;
use crate::document::Value;
use crate::document::quoted;
use crate::knob::{Knob, mean_haul, shared_out};
use crate::parse::figure;
use crate::raw::piece;
use crate::reading::JobFile;
use crate::scenario::Selection;
use crate::units::kind::Kind;
use crate::units::{System, way};
use sim::{MOST_LOADERS, MOST_RAKERS};

/// Sets the value of a key, or of all that a word stands for.
pub(super) fn set(draft: &mut Draft, key: &str, value: &str) -> Result<(), Fault> {
    match Knob::of(key) {
        Knob::Key(_) => set::one(draft, key, value),
        knob => turn(draft, &knob, value),
    }
}

/// Turns a knob.
pub(super) fn turn(draft: &mut Draft, knob: &Knob, value: &str) -> Result<(), Fault> {
    match knob {
        Knob::Rakers => rakers(draft, count(value, 0, MOST_RAKERS)?),
        Knob::Loaders => counts(draft, "loader", count(value, 1, MOST_LOADERS)?),
        Knob::Bucket => each(draft, "loader", "heaped", value),
        Knob::Room => each(draft, "zone", "room", value),
        Knob::Haul => haul(draft, value),
        Knob::Key(_) => Ok(()),
    }
}

fn count(value: &str, least: u32, most: usize) -> Result<u32, Fault> {
    let count = value.parse().ok().filter(|count| (least..=most as u32).contains(count));
    count.ok_or_else(|| {
        Fault::new("this is not a count", format!("write a whole number from {least} to {most}"))
    })
}

fn each(draft: &mut Draft, kind: &str, key: &str, value: &str) -> Result<(), Fault> {
    let names = names(draft.table(), kind);
    names.into_iter().try_for_each(|name| set::one(draft, &format!("{kind}.{}.{key}", piece(&name)), value))
}

/// How many there are of each of a kind.
pub(super) fn all_counts(draft: &Draft, kind: &str) -> Vec<u32> {
    let Some(Value::List(list)) = draft.table().get(kind).map(|node| &node.value) else { return Vec::new() };
    let count = |node: &crate::document::Node| match &node.value {
        Value::Table(thing) => match thing.get("count").map(|node| &node.value) {
            Some(Value::Whole(count)) => u32::try_from(*count).unwrap_or(0),
            _ => 1,
        },
        _ => 1,
    };
    list.iter().map(count).collect()
}

fn rakers(draft: &mut Draft, wanted: u32) -> Result<(), Fault> {
    if all_counts(draft, "raker").is_empty() && wanted > 0 {
        let name = ("name".to_owned(), quoted("helper"));
        draft.push(&[Step::Key("raker".into())], &[name, ("count".into(), wanted.to_string())])?;
    } else {
        counts(draft, "raker", wanted)?;
    }
    match wanted {
        0 => nobody_rakes(draft),
        _ => somebody_rakes(draft),
    }
}

fn share() -> [Step; 2] {
    ["crew", "spread_share"].map(|key| Step::Key(key.to_owned()))
}

fn spreads_all(draft: &Draft) -> bool {
    let share = draft.node(&share());
    share.is_some_and(|node| {
        figure::figure(&node.value, Kind::SpreadShare).is_ok_and(|share| share.value >= 1.0)
    })
}

/// The loaders spread all of it themselves.
pub(super) fn nobody_rakes(draft: &mut Draft) -> Result<(), Fault> {
    if spreads_all(draft) {
        return Ok(());
    }
    draft.put(&share(), &quoted("100 %"))
}

/// If the loaders spread all of it, they do so no longer.
pub(super) fn somebody_rakes(draft: &mut Draft) -> Result<(), Fault> {
    if !spreads_all(draft) {
        return Ok(());
    }
    draft.cut(&share())?;
    let crew = [Step::Key("crew".into())];
    match draft.table_at(&crew).is_some_and(|crew| crew.entries.is_empty()) {
        true => draft.cut(&crew),
        false => Ok(()),
    }
}

/// So many of a kind in all.
fn counts(draft: &mut Draft, kind: &str, wanted: u32) -> Result<(), Fault> {
    let all = all_counts(draft, kind);
    for (thing, (new, was)) in shared_out(wanted, &all).into_iter().zip(all).enumerate() {
        if new != was {
            let path = [Step::Key(kind.to_owned()), Step::At(thing), Step::Key("count".into())];
            draft.put(&path, &new.to_string())?;
        }
    }
    Ok(())
}

/// All ways longer or shorter in proportion.
fn haul(draft: &mut Draft, value: &str) -> Result<(), Fault> {
    let wanted = figure::figure(&Value::Text(value.to_owned()), Kind::Way)
        .map_err(|wrong| Fault::new(wrong.what, wrong.right))?;
    let unknown = || Fault::new("the mean haul is not known", "change the distances one by one");
    let file = JobFile::of_text(draft.text(), "", draft.files.clone()).map_err(|_| unknown())?;
    let scenario = file.scenario(&Selection::default()).map_err(|_| unknown())?;
    let mean = mean_haul(&scenario.job);
    if mean <= 0.0 {
        return Err(Fault::new("all ways are of no length", "give the zones a distance above 0 first"));
    }
    let (factor, system) = (wanted.value / mean, wanted.system.unwrap_or(System::Metric));
    for (at, zone) in scenario.job.zones.iter().enumerate() {
        let thing = [Step::Key("zone".into()), Step::At(at)];
        let single = [thing.as_slice(), &[Step::Key("distance".into())]].concat();
        let ways: Vec<Vec<Step>> = match draft.node(&single) {
            Some(_) => vec![single],
            None => (0..zone.ways.len())
                .map(|way| {
                    [
                        thing.as_slice(),
                        &[Step::Key("ways".into()), Step::At(way), Step::Key("distance".into())],
                    ]
                    .concat()
                })
                .collect(),
        };
        for (path, one) in ways.iter().zip(&zone.ways) {
            draft.put(path, &quoted(&way(one.distance_m * factor, system).replace(',', "")))?;
        }
    }
    Ok(())
}
