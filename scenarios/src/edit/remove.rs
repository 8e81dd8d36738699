//! One thing less, with all that names it.

use super::draft::{Draft, Step};
use super::fault::Fault;
use super::key::thing;
use super::knob::{all_counts, nobody_rakes};
use super::rename::references;
use crate::document::{Table, Value};
use crate::signs::{composed, printable};

/// Removes a thing.
pub(super) fn remove(draft: &mut Draft, kind: &str, name: &str) -> Result<(), Fault> {
    match kind {
        "zone" | "loader" | "raker" | "pass" => named(draft, kind, name),
        "delivery" => delivery(draft, name),
        "break" => entry(draft, &["shift", "breaks"].map(|key| Step::Key(key.into())), name),
        _ => Err(Fault::new(
            format!("a {} cannot be removed here", printable(kind)),
            "remove a zone, loader, raker, pass, delivery or break",
        )),
    }
}

fn named(draft: &mut Draft, kind: &str, name: &str) -> Result<(), Fault> {
    let at = thing(draft, kind, name)?;
    let counts = all_counts(draft, kind);
    let others = counts.iter().enumerate().filter(|(other, _)| *other != at);
    let is_last = match kind {
        "zone" => counts.len() == 1,
        "loader" => others.map(|(_, count)| count).sum::<u32>() == 0,
        _ => false,
    };
    if is_last {
        return Err(Fault::new(
            format!("this is the only {kind}"),
            format!("a job needs one: change it, or add another {kind} first"),
        ));
    }
    forget(draft, kind, &composed(name.trim()))?;
    draft.cut(&[Step::Key(kind.to_owned()), Step::At(at)])?;
    match kind == "raker" && all_counts(draft, "raker").iter().sum::<u32>() == 0 {
        true => nobody_rakes(draft),
        false => Ok(()),
    }
}

/// Removes all that names a thing: the last first, so that the ways to the others stay.
fn forget(draft: &mut Draft, kind: &str, name: &str) -> Result<(), Fault> {
    for reference in references(draft.table(), kind, name).into_iter().rev() {
        let mut path = reference.path;
        let is_entry_of_way = matches!(path.as_slice(), [.., Step::At(_), Step::Key(key)] if key == "pass");
        if is_entry_of_way {
            path.pop();
        }
        draft.cut(&path)?;
        clear(draft, &path)?;
    }
    Ok(())
}

/// What a removed entry leaves empty goes as well: the list of passes of a way, the walks of a zone, an alternative.
fn clear(draft: &mut Draft, removed: &[Step]) -> Result<(), Fault> {
    let Some((_, above)) = removed.split_last() else { return Ok(()) };
    let is_empty = draft.node(above).is_some_and(|node| match &node.value {
        Value::List(list) => list.is_empty(),
        Value::Table(table) => is_void(table),
        _ => false,
    });
    match (is_empty, above) {
        (true, [Step::Key(first), at @ Step::At(_), ..]) if first == "alternative" => {
            draft.cut(&[Step::Key(first.clone()), at.clone()])
        }
        (true, [.., Step::Key(_)]) if above.len() > 2 => draft.cut(above),
        _ => Ok(()),
    }
}

fn is_void(table: &Table) -> bool {
    table.entries.values().all(|entry| match &entry.node.value {
        Value::Table(inner) => is_void(inner),
        _ => false,
    })
}

fn delivery(draft: &mut Draft, name: &str) -> Result<(), Fault> {
    let (pile, number) = name.rsplit_once('.').ok_or_else(missing)?;
    let at = thing(draft, "stockpile", pile)?;
    let list = [Step::Key("stockpile".into()), Step::At(at), Step::Key("deliveries".into())];
    entry(draft, &list, number)
}

/// Removes an entry of a list by its number, the list with its last.
fn entry(draft: &mut Draft, list: &[Step], number: &str) -> Result<(), Fault> {
    let count = match draft.node(list).map(|node| &node.value) {
        Some(Value::List(entries)) => entries.len(),
        _ => 0,
    };
    let number: usize = number.trim().parse().map_err(|_| missing())?;
    match (number, count) {
        (1, 1) => draft.cut(list),
        (1.., _) if number <= count => draft.cut(&[list, &[Step::At(number - 1)]].concat()),
        _ => Err(missing()),
    }
}

fn missing() -> Fault {
    Fault::new("there is no such entry", "entries are counted from 1")
}
