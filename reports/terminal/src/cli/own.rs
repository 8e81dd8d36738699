//! What the terminal itself wants to know of a question: threads, the folder, rows, limits, what to say.

use crate::part_file::Share;
use clap::{Arg, ArgMatches, Args, Command, FromArgMatches, value_parser};
use reports::answer::MOST_ROWS;
use reports::answer::RunRows;
use reports::ask::{MOST_RUNS, Question, whole};
use scenarios::typed::time;
use std::path::PathBuf;

/// Everything that is asked of the terminal.
#[derive(Debug)]
pub(crate) struct OwnArgs {
    /// Threads to work with.
    pub(crate) threads: Option<u16>,
    /// Parts of the runs.
    pub(crate) parts: PartArgs,
    /// The folder for the results; `None` where there are no files.
    pub(crate) out: Option<PathBuf>,
    /// The rows.
    pub(crate) rows: RowArgs,
    /// What it may cost.
    pub(crate) limits: LimitArgs,
    /// What to say.
    pub(crate) say: SayArgs,
}

impl OwnArgs {
    /// What is told beside the number of runs.
    pub(super) fn beside_runs(question: &Question, command: Command) -> Command {
        if question.folder.is_some() { ThreadArgs::augment_args(command) } else { command }
    }

    /// What is told behind all that the question wants to know.
    pub(super) fn behind(question: &Question, mut command: Command) -> Command {
        if question.in_parts {
            command = PartArgs::augment_args(command);
        }
        if let Some(folder) = question.folder {
            let out = Arg::new("out").long("out").value_name("FOLDER").help("Folder for the results");
            command = command.arg(out.default_value(folder.name).value_parser(value_parser!(PathBuf)));
            if folder.has_run_rows {
                command = RowArgs::augment_args(command);
            }
            command = LimitArgs::augment_args(command);
        }
        SayArgs::augment_args(command)
    }

    /// Takes all of it.
    pub(super) fn read(question: &Question, typed: &mut ArgMatches) -> Result<Self, clap::Error> {
        let has_rows = question.folder.is_some_and(|folder| folder.has_run_rows);
        let has_runs = question.folder.is_some();
        Ok(Self {
            threads: if has_runs { ThreadArgs::from_arg_matches_mut(typed)?.threads } else { None },
            parts: if question.in_parts {
                PartArgs::from_arg_matches_mut(typed)?
            } else {
                PartArgs::default()
            },
            out: if has_runs { typed.remove_one("out") } else { None },
            rows: if has_rows { RowArgs::from_arg_matches_mut(typed)? } else { RowArgs::NONE },
            limits: if has_runs { LimitArgs::from_arg_matches_mut(typed)? } else { LimitArgs::NONE },
            say: SayArgs::from_arg_matches_mut(typed)?,
        })
    }
}

/// How the work is done.
#[derive(Args, Clone, Copy, Debug)]
struct ThreadArgs {
    /// Threads to work with [default: all there are]
    #[arg(long, value_name = "NUMBER", value_parser = threads)]
    threads: Option<u16>,
}

fn threads(text: &str) -> Result<u16, String> {
    whole(text, 1, 1024).map(|number| number as u16)
}

/// Runs that are shared among several processes.
#[derive(Args, Clone, Debug, Default)]
pub(crate) struct PartArgs {
    /// Make one part of the runs and no report, such as 2/4; every part may be made by another process or machine
    #[arg(long, value_name = "PART/PARTS", conflicts_with_all = ["within", "by", "json", "full"])]
    pub(crate) part: Option<Share>,
    /// Take the runs from the folders of all parts instead of making them
    #[arg(long, value_name = "FOLDER", num_args = 1.., conflicts_with_all = ["part", "within", "runs", "seed"])]
    pub(crate) merge: Vec<PathBuf>,
}

/// What is written of the single runs.
#[derive(Args, Clone, Copy, Debug)]
pub(crate) struct RowArgs {
    /// Runs that runs.csv has rows for at the most: the first ones
    #[arg(long, default_value_t = MOST_ROWS, value_name = "NUMBER", value_parser = rows)]
    pub(crate) rows: u32,
    /// Write runs.csv.gz (gzip) in place of runs.csv
    #[arg(long)]
    pub(crate) compress: bool,
}

fn rows(text: &str) -> Result<u32, String> {
    whole(text, 0, MOST_RUNS)
}

impl RowArgs {
    /// For a command without a table of runs.
    const NONE: Self = Self { rows: 0, compress: false };

    /// What is wanted of the table.
    pub(crate) fn wanted(self) -> RunRows {
        RunRows { most: self.rows as usize, compress: self.compress }
    }
}

/// What a command may cost before it is refused.
#[derive(Args, Clone, Copy, Debug)]
pub(crate) struct LimitArgs {
    /// Refuse what would surely take longer
    #[arg(long, default_value = "1 h", value_name = "TIME", value_parser = time)]
    pub(crate) max_time: f64,
    /// Refuse what would need more memory, or write more
    #[arg(long, default_value = "2 GB", value_name = "SIZE", value_parser = size)]
    pub(crate) max_size: f64,
}

impl LimitArgs {
    /// For a command without runs.
    const NONE: Self = Self { max_time: f64::INFINITY, max_size: f64::INFINITY };
}

/// A size such as `500 MB` or `4 GB` \[bytes\].
fn size(text: &str) -> Result<f64, String> {
    let right = || "write a size with its unit, such as \"500 MB\" or \"4 GB\"".to_owned();
    let lower = text.trim().to_ascii_lowercase();
    let (number, unit) = [("gb", 1e9), ("mb", 1e6)]
        .iter()
        .find_map(|(end, unit)| Some((lower.strip_suffix(end)?, unit)))
        .ok_or_else(right)?;
    let number: f64 = number.trim().parse().map_err(|_| right())?;
    Some(number * unit).filter(|bytes| bytes.is_finite() && *bytes > 0.0).ok_or_else(right)
}

/// What is said on the terminal.
#[derive(Args, Clone, Copy, Debug)]
pub(crate) struct SayArgs {
    /// Say one line and no more; no progress bar
    #[arg(long, short)]
    pub(crate) quiet: bool,
    /// Show all tables, not only the answer
    #[arg(long, conflicts_with_all = ["quiet", "json"])]
    pub(crate) full: bool,
    /// Print everything as JSON instead of text
    #[arg(long, conflicts_with = "quiet")]
    pub(crate) json: bool,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_size_has_a_unit() {
        assert_eq!([size("2 GB"), size("500mb")], [Ok(2e9), Ok(5e8)]);
        for wrong in ["2", "GB", "-1 GB", "nan MB", "inf GB", "0 MB", ""] {
            assert!(size(wrong).is_err(), "{wrong}");
        }
    }
}
