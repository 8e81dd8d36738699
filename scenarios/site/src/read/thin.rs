//! A walked track made fit for a shape: without needless points, and closed where it comes round to its beginning.

use crate::check::meeting;
use crate::point::{Point, distance_to_side};

/// A line without the points that lie within so much of it \[m\] (Ramer 1972, Douglas & Peucker 1973). Its ends stay.
///
/// ```
/// use site::{Point, thinned};
/// let walked = [(0.0, 0.0), (3.0, 0.2), (7.0, -0.1), (10.0, 0.0), (10.1, 6.0)].map(|(x, y)| Point::new(x, y));
/// assert_eq!(thinned(&walked, 0.5).len(), 3);
/// ```
pub fn thinned(line: &[Point], within: f64) -> Vec<Point> {
    let mut is_kept = vec![false; line.len()];
    if let [first, .., last] = &mut is_kept[..] {
        (*first, *last) = (true, true);
    }
    let mut stretches = vec![(0, line.len().saturating_sub(1))];
    while let Some((from, to)) = stretches.pop() {
        let off = |k: usize| distance_to_side(line[k], line[from], line[to]);
        let inner = (from + 1..to).map(|k| (k, off(k)));
        let farthest = inner.fold((from, 0.0), |far, next| if next.1 > far.1 { next } else { far });
        if farthest.1 > within {
            is_kept[farthest.0] = true;
            stretches.extend([(from, farthest.0), (farthest.0, to)]);
        }
    }
    let kept = line.iter().zip(is_kept).filter(|(_, is_kept)| *is_kept);
    let mut kept: Vec<Point> = kept.map(|(point, _)| *point).collect();
    kept.dedup();
    if line.len() == 1 { line.to_vec() } else { kept }
}

/// The ring of a walk round an area, and the gap at which it did not close \[m\]. Where the walk crosses its own beginning, so that its
/// loop is more than half of it, it is cut there and the gap is 0.
///
/// ```
/// use site::{Point, loop_of};
/// let walked = [(1.0, 0.0), (9.0, 0.0), (9.0, 9.0), (0.0, 9.0), (2.0, -2.0)].map(|(x, y)| Point::new(x, y));
/// let (ring, gap) = loop_of(&walked);
/// assert_eq!((ring.len(), gap), (4, 0.0));
/// assert!(ring[0].distance(Point::new(1.636, 0.0)) < 1e-3);
/// ```
pub fn loop_of(track: &[Point]) -> (Vec<Point>, f64) {
    let mut so_far = vec![0.0];
    for leg in track.windows(2) {
        so_far.push(so_far[so_far.len() - 1] + leg[0].distance(leg[1]));
    }
    let whole = so_far[so_far.len() - 1];
    let mut best: Option<(f64, usize, usize, Point)> = None;
    for first in 0..track.len().saturating_sub(1) {
        for second in (first + 2..track.len() - 1).rev() {
            // What is left between them only gets shorter.
            let most = so_far[second + 1] - so_far[first];
            if most <= best.map_or(whole / 2.0, |best| best.0) {
                break;
            }
            let Some(at) = meeting((track[first], track[first + 1]), (track[second], track[second + 1]))
            else {
                continue;
            };
            let length =
                so_far[second] + track[second].distance(at) - so_far[first] - track[first].distance(at);
            if length > best.map_or(whole / 2.0, |best| best.0) {
                best = Some((length, first, second, at));
            }
        }
    }
    match best {
        Some((_, first, second, at)) => {
            let mut ring = vec![at];
            ring.extend(track[first + 1..=second].iter().filter(|point| point.distance(at) > 1e-6));
            (ring, 0.0)
        }
        None => {
            let gap = track.first().zip(track.last()).map_or(0.0, |(first, last)| first.distance(*last));
            let closes = track.len() > 3 && gap == 0.0;
            (track[..track.len() - usize::from(closes)].to_vec(), gap)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const P: fn(f64, f64) -> Point = Point::new;

    #[test]
    fn what_is_left_of_a_line_is_within_the_distance_of_all_of_it() {
        let mut draw = crate::testing::Draw::new(61);
        for _ in 0..50 {
            let line: Vec<Point> =
                (0..80).map(|k| P(f64::from(k), draw.between(0.0, 9.0) * f64::from(k % 7))).collect();
            let thin = thinned(&line, 4.0);
            assert!(thin.len() < line.len() && thin[0] == line[0] && thin.last() == line.last());
            for point in &line {
                let off = thin.windows(2).map(|leg| distance_to_side(*point, leg[0], leg[1]));
                assert!(off.fold(f64::INFINITY, f64::min) <= 4.0);
            }
        }
        assert_eq!(thinned(&[], 1.0), []);
        assert_eq!(thinned(&[P(1.0, 2.0)], 1.0), [P(1.0, 2.0)]);
    }

    #[test]
    fn a_walk_that_ends_short_of_its_beginning_shows_its_gap() {
        let walked = [P(0.0, 0.0), P(9.0, 0.0), P(9.0, 9.0), P(0.0, 9.0), P(0.0, 1.5)];
        assert_eq!(loop_of(&walked), (walked.to_vec(), 1.5));
        let closed = [P(0.0, 0.0), P(9.0, 0.0), P(9.0, 9.0), P(0.0, 0.0)];
        assert_eq!(loop_of(&closed).0.len(), 3);
        assert_eq!(loop_of(&[]), (vec![], 0.0));
    }

    #[test]
    fn a_small_loop_on_the_way_is_not_taken_for_the_area() {
        let walked = [
            P(0.0, 0.0),
            P(9.0, 0.0),
            P(10.0, 1.0),
            P(9.0, 1.0),
            P(10.0, 0.0),
            P(30.0, 0.0),
            P(30.0, 20.0),
            P(0.0, 20.0),
        ];
        assert_eq!(loop_of(&walked), (walked.to_vec(), 20.0));
    }
}
