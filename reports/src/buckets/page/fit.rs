//! Whether a full bucket may be lifted, and whether it passes the gates.

use crate::buckets::findings::{BucketFindings, BucketsFindings, Standing};
use crate::render::page::fold::Part;
use crate::render::page::words::tight;
use maud::html;

pub(super) fn part(findings: &BucketsFindings) -> Part {
    let body = html! {
        dl { @for bucket in &findings.buckets {
            dt { (bucket.name) @if let Some(mark) = mark(bucket) { " · " (mark) } }
            dd {
                (tight(&bucket.what)) ". " (tight(&bucket.lift)) " " (tight(&bucket.gates))
            }
        } }
        p.note {
            "What may be lifted is calculated from the figures of the job, by the share of it that may be used; it settles "
            "nothing. The machine's manual does, with local codes and licensed practice."
        }
    };
    Part::folded("fit", "Lift and gates", body)
}

fn mark(bucket: &BucketFindings) -> Option<&'static str> {
    match bucket.standing {
        Standing::Fits => None,
        Standing::Today => Some("today's"),
        Standing::OverLift => Some("over what may be lifted"),
        Standing::NotThrough => Some("does not pass every gate"),
        Standing::Refused => Some("cannot be used"),
    }
}
