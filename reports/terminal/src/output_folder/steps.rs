//! The steps by which new results come into place.

use super::journal::{JOURNAL, JOURNAL_DRAFT, Journal, NEW, OLD};
use super::manifest::{Manifest, NAME};
use super::place::Place;
use super::workplace::Workplace;
use reports::answer::Document;
use std::collections::BTreeSet;
use std::fs::{self, File, Metadata};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// What failed, by the name of the file, and why.
type Failed = (String, io::Error);

/// One step. After each of them a kill leaves something that the next run knows how to put right.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Step {
    /// A new folder appears.
    Appear { from: PathBuf, to: PathBuf },
    /// The new folder and the old one change places.
    Exchange,
    /// It is written down how to go back.
    WriteJournal(Journal),
    /// An old file is moved out of the way.
    MoveAside(String),
    /// A new file is moved into place.
    MoveIn(String),
    /// Everything is in place: there is no way back any more.
    RemoveJournal,
}

/// New results, written completely and not yet in place.
pub(super) struct Replacement<'a> {
    place: &'a Place,
    workplace: &'a Path,
    journal: Journal,
    may_exchange: bool,
}

impl<'a> Replacement<'a> {
    /// Writes the new files into the workplace, with the modes of those they replace.
    pub(super) fn stage(
        place: &'a Place,
        workplace: &'a Workplace,
        documents: &[Document],
        manifest: &Manifest,
        old: Option<Manifest>,
    ) -> Result<Self, Failed> {
        let workplace = workplace.path();
        let new = workplace.join(NEW);
        let way = place.to_be_made().map(|(_, way)| way).unwrap_or_default();
        let folder = new.join(way);
        fs::create_dir_all(&folder).map_err(|error| ("the new files".to_owned(), error))?;
        let list = manifest.bytes().map_err(|error| (NAME.to_owned(), error))?;
        // The manifest comes last: a folder without one is not complete.
        let files = documents.iter().map(|d| (d.name, d.bytes.as_slice())).chain([(NAME, list.as_slice())]);
        for (name, bytes) in files {
            let written = write(&folder.join(name), bytes, &place.folder().join(name), place);
            written.map_err(|error| (name.to_owned(), error))?;
        }
        let only_ours = old.as_ref().is_some_and(|old| holds_only(place.folder(), old));
        let all = |error| ("the folder".to_owned(), error);
        let mut may_exchange = only_ours && place.nobody_stands_in_it() && place.is_beside(workplace);
        if place.is_there() {
            let (was, is) = (fs::metadata(place.folder()).map_err(all)?, fs::metadata(&new).map_err(all)?);
            may_exchange &= same_owner(&was, &is);
            fs::set_permissions(&new, was.permissions()).map_err(all)?;
        }
        sync(&folder).map_err(all)?;
        let new_hash = |name: &str| match name {
            NAME => super::manifest::hash_of(&folder.join(NAME)).ok(),
            name => manifest.hash(name).map(str::to_owned),
        };
        let mut names: BTreeSet<String> = manifest.clone().into_names().collect();
        names.extend(old.into_iter().flat_map(Manifest::into_names));
        names.remove(NAME);
        // The old manifest goes first and comes back last: what stands aside is known by it.
        let names = [NAME.to_owned()].into_iter().chain(names);
        let files = names.map(|name| (name.clone(), new_hash(&name))).collect();
        Ok(Self { place, workplace, journal: Journal { files }, may_exchange })
    }

    /// Puts everything into place. On an error it is not undone here.
    pub(super) fn carry_out(&self) -> Result<(), Failed> {
        let mut steps = self.steps();
        if steps == [Step::Exchange] {
            match self.take(&Step::Exchange) {
                Ok(()) => return Ok(()),
                // Not every file system can; nothing has changed.
                Err(_) => steps = self.one_by_one(),
            }
        }
        steps.iter().try_for_each(|step| self.take(step).map_err(|error| (step.name(), error)))
    }

    /// The steps to take.
    pub(super) fn steps(&self) -> Vec<Step> {
        match self.place.to_be_made() {
            Some((to, _)) => vec![Step::Appear { from: self.workplace.join(NEW), to }],
            None if self.may_exchange => vec![Step::Exchange],
            None => self.one_by_one(),
        }
    }

    /// The steps where the folder itself has to stay.
    pub(super) fn one_by_one(&self) -> Vec<Step> {
        let names = self.journal.files.iter().map(|(name, _)| name);
        let aside =
            names.filter(|name| self.place.folder().join(name).exists()).cloned().map(Step::MoveAside);
        let new = self.journal.files.iter().filter(|(_, hash)| hash.is_some());
        let put = new.map(|(name, _)| Step::MoveIn(name.clone()));
        let first = [Step::WriteJournal(self.journal.clone())];
        first.into_iter().chain(aside).chain(put).chain([Step::RemoveJournal]).collect()
    }

