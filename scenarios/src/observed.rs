//! Observed values, in the file itself or in a CSV file beside it or below it.

mod csv_list;

use crate::diagnostics::{At, Diagnostics};
use crate::document::Value;
use crate::fields::{Fields, Item};
use crate::files::NotRead;
use crate::parse::printable;
use crate::units::amount::{self, Amount};
use crate::units::kind::Kind;
use csv_list::Unread;

/// Largest file of observed values \[bytes\].
const LARGEST: u64 = 4_000_000;
/// Most values of one quantity.
const MOST: usize = 100_000;

/// Reads the observed values of a quantity, in the unit its kind is kept in.
pub(crate) fn read(
    item: &Item<'_>,
    fields: &Fields<'_>,
    kind: Kind,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Vec<f64>> {
    let unit = unit(fields, kind, diagnostics)?;
    let values = values(item, fields, kind, unit.as_ref(), diagnostics)?;
    Some(if kind == Kind::Multiple && unit.is_some() { relative(values) } else { values })
}

/// What was measured in a unit, over its mean: a multiplier. What has no mean is left as it is, and refused later.
fn relative(values: Vec<f64>) -> Vec<f64> {
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    if mean.is_normal() { values.into_iter().map(|value| value / mean).collect() } else { values }
}

fn values(
    item: &Item<'_>,
    fields: &Fields<'_>,
    kind: Kind,
    unit: Option<&Amount>,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Vec<f64>> {
    match (fields.get("values"), fields.get("file")) {
        (Some(_), Some(file)) => {
            file.wrong("values and file are both given", "keep one of the two", diagnostics);
            None
        }
        (Some(values), None) => listed(&values, unit, kind, diagnostics),
        (None, Some(file)) => {
            let name = file.text("write the name of a CSV file in quotes", diagnostics)?;
            let column = fields.need("column", "name the column of the CSV file", diagnostics)?;
            let column = column.text("name the column of the CSV file", diagnostics)?;
            from_file(&name, &column, unit, kind, diagnostics)
        }
        (None, None) => {
            let right = "give values = [...], or file = \"...\" with column and unit";
            item.wrong("there are no observed values", right, diagnostics);
            None
        }
    }
}

/// The unit of values without one: `Some(None)` if none is named.
fn unit(fields: &Fields<'_>, kind: Kind, diagnostics: &mut Diagnostics<'_>) -> Option<Option<Amount>> {
    let Some(item) = fields.get("unit") else {
        return Some(None);
    };
    let text = item.text("write a unit in quotes", diagnostics)?;
    let facts = kind.facts();
    match amount::parse_unit(&text.value) {
        Ok(unit) if unit.dimension == facts.dimension || kind == Kind::Multiple => Some(Some(unit)),
        Ok(unit) => {
            let what = format!("this is the unit of {}", unit.dimension.name());
            item.wrong(
                what,
                format!("{} is wanted, such as {}", facts.dimension.name(), facts.example),
                diagnostics,
            );
            None
        }
        Err(error) => {
            item.wrong(error.what(), format!("a unit as in {} is wanted", facts.example), diagnostics);
            None
        }
    }
}

fn listed(
    item: &Item<'_>,
    unit: Option<&Amount>,
    kind: Kind,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Vec<f64>> {
    let Value::List(list) = &item.node.value else {
        item.wrong("this is not a list", "write values = [ ..., ... ]", diagnostics);
        return None;
    };
    if list.is_empty() || list.len() > MOST {
        item.wrong(format!("there are {} values", list.len()), format!("give 1 to {MOST}"), diagnostics);
        return None;
    }
    let size = (kind.facts().kept_in)();
    let values = list.iter().map(|node| {
        let entry = Item { node, place: item.place.clone() };
        let bare = match &node.value {
            Value::Whole(number) => Some(*number as f64),
            Value::Number(number) => Some(*number),
            _ => None,
        };
        let value = match (bare, unit) {
            (Some(number), Some(unit)) => {
                number * unit.in_units_of(if kind == Kind::Multiple { 1.0 } else { size })
            }
            _ => entry.measure(kind, diagnostics)?,
        };
        let fits = value == 0.0
            || kind == Kind::Multiple && unit.is_some()
            || entry.believable(value, kind, diagnostics);
        fits.then_some(value)
    });
    values.collect::<Vec<_>>().into_iter().collect()
}

fn from_file(
    name: &At<String>,
    column: &At<String>,
    unit: Option<&Amount>,
    kind: Kind,
    diagnostics: &mut Diagnostics<'_>,
) -> Option<Vec<f64>> {
    let right = "name a CSV file with a heading line, beside the scenario file or in a folder below it";
    let file = match diagnostics.files.file(&name.value, LARGEST) {
        Ok(file) => file,
        Err(not_read) => {
            let fewer = format!("keep the column that is used alone, and at most {MOST} of its values");
            let right = if matches!(not_read, NotRead::TooLarge(_)) { &fewer } else { right };
            diagnostics.wrong_at(name, not_read.to_string(), right);
            return None;
        }
    };
    let table = csv_list::column_of(&file.bytes, &column.value);
    diagnostics.said.files_read.push(file);
    let cells = match table {
        Ok(cells) => cells,
        Err(Unread::NoColumn(right)) => {
            diagnostics.wrong_at(column, format!("{} has no such column", name.value), right);
            return None;
        }
        Err(Unread::Twice) => {
            let what = format!("{} has two columns of this name", name.value);
            diagnostics.wrong_at(column, what, "give each column a heading of its own");
            return None;
        }
        Err(Unread::NotCsv(what)) => {
            diagnostics.wrong_at(name, what, "save it as plain CSV in UTF-8, with a heading line");
            return None;
        }
    };
    if cells.is_empty() || cells.len() > MOST {
        let what = format!("{} has {} values in this column", name.value, cells.len());
        diagnostics.wrong_at(column, what, format!("give 1 to {MOST}"));
        return None;
    }
    let is_list = csv_list::mostly_figures(cells.iter().map(|(_, cell)| cell.as_str()));
    let mut values = Vec::with_capacity(cells.len());
    for (line, cell) in cells {
        match cell_value(&cell, unit, kind) {
            Ok(value) => values.push(value),
            Err(what) => {
                // What is no list of figures is nobody's business here.
                let what = if is_list {
                    let cell: String = printable(&cell).chars().take(40).collect();
                    format!("{}, line {line}, \"{cell}\": {what}", name.value)
                } else {
                    format!("{}, line {line}: this column is no list of figures", name.value)
                };
                diagnostics.wrong_at(
                    column,
                    what,
                    format!("values such as {} are wanted", kind.facts().example),
                );
                return None;
            }
        }
    }
    Some(values)
}

fn cell_value(cell: &str, unit: Option<&Amount>, kind: Kind) -> Result<f64, String> {
    let facts = kind.facts();
    let size = (facts.kept_in)();
    let amount = amount::parse(cell).map_err(|error| error.what())?;
    let plain = amount.dimension == crate::units::dimension::Dimension::NUMBER;
    let value = match unit {
        Some(unit) if plain => {
            amount.in_units_of(1.0) * unit.in_units_of(if kind == Kind::Multiple { 1.0 } else { size })
        }
        _ if amount.dimension == facts.dimension => amount.in_units_of(size),
        _ if plain => return Err("the unit is missing; name it with unit = \"...\"".into()),
        _ => return Err(format!("this is {}", amount.dimension.name())),
    };
    if value < 0.0 {
        Err("this is less than nothing".into())
    } else if value > facts.greatest && kind != Kind::Multiple {
        Err(format!("this is absurdly large, at most {} is believable", facts.limits[1]))
    } else {
        Ok(value)
    }
}

#[cfg(test)]
mod tests;
