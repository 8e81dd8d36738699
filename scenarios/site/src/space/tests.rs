use super::*;
use crate::testing::{L_SHAPE, close, outline};
use crate::{Fence, Gate, Obstacle, Pace, Turning};
use std::f64::consts::{FRAC_PI_2, PI};

const P: fn(f64, f64) -> Point = Point::new;
const PACE: Pace = Pace { speed: 2.0, start_and_stop: 5.0 };

fn block(low: (f64, f64), high: (f64, f64)) -> Obstacle {
    let outline = Outline::rectangle(P(low.0, low.1), high.0 - low.0, high.1 - low.1, 0.0);
    Obstacle { name: "block".into(), outline }
}

fn of_width(width: f64) -> Machine {
    Machine { width, ..Machine::WALKER }
}

fn length(site: &Site, machine: &Machine, from: Point, to: Point) -> Result<f64, WayError> {
    site.free_space(machine).way(from, to, &PACE).map(|way| way.length)
}

/// A wall from y = -50 to 50 with a gate from 20 to 23, as two blocks.
fn wall_with_gap() -> Site {
    let obstacles = vec![block((9.9, -50.0), (10.1, 20.0)), block((9.9, 23.0), (10.1, 50.0))];
    Site { obstacles, ..Site::default() }
}

/// The same as a fence, which has no thickness.
fn fence_with_gate() -> Site {
    let gate = Gate::between("gate", [P(10.0, 20.0), P(10.0, 23.0)], 8.0);
    let fence = Fence { name: "fence".into(), line: vec![P(10.0, -50.0), P(10.0, 50.0)], gates: vec![gate] };
    Site { fences: vec![fence], ..Site::default() }
}

#[test]
fn where_nothing_lies_between_a_way_is_straight() {
    let way = Site::default().free_space(&of_width(2.0)).way(P(1.0, 2.0), P(4.0, 6.0), &PACE).unwrap();
    assert_eq!((way.length, way.time), (5.0, 2.5 + 5.0));
    assert_eq!(way.points, [P(1.0, 2.0), P(4.0, 6.0)]);
    assert_eq!(way.stretches, [Stretch { surface: None, length: 5.0 }]);
}

#[test]
fn a_slalom_takes_the_least_of_the_three_ways() {
    let obstacles = vec![block((2.0, -5.0), (3.0, 2.0)), block((6.0, -2.0), (7.0, 5.0))];
    let site = Site { obstacles, ..Site::default() };
    let found = length(&site, &Machine::WALKER, P(0.0, 0.0), P(9.0, 0.0)).unwrap();
    close(found, 12.656_854_25, 1e-8);
}

#[test]
fn a_boundary_bends_a_way_at_its_inner_corner() {
    let site = Site { boundary: Some(outline(&L_SHAPE)), ..Site::default() };
    let expected = 18.0_f64.hypot(5.0) + 28.0_f64.hypot(5.0);
    close(length(&site, &Machine::WALKER, P(5.0, 28.0), P(38.0, 5.0)).unwrap(), expected, 1e-8);
    // Shrunk by 1 the corner is at (9 9).
    let expected = 19.0_f64.hypot(4.0) + 29.0_f64.hypot(4.0);
    close(length(&site, &of_width(2.0), P(5.0, 28.0), P(38.0, 5.0)).unwrap(), expected, 1e-12);
    // No room between the sides of the lane.
    assert_eq!(length(&site, &of_width(10.1), P(5.0, 28.0), P(38.0, 5.0)), Err(WayError::StartTaken));
}

#[test]
fn a_gap_is_driven_through_by_what_fits_and_by_nothing_wider() {
    let site = wall_with_gap();
    let (from, to) = (P(0.0, 0.0), P(20.0, 0.0));
    close(length(&site, &Machine::WALKER, from, to).unwrap(), 2.0 * 9.9_f64.hypot(20.0) + 0.2, 5e-9);
    close(length(&site, &of_width(1.8), from, to).unwrap(), 2.0 * 9.0_f64.hypot(20.9) + 2.0, 1e-12);
    let round = 2.0 * 8.3_f64.hypot(51.6) + 3.4;
    close(length(&site, &of_width(3.2), from, to).unwrap(), round, 1e-12);
    // As wide as the gap.
    close(length(&site, &of_width(3.0), from, to).unwrap(), 2.0 * 8.4_f64.hypot(21.5) + 3.2, 1e-12);
}

