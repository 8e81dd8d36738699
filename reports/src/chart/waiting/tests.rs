//! What the figure of waiting says, with hand-made books.

use super::*;
use crate::chart::invented::crew;

fn books(loaders: &[&[(LoaderActivity, i64)]], rakers: &[&[(RakerActivity, i64)]]) -> (Job, Books) {
    let mut job = crew(loaders.len(), rakers.len(), 100.0);
    job.loaders
        .iter_mut()
        .zip(["tractor", "barrow", "skid loader"])
        .for_each(|(l, name)| l.name = name.into());
    job.rakers.iter_mut().zip(["Robin", "Kim", "Alex"]).for_each(|(r, name)| r.name = name.into());
    let mut books = Books::empty(loaders.len(), rakers.len(), 1);
    for (row, times) in books.loaders.iter_mut().zip(loaders) {
        times.iter().for_each(|(activity, time)| row[*activity as usize] += time);
    }
    for (row, times) in books.rakers.iter_mut().zip(rakers) {
        times.iter().for_each(|(activity, time)| row[*activity as usize] += time);
    }
    (job, books)
}

fn title(loaders: &[&[(LoaderActivity, i64)]], rakers: &[&[(RakerActivity, i64)]]) -> String {
    let (job, books) = books(loaders, rakers);
    prepare(&job, &books).title
}

use LoaderActivity as L;
use RakerActivity as R;

#[test]
fn the_title_names_the_longest_waiter_and_whom_they_wait_for() {
    let loader: &[_] = &[(L::Loading, 67), (L::WaitingForRoom, 33)];
    let raker: &[_] = &[(R::Raking, 98), (R::Waiting, 2)];
    assert_eq!(title(&[loader], &[raker]), "The loader waits for the rake a third of the time");
    let raker: &[_] = &[(R::Raking, 90), (R::Waiting, 10)];
    assert_eq!(
        title(&[loader], &[raker]),
        "The loader waits for the rake a third of the time; the raker waits for the loader a tenth of the time"
    );
    let raker: &[_] = &[(R::Raking, 50), (R::Waiting, 50)];
    assert_eq!(title(&[&[(L::Loading, 1)]], &[raker]), "The raker waits for the loader half of the time");
}

#[test]
fn the_title_names_one_of_a_crew_who_waits_longer_than_the_others() {
    let idle: &[_] = &[(L::Hauling, 60), (L::WaitingForFace, 40)];
    let busy: &[_] = &[(L::Hauling, 90), (L::WaitingForFace, 10)];
    let raker: &[_] = &[(R::Raking, 1)];
    assert_eq!(title(&[busy, idle], &[raker]), "Barrow waits for a turn at the pile two fifths of the time");
    assert_eq!(
        title(&[idle, idle], &[raker]),
        "The loaders wait for a turn at the pile two fifths of the time"
    );
    assert_eq!(
        title(&[idle, busy, idle], &[raker]),
        "2 of the 3 loaders wait for a turn at the pile two fifths of the time"
    );
}

#[test]
fn every_cause_of_waiting_has_its_words() {
    let loader = |cause| title(&[&[(L::Hauling, 1), (cause, 1)]], &[&[(R::Raking, 1)]]);
    assert_eq!(loader(L::WaitingForPass), "The loader waits at the gate half of the time");
    assert_eq!(loader(L::WaitingForDelivery), "The loader waits for deliveries half of the time");
    let raker: &[_] = &[(R::Raking, 3), (R::StandingClear, 1)];
    assert_eq!(
        title(&[&[(L::Hauling, 1)]], &[raker]),
        "The raker stands clear of the loader a quarter of the time"
    );
    let nobody_rakes = title(&[&[(L::Hauling, 1), (L::WaitingForRoom, 1)]], &[]);
    assert_eq!(nobody_rakes, "The loader waits for room to dump half of the time");
}

#[test]
fn a_loader_that_is_done_early_waits_for_the_rake_to_finish() {
    let loader: &[_] = &[(L::Hauling, 70), (L::Done, 30)];
    let raker: &[_] = &[(R::Raking, 88), (R::StandingClear, 12)];
    assert_eq!(
        title(&[loader], &[raker]),
        "The loader waits for the rake to finish three tenths of the time; \
         the raker stands clear of the loader an eighth of the time"
    );
    assert_eq!(title(&[loader], &[]), "Nobody waits for anybody");
}

#[test]
fn the_title_stays_true_where_nobody_waits_much() {
    let loader: &[_] = &[(L::Hauling, 97), (L::WaitingForRoom, 3)];
    let raker: &[_] = &[(R::Raking, 99), (R::Waiting, 1)];
    assert_eq!(
        title(&[loader], &[raker]),
        "Nobody waits for long: at most, the loader waits for the rake 3 % of the time"
    );
    assert_eq!(title(&[&[(L::Hauling, 1)]], &[&[(R::Raking, 1)]]), "Nobody waits for anybody");
}

#[test]
fn the_shares_of_a_row_add_up_to_a_hundred_and_the_steps_of_a_cycle_are_one() {
    let every: Vec<_> = L::ALL.into_iter().zip(1..).collect();
    let raker: Vec<_> = R::ALL.into_iter().zip(1..).collect();
    let (job, books) = books(&[&every], &[&raker]);
    let data = prepare(&job, &books);
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
    let (job, books) = books(&[&[(L::Hauling, 1)], &[]], &[]);
    assert_eq!(prepare(&job, &books).rows[1].parts, []);
}
