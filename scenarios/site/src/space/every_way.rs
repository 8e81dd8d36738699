//! The search a second time, without anything that makes it quick: every pair of corners, every bend, nothing left out.

use super::FreeSpace;
use super::ground::worth;
use super::turn::Corner;
use crate::machine::Pace;
use crate::point::Point;
use crate::properties::{ends, machines, place, plain};
use crate::testing::Draw;
use crate::{Machine, Turning};

const PACE: Pace = Pace { speed: 1.5, start_and_stop: 0.0 };

/// The least time from the first to the last of all points, by trying again until nothing gets better. A bend may go any way round.
fn least(space: &FreeSpace, from: Point, to: Point) -> f64 {
    let mut points: Vec<Point> = vec![from - space.origin];
    points.extend(space.nodes.iter().map(|node| node.at));
    points.push(to - space.origin);
    let (count, last) = (points.len(), points.len() - 1);
    let straight = |a: usize, b: usize| {
        let (a, b) = (points[a], points[b]);
        let is_clear = a.distance(b) > 1e-9 && space.is_clear(a, b);
        let drive = worth(a, b, &space.surfaces) / PACE.speed + space.passing(a, b);
        if is_clear { drive } else { f64::INFINITY }
    };
    let drive: Vec<Vec<f64>> = (0..count).map(|a| (0..count).map(|b| straight(a, b)).collect()).collect();
    let turn = |a: usize, b: usize, c: usize| {
        let (before, at, after) = (points[a], points[b], points[c]);
        let before = if a == 0 { before } else { before.middle(at) };
        let after = if c == last { after } else { at.middle(after) };
        let corner = Corner { before, at, after, speed: PACE.speed };
        corner
            .bend(space.machine.turning, f64::INFINITY, &|track| space.is_clear_along(track))
            .map_or(0.0, |bend| bend.time)
    };
    // The time at the second of two points, come from the first.
    let mut times = vec![vec![f64::INFINITY; count]; count];
    times[0].clone_from(&drive[0]);
    let mut changed: Vec<(usize, usize)> = (1..count).map(|b| (0, b)).collect();
    while let Some((a, b)) = changed.pop() {
        for c in 1..count {
            let arrival = times[a][b] + drive[b][c];
            if b != last && c != a && arrival < times[b][c] {
                let arrival = arrival + turn(a, b, c);
                if arrival < times[b][c] - 1e-12 {
                    times[b][c] = arrival;
                    changed.push((b, c));
                }
            }
        }
    }
    (0..count).map(|a| times[a][last]).fold(f64::INFINITY, f64::min)
}

fn compare(seed: u64, rounds: usize, machine: impl Fn(usize) -> Machine, alike: bool) -> (usize, usize) {
    let mut draw = Draw::new(seed);
    let (mut compared, mut bent) = (0, 0);
    for round in 0..rounds {
        let mut site = place(&mut draw);
        site.obstacles.retain(|obstacle| obstacle.outline.ring.len() < 12);
        let site = if alike { plain(site) } else { site };
        let space = site.free_space(&machine(round));
        let points = ends(&mut draw, &space, 4);
        for to in &points[1..] {
            let found = space.way(points[0], *to, &PACE);
            let expected = least(&space, points[0], *to);
            match found {
                Ok(way) => {
                    assert!(
                        (way.time - expected).abs() < 1e-9 * expected,
                        "{}: {expected} {way:?}",
                        way.time
                    );
                    bent += usize::from(way.bends.len() > 1);
                }
                Err(_) => assert!(expected.is_infinite()),
            }
            compared += 1;
        }
    }
    (compared, bent)
}

#[test]
fn the_shortest_way_is_the_shortest_of_every_way() {
    let (compared, bent) =
        compare(81, 20, |round| Machine { width: 0.3 * round as f64 % 2.4, ..Machine::WALKER }, true);
    assert!(compared == 60 && bent > 20, "{compared} {bent}");
}

#[test]
fn with_turns_on_the_spot_gates_and_mud_the_quickest_way_is_the_quickest_of_every_way() {
    let machine = |round: usize| {
        let turning = Turning::OnTheSpot { quarter_turn: [1.0, 4.0, 15.0][round % 3] };
        Machine { turning, ..machines()[0] }
    };
    let (compared, bent) = compare(82, 20, machine, false);
    assert!(compared == 60 && bent > 15, "{compared} {bent}");
}

#[test]
fn in_arcs_and_with_reversals_the_quickest_way_is_the_quickest_of_every_way() {
    let machine = |round: usize| {
        let turning = Turning::Radius { radius: [1.0, 2.5, 4.0][round % 3], reversal: [9.0, 3.0][round % 2] };
        Machine { turning, ..machines()[2] }
    };
    let (compared, bent) = compare(83, 12, machine, false);
    assert!(compared == 36 && bent > 8, "{compared} {bent}");
}