#[test]
fn a_fence_is_crossed_at_a_gate_wide_enough_which_takes_its_time() {
    let site = fence_with_gate();
    let way = site.free_space(&of_width(1.8)).way(P(0.0, 0.0), P(20.0, 0.0), &PACE).unwrap();
    close(way.length, 2.0 * 9.1_f64.hypot(20.9) + 1.8, 1e-12);
    close(way.time, way.length / 2.0 + 8.0 + 5.0, 1e-12);
    assert_eq!(way.gates, [(0, 0)]);
    let round = site.free_space(&of_width(3.2)).way(P(0.0, 0.0), P(20.0, 0.0), &PACE).unwrap();
    close(round.length, 2.0 * 8.4_f64.hypot(51.6) + 3.2, 1e-12);
    assert_eq!(round.gates, []);
    let mut shut = site;
    shut.boundary = Some(outline(&[(-5.0, -50.0), (25.0, -50.0), (25.0, 50.0), (-5.0, 50.0)]));
    assert_eq!(length(&shut, &of_width(3.2), P(0.0, 0.0), P(20.0, 0.0)), Err(WayError::NoWay));
    assert_eq!(length(&shut, &of_width(3.2), P(0.0, 0.0), P(10.5, 0.0)), Err(WayError::EndTaken));
}

#[test]
fn where_a_gate_takes_long_the_way_round_is_preferred() {
    let mut site = fence_with_gate();
    site.fences[0].line[1] = P(10.0, 24.0);
    let gates = |site: &Site| {
        let way = site.free_space(&of_width(1.0)).way(P(0.0, 0.0), P(20.0, 0.0), &PACE).unwrap();
        (way.gates.len(), way.length)
    };
    assert_eq!(gates(&site).0, 0);
    site.fences[0].gates[0].passing = 0.5;
    assert_eq!(gates(&site).0, 1);
}

#[test]
fn round_a_disc_a_way_is_as_long_as_tangents_and_arc_within_what_its_sides_leave_out() {
    for (d, r) in [(10.0, 3.0), (5.0, 4.0)] {
        let exact = 2.0 * f64::sqrt(d * d - r * r) + r * (PI - 2.0 * f64::acos(r / d));
        for (sides, within) in [(64, 5e-4), (256, 4e-5)] {
            let disc = Outline::disc_of_sides(P(0.0, 0.0), 2.0 * r, sides);
            let site =
                Site { obstacles: vec![Obstacle { name: "pond".into(), outline: disc }], ..Site::default() };
            let found = length(&site, &Machine::WALKER, P(-d, 0.0), P(d, 0.0)).unwrap();
            close(found, exact, within * exact);
            assert!((found - exact).abs() > 1e-9, "a polygon is no disc");
        }
    }
}

#[test]
fn a_corner_of_a_solid_is_not_cut_from_corner_to_corner() {
    let site = Site { obstacles: vec![block((0.0, 0.0), (10.0, 10.0))], ..Site::default() };
    close(
        length(&site, &Machine::WALKER, P(-1.0, -1.0), P(11.0, 11.0)).unwrap(),
        2.0 * 11.0_f64.hypot(1.0),
        1e-7,
    );
    // Two that touch leave no way between them.
    let two = vec![block((0.0, 0.0), (10.0, 10.0)), block((10.0, 0.0), (20.0, 10.0))];
    let site = Site { obstacles: two, ..Site::default() };
    let round = 2.0 * 10.0_f64.hypot(1.0) + 10.0;
    close(length(&site, &Machine::WALKER, P(10.0, -1.0), P(10.0, 11.0)).unwrap(), round, 1e-7);
}

#[test]
fn no_way_leads_through_the_middle_of_a_pond_from_corner_to_corner() {
    for turn in 0..40 {
        let pond = Outline::disc_of_sides(P(3.0, 5.0), 6.0, 12);
        let (sin, cos) = (libm::sin(0.37 * f64::from(turn)), libm::cos(0.37 * f64::from(turn)));
        let turned = pond.ring.iter().map(|p| P(p.x * cos - p.y * sin, p.x * sin + p.y * cos)).collect();
        let obstacle = Obstacle { name: "pond".into(), outline: Outline::from_corners(turned) };
        let space = Site { obstacles: vec![obstacle], ..Site::default() }.free_space(&of_width(1.0));
        let nodes = &space.nodes;
        for k in 0..12 {
            // Not even exactly along the seams of what blocks.
            assert!((2..11).all(|on| !space.is_clear(nodes[k].at, nodes[(k + on) % 12].at)), "{turn} {k}");
            assert!(space.is_clear(nodes[k].at, nodes[(k + 1) % 12].at), "{turn} {k}");
        }
    }
}

