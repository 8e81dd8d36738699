//! Says who waits longest, and for whom.

use super::{Doing, Row};
use crate::chart::words::{share_of_time, short_name};
use crate::findings::percent;

/// Waits under this share of the time are not worth a title \[%\] (our own choice).
const HARDLY: f64 = 5.0;
/// How far the members of a crew may lie from one another and still be spoken of as one \[percentage points\].
const ALIKE: f64 = 6.0;

struct Wait {
    who: String,
    many: bool,
    doing: Doing,
    percent: f64,
}

/// The finding in a sentence. The longest single wait of anybody decides; where others of its
/// kind wait about as long, it is said of all of them, with their mean.
pub(super) fn title(rows: &[Row], loaders: usize) -> String {
    let (loader_rows, raker_rows) = rows.split_at(loaders.min(rows.len()));
    let with_rakers = !raker_rows.is_empty();
    // A loader that is done while heaps are still raked out waits for the rake as well.
    let held_up = |doing: Doing| doing.is_waiting() || (with_rakers && doing == Doing::Done);
    let (of_loaders, of_rakers) =
        (longest(loader_rows, "loader", held_up), longest(raker_rows, "raker", Doing::is_waiting));
    let (first, second) = match (of_loaders, of_rakers) {
        (Some(l), Some(r)) if r.percent > l.percent => (r, Some(l)),
        (Some(l), r) => (l, r),
        (None, Some(r)) => (r, None),
        (None, None) => return "Nobody waits for anybody".into(),
    };
    let whom = Whom { loaders: loader_rows.len(), rakers: raker_rows.len() };
    if first.percent < HARDLY {
        let verb = whom.verb(&first, first.many);
        return format!(
            "Nobody waits for long: at most, {} {verb} {} of the time",
            first.who,
            percent(first.percent / 100.0)
        );
    }
    let sentence = |wait: &Wait| {
        format!("{} {} {}", wait.who, whom.verb(wait, wait.many), share_of_time(wait.percent / 100.0))
    };
    let main = crate::findings::capital(&sentence(&first));
    match second {
        Some(second) if second.percent >= HARDLY => format!("{main}; {}", sentence(&second)),
        _ => main,
    }
}

/// The longest single wait among the loaders or the rakers.
fn longest(rows: &[Row], kind: &str, held_up: impl Fn(Doing) -> bool) -> Option<Wait> {
    let waits = rows
        .iter()
        .flat_map(|row| row.parts.iter().filter(|(d, _)| held_up(*d)).map(move |part| (row, part)));
    let (row, (doing, most)) = waits.max_by(|a, b| a.1.1.total_cmp(&b.1.1))?;
    let alike: Vec<f64> =
        rows.iter().map(|row| row.share(*doing)).filter(|share| most - share <= ALIKE).collect();
    let (who, many) = match alike.len() {
        _ if rows.len() == 1 => (format!("the {kind}"), false),
        1 => (short_name(&row.name), false),
        all if all == rows.len() => (format!("the {kind}s"), true),
        some => (format!("{some} of the {} {kind}s", rows.len()), true),
    };
    let percent = alike.iter().sum::<f64>() / alike.len() as f64;
    Some(Wait { who, many, doing: *doing, percent })
}

struct Whom {
    loaders: usize,
    rakers: usize,
}

impl Whom {
    fn verb(&self, wait: &Wait, many: bool) -> String {
        let one =
            |one: &str, more: &str, count: usize| if count == 1 { one.to_owned() } else { more.to_owned() };
        let loader = one("the loader", "the loaders", self.loaders);
        let waits = if many { "wait" } else { "waits" };
        match wait.doing {
            Doing::WaitingForRoom if self.rakers > 0 => format!("{waits} for the rake"),
            Doing::WaitingForRoom => format!("{waits} for room to dump"),
            Doing::WaitingForFace => format!("{waits} for a turn at the pile"),
            Doing::WaitingForPass => format!("{waits} at the gate"),
            Doing::WaitingForDelivery => format!("{waits} for deliveries"),
            Doing::Done if self.loaders > 1 => format!("{waits} for the others to finish"),
            Doing::Done => format!("{waits} for the rake to finish"),
            Doing::StandingClear => format!("{} clear of {loader}", if many { "stand" } else { "stands" }),
            _ => format!("{waits} for {loader}"),
        }
    }
}
