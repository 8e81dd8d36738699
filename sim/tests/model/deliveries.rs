//! Sections 1, 3.1 and 5: material that comes later.

use super::jobs::*;
use super::log::*;
use sim::*;

fn truck(job: &Job, after_s: f64, volume_m3: f64) -> Delivery {
    Delivery { at_s: job.shift.start_s + after_s, late_s: Distribution::Constant(0.0), volume_m3 }
}

/// No rakers; so much on hand, so much needed, and trucks with 1 m3 each after so many seconds.
fn with_trucks(on_hand_m3: f64, need_m3: f64, after_s: &[f64]) -> Job {
    let mut job = without_rakers(one_and_one());
    job.stockpiles[0].on_hand_m3 = on_hand_m3;
    job.zones[0].need_m3 = need_m3;
    job.stockpiles[0].deliveries = after_s.iter().map(|s| truck(&job, *s, 1.0)).collect();
    job
}

#[test]
fn a_loader_that_finds_every_pile_empty_waits_where_it_stands_for_what_is_due() {
    let run = expect(
        &with_trucks(1.0, 2.0, &[100.0]),
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 load 0 raked out at north
         0:35 loader 1 waiting for a delivery
         1:40 delivered 1.00 m3 to pile
         1:40 loader 1 returning to pile
         1:50 loader 1 loading load 1 at pile for north
         2:10 loader 1 hauling load 1 to north
         2:20 loader 1 dumping load 1 at north
         2:25 load 1 raked out at north",
    );
    assert_eq!(loader_s(&run, 0, LoaderActivity::WaitingForDelivery), 65.0);
}

#[test]
fn at_the_start_a_loader_waits_at_the_pile() {
    expect_of(
        &with_trucks(0.0, 1.0, &[30.0]),
        &["loader", "delivered"],
        "0:00 loader 1 waiting for a delivery
         0:30 delivered 1.00 m3 to pile
         0:30 loader 1 loading load 0 at pile for north
         0:50 loader 1 hauling load 0 to north
         1:00 loader 1 dumping load 0 at north",
    );
}

#[test]
fn when_a_delivery_arrives_all_who_wait_choose_again_lower_number_first() {
    // The first truck brings one load: loader 1 takes it and loader 2 waits on for the second truck, at a face for two.
    let mut job = with_loaders(with_trucks(0.0, 2.0, &[30.0, 70.0]), 2);
    job.stockpiles[0].face = 2;
    expect_of(
        &job,
        &["loader"],
        "0:00 loader 1 waiting for a delivery
         0:00 loader 2 waiting for a delivery
         0:30 loader 1 loading load 0 at pile for north
         0:50 loader 1 hauling load 0 to north
         1:00 loader 1 dumping load 0 at north
         1:05 loader 1 waiting for a delivery
         1:10 loader 1 returning to pile
         1:10 loader 2 loading load 1 at pile for north
         1:20 loader 1 done
         1:30 loader 2 hauling load 1 to north
         1:40 loader 2 dumping load 1 at north",
    );
}

#[test]
fn a_loader_is_done_when_the_last_truck_has_brought_too_little_for_it() {
    let job = with_loaders(with_trucks(0.0, 5.0, &[30.0]), 2);
    let run = expect_of(
        &job,
        &["loader 2"],
        "0:00 loader 2 waiting for a delivery
         0:30 loader 2 done",
    );
    assert!((run.outcome.short_m3 - 4.0).abs() < 1e-9);
}

#[test]
fn what_came_before_the_start_is_on_hand() {
    expect_of(
        &with_trucks(0.0, 1.0, &[-3_600.0]),
        &["delivered", "loader 1 l"],
        "0:00 delivered 1.00 m3 to pile
         0:00 loader 1 loading load 0 at pile for north",
    );
}

#[test]
fn a_truck_may_be_late() {
    let mut job = with_trucks(0.0, 1.0, &[30.0]);
    job.stockpiles[0].deliveries[0].late_s = Distribution::Constant(15.0);
    expect_of(
        &job,
        &["delivered", "loader 1 l"],
        "0:45 delivered 1.00 m3 to pile
         0:45 loader 1 loading load 0 at pile for north",
    );
}

