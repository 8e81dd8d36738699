//! One line of a list of buckets, read cell by cell.

use super::bucket::Bucket;
use super::row::Cell;
use crate::diagnostics::{Place, Read};
use crate::document::{Node, Value};
use crate::fields::{Around, Item};
use crate::signs::likeness;
use crate::signs::printable;
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
    /// The bucket of the line.
    pub(super) fn bucket(&self, others: &[Bucket]) -> Read<Bucket> {
        if let Some(no_line) = self.form() {
            return no_line;
        }
        Read::of(|diagnostics| {
            let name = self.name(others).join(diagnostics);
            let words = match &name {
                Some(name) => format!("bucket \"{}\"", printable(name)),
                None => "bucket without a name".into(),
            };
            let mut figure = |column, kind| self.figure(&words, column, kind)?.join(diagnostics);
            let heaped = figure("heaped", Kind::Bucket);
            let struck_m3 = figure("struck", Kind::Bucket);
            let width_m = figure("width", Kind::Width);
            let mass_kg = figure("mass", Kind::BucketMass);
            let price = figure("price", Kind::Price);
            let at =
                |words, span: &Range<usize>| Place { words, path: String::new(), span: Some(span.clone()) };
            match (struck_m3, heaped, self.cell("struck"), self.cell("heaped")) {
                (.., None) => diagnostics.problem(
                    &at(words, &self.line),
                    "",
                    "its heaped capacity is missing",
                    "write it with its unit, such as 14 ft3",
                ),
                (Some(struck), Some(heaped), Some(cell), _) if struck > heaped => diagnostics.problem(
                    &at(format!("{words}, struck"), &cell.span),
                    &printable(&cell.text),
                    "a bucket holds no more struck than heaped",
                    "check both; heaped is the larger figure",
                ),
                _ => {}
            }
            Some(Bucket { name: name?, struck_m3, heaped_m3: heaped?, width_m, mass_kg, price })
        })
    }

    /// Why it is no line of the list at all.
    fn form<T>(&self) -> Option<Read<T>> {
        let wrong = |cell: &Cell, what: &str, right: &str| {
            let place = Place { words: "line".into(), span: Some(cell.span.clone()), ..Place::default() };
            Some(Read::problem(&place, &printable(&cell.text), what, right))
        };
        if let Some(open) = self.cells.iter().find(|cell| !cell.closed) {
            let right = "a quoted cell ends with a quote on the same line";
            return wrong(open, "a quote is opened and not closed", right);
        }
        let beyond = self.cells.get(self.columns.len()..).unwrap_or_default();
        let beyond = beyond.iter().find(|cell| !cell.text.is_empty())?;
        let (has, wanted) = (self.cells.len(), self.columns.len());
        let what = format!("this line has {has} cells where the heading has {wanted}");
        wrong(beyond, &what, "put a cell with a comma in it in quotes")
    }

    fn name(&self, others: &[Bucket]) -> Read<String> {
        let right = "give each a name of its own";
        let place = |span| Place { words: "name".into(), span: Some(span), ..Place::default() };
        let Some(cell) = self.cell("name") else {
            return Read::problem(&place(self.line.clone()), "", "this bucket has no name", right);
        };
        let node = cell.node();
        let item = Item { node: &node, place: place(cell.span.clone()), around: Around::NOTHING };
        item.text(right).and_then(|name| {
            let twin = others.iter().any(|other| likeness(&other.name) == likeness(&name.value));
            if twin { item.wrong("two buckets have this name", right) } else { Read::made(name.value) }
        })
    }

    fn figure(&self, words: &str, column: &str, kind: Kind) -> Option<Read<f64>> {
        let node = self.cell(column)?.node();
        let place = Place { words: format!("{words}, {column}"), ..Place::default() };
        let item = Item { node: &node, place, around: Around::NOTHING };
        Some(item.figure(kind).map(|figure| figure.value))
    }

    /// The cell of a column, if it is not blank.
    fn cell(&self, column: &str) -> Option<&Cell> {
        let at = self.columns.iter().position(|known| *known == Some(column))?;
        self.cells.get(at).filter(|cell| !cell.text.is_empty())
    }
}