    /// Where another process has made the folders above in the meantime, the folder itself appears in them.
    fn appear_below(&self, error: io::Error) -> io::Result<()> {
        let folder = self.place.folder();
        match self.place.to_be_made() {
            Some((top, way)) if top.is_dir() && fs::symlink_metadata(folder).is_err() => {
                folder.parent().map_or(Ok(()), fs::create_dir_all)?;
                fs::rename(self.workplace.join(NEW).join(way), folder)
            }
            _ => Err(error),
        }
    }

    /// Takes a step.
    pub(super) fn take(&self, step: &Step) -> io::Result<()> {
        let (folder, new, old) = (self.place.folder(), self.workplace.join(NEW), self.workplace.join(OLD));
        match step {
            Step::Appear { from, to } => fs::rename(from, to).or_else(|error| self.appear_below(error)),
            Step::Exchange => exchange(&new, folder),
            Step::WriteJournal(journal) => {
                fs::create_dir(&old)?;
                let draft = self.workplace.join(JOURNAL_DRAFT);
                let mut file = File::create(&draft)?;
                file.write_all(&serde_json::to_vec(journal)?)?;
                file.sync_all()?;
                fs::rename(draft, self.workplace.join(JOURNAL))
            }
            Step::MoveAside(name) => move_file(&folder.join(name), &old.join(name)),
            Step::MoveIn(name) => move_file(&new.join(name), &folder.join(name)),
            Step::RemoveJournal => {
                sync(folder)?;
                fs::remove_file(self.workplace.join(JOURNAL))
            }
        }
    }
}

impl Step {
    /// What it moves.
    fn name(&self) -> String {
        match self {
            Self::MoveAside(name) | Self::MoveIn(name) => name.clone(),
            Self::Appear { .. } | Self::Exchange => "the folder".to_owned(),
            Self::WriteJournal(_) | Self::RemoveJournal => "the journal".to_owned(),
        }
    }
}

/// Moves a file to where nothing is.
fn move_file(from: &Path, to: &Path) -> io::Result<()> {
    match fs::symlink_metadata(to) {
        Ok(about) if about.is_dir() => Err(io::ErrorKind::IsADirectory.into()),
        Ok(_) => Err(io::ErrorKind::AlreadyExists.into()),
        Err(error) if error.kind() == io::ErrorKind::NotFound => fs::rename(from, to),
        Err(error) => Err(error),
    }
}

/// A full disk may only show when the bytes are made to reach it.
fn write(path: &Path, bytes: &[u8], old: &Path, place: &Place) -> io::Result<()> {
    let mut file = File::create_new(path)?;
    file.write_all(bytes)?;
    keep_mode(&file, old, place)?;
    file.sync_all()
}

/// The mode of the file replaced; a file that was not there before is no more open than its folder.
#[cfg(unix)]
fn keep_mode(file: &File, old: &Path, place: &Place) -> io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    if !place.is_there() {
        return Ok(());
    }
    let mut permissions = file.metadata()?.permissions();
    let mode = match fs::symlink_metadata(old) {
        Ok(about) => about.permissions().mode() & 0o777,
        Err(_) => permissions.mode() & fs::metadata(place.folder())?.permissions().mode() & 0o666 | 0o600,
    };
    permissions.set_mode(mode);
    file.set_permissions(permissions)
}

#[cfg(not(unix))]
fn keep_mode(_: &File, _: &Path, _: &Place) -> io::Result<()> {
    Ok(())
}

/// Whether a folder holds nothing but what the manifest lists.
fn holds_only(folder: &Path, manifest: &Manifest) -> bool {
    let known = |name: &str| name == NAME || manifest.hash(name).is_some();
    fs::read_dir(folder).is_ok_and(|mut entries| {
        entries.all(|entry| entry.is_ok_and(|entry| entry.file_name().to_str().is_some_and(known)))
    })
}

/// The entries of a folder are made to reach the disk as well.
#[cfg(unix)]
fn sync(folder: &Path) -> io::Result<()> {
    match File::open(folder)?.sync_all() {
        // Not every file system can.
        Err(error) if error.kind() == io::ErrorKind::InvalidInput => Ok(()),
        other => other,
    }
}

#[cfg(not(unix))]
fn sync(_: &Path) -> io::Result<()> {
    Ok(())
}

#[cfg(unix)]
fn same_owner(a: &Metadata, b: &Metadata) -> bool {
    use std::os::unix::fs::MetadataExt;
    (a.uid(), a.gid()) == (b.uid(), b.gid())
}

#[cfg(not(unix))]
fn same_owner(_: &Metadata, _: &Metadata) -> bool {
    true
}

/// Two folders change places in one step.
#[cfg(any(target_os = "linux", target_os = "android", target_vendor = "apple"))]
fn exchange(a: &Path, b: &Path) -> io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    Ok(renameat_with(CWD, a, CWD, b, RenameFlags::EXCHANGE)?)
}

#[cfg(not(any(target_os = "linux", target_os = "android", target_vendor = "apple")))]
fn exchange(_: &Path, _: &Path) -> io::Result<()> {
    Err(io::ErrorKind::Unsupported.into())
}
