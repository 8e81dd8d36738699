//! Observed values, in the file itself or in a CSV file beside it or below it.

mod csv_list;

use crate::diagnostics::{At, Diagnostic, Read};
use crate::document::Value;
use crate::fields::{Fields, Item};
use crate::files::{Files, NotRead};
use crate::signs::printable;
use crate::units::amount::{self, Amount};
use crate::units::kind::Kind;
use csv_list::Unread;

/// Largest file of observed values \[bytes\].
const LARGEST: u64 = 4_000_000;
/// Most values of one quantity.
const MOST: usize = 100_000;

/// Reads the observed values of a quantity, in the unit its kind is kept in.
pub(crate) fn read<'d>(item: &Item<'d>, fields: &mut Fields<'d>, kind: Kind) -> Option<Vec<f64>> {
    let unit = match fields.get("unit") {
        Some(item) => Some(fields.take(unit(&item, kind))?),
        None => None,
    };
    let values = values(item, fields, kind, unit.as_ref())?;
    Some(if kind == Kind::Multiple && unit.is_some() { relative(values) } else { values })
}

/// What was measured in a unit, over its mean: a multiplier. What has no mean is left as it is, and refused later.
fn relative(values: Vec<f64>) -> Vec<f64> {
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    if mean.is_normal() { values.into_iter().map(|value| value / mean).collect() } else { values }
}

fn values<'d>(
    item: &Item<'d>,
    fields: &mut Fields<'d>,
    kind: Kind,
    unit: Option<&Amount>,
) -> Option<Vec<f64>> {
    let values = match (fields.get("values"), fields.get("file")) {
        (Some(_), Some(file)) => file.wrong("values and file are both given", "keep one of the two"),
        (Some(values), None) => listed(&values, unit, kind),
        (None, Some(file)) => {
            let name = fields.take(file.text("write the name of a CSV file in quotes"))?;
            let column = fields.need("column", "name the column of the CSV file")?;
            let column = fields.take(column.text("name the column of the CSV file"))?;
            from_file(item.around.files, &name, &column, unit, kind)
        }
        (None, None) => {
            let right = "give values = [...], or file = \"...\" with column and unit";
            item.wrong("there are no observed values", right)
        }
    };
    fields.take(values)
}

/// The unit of values without one.
fn unit(item: &Item<'_>, kind: Kind) -> Read<Amount> {
    let facts = kind.facts();
    item.text("write a unit in quotes").and_then(|text| match amount::parse_unit(&text.value) {
        Ok(unit) if unit.dimension == facts.dimension || kind == Kind::Multiple => Read::made(unit),
        Ok(unit) => item.wrong(
            format!("this is the unit of {}", unit.dimension.name()),
            format!("{} is wanted, such as {}", facts.dimension.name(), facts.example),
        ),
        Err(error) => item.wrong(error.what(), format!("a unit as in {} is wanted", facts.example)),
    })
}

fn listed(item: &Item<'_>, unit: Option<&Amount>, kind: Kind) -> Read<Vec<f64>> {
    let Value::List(list) = &item.node.value else {
        return item.wrong("this is not a list", "write values = [ ..., ... ]");
    };
    if list.is_empty() || list.len() > MOST {
        return item.wrong(format!("there are {} values", list.len()), format!("give 1 to {MOST}"));
    }
    Read::of(|diagnostics| {
        let one = |node| entry(&item.inner(node, item.place.clone()), unit, kind).join(diagnostics);
        let values: Vec<Option<f64>> = list.iter().map(one).collect();
        values.into_iter().collect()
    })
}

/// One value of a list; a bare number is in the unit named.
fn entry(item: &Item<'_>, unit: Option<&Amount>, kind: Kind) -> Read<f64> {
    let bare = match &item.node.value {
        Value::Whole(number) => Some(*number as f64),
        Value::Number(number) => Some(*number),
        _ => None,
    };
    let value = match (bare, unit) {
        (Some(number), Some(unit)) => Read::made(number * size_of(unit, kind)),
        _ => item.measure(kind),
    };
    let any = kind == Kind::Multiple && unit.is_some();
    value.and_then(|value| if value == 0.0 || any { Read::made(value) } else { item.believable(value, kind) })
}

/// One of a unit, in the unit its kind is kept in; what is measured for a multiplier is only divided by its mean.
fn size_of(unit: &Amount, kind: Kind) -> f64 {
    unit.in_units_of(if kind == Kind::Multiple { 1.0 } else { (kind.facts().kept_in)() })
}

fn from_file(
    files: &dyn Files,
    name: &At<String>,
    column: &At<String>,
    unit: Option<&Amount>,
    kind: Kind,
) -> Read<Vec<f64>> {
    let wrong = |at: &At<String>, what: String, right: &str| Read::problem(&at.place, &at.typed, what, right);
    let file = match files.file(&name.value, LARGEST) {
        Ok(file) => file,
        Err(not_read) => {
            let fewer = format!("keep the column that is used alone, and at most {MOST} of its values");
            let beside =
                "name a CSV file with a heading line, beside the scenario file or in a folder below it";
            let right = if matches!(not_read, NotRead::TooLarge(_)) { &fewer } else { beside };
            return wrong(name, not_read.to_string(), right);
        }
    };
    let table = csv_list::column_of(&file.bytes, &column.value);
    let file_name = &name.value;
    let read = match table {
        Ok(cells) if cells.is_empty() || cells.len() > MOST => {
            let what = format!("{file_name} has {} values in this column", cells.len());
            wrong(column, what, &format!("give 1 to {MOST}"))
        }
        Ok(cells) => match of_cells(&cells, file_name, unit, kind) {
            Ok(values) => Read::made(values),
            Err(what) => wrong(column, what, &format!("values such as {} are wanted", kind.facts().example)),
        },
        Err(Unread::NoColumn(right)) => wrong(column, format!("{file_name} has no such column"), &right),
        Err(Unread::Twice) => {
            let what = format!("{file_name} has two columns of this name");
            wrong(column, what, "give each column a heading of its own")
        }
        Err(Unread::NotCsv(what)) => wrong(name, what, "save it as plain CSV in UTF-8, with a heading line"),
    };
    Read::of(|diagnostics| {
        diagnostics.0.push(Diagnostic::File(file));
        read.join(diagnostics)
    })
}

fn of_cells(
    cells: &[(u64, String)],
    file: &str,
    unit: Option<&Amount>,
    kind: Kind,
) -> Result<Vec<f64>, String> {
    let is_list = csv_list::mostly_figures(cells.iter().map(|(_, cell)| cell.as_str()));
    let one = |(line, cell): &(u64, String)| {
        cell_value(cell, unit, kind).map_err(|what| {
            // What is no list of figures is nobody's business here.
            if !is_list {
                return format!("{file}, line {line}: this column is no list of figures");
            }
            let cell: String = printable(cell).chars().take(40).collect();
            format!("{file}, line {line}, \"{cell}\": {what}")
        })
    };
    cells.iter().map(one).collect()
}

fn cell_value(cell: &str, unit: Option<&Amount>, kind: Kind) -> Result<f64, String> {
    let facts = kind.facts();
    let size = (facts.kept_in)();
    let amount = amount::parse(cell).map_err(|error| error.what())?;
    let plain = amount.dimension == crate::units::dimension::Dimension::NUMBER;
    let value = match unit {
        Some(unit) if plain => amount.in_units_of(1.0) * size_of(unit, kind),
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
