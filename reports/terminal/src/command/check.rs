//! `heapcast check`: cautions and assumptions, without a run.

use super::{plan, read};
use crate::cli::CheckArgs;
use crate::failure::Failure;
use crate::say;
use reports::{documents, export, text};

pub(super) fn run(args: &CheckArgs) -> Result<(), Failure> {
    let scenario = read(&args.job)?;
    plan(&scenario)?;
    let units = scenario.units;
    if args.say.json {
        let json = export::check_json(&scenario, units).map_err(|e| documents::failed("the JSON", &e))?;
        return say::out_bytes(&json);
    }
    if args.say.quiet {
        return say::out(&format!("{}\n", text::verdict(&scenario)));
    }
    if !args.say.full {
        return say::out(&text::check_first(&scenario, units, say::width()));
    }
    say::out(&text::check(&scenario, units, say::width()))
}
