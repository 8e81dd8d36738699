//! A job changed step by step: keys in its document, knobs on the things typed in.

use super::changes::{self, Asked, Changed, Mark};
use super::made::{Made, Units, make_of};
use super::turn::Setting;
use crate::diagnostics::{Diagnostics, Read};
use crate::document::Table;
use crate::files::Files;
use crate::knob::Knob;
use crate::raw::{self, RawChange};
use crate::source::Source;
use std::sync::Arc;

/// A job while it is changed.
pub(super) struct Changing<'f> {
    source: &'f Source<'f>,
    files: &'f dyn Files,
    units: Units,
    /// The job before all changes.
    start: Arc<Made>,
    table: Arc<Table>,
    /// Whether keys of the document have been changed since, so that it must be read again.
    is_other_table: bool,
    /// What knobs have set since, later ones last.
    settings: Vec<Setting>,
}

impl<'f> Changing<'f> {
    /// A job as it stands.
    pub(super) fn new(source: &'f Source<'f>, files: &'f dyn Files, start: &Arc<Made>, units: Units) -> Self {
        Self {
            source,
            files,
            units,
            start: start.clone(),
            table: start.table.clone(),
            is_other_table: false,
            settings: Vec::new(),
        }
    }

    /// The job with changes made, one after the other.
    pub(super) fn make_all(mut self, asked: &[Asked], marks: &[Mark]) -> Read<Made> {
        Read::of(|diagnostics| {
            let mut changed = Diagnostics::default();
            for (i, (one, mark)) in asked.iter().zip(marks).enumerate() {
                let before = match Knob::of(&one.change.key) {
                    Knob::Key(_) => None,
                    _ if i == 0 => Some(self.start.clone()),
                    _ => Some(Arc::new(self.make().join(diagnostics)?)),
                };
                let before = before.as_deref().map(|made| made.before(self.units));
                match changes::read(&one.change, mark, &self.table, before.as_ref()).join(&mut changed) {
                    Some(Changed::Keys(keys)) => changed.join(self.change(&keys)),
                    Some(Changed::Settings(settings)) => self.settings.extend(settings),
                    None => {}
                }
            }
            if !changed.is_clean() {
                diagnostics.join(changed);
                return None;
            }
            let mut made = self.make().join(diagnostics)?;
            made.assumed.extend(changed.assumptions());
            Some(made)
        })
    }

    /// Changes keys of the document; what knobs have set of them is set no longer.
    fn change(&mut self, keys: &[RawChange]) -> Diagnostics {
        let Read { made, diagnostics } = raw::make_all(keys, &self.table);
        if let Some(table) = made {
            self.settings.retain(|setting| !keys.iter().any(|key| setting.is_changed_by(key)));
            (self.table, self.is_other_table) = (Arc::new(table), true);
        }
        diagnostics
    }

    /// The job as changed so far.
    fn make(&self) -> Read<Made> {
        let raw = match self.is_other_table {
            true => raw::read(&self.table, self.files, self.source),
            false => Read::made((*self.start.raw).clone()),
        };
        let set = raw.map(|mut raw| {
            self.settings.iter().for_each(|setting| setting.put(&mut raw));
            raw
        });
        make_of(set, &self.table, self.units, self.source)
    }
}
