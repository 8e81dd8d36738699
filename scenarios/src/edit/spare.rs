//! Alternatives that can be no more, because of what was added or removed.

use super::draft::{Draft, Step};
use super::fault::Fault;
use super::key::names;
use crate::reading::JobFile;
use crate::signs::printable;

/// Takes the alternatives out in which something is wrong, if nothing else is.
pub(super) fn spare(draft: &mut Draft) -> Result<(), Fault> {
    let Err(refusal) = JobFile::of_text(draft.text(), "", draft.files.clone()) else { return Ok(()) };
    let names = names(draft.table(), "alternative");
    for (at, name) in names.iter().enumerate().rev() {
        let label = format!("alternative \"{}\"", printable(name));
        if !name.is_empty() && refusal.problems.iter().any(|problem| problem.key.starts_with(&label)) {
            draft.cut(&[Step::Key("alternative".into()), Step::At(at)])?;
        }
    }
    Ok(())
}
