//! What can be typed after `heapcast quote`.

use super::{JobArgs, LimitArgs, RowArgs, RunsArgs, SayArgs};
use clap::Args;
use reports::asked_money::{Money, hourly, price, share};
use std::path::PathBuf;

pub(super) const EXAMPLES: &str = "\
Examples:
  heapcast quote arena.toml                               the price that loses money 1 job in 10
  heapcast quote arena.toml --risk \"5 %\" --margin \"15 %\"   lose money 1 job in 20, keep 15 % of the price
  heapcast quote arena.toml --price '$2,400'              what that price carries
  heapcast quote arena.toml --rate '$95/h'                hours, a rate and a limit for the client

Write sums in single quotes: between double quotes most shells take $2 for something of their own. A margin is a share of the
price: price = mean cost / (1 - margin). Of what risk and margin ask for, the higher is quoted.

The folder then holds report.html with all costs, for you alone; client.html for the client, without them; summary.json,
cost.csv, risk.csv, runs.csv and the charts as SVG. With --rate and without --price the client is offered hours and a rate.";

/// `heapcast quote`.
#[derive(Args, Debug)]
pub(crate) struct QuoteArgs {
    /// The job.
    #[command(flatten)]
    pub(crate) job: JobArgs,
    /// Seed, runs and threads.
    #[command(flatten)]
    pub(crate) study: RunsArgs,
    /// Risk of losing money that you take: a share of jobs like this
    #[arg(long, default_value = "10 %", value_name = "SHARE", value_parser = share)]
    pub(crate) risk: f64,
    /// Share of the price that is to stay with you on average
    #[arg(long, value_name = "SHARE", value_parser = share)]
    pub(crate) margin: Option<f64>,
    /// A price of your own to be judged, such as '$2,400'
    #[arg(long, value_name = "SUM", value_parser = price)]
    pub(crate) price: Option<Money>,
    /// What you bill for an hour on the job, the whole crew together, such as '$95/h'
    #[arg(long, value_name = "SUM", value_parser = hourly)]
    pub(crate) rate: Option<Money>,
    /// Folder for the results
    #[arg(long, default_value = "quote", value_name = "FOLDER")]
    pub(crate) out: PathBuf,
    /// The rows.
    #[command(flatten)]
    pub(crate) rows: RowArgs,
    /// What it may cost.
    #[command(flatten)]
    pub(crate) limits: LimitArgs,
    /// What to say.
    #[command(flatten)]
    pub(crate) say: SayArgs,
}
