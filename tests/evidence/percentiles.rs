//! Percentiles and their intervals.
//!
//! Sources: `quantile_types.csv` (Hyndman & Fan's definitions on the numbers 1 to 10) and `quantile_ci_ranks.csv` (ranks of
//! distribution-free intervals, each tail at most 2.5 %), status computed.

use super::theory::Table;
use sim::{Sorted, interval_ranks};

#[test]
fn percentiles_are_of_type_7() {
    let table = Table::read("quantile_types.csv");
    let ten = Sorted::new((1..=10).map(f64::from));
    let rows: Vec<_> = table.rows.iter().filter(|r| table.text(r, "dataset") == "1..10").collect();
    assert_eq!(rows.len(), 7);
    for row in rows {
        let (share, truth) = (table.number(row, "p"), table.number(row, "type7"));
        assert!((ten.percentile(share).value - truth).abs() < 1e-9, "P{:.0}", 100.0 * share);
    }
}

#[test]
fn intervals_have_the_ranks_that_keep_each_tail_to_a_fortieth() {
    let table = Table::read("quantile_ci_ranks.csv");
    assert!(table.rows.len() > 50);
    for row in &table.rows {
        let (n, share) = (table.number(row, "n") as usize, table.number(row, "p"));
        let rank = |heading| table.text(row, heading).parse::<usize>().ok();
        let expected = (rank("lower_rank_l"), rank("upper_rank_u"));
        assert_eq!(interval_ranks(n, share), expected, "n {n}, P{:.0}", 100.0 * share);
    }
}
