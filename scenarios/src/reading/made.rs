//! A job as typed and as made from that.

use super::turn::Before;
use crate::assumption::Assumption;
use crate::build::chance::Statements;
use crate::build::{self, Built};
use crate::check;
use crate::diagnostics::{Place, Read};
use crate::document::Table;
use crate::files::Files;
use crate::raw::{self, Raw};
use crate::source::Source;
use crate::units::System;
use sim::Plan;
use std::sync::Arc;

/// A job as typed and as made from that, in which nothing is wrong.
#[derive(Clone, Debug)]
pub(super) struct Made {
    /// The document it is made of, changes of its keys included.
    pub(super) table: Arc<Table>,
    pub(super) raw: Arc<Raw>,
    pub(super) statements: Arc<Statements>,
    pub(super) built: Built,
    /// What was assumed when it was built.
    pub(super) assumed: Vec<Assumption>,
    pub(super) system: System,
}

/// Units to speak in: those wanted, those the file asks for, or those it uses most.
#[derive(Clone, Copy, Default)]
pub(super) struct Units {
    pub(super) wanted: Option<System>,
    pub(super) used_most: Option<System>,
}

impl Units {
    pub(super) fn shown(self, raw: &Raw) -> System {
        let of_file = || raw.units.as_ref().map(|units| units.value);
        self.wanted.or_else(of_file).or(self.used_most).unwrap_or(raw.said.system)
    }
}

/// Makes the job of a table, if nothing is wrong with it.
pub(super) fn make(table: Table, units: Units, source: &Source<'_>, files: &dyn Files) -> Read<Made> {
    make_of(raw::read(&table, files, source), &Arc::new(table), units, source)
}

/// Makes the job of things typed in, if nothing is wrong with them.
pub(super) fn make_of(raw: Read<Raw>, table: &Arc<Table>, units: Units, source: &Source<'_>) -> Read<Made> {
    Read::of(|diagnostics| {
        let raw = raw.join(diagnostics)?;
        diagnostics.join(check::check(&raw));
        let statements = build::chance::statements(&raw, source).join(diagnostics)?;
        let system = units.shown(&raw);
        let (raw, statements) = (Arc::new(raw), Arc::new(statements));
        let made = diagnostics.is_clean().then(|| build(table, &raw, &statements, system));
        made?.join(diagnostics)
    })
}

fn build(table: &Arc<Table>, raw: &Arc<Raw>, statements: &Arc<Statements>, system: System) -> Read<Made> {
    let Read { made, diagnostics } = build::job(raw, statements, system);
    let Some(built) = made else { return Read { made: None, diagnostics } };
    match Plan::check(&built.job) {
        Ok(()) => Read::made(Made {
            table: table.clone(),
            raw: raw.clone(),
            statements: statements.clone(),
            built,
            assumed: diagnostics.assumptions().collect(),
            system,
        }),
        Err(error) => Read::problem(&Place::default(), "", error.to_string(), "change the figures concerned"),
    }
}

impl Made {
    /// The same job, spoken of in the units wanted.
    pub(super) fn again(&self, units: Units) -> Read<Made> {
        match units.shown(&self.raw) {
            system if system == self.system => Read::made(self.clone()),
            system => build(&self.table, &self.raw, &self.statements, system),
        }
    }

    pub(super) fn before(&self, units: Units) -> Before<'_> {
        Before { raw: &self.raw, job: &self.built.job, system: units.shown(&self.raw) }
    }
}
