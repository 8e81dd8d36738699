//! What the figure of waiting shows, with hand-made accounts.

use super::*;
use crate::chart::fixtures::crew;
use sim::{LoaderActivity, RakerActivity};

fn accounts(loaders: &[&[(LoaderActivity, i64)]], rakers: &[&[(RakerActivity, i64)]]) -> (Job, Accounts) {
    let mut job = crew(loaders.len(), rakers.len(), 100.0);
    job.loaders
        .iter_mut()
        .zip(["tractor", "barrow", "skid loader"])
        .for_each(|(l, name)| l.name = name.into());
    job.rakers.iter_mut().zip(["Robin", "Kim", "Alex"]).for_each(|(r, name)| r.name = name.into());
    let mut accounts = Accounts::empty(loaders.len(), rakers.len(), 1);
    for (row, times) in accounts.loaders.iter_mut().zip(loaders) {
        times.iter().for_each(|(activity, time)| row.add(*activity, Duration::from_micros(*time)));
    }
    for (row, times) in accounts.rakers.iter_mut().zip(rakers) {
        times.iter().for_each(|(activity, time)| row.add(*activity, Duration::from_micros(*time)));
    }
    (job, accounts)
}

use LoaderActivity as L;
use RakerActivity as R;

#[test]
fn the_shares_of_a_row_add_up_to_a_hundred_and_the_steps_of_a_cycle_are_one() {
    let every: Vec<_> = L::ALL.into_iter().zip(1..).collect();
    let raker: Vec<_> = R::ALL.into_iter().zip(1..).collect();
    let (job, accounts) = accounts(&[&every], &[&raker]);
    let data = prepare("A finding".into(), &job, &accounts);
    assert_eq!(data.title, "A finding");
    for row in &data.rows {
        assert!((row.parts.iter().map(|(_, share)| share).sum::<f64>() - 100.0).abs() < 1e-9, "{row:?}");
    }
    let cycle = [L::Loading, L::Hauling, L::Returning, L::Passing, L::Dumping];
    let cycle: i64 = cycle.into_iter().map(|activity| activity as i64 + 1).sum();
    assert!((data.rows[0].share(Doing::Working) - cycle as f64 / 105.0 * 100.0).abs() < 1e-9);
    assert_eq!((data.loaders, data.rows.len()), (1, 2));
}

#[test]
fn somebody_who_is_never_on_the_job_has_an_empty_row() {
    let (job, accounts) = accounts(&[&[(L::Hauling, 1)], &[]], &[]);
    assert_eq!(prepare("A finding".into(), &job, &accounts).rows[1].parts, []);
}
