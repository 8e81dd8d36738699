//! A value set, with what has to follow from it so that the file still makes sense.

use super::draft::{Draft, Step};
use super::fault::Fault;
use super::figures::system;
use super::key::{Place, place};
use super::rename;
use super::written::{typed, written};
use crate::document::quoted;
use crate::document::{Node, Table, Value};
use crate::lift::LiftFigure;
use crate::materials;
use crate::starter::Answers;
use crate::units::amount::{self, Amount};
use crate::units::dimension::Dimension;
use crate::units::kind::Kind;
use crate::units::{System, bucket, bucket_number, figure};

/// Sets the value of a key of the file.
pub(super) fn one(draft: &mut Draft, key: &str, value: &str) -> Result<(), Fault> {
    let place = place(draft, key)?;
    if draft.node(&place.path).is_some_and(|node| is_typed(draft, node, value)) {
        return Ok(());
    }
    match place.of_thing() {
        Some((kind, "name")) => rename::rename(draft, kind, &place, value),
        Some(("zone", "volume" | "area" | "length" | "width" | "diameter" | "depth")) => {
            size(draft, &place, value)
        }
        Some(("zone", "distance")) => distance(draft, &place, value),
        Some(("loader", "heaped")) => heaped(draft, &place, value),
        Some(("loader", lift)) if LiftFigure::ALL.iter().any(|figure| figure.key() == lift) => {
            lifted(draft, &place, value)
        }
        _ if key == "material.name" => material(draft, &place, value),
        _ => plain(draft, &place, value),
    }
}

/// Whether a value says the same already; a break in two parts is told as one.
fn is_typed(draft: &Draft, node: &Node, value: &str) -> bool {
    let part = |table: &Table, key: &str| table.get(key).map(|node| typed(draft.written(node)));
    let both = match &node.value {
        Value::Table(table) => part(table, "from").zip(part(table, "to")),
        _ => None,
    };
    typed(draft.written(node)) == value || both.is_some_and(|(from, to)| format!("{from}-{to}") == value)
}

/// Another material: what was said of the one before is no longer true of one that the built-in table knows.
fn material(draft: &mut Draft, place: &Place, value: &str) -> Result<(), Fault> {
    plain(draft, place, value)?;
    let known = materials::find(value).is_some();
    let own: &[&str] = if known { &["density", "fill_factor", "settling"] } else { &[] };
    own.iter().try_for_each(|key| draft.cut(&place.beside(key)))
}

/// Sets a value and nothing else.
pub(super) fn plain(draft: &mut Draft, place: &Place, value: &str) -> Result<(), Fault> {
    let was = draft.node(&place.path).map(|node| &node.value);
    let text = written(value, place.holds, was);
    draft.put(&place.path, &text)
}

/// The size of a zone: what else says it goes. A volume may be given as an area and a depth, and the other way round.
fn size(draft: &mut Draft, place: &Place, value: &str) -> Result<(), Fault> {
    let of = |text: &str| amount::parse(text).ok().map(|amount| amount.dimension);
    let both = value
        .split_once(" at ")
        .filter(|(area, depth)| of(area) == Some(Dimension::AREA) && of(depth) == Some(Dimension::LENGTH));
    let key = match (place.last(), of(value)) {
        (_, _) if both.is_some() => "area",
        ("volume", Some(Dimension::AREA)) => "area",
        (_, Some(Dimension::VOLUME)) => "volume",
        (key, _) => key,
    };
    let others: &[&str] = match key {
        "volume" => &["area", "length", "width", "diameter", "depth"],
        "area" => &["volume", "length", "width", "diameter"],
        "diameter" => &["volume", "length", "width", "area"],
        "length" | "width" => &["volume", "area", "diameter"],
        _ => &["volume"],
    };
    let value = both.map_or(value, |(area, _)| area.trim());
    let path = place.beside(key);
    first_in_place(draft, place, key, others)?;
    let was = draft.node(&path).map(|node| &node.value);
    let text = written(value, place.holds, was);
    draft.put(&path, &text)?;
    others.iter().try_for_each(|other| draft.cut(&place.beside(other)))?;
    if let Some((_, depth)) = both {
        return draft.put(&place.beside("depth"), &quoted(depth.trim()));
    }
    complete(draft, place, key)
}

/// What takes the place of another key stands where that stood, not at the end of its table.
fn first_in_place(draft: &mut Draft, place: &Place, key: &str, others: &[&str]) -> Result<(), Fault> {
    if draft.node(&place.beside(key)).is_some() {
        return Ok(());
    }
    let above = &place.path[..place.path.len() - 1];
    let entry = draft.table_at(above).and_then(|table| {
        others.iter().filter_map(|other| table.entries.get(*other)).min_by_key(|entry| entry.key_span.start)
    });
    match entry.map(|entry| entry.key_span.clone()) {
        Some(span) => draft.splice(span, key),
        None => Ok(()),
    }
}

