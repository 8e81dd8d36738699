//! Tracks of arcs and straight pieces for a machine with a turning radius, where nothing lies in the way; turning round by reversing;
//! what goes round a corner of two lanes.

use crate::point::Point;
use std::f64::consts::{FRAC_PI_2, PI};

/// A place and a direction \[rad, anticlockwise from the x axis\].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Where \[m\].
    pub at: Point,
    /// Whereto.
    pub heading: f64,
}

/// A part of a track.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TrackPart {
    /// An arc to the left.
    Left,
    /// Straight on.
    Straight,
    /// An arc to the right.
    Right,
}

/// A track of three parts (Dubins 1957).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Track {
    /// Its parts, each with its length \[m\].
    pub parts: [(TrackPart, f64); 3],
    /// Their sum \[m\].
    pub length: f64,
}

/// The tracks from one pose to another, forwards only, with arcs of one radius \[m\], above 0: the six words of Dubins as far as they
/// exist, the shortest first (Shkel & Lumelsky 2001).
///
/// ```
/// use site::{Point, Pose, tracks};
/// let pose = |x, y, heading| Pose { at: Point::new(x, y), heading };
/// let best = tracks(pose(0.0, 0.0, 0.0), pose(4.0, 0.0, std::f64::consts::FRAC_PI_2), 1.0)[0];
/// assert!((best.length - 4.746_223_367).abs() < 1e-9);
/// ```
pub fn tracks(from: Pose, to: Pose, radius: f64) -> Vec<Track> {
    let step = to.at - from.at;
    let (apart, direction) = (step.length() / radius, libm::atan2(step.y, step.x));
    let (a, b) = (round(from.heading - direction), round(to.heading - direction));
    let own = words(apart, a, b).into_iter().flatten();
    // What turns left in a mirror turns right.
    let in_mirror = words(apart, round(-a), round(-b)).into_iter().flatten().map(mirrored);
    let scaled = |parts: [(TrackPart, f64); 3]| {
        let parts = parts.map(|(part, length)| (part, length * radius));
        Track { parts, length: parts.iter().map(|part| part.1).sum() }
    };
    let mut tracks: Vec<Track> = own.chain(in_mirror).map(scaled).collect();
    tracks.sort_by(|a, b| a.length.total_cmp(&b.length));
    tracks
}

fn mirrored(parts: [(TrackPart, f64); 3]) -> [(TrackPart, f64); 3] {
    parts.map(|(part, length)| {
        let part = match part {
            TrackPart::Left => TrackPart::Right,
            TrackPart::Right => TrackPart::Left,
            TrackPart::Straight => TrackPart::Straight,
        };
        (part, length)
    })
}

/// An angle between 0 and a whole turn; just below a whole turn is none.
fn round(angle: f64) -> f64 {
    let angle = angle - 2.0 * PI * libm::floor(angle / (2.0 * PI));
    if angle > 2.0 * PI - 1e-9 { 0.0 } else { angle }
}

/// The words that begin with a left arc and go on straight, and right-left-right, for a radius of 1: the poses are `apart` along the x
/// axis, with these headings.
fn words(apart: f64, a: f64, b: f64) -> [Option<[(TrackPart, f64); 3]>; 3] {
    let (sin_a, cos_a, sin_b, cos_b) = (libm::sin(a), libm::cos(a), libm::sin(b), libm::cos(b));
    let difference = libm::cos(a - b);
    let root = |square: f64| (square >= 0.0).then(|| libm::sqrt(square));
    let same = root((2.0 + apart * apart - 2.0 * difference + 2.0 * apart * (sin_a - sin_b)).max(0.0)).map(
        |straight| {
            let turn = libm::atan2(cos_b - cos_a, apart + sin_a - sin_b);
            [
                (TrackPart::Left, round(turn - a)),
                (TrackPart::Straight, straight),
                (TrackPart::Left, round(b - turn)),
            ]
        },
    );
    let across =
        root(apart * apart - 2.0 + 2.0 * difference + 2.0 * apart * (sin_a + sin_b)).map(|straight| {
            let turn = libm::atan2(-cos_a - cos_b, apart + sin_a + sin_b) - libm::atan2(-2.0, straight);
            [
                (TrackPart::Left, round(turn - a)),
                (TrackPart::Straight, straight),
                (TrackPart::Right, round(turn - b)),
            ]
        });
    let cosine = (6.0 - apart * apart + 2.0 * difference + 2.0 * apart * (sin_a - sin_b)) / 8.0;
    let between = (cosine.abs() <= 1.0).then(|| {
        let middle = 2.0 * PI - libm::acos(cosine);
        let first = round(a - libm::atan2(cos_a - cos_b, apart - sin_a + sin_b) + middle / 2.0);
        [
            (TrackPart::Right, first),
            (TrackPart::Left, middle),
            (TrackPart::Right, round(a - b - first + middle)),
        ]
    });
    [same, across, between]
}

