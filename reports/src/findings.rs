//! What a forecast says, in words and numbers: pure functions from a [`Forecast`](crate::forecast::Forecast). Screen,
//! page, charts and `summary.json` say the same thing because they all say what stands here.

mod amounts;
mod assumed;
mod done_by;
mod estimate;
pub(crate) mod halfway;
mod handbook;
mod left_over;
pub mod load_story;
mod odds;
mod order;
pub(crate) mod relief;
mod said;
mod saved;
mod the_job;
mod tries;
mod waiting;
mod warnings;

pub use amounts::{Amount, NO_PRICES, Said, amounts, is_fuelled, is_priced};
pub use assumed::{Assumed, AssumedLine, assumed};
pub use done_by::{BeDone, DoneBy, DoneRow, PLAN_SHARE, done_by, done_rows};
pub use estimate::Estimate;
pub use handbook::{HandbookFindings, handbook};
pub use left_over::{LeftOver, left_over, left_over_in};
pub use odds::{days_in, label, percent};
pub use order::{OrderFindings, order, order_of};
pub use relief::{ReliefFindings, ReliefLine, improvement_words, relief};
pub(crate) use relief::{relief_of, worth_naming_from};
pub use said::{
    Calendar, Done, about_duration, about_money, about_volume, done_s, promised_duration, share_of_runs,
};
pub use saved::{Saved, SavedSaid};
pub(crate) use saved::{Unit, saved};
pub use the_job::the_job;
pub(crate) use the_job::{the_job_in_lines, the_job_in_short};
pub(crate) use tries::RELIEF_RUNS;
pub use tries::tries;
pub use waiting::{
    LOADER_KEYS, Part, RAKER_KEYS, Role, WhoWaits, Worker, who_waits, who_waits_by, who_waits_in,
    who_waits_with,
};
pub use warnings::{Warning, Warnings, warnings};

/// With its first letter a capital.
pub(crate) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// With its first letter small.
pub(crate) fn lower(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

/// With a capital at its start and a full stop at its end.
pub(crate) fn sentence(words: &str) -> String {
    let words = words.trim();
    let stop = if words.ends_with(['.', '!', '?', ':']) { "" } else { "." };
    format!("{}{stop}", capital(words))
}

/// A length of time in hours and minutes: `5:27`.
pub(crate) fn hours_and_minutes(seconds: f64) -> String {
    let minutes = (seconds / 60.0).round().max(0.0) as u64;
    format!("{}:{:02}", minutes / 60, minutes % 60)
}

/// `a to b`, or one of them where they are the same.
pub(crate) fn span(from: &str, to: &str) -> String {
    if from == to { from.to_owned() } else { format!("{from} to {to}") }
}
