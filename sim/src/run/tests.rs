use super::*;

#[path = "../../../tests/speed/jobs.rs"]
#[expect(dead_code, unreachable_pub, reason = "shared with the benchmarks")]
mod jobs;

/// How many of a hundred runs are made the short way.
fn made_the_short_way(job: &crate::Job) -> usize {
    let plan = Plan::new(job).unwrap();
    let mut scratch = Scratch::new(&plan);
    let mut books = plan.empty_books();
    let mut is_made = |run| {
        let luck = RunLuck::new(1, run);
        let pace = Pace::new(&plan, &luck);
        match &mut scratch.short {
            Some(Short::Line(line)) => line.run(&plan, luck, pace, run, &mut books).is_some(),
            Some(Short::Yard(yard)) => yard.run(&plan, luck, pace, run, &mut books).is_some(),
            None => false,
        }
    };
    (0..100).filter(|run| is_made(*run)).count()
}

#[test]
fn a_short_way_is_given_up_but_seldom() {
    assert_eq!(made_the_short_way(&jobs::one_and_one()), 100);
    let yard = made_the_short_way(&jobs::yard());
    let mut with_care = jobs::yard();
    with_care.raking.stand_clear = true;
    with_care.zones.iter_mut().for_each(|zone| zone.walks_m = vec![20.0; 3]);
    let careful = made_the_short_way(&with_care);
    let mut slow = jobs::yard();
    slow.rakers.truncate(3);
    let full = made_the_short_way(&slow);
    assert!(yard > 90 && careful > 90 && full > 90, "{yard}, {careful}, {full}");
}