/// The length of the track by which a machine turns through an angle (up to pi) and comes to stand where it stood: three arcs of this
/// radius, forwards, backwards and forwards, that come to the angle together (Reeds & Shepp 1990) \[m\].
pub fn turned_in_place(radius: f64, angle: f64) -> f64 {
    radius * angle
}

/// The longest stiff rectangle of a width that gets round the right-angled corner of two lanes, turning as it goes \[m\]; 0 where it
/// is wider than one of them. Of two lanes `a` wide it is `2 (sqrt(2) a - width)`.
///
/// ```
/// assert!((site::longest_round_corner([2.5, 2.5], 1.5) - 4.071_067_812).abs() < 1e-9);
/// ```
pub fn longest_round_corner(lanes: [f64; 2], width: f64) -> f64 {
    if width >= lanes[0] || width >= lanes[1] {
        return 0.0;
    }
    // Its outer side touches both outer walls, its inner side the inner corner.
    let longest = |angle: f64| {
        let (sin, cos) = (libm::sin(angle), libm::cos(angle));
        (lanes[0] * cos + lanes[1] * sin - width) / (sin * cos)
    };
    let (mut low, mut high) = (0.0, FRAC_PI_2);
    for _ in 0..200 {
        let third = (high - low) / 3.0;
        if longest(low + third) <= longest(high - third) { high -= third } else { low += third }
    }
    f64::max(0.0, longest(f64::midpoint(low, high)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{Draw, close};

    fn driven(from: Pose, part: TrackPart, length: f64, radius: f64) -> Pose {
        let sense = match part {
            TrackPart::Left => 1.0,
            TrackPart::Right => -1.0,
            TrackPart::Straight => {
                let step = Point::new(from.heading.cos(), from.heading.sin()) * length;
                return Pose { at: from.at + step, ..from };
            }
        };
        let heading = from.heading + sense * length / radius;
        let x = sense * radius * (heading.sin() - from.heading.sin());
        let y = -sense * radius * (heading.cos() - from.heading.cos());
        Pose { at: from.at + Point::new(x, y), heading }
    }

    #[test]
    fn every_track_ends_at_its_pose_and_the_shortest_is_never_below_the_straight_distance() {
        let mut draw = Draw::new(71);
        let mut words = 0;
        for _ in 0..2_000 {
            let mut pose = || Pose {
                at: Point::new(draw.between(-9.0, 9.0), draw.between(-9.0, 9.0)),
                heading: draw.between(-7.0, 7.0),
            };
            let (from, to) = (pose(), pose());
            let found = tracks(from, to, 2.5);
            words += found.len();
            assert!(found[0].length >= from.at.distance(to.at) - 1e-9);
            for track in found {
                let end = track.parts.iter().fold(from, |at, part| driven(at, part.0, part.1, 2.5));
                close(end.at.distance(to.at), 0.0, 1e-6);
                close(libm::cos(end.heading - to.heading), 1.0, 1e-9);
            }
        }
        assert!(words > 6_000, "{words}");
    }

    #[test]
    fn three_arcs_turn_a_machine_round_where_it_stood() {
        let start = Pose { at: Point::new(3.0, 4.0), heading: 0.3 };
        let arc = turned_in_place(2.0, PI) / 3.0;
        // Forwards to the left, backwards to the right, forwards to the left.
        let first = driven(start, TrackPart::Left, arc, 2.0);
        let second = driven(first, TrackPart::Right, -arc, 2.0);
        let third = driven(second, TrackPart::Left, arc, 2.0);
        close(third.at.distance(start.at), 0.0, 1e-12);
        close(third.heading - start.heading, PI, 1e-12);
    }

    #[test]
    fn what_is_wider_than_a_lane_gets_round_no_corner() {
        assert_eq!(longest_round_corner([2.5, 1.4], 1.5), 0.0);
        assert!(longest_round_corner([2.5, 2.0], 1.5) < longest_round_corner([2.5, 2.5], 1.5));
        // A ladder of no width: (a^(2/3) + b^(2/3))^(3/2).
        let ladder = (4.0_f64.cbrt() + 1.0).powf(1.5);
        close(longest_round_corner([2.0, 1.0], 0.0), ladder, 1e-9);
    }
}
