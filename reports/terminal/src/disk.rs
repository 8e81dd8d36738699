//! Files on disk, for questions, which read none themselves.

use crate::files;
use reports::ask::Reader;
use scenarios::{BucketList, JobFile, Refusal};
use std::path::Path;

/// Files as they are typed.
pub(crate) struct Disk;

impl Reader for Disk {
    fn job(&self, file: &Path) -> Result<JobFile, Refusal> {
        files::job_file(file)
    }

    fn buckets(&self, file: &Path) -> Result<BucketList, Refusal> {
        files::buckets(file)
    }
}