#[test]
fn a_truck_that_comes_as_the_loader_looks_has_come() {
    // The dump ends at 0:35.
    let run = only_run(&with_trucks(1.0, 2.0, &[35.0]));
    assert_eq!(loader_s(&run, 0, LoaderActivity::WaitingForDelivery), 0.0);
    assert_eq!(run.outcome.completion.working, Duration::from_secs(80));
}

#[test]
fn a_loader_does_not_wait_for_a_near_pile_while_a_farther_one_has_material() {
    let mut job = with_trucks(1.0, 2.0, &[40.0]);
    job.stockpiles.push(pile("far", 9.0));
    job.zones[0].ways.push(Way { stockpile: 1, distance_m: 40.0, passes: vec![] });
    expect_of(
        &job,
        &["loader 1 l", "loader 1 w", "loader 1 r"],
        "0:00 loader 1 loading load 0 at pile for north
         0:35 loader 1 returning to far
         0:55 loader 1 loading load 1 at far for north",
    );
}

#[test]
fn a_sliver_at_the_pile_goes_with_the_next_delivery() {
    // 0.03 m3 remain, which is nothing by itself; with 0.97 m3 more it is one full load.
    let mut job = with_trucks(1.03, 2.0, &[90.0]);
    job.stockpiles[0].deliveries[0].volume_m3 = 0.97;
    assert_eq!(volumes(&only_run(&job)), [1.0, 1.0]);
}

#[test]
fn a_delivery_comes_in_a_break_too_and_is_used_after_it() {
    let mut job = with_trucks(1.0, 2.0, &[60.0]);
    job.shift.breaks = vec![pause(&job, 50.0, 100.0)];
    let run = expect_of(
        &job,
        &["loader 1 w", "loader 1 b", "loader 1 r", "delivered", "work"],
        "0:35 loader 1 waiting for a delivery
         0:50 work pauses
         0:50 loader 1 break
         1:00 delivered 1.00 m3 to pile
         1:40 work resumes
         1:40 loader 1 returning to pile",
    );
    assert_eq!(loader_s(&run, 0, LoaderActivity::WaitingForDelivery), 15.0);
    assert_eq!(loader_s(&run, 0, LoaderActivity::OnBreak), 50.0);
}

#[test]
fn a_delivery_comes_at_night_too() {
    // The day ends at 1:00 and the truck comes at 2 h in the night. Next morning the loader drives back for it.
    let mut job = with_trucks(1.0, 2.0, &[7_200.0]);
    job.shift.end_s = Some(job.shift.start_s + 60.0);
    let run = expect(
        &job,
        "0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 load 0 raked out at north
         0:35 loader 1 waiting for a delivery
         1:00 work ends for the day
         1:00 loader 1 night
         2:00:00 delivered 1.00 m3 to pile
         24:00:00 work resumes
         24:00:00 loader 1 returning to pile
         24:00:10 loader 1 loading load 1 at pile for north
         24:00:30 loader 1 hauling load 1 to north
         24:00:40 loader 1 dumping load 1 at north
         24:00:45 load 1 raked out at north",
    );
    assert_eq!(run.outcome.completion.working, Duration::from_secs(60 + 45));
}

#[test]
fn a_truck_that_has_not_come_by_the_finish_is_left_over() {
    let run = only_run(&with_trucks(1.5, 1.0, &[1_000.0]));
    assert_eq!(run.outcome.finish.working, Duration::from_secs(35));
    assert!((run.outcome.left_over_m3 - 1.5).abs() < 1e-9);
}

#[test]
fn each_pile_gets_its_own_deliveries() {
    let mut job = with_trucks(1.0, 3.0, &[]);
    job.stockpiles.push(Stockpile { deliveries: vec![truck(&job, 60.0, 2.0)], ..pile("far", 0.0) });
    job.zones[0].ways.push(Way { stockpile: 1, distance_m: 40.0, passes: vec![] });
    expect_of(
        &job,
        &["loader 1 l", "loader 1 w", "loader 1 r", "delivered"],
        "0:00 loader 1 loading load 0 at pile for north
         0:35 loader 1 waiting for a delivery
         1:00 delivered 2.00 m3 to far
         1:00 loader 1 returning to far
         1:20 loader 1 loading load 1 at far for north
         2:05 loader 1 returning to far
         2:25 loader 1 loading load 2 at far for north",
    );
}
