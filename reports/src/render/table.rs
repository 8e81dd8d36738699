//! Tables for programs: a list of columns, each with its name, its unit and its value, from which the heading and the cell in
//! CSV and the key in JSON all come.
//!
//! Headings never depend on the data. The unit stands in the heading; volumes and fuel stand in metric and in US units, in JSON
//! in metric alone. What is unknown is an empty field in CSV and `null` in JSON, never 0. Times are exact to the
//! microsecond, in tables of many runs to 0.1 s.

mod cell;
mod outcome;
mod runs;
mod saved;
mod unit;

pub(crate) use cell::Cell;
pub(crate) use outcome::outcome;
pub(crate) use runs::{run_csv, runs_csv};
pub(crate) use unit::Unit;

use super::ExportError;
use crate::findings::Estimate;
use scenarios::units::{System, fuel_number, volume_number};
use serde::ser::{Serialize, SerializeMap, Serializer};
use sim::Duration;

/// One column.
pub(crate) struct Column<'a, Row> {
    pub(crate) name: String,
    pub(crate) unit: Unit,
    /// Which end of an interval it is; empty for the figure itself.
    end: &'static str,
    value: Box<dyn Fn(&Row) -> Cell + 'a>,
}

impl<Row> Column<'_, Row> {
    fn heading(&self) -> String {
        format!("{}{}{}", self.name, self.unit.suffix(), self.end)
    }

    pub(crate) fn value(&self, row: &Row) -> Cell {
        (self.value)(row)
    }
}

/// The columns of a table, in order.
pub(crate) struct Table<'a, Row> {
    pub(crate) columns: Vec<Column<'a, Row>>,
    rounded: bool,
}

impl<'a, Row> Table<'a, Row> {
    pub(crate) fn new() -> Self {
        Self { columns: Vec::new(), rounded: false }
    }

    /// Of many runs: figures are rounded to what anybody can use.
    pub(crate) fn rounded(self) -> Self {
        Self { rounded: true, ..self }
    }

    /// These columns and then those of another list.
    pub(crate) fn chain(mut self, others: Self) -> Self {
        self.columns.extend(others.columns);
        self
    }

    fn add(
        mut self,
        name: impl Into<String>,
        unit: Unit,
        end: &'static str,
        value: impl Fn(&Row) -> Cell + 'a,
    ) -> Self {
        self.columns.push(Column { name: name.into(), unit, end, value: Box::new(value) });
        self
    }

    /// A figure in a unit.
    pub(crate) fn figure<C: Into<Cell>>(
        self,
        name: impl Into<String>,
        unit: Unit,
        value: impl Fn(&Row) -> C + 'a,
    ) -> Self {
        self.add(name, unit, "", move |row| value(row).into())
    }

    /// A text, a count, or a number without a unit.
    pub(crate) fn plain<C: Into<Cell>>(
        self,
        name: impl Into<String>,
        value: impl Fn(&Row) -> C + 'a,
    ) -> Self {
        self.figure(name, Unit::None, value)
    }

    /// A figure and the ends of its 95 % interval.
    pub(crate) fn estimate<E: Into<Option<Estimate>>>(
        self,
        name: impl Into<String>,
        unit: Unit,
        value: impl Fn(&Row) -> E + Copy + 'a,
    ) -> Self {
        let (name, of) = (name.into(), move |row: &Row| value(row).into());
        self.add(name.clone(), unit, "", move |row| of(row).map(|e| e.value).into())
            .add(name.clone(), unit, "_low_95", move |row| of(row).and_then(|e| e.low).into())
            .add(name, unit, "_high_95", move |row| of(row).and_then(|e| e.high).into())
    }

    /// The figure of a row whose first cells say what it is, and the ends of its 95 % interval.
    pub(crate) fn interval(self, value: impl Fn(&Row) -> Option<Estimate> + Copy + 'a) -> Self {
        self.plain("value", move |row| value(row).map(|e| e.value))
            .plain("low_95", move |row| value(row).and_then(|e| e.low))
            .plain("high_95", move |row| value(row).and_then(|e| e.high))
    }

