//! Shortest ways round what blocks, and tracks with a turning radius.

use super::{Values, l_shape, last_digit, p};
use crate::comparison::{Comparison, Status};
use site::{Machine, Obstacle, Outline, Pace, Point, Pose, Site, TrackPart, WayError};
use std::f64::consts::{FRAC_PI_2, PI};

const PACE: Pace = Pace { speed: 1.0, start_and_stop: 0.0 };
/// Sides of a polygon that is a disc to six digits.
const SIDES: usize = 1_024;

fn way(site: &Site, width: f64, from: Point, to: Point) -> Result<f64, WayError> {
    let machine = Machine { width, ..Machine::WALKER };
    site.free_space(&machine).way(from, to, &PACE).map(|way| way.length)
}

fn blocks(blocks: &[(f64, f64, f64, f64)]) -> Site {
    let block = |&(x, to_x, y, to_y): &(f64, f64, f64, f64)| Obstacle {
        name: "wall".into(),
        outline: Outline::rectangle(p(x, y), to_x - x, to_y - y, 0.0),
    };
    Site { obstacles: blocks.iter().map(block).collect(), ..Site::default() }
}

pub(crate) fn shortest() -> Comparison {
    let mut comparison = Comparison::new(
        "Shortest drivable ways are those found by hand and, round discs, by tangents and arc",
        "closed form and ways by hand, each by a second method (place/ways.csv)",
        Status::Computed,
        0.0,
    );
    let mut values = Values::of("ways");
    for (words, d, r) in [("D=10 R=3", 10.0, 3.0), ("D=5 R=4", 5.0, 4.0)] {
        let outline = Outline::disc_of_sides(p(0.0, 0.0), 2.0 * r, SIDES);
        let pond = Site { obstacles: vec![Obstacle { name: "pond".into(), outline }], ..Site::default() };
        let expected = values.value(words);
        // A polygon of the disc's area is by a sixth of (pi / sides)^2 too long round about.
        let arc = r * (PI - 2.0 * (r / d).acos());
        let rounding = last_digit(expected) + arc * (PI / SIDES as f64).powi(2) / 2.0;
        let obtained = way(&pond, 0.0, p(-d, 0.0), p(d, 0.0)).unwrap();
        comparison.exact(format!("round a disc, {words}"), obtained, expected, rounding);
    }
    let slalom = blocks(&[(2.0, 3.0, -5.0, 2.0), (6.0, 7.0, -2.0, 5.0)]);
    let yard = Site { boundary: Some(l_shape()), ..Site::default() };
    let gap = blocks(&[(9.9, 10.1, -50.0, 20.0), (9.9, 10.1, 23.0, 50.0)]);
    for (words, site, width, from, to) in [
        ("slalom between two walls", &slalom, 0.0, p(0.0, 0.0), p(9.0, 0.0)),
        ("L-shaped yard, inner corner", &yard, 0.0, p(5.0, 28.0), p(38.0, 5.0)),
        ("through a gate in a wall", &gap, 0.0, p(0.0, 0.0), p(20.0, 0.0)),
        ("machine 1.8 wide", &gap, 1.8, p(0.0, 0.0), p(20.0, 0.0)),
    ] {
        let expected = values.value(words);
        let obtained = way(site, width, from, to).unwrap();
        // What blocks is grown by a nanometre even for nobody, and a way has a few bends.
        comparison.exact(words, obtained, expected, last_digit(expected) + 1e-8);
    }
    comparison
}

pub(crate) fn with_a_radius() -> Comparison {
    let mut comparison = Comparison::new(
        "Tracks of arcs and straight pieces are Dubins', and turning round by reversing is Reeds and Shepp's",
        "Shkel & Lumelsky 2001 and a root search over the six words; three arcs composed (place/ways.csv)",
        Status::Computed,
        0.0,
    );
    let mut values = Values::of("ways");
    (0..7).for_each(|_| values.skip());
    let pose = |x, y, heading| Pose { at: p(x, y), heading };
    let (left, straight, right) = (TrackPart::Left, TrackPart::Straight, TrackPart::Right);
    for (words, to, parts) in [
        ("word LSL", pose(4.0, 0.0, 0.0), [left, straight, left]),
        ("word RSL", pose(4.0, 0.0, FRAC_PI_2), [right, straight, left]),
        ("word RLR", pose(0.0, 3.0, 0.0), [right, left, right]),
    ] {
        let expected = values.value(words);
        let tracks = site::tracks(pose(0.0, 0.0, 0.0), to, 1.0);
        let word = tracks.iter().find(|track| track.parts.map(|part| part.0) == parts).unwrap();
        comparison.exact(words, word.length, expected, last_digit(expected));
        comparison.exact(format!("{words}: the shortest"), tracks[0].length, expected, last_digit(expected));
    }
    let expected = values.value("turn round on the spot with reversing");
    comparison.exact("turning round", site::turned_in_place(1.0, PI), expected, last_digit(expected));
    comparison
}

pub(crate) fn round_corners() -> Comparison {
    let mut comparison = Comparison::new(
        "The longest machine that gets round the corner of two lanes is that of the closed form",
        "own derivation and the least clearance over all angles (place/ways.csv)",
        Status::Computed,
        0.0,
    );
    let mut values = Values::of("ways");
    (0..11).for_each(|_| values.skip());
    let expected = values.value("a=2.5 w=1.5");
    let obtained = site::longest_round_corner([2.5, 2.5], 1.5);
    comparison.exact("lanes of 2.5 m, 1.5 m wide", obtained, expected, last_digit(expected));
    comparison
}

#[test]
fn shortest_ways_are_those_by_hand() {
    shortest().judge(6);
}

#[test]
fn what_is_wider_than_the_gap_does_not_get_through_it() {
    let mut gap = blocks(&[(9.9, 10.1, -50.0, 20.0), (9.9, 10.1, 23.0, 50.0)]);
    gap.boundary = Some(Outline::rectangle(p(-5.0, -50.0), 30.0, 100.0, 0.0));
    assert_eq!(way(&gap, 3.2, p(0.0, 0.0), p(20.0, 0.0)), Err(WayError::NoWay));
    assert!(way(&gap, 2.9, p(0.0, 0.0), p(20.0, 0.0)).is_ok());
}

#[test]
fn tracks_with_a_turning_radius_are_the_published_ones() {
    with_a_radius().judge(7);
    round_corners().judge(1);
}
