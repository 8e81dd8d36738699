//! One line of a list of buckets, read cell by cell.

use super::Bucket;
use super::row::Cell;
use crate::diagnostics::{Diagnostics, Place};
use crate::document::{Node, Value};
use crate::fields::Item;
use crate::parse::printable;
use crate::signs::likeness;
use crate::units::kind::Kind;
use std::ops::Range;

impl Cell {
    fn node(&self) -> Node {
        let value = Value::Text(self.text.clone());
        Node { span: self.span.clone(), typed: printable(&self.text), value }
    }
}

/// One line of a list.
pub(super) struct Line<'c> {
    pub(super) cells: Vec<Cell>,
    pub(super) columns: &'c [Option<&'static str>],
    pub(super) line: Range<usize>,
}

impl Line<'_> {
    /// The bucket of the line; what is wrong with it is told.
    pub(super) fn bucket(&self, others: &[Bucket], diagnostics: &mut Diagnostics<'_>) -> Option<Bucket> {
        self.form(diagnostics)?;
        let name = self.name(others, diagnostics);
        let words = match &name {
            Some(name) => format!("bucket \"{}\"", printable(name)),
            None => "bucket without a name".into(),
        };
        let mut figure = |column, kind| self.figure(&words, column, kind, diagnostics);
        let heaped = figure("heaped", Kind::Bucket);
        let struck = figure("struck", Kind::Bucket);
        let width = figure("width", Kind::Width);
        let mass = figure("mass", Kind::BucketMass);
        let price = figure("price", Kind::Price);
        if self.cell("heaped").is_none() {
            let place = Place { words, span: Some(self.line.clone()), ..Place::default() };
            diagnostics.problem(
                &place,
                "",
                "its heaped capacity is missing",
                "write it with its unit, such as 14 ft3",
            );
        } else if let (Some(struck), Some(heaped), Some(cell)) = (struck, heaped, self.cell("struck"))
            && struck > heaped
        {
            let place = Place {
                words: format!("{words}, struck"),
                span: Some(cell.span.clone()),
                ..Place::default()
            };
            let right = "check both; heaped is the larger figure";
            diagnostics.problem(
                &place,
                &printable(&cell.text),
                "a bucket holds no more struck than heaped",
                right,
            );
        }
        Some(Bucket {
            name: name?,
            struck_m3: struck,
            heaped_m3: heaped?,
            width_m: width,
            mass_kg: mass,
            price,
        })
    }

    /// Whether it is a line of the list at all.
    fn form(&self, diagnostics: &mut Diagnostics<'_>) -> Option<()> {
        let place =
            |cell: &Cell| Place { words: "line".into(), span: Some(cell.span.clone()), ..Place::default() };
        if let Some(open) = self.cells.iter().find(|cell| !cell.closed) {
            let right = "a quoted cell ends with a quote on the same line";
            diagnostics.problem(
                &place(open),
                &printable(&open.text),
                "a quote is opened and not closed",
                right,
            );
            return None;
        }
        let beyond = self.cells.get(self.columns.len()..).unwrap_or_default();
        if let Some(cell) = beyond.iter().find(|cell| !cell.text.is_empty()) {
            let (has, wanted) = (self.cells.len(), self.columns.len());
            let what = format!("this line has {has} cells where the heading has {wanted}");
            diagnostics.problem(
                &place(cell),
                &printable(&cell.text),
                what,
                "put a cell with a comma in it in quotes",
            );
            return None;
        }
        Some(())
    }

    fn name(&self, others: &[Bucket], diagnostics: &mut Diagnostics<'_>) -> Option<String> {
        let right = "give each a name of its own";
        let place = |span| Place { words: "name".into(), span: Some(span), ..Place::default() };
        let Some(cell) = self.cell("name") else {
            diagnostics.problem(&place(self.line.clone()), "", "this bucket has no name", right);
            return None;
        };
        let node = cell.node();
        let name = Item { node: &node, place: place(cell.span.clone()) }.text(right, diagnostics)?.value;
        if others.iter().any(|other| likeness(&other.name) == likeness(&name)) {
            diagnostics.problem(&place(cell.span.clone()), &node.typed, "two buckets have this name", right);
            return None;
        }
        Some(name)
    }

    fn figure(
        &self,
        words: &str,
        column: &str,
        kind: Kind,
        diagnostics: &mut Diagnostics<'_>,
    ) -> Option<f64> {
        let cell = self.cell(column)?;
        let node = cell.node();
        let place = Place { words: format!("{words}, {column}"), ..Place::default() };
        Some(Item { node: &node, place }.figure(kind, diagnostics)?.value)
    }

    /// The cell of a column, if it is not blank.
    fn cell(&self, column: &str) -> Option<&Cell> {
        let at = self.columns.iter().position(|known| *known == Some(column))?;
        self.cells.get(at).filter(|cell| !cell.text.is_empty())
    }
}
