//! Section 3.3: what goes into a bucket.

use super::jobs::*;
use super::log::*;
use sim::*;

#[test]
fn a_bucket_holds_the_fill_factor_times_its_heaped_capacity() {
    let mut job = one_and_one();
    job.material.fill_factor = 0.8;
    job.loaders[0].heaped_m3 = 0.5;
    job.zones[0].need_m3 = 2.0;
    assert_eq!(volumes(&only_run(&job)), [0.4; 5]);
}

#[test]
fn what_may_be_lifted_limits_a_load() {
    // 180 kg / 250 kg/m3 = 0.72 m3, less than the 1 m3 of the bucket.
    let mut job = one_and_one();
    job.loaders[0].lift_kg = Some(180.0);
    job.zones[0].need_m3 = 2.0;
    assert_eq!(volumes(&only_run(&job)), [0.72, 0.72, 0.56]);
    // Strong enough, the bucket is the limit.
    job.loaders[0].lift_kg = Some(300.0);
    assert_eq!(volumes(&only_run(&job)), [1.0, 1.0]);
}

#[test]
fn each_loader_carries_its_own_bucket() {
    let mut job = with_loaders(one_and_one(), 2);
    job.loaders[1].heaped_m3 = 0.25;
    job.zones[0].need_m3 = 1.5;
    assert_eq!(volumes(&only_run(&job)), [1.0, 0.25, 0.25]);
}

#[test]
fn the_last_load_of_a_pile_is_what_it_still_holds() {
    let mut job = one_and_one();
    job.stockpiles[0].on_hand_m3 = 2.3;
    let run = only_run(&job);
    assert_eq!(volumes(&run), [1.0, 1.0, 0.3]);
    assert!((run.outcome.short_m3 - 7.7).abs() < 1e-9);
}

#[test]
fn the_last_load_of_a_zone_is_what_it_still_needs_and_takes_its_full_time_to_load() {
    // The second load is 0.4 m3: loaded in 20 s like a whole one, raked in 0.4 x 50 = 20 s.
    let mut job = one_and_one();
    job.zones[0].need_m3 = 1.4;
    expect(
        &job,
        "0:00 raker 1 waiting for a heap at north
         0:00 loader 1 loading load 0 at pile for north
         0:20 loader 1 hauling load 0 to north
         0:30 loader 1 dumping load 0 at north
         0:35 raker 1 raking load 0 at north
         0:35 loader 1 returning to pile
         0:45 loader 1 loading load 1 at pile for north
         1:05 loader 1 hauling load 1 to north
         1:15 loader 1 dumping load 1 at north
         1:20 loader 1 returning to pile
         1:25 load 0 raked out at north
         1:25 raker 1 raking load 1 at north
         1:30 loader 1 done
         1:45 load 1 raked out at north",
    );
}

#[test]
fn material_is_off_the_pile_from_the_start_of_loading() {
    // 1 m3 lies there; loader 2 chooses after loader 1 has started, at a face for two, and finds nothing.
    let mut job = with_loaders(without_rakers(one_and_one()), 2);
    job.stockpiles[0] = Stockpile { face: 2, ..pile("pile", 1.0) };
    expect_of(&job, &["loader 2"], "0:00 loader 2 done");
}