/// A size that is said in part only gets the usual figures for the rest.
fn complete(draft: &mut Draft, place: &Place, key: &str) -> Result<(), Fault> {
    let missing: &[&str] = match key {
        "volume" => &[],
        "depth" => &["area"],
        "length" => &["width", "depth"],
        "width" => &["length", "depth"],
        _ => &["depth"],
    };
    let has = |draft: &Draft, key: &str| draft.node(&place.beside(key)).is_some();
    for other in missing {
        let said = match *other {
            "area" => ["area", "length", "diameter"].iter().any(|key| has(draft, key)),
            other => has(draft, other),
        };
        if let (false, Some(usual)) = (said, Answers::usual(system(draft)).of_zone(other)) {
            draft.put(&place.beside(other), &quoted(&usual))?;
        }
    }
    Ok(())
}

/// The distance of a zone to which one way leads, however that is written.
fn distance(draft: &mut Draft, place: &Place, value: &str) -> Result<(), Fault> {
    let ways = place.beside("ways");
    let one = match draft.node(&ways).map(|node| &node.value) {
        Some(Value::List(list)) => list.len() == 1,
        _ => false,
    };
    let path = match one {
        true => ways.into_iter().chain([Step::At(0), Step::Key("distance".into())]).collect(),
        false => place.path.clone(),
    };
    draft.put(&path, &quoted(value))
}

/// What a bucket holds struck follows in proportion.
fn heaped(draft: &mut Draft, place: &Place, value: &str) -> Result<(), Fault> {
    let volume = |draft: &Draft, key: &str| {
        let node = draft.node(&place.beside(key))?;
        volume_of(&typed(draft.written(node)))
    };
    let new = volume_of(value).map(|amount| amount.in_units_of(1.0));
    if let (Some(heaped), Some(struck), Some(new)) = (volume(draft, "heaped"), volume(draft, "struck"), new)
        && heaped.in_units_of(1.0) > 0.0
    {
        let factor = new / heaped.in_units_of(1.0);
        let text = in_its_system(struck.in_units_of(1.0) * factor, &struck);
        draft.put(&place.beside("struck"), &quoted(&text))?;
    }
    plain(draft, place, value)
}

fn volume_of(text: &str) -> Option<Amount> {
    let facts = Kind::Bucket.facts();
    amount::parse(text).ok().filter(|amount| amount.dimension == facts.dimension)
}

/// A bucket in the system in which another is typed, never rounded up: struck it would hold more than heaped.
fn in_its_system(m3: f64, like: &Amount) -> String {
    let system = like.system.unwrap_or(System::Metric);
    let (number, unit) = bucket_number(m3, system);
    let shown = bucket(m3, system);
    // What another unit alone leaves over is not rounded up.
    match amount::parse(&shown) {
        Ok(amount) if amount.in_units_of(1.0) <= m3 * (1.0 + 1e-9) => shown,
        _ => {
            let third_digit = 10_f64.powi((number.log10().floor() as i32 - 2).min(0));
            format!("{} {unit}", figure((number / third_digit).floor() * third_digit))
        }
    }
}

/// A figure of the manual, which may be named before it; there is one at a time.
fn lifted(draft: &mut Draft, place: &Place, value: &str) -> Result<(), Fault> {
    let named = LiftFigure::ALL.into_iter().find_map(|figure| {
        let rest =
            value.get(..figure.words().len()).filter(|start| start.eq_ignore_ascii_case(figure.words()));
        rest.map(|start| (figure.key(), value[start.len()..].trim()))
    });
    let Some((key, rest)) = named else { return plain(draft, place, value) };
    for other in LiftFigure::ALL.iter().filter(|figure| figure.key() != key) {
        draft.cut(&place.beside(other.key()))?;
        draft.cut(&place.beside(other.share_key()))?;
    }
    draft.put(&place.beside(key), &quoted(rest))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bucket_in_its_system_is_rounded_down_to_its_third_digit_and_no_further() {
        for (number, unit, said) in [
            (1.0099, "ft3", "1 ft3"),
            (17.657, "ft3", "17.6 ft3"),
            (15.0 - 1e-14, "ft3", "15 ft3"),
            (0.429_99, "m3", "0.429 m3"),
            (0.43, "m3", "0.43 m3"),
            (123.7, "ft3", "123 ft3"),
        ] {
            let like = amount::parse(&format!("1 {unit}")).unwrap();
            let size = like.in_units_of(1.0);
            assert_eq!(in_its_system(number * size, &like), said, "{number} {unit}");
        }
    }

    #[test]
    fn whatever_a_bucket_holds_struck_it_is_never_more_than_meant_and_hardly_less() {
        for unit in ["ft3", "m3"] {
            let like = amount::parse(&format!("1 {unit}")).unwrap();
            for step in 1..4000 {
                let m3 = 0.05 * 1.001_f64.powi(step);
                let text = in_its_system(m3, &like);
                let share = amount::parse(&text).unwrap().in_units_of(1.0) / m3;
                assert!(share <= 1.0 + 1e-9 && share > 0.99, "{m3} m3 is {text}");
            }
        }
    }
}