    /// A volume \[m3\].
    pub(crate) fn volume<N: Into<Option<f64>>>(
        self,
        name: &str,
        value: impl Fn(&Row) -> N + Copy + 'a,
    ) -> Self {
        let us = move |row: &Row| value(row).into().map(|m3| volume_number(m3, System::Us).0);
        self.figure(name, Unit::M3, move |row| value(row).into()).figure(name, Unit::Yd3, us)
    }

    /// A moment counted from the start of the first day, told from midnight before it.
    pub(crate) fn clock<M: Into<Option<Duration>>>(
        self,
        name: &str,
        start_s: f64,
        moment: impl Fn(&Row) -> M + 'a,
    ) -> Self {
        self.figure(name, Unit::Clock, move |row| Cell::Clock(moment(row).into(), start_s))
    }

    /// Fuel \[l\].
    pub(crate) fn fuel(self, name: &str, value: impl Fn(&Row) -> Option<f64> + Copy + 'a) -> Self {
        let us = move |row: &Row| value(row).map(|litres| fuel_number(litres, System::Us).0);
        self.figure(name, Unit::Litres, value).figure(name, Unit::Gallons, us)
    }

    /// The table as CSV.
    pub(crate) fn csv<'r>(&self, rows: impl IntoIterator<Item = &'r Row>) -> Result<Vec<u8>, ExportError>
    where
        Row: 'r,
    {
        let mut writer = csv::Writer::from_writer(Vec::new());
        writer.write_record(self.columns.iter().map(Column::heading))?;
        for row in rows {
            let decimals = |column: &Column<'_, Row>| column.unit.decimals().filter(|_| self.rounded);
            writer.write_record(self.columns.iter().map(|c| c.value(row).field(decimals(c))))?;
        }
        writer.into_inner().map_err(|e| ExportError::Unfinished(e.to_string()))
    }

    /// A row for JSON: what US units only say again is left out.
    pub(crate) fn object<'t>(&'t self, row: &'t Row) -> Object<'t, 'a, Row> {
        Object { table: self, row }
    }
}

/// A row as a map from headings to values.
pub(crate) struct Object<'t, 'a, Row> {
    table: &'t Table<'a, Row>,
    row: &'t Row,
}

impl<Row> Serialize for Object<'_, '_, Row> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        for column in self.table.columns.iter().filter(|column| !column.unit.is_us()) {
            map.serialize_entry(&column.heading(), &column.value(self.row))?;
        }
        map.end()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table<'a>() -> Table<'a, f64> {
        let known = |row: &f64| Some(*row).filter(|v| *v >= 0.0);
        Table::new()
            .plain("name", |_| "=a")
            .figure("takes", Unit::Seconds, |row| *row)
            .volume("placed", known)
            .estimate("cost", Unit::Money, |row| Estimate { value: *row, low: Some(0.5), high: None })
    }

    #[test]
    fn headings_cells_and_keys_come_from_the_same_columns() {
        let csv = String::from_utf8(table().csv(&[9.144, -1.0]).unwrap()).unwrap();
        let [head, first, second] = csv.lines().collect::<Vec<_>>().try_into().unwrap();
        assert_eq!(head, "name,takes_s,placed_m3,placed_yd3,cost,cost_low_95,cost_high_95");
        assert!(first.starts_with("'=a,9.144,9.144,11.9"), "{first}");
        assert_eq!(second, "'=a,-1,,,-1,0.5,", "what is unknown is empty");
        let json = serde_json::to_string(&table().object(&-1.0)).unwrap();
        let keys = r#""name":"=a","takes_s":-1.0,"placed_m3":null,"cost":-1.0,"cost_low_95":0.5,"cost_high_95":null"#;
        assert_eq!(json, format!("{{{keys}}}"));
    }

    #[test]
    fn tables_of_many_runs_are_rounded() {
        let csv = String::from_utf8(table().rounded().csv(&[9.1449]).unwrap()).unwrap();
        assert!(csv.contains("'=a,9.1,9.145,11.961,9.14,0.5,"), "{csv}");
    }
}
