//! A pile that runs out, and a truck that comes at its hour or late.
//!
//! Source: `delivery.csv`, status computed.

use super::*;

/// The loader waits for the truck if it is through first.
pub(crate) fn late_truck() -> Comparison {
    let mut comparison = Comparison::new(
        "A loader whose pile runs out waits for a late truck as long, and finishes as late, as it must",
        "max(sum of the first loads, hour + lateness) + sum of the others, by quadrature; second: a Markov chain before the hour and another \
         after it, by uniformisation: they agree to 1e-12",
        Status::Computed,
        MOST,
    );
    let table = table("delivery.csv");
    for row in &table.rows {
        let f = |heading: &str| table.number(row, heading);
        let (loads, on_hand) = (f("loads") as u32, f("on_hand"));
        let mut job = loading(job(loads, 1), 1.0, exponential());
        job.stockpiles[0].on_hand_m3 = on_hand;
        job.stockpiles[0].deliveries = vec![Delivery {
            at_s: f("promised") * UNIT_S,
            late_s: Distribution::Exponential { mean: f("late") * UNIT_S },
            volume_m3: f64::from(loads) - on_hand,
        }];
        let study = study(&job, RUNS);
        let what =
            format!("{on_hand} of {loads} loads there, the rest at {} and {} late", f("promised"), f("late"));
        percentiles(&mut comparison, &what, &study.sorted(completion), f, ROUNDING);
        times(&mut comparison, &what, &study, &f, &["waiting_delivery"]);
    }
    comparison
}

#[test]
fn a_loader_whose_pile_runs_out_waits_for_a_late_truck() {
    late_truck().judge(32);
}