#[test]
fn each_bend_on_the_spot_costs_by_its_angle_and_the_long_way_round_may_be_quicker() {
    let machine =
        |quarter_turn| Machine { width: 2.0, clearance: 0.0, turning: Turning::OnTheSpot { quarter_turn } };
    // Straight on is a lane with two bends of a quarter each; round about it is longer with less of a turn.
    let obstacles = vec![block((-1.0, -30.0), (1.0, 5.0)), block((-30.0, 7.5), (30.0, 60.0))];
    let site = Site { obstacles, ..Site::default() };
    let way = site.free_space(&machine(4.0)).way(P(-20.0, -20.0), P(20.0, -20.0), &PACE).unwrap();
    let turned: f64 = way.bends.iter().map(|bend| bend.angle).sum();
    let spent: f64 = way.bends.iter().map(|bend| bend.time).sum();
    close(spent, 4.0 * turned / FRAC_PI_2, 1e-9);
    close(way.time, way.length / 2.0 + spent + 5.0, 1e-9);
    // Cheap turns take the short way over the top (26 m up), dear ones go round below where the way bends less.
    let lane = |quarter_turn| {
        let sheds = vec![
            block((-1.0, -8.0), (1.0, 5.0)),
            block((-3.0, 8.0), (3.0, 9.0)),
            block((-9.0, 2.0), (-4.0, 9.0)),
        ];
        let site = Site { obstacles: sheds, ..Site::default() };
        site.free_space(&machine(quarter_turn)).way(P(-6.0, 0.0), P(6.0, 6.0), &PACE).unwrap()
    };
    let (cheap, dear) = (lane(0.0), lane(60.0));
    assert!(cheap.length <= dear.length + 1e-9, "{} {}", cheap.length, dear.length);
    let angle = |way: &Way| way.bends.iter().map(|bend| bend.angle).sum::<f64>();
    assert!(angle(&dear) <= angle(&cheap) + 1e-9);
}

#[test]
fn a_machine_that_turns_in_arcs_swings_where_there_is_room_and_reverses_where_not() {
    let machine =
        Machine { width: 2.0, clearance: 0.0, turning: Turning::Radius { radius: 3.0, reversal: 12.0 } };
    let open = Site { obstacles: vec![block((0.0, -20.0), (20.0, 0.0))], ..Site::default() };
    let way = |site: &Site| site.free_space(&machine).way(P(-1.0, -15.0), P(15.0, 1.0), &PACE).unwrap();
    let found = way(&open);
    assert_eq!(found.bends.iter().map(|bend| bend.kind).collect::<Vec<_>>(), [BendKind::Arc]);
    assert!(found.time > found.length / 2.0 + 5.0 && found.time < found.length / 2.0 + 5.0 + 2.0);
    let mut lane = open;
    lane.obstacles.push(block((-20.0, 2.1), (20.0, 9.0)));
    lane.obstacles.push(block((-20.0, -20.0), (-2.1, 9.0)));
    let found = way(&lane);
    assert_eq!(found.bends.iter().map(|bend| bend.kind).collect::<Vec<_>>(), [BendKind::Reversal]);
    close(found.time, found.length / 2.0 + 3.0 * FRAC_PI_2 / 2.0 + 12.0 + 5.0, 1e-9);
}

#[test]
fn a_slow_patch_is_driven_round_where_that_is_quicker() {
    let patch = |share| crate::Surface {
        name: "mud".into(),
        outline: outline(&[(5.0, -4.0), (15.0, -4.0), (15.0, 4.0), (5.0, 4.0)]),
        share,
    };
    let way = |share| {
        let site = Site { surfaces: vec![patch(share)], ..Site::default() };
        site.free_space(&Machine::WALKER).way(P(0.0, 0.0), P(20.0, 0.0), &PACE).unwrap()
    };
    let through = way(0.8);
    close(through.time, 10.0 / 2.0 + 10.0 / 1.6 + 5.0, 1e-12);
    assert_eq!(through.stretches.len(), 3);
    let round = way(0.3);
    close(round.length, 10.0 + 2.0 * 41.0_f64.sqrt(), 0.01);
    assert_eq!(round.stretches.len(), 1);
}

#[test]
fn many_ways_at_once_are_those_asked_one_by_one() {
    let site = wall_with_gap();
    let space = site.free_space(&of_width(1.0));
    let to: Vec<Point> =
        (0..40).map(|k| P(11.0 + f64::from(k) * 0.7, f64::from(k % 7) * 5.0 - 10.0)).collect();
    let all = space.ways(P(0.0, 0.0), &to, &PACE);
    let times = space.times(P(0.0, 0.0), &to, &PACE);
    for ((to, way), time) in to.iter().zip(all).zip(times) {
        let way = way.unwrap();
        assert_eq!(way, space.way(P(0.0, 0.0), *to, &PACE).unwrap());
        assert_eq!(way.time, time.unwrap());
    }
}
