//! Puts right what an interrupted replacement left: goes back by the journal, and removes what is ours from the workplace.

use super::journal::{JOURNAL, JOURNAL_DRAFT, Journal, NEW, OLD};
use super::manifest::{self, Manifest, NAME, Whose};
use super::place::Place;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Goes back to what was there before an interrupted replacement, and empties the workplace.
pub(super) fn restore(place: &Place, workplace: &Path) -> io::Result<()> {
    let journal = workplace.join(JOURNAL);
    match fs::read(&journal) {
        Ok(bytes) => {
            go_back(place.folder(), workplace, &serde_json::from_slice(&bytes)?)?;
            fs::remove_file(&journal)?;
        }
        Err(error) if error.kind() == io::ErrorKind::NotFound => {}
        Err(error) => return Err(error),
    }
    tidy(place.folder(), workplace)
}

/// Takes new files away again and brings the old ones back, the manifest last.
fn go_back(folder: &Path, workplace: &Path, journal: &Journal) -> io::Result<()> {
    if !journal.files.iter().all(|(name, _)| manifest::is_plain(name)) {
        return Err(io::Error::new(io::ErrorKind::InvalidData, "its journal was not written by heapcast"));
    }
    for (name, new) in journal.files.iter().rev() {
        let (here, aside) = (folder.join(name), workplace.join(OLD).join(name));
        let moved_in = new.is_some() && !is_there(&workplace.join(NEW).join(name));
        if moved_in && manifest::hash_of(&here).ok() == *new {
            fs::remove_file(&here)?;
        }
        if is_there(&aside) {
            carry(&aside, folder, name)?;
        }
    }
    Ok(())
}

/// Removes what heapcast wrote from the workplace; anything else that got there is carried into the folder.
pub(super) fn tidy(folder: &Path, workplace: &Path) -> io::Result<()> {
    gone(fs::remove_file(workplace.join(JOURNAL_DRAFT)))?;
    [NEW, OLD].iter().try_for_each(|part| discard(&workplace.join(part), folder))
}

fn discard(part: &Path, folder: &Path) -> io::Result<()> {
    let Some(manifest) = Manifest::read(part) else {
        // New files, not yet complete: nobody else writes here.
        return gone(fs::remove_dir_all(part));
    };
    for entry in fs::read_dir(part)? {
        let entry = entry?;
        let name = entry.file_name();
        if name == NAME {
            continue;
        }
        let whose = name.to_str().map(|name| manifest::whose(Some(&manifest), part, name));
        match whose {
            Some(Whose::Ours) => fs::remove_file(entry.path())?,
            _ => carry(&entry.path(), folder, &name.to_string_lossy())?,
        }
    }
    // The manifest stays until nothing else is left, so that a second try knows the files too.
    fs::remove_file(part.join(NAME))?;
    fs::remove_dir(part)
}

/// Moves something into a folder, under another name if its own is taken.
fn carry(from: &Path, folder: &Path, name: &str) -> io::Result<()> {
    let kept = |n: u32| folder.join(if n == 1 { format!("{name}.kept") } else { format!("{name}.kept-{n}") });
    let mut candidates = [folder.join(name)].into_iter().chain((1..=u32::MAX).map(kept));
    let free: Option<PathBuf> = candidates.find(|path| !is_there(path));
    free.map_or(Err(io::ErrorKind::AlreadyExists.into()), |to| fs::rename(from, to))
}

fn is_there(path: &Path) -> bool {
    fs::symlink_metadata(path).is_ok()
}

fn gone(result: io::Result<()>) -> io::Result<()> {
    match result {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        other => other,
    }
}
