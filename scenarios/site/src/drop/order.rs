//! The order in which drop points are filled, so that no later way leads over one already filled where that can be had.

use crate::point::{Point, distance_to_side};

/// Which drop points come first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FillOrder {
    /// Those that take longest to drive to.
    FarthestFirst,
    /// Those that are quickest to drive to.
    NearestFirst,
}

/// The order found.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Filled {
    /// The drop points by their places in the list, the first to be filled first.
    pub order: Vec<usize>,
    /// Where a later way leads over a point already filled: the later and the earlier one. Empty where that could be avoided.
    pub crossed: Vec<(usize, usize)>,
}

/// Orders drop points by the time of their ways \[s\].
///
/// A way crosses another point where it comes nearer to it than `footprint` \[m\], about half the machine's width: then that point should
/// be filled later. Farthest first, a point waits for all ways that lead over it. Nearest first it waits for those whose own
/// points are at most `later` seconds farther, say the time from one drop point to the next: waiting for all would turn the order round.
/// `ways` are the corners of each point's way; points that no way leads to have an infinite time and an empty way, and come last.
///
/// ```
/// use site::{FillOrder, Point, fill_order};
/// let at = [10.0, 20.0, 30.0].map(|x| Point::new(x, 0.0));
/// let ways = at.map(|at| vec![Point::new(0.0, 0.0), at]);
/// let times = [10.0, 20.0, 30.0];
/// let farthest = fill_order(&at, &ways, &times, FillOrder::FarthestFirst, 0.9, 5.0);
/// assert_eq!((farthest.order, farthest.crossed), (vec![2, 1, 0], vec![]));
/// let nearest = fill_order(&at, &ways, &times, FillOrder::NearestFirst, 0.9, 5.0);
/// assert_eq!((nearest.order, nearest.crossed), (vec![0, 1, 2], vec![(1, 0), (2, 0), (2, 1)]));
/// ```
pub fn fill_order(
    at: &[Point],
    ways: &[Vec<Point>],
    times: &[f64],
    first: FillOrder,
    footprint: f64,
    later: f64,
) -> Filled {
    // Of each point, which ways lead over it.
    let over: Vec<Vec<usize>> = (0..at.len()).map(|k| leading_over(k, at[k], ways, footprint)).collect();
    let mut left: Vec<usize> = (0..at.len()).collect();
    left.sort_by(|a, b| {
        let by_time = match first {
            FillOrder::FarthestFirst => times[*b].total_cmp(&times[*a]),
            FillOrder::NearestFirst => times[*a].total_cmp(&times[*b]),
        };
        times[*a].is_infinite().cmp(&times[*b].is_infinite()).then(by_time).then(a.cmp(b))
    });
    let window = match first {
        FillOrder::FarthestFirst => f64::INFINITY,
        FillOrder::NearestFirst => later,
    };
    let mut is_left = vec![true; at.len()];
    let mut filled = Filled::default();
    while !left.is_empty() {
        let waits = |k: usize| over[k].iter().any(|way| is_left[*way] && times[*way] - times[k] <= window);
        let place = left.iter().position(|k| !waits(*k)).unwrap_or(0);
        let next = left.remove(place);
        is_left[next] = false;
        let crossed = over[next].iter().filter(|way| is_left[**way]);
        filled.crossed.extend(crossed.map(|way| (*way, next)));
        filled.order.push(next);
    }
    filled.crossed.sort_unstable();
    filled
}

fn leading_over(point: usize, at: Point, ways: &[Vec<Point>], footprint: f64) -> Vec<usize> {
    let is_over = |way: &[Point]| way.windows(2).any(|leg| distance_to_side(at, leg[0], leg[1]) < footprint);
    let others = ways.iter().enumerate().filter(|(k, _)| *k != point);
    others.filter(|(_, way)| is_over(way)).map(|(k, _)| k).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::outline;
    use crate::{Machine, Outline, Pace, Site};

    const P: fn(f64, f64) -> Point = Point::new;
    const PACE: Pace = Pace { speed: 1.0, start_and_stop: 0.0 };

    fn filled(
        zone: &Outline,
        pile: Point,
        first: FillOrder,
    ) -> (Filled, Vec<Vec<Point>>, Vec<Point>, Vec<f64>) {
        let at: Vec<Point> = zone.drop_points(3.0).iter().map(|point| point.at).collect();
        let space = Site::default().free_space(&Machine::WALKER);
        let ways: Vec<_> = space.ways(pile, &at, &PACE).into_iter().map(Result::unwrap).collect();
        let times: Vec<f64> = ways.iter().map(|way| way.time).collect();
        let ways: Vec<Vec<Point>> = ways.into_iter().map(|way| way.points).collect();
        (fill_order(&at, &ways, &times, first, 0.8, 4.0), ways, at, times)
    }

    #[test]
    fn farthest_first_no_way_leads_over_a_filled_point() {
        let zone = outline(&[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)]);
        let (filled, ways, at, times) = filled(&zone, P(-5.0, 9.0), FillOrder::FarthestFirst);
        assert_eq!(filled.crossed, []);
        let mut sorted = filled.order.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, (0..at.len()).collect::<Vec<_>>());
        for (place, later) in filled.order.iter().enumerate() {
            for earlier in &filled.order[..place] {
                for leg in ways[*later].windows(2) {
                    assert!(distance_to_side(at[*earlier], leg[0], leg[1]) >= 0.8);
                }
            }
        }
        // Farthest first but for what stands in the way.
        assert!(times[filled.order[0]] > 30.0 && times[*filled.order.last().unwrap()] < 10.0);
    }

    #[test]
    fn nearest_first_ways_over_filled_points_are_told() {
        let zone = outline(&[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)]);
        let (filled, ways, at, times) = filled(&zone, P(-5.0, 9.0), FillOrder::NearestFirst);
        assert!(times[filled.order[0]] < 10.0 && times[*filled.order.last().unwrap()] > 30.0);
        let place = |k: usize| filled.order.iter().position(|other| *other == k).unwrap();
        let mut expected = Vec::new();
        for (later, way) in ways.iter().enumerate() {
            for (earlier, point) in at.iter().enumerate() {
                let near = way.windows(2).any(|leg| distance_to_side(*point, leg[0], leg[1]) < 0.8);
                if later != earlier && near && place(earlier) < place(later) {
                    expected.push((later, earlier));
                }
            }
        }
        assert_eq!(filled.crossed, expected);
        assert!(!expected.is_empty());
    }

    #[test]
    fn two_ways_each_over_the_other_point_are_told_once() {
        let at = [P(0.0, 10.0), P(5.0, 10.0)];
        let ways = [vec![P(9.0, 10.0), P(0.0, 10.0)], vec![P(-9.0, 10.0), P(5.0, 10.0)]];
        let filled = fill_order(&at, &ways, &[9.0, 14.0], FillOrder::FarthestFirst, 0.5, 1.0);
        assert_eq!((filled.order, filled.crossed), (vec![1, 0], vec![(0, 1)]));
    }

    #[test]
    fn what_cannot_be_reached_comes_last() {
        let at = [P(0.0, 1.0), P(0.0, 2.0), P(0.0, 3.0)];
        let ways = [vec![], vec![P(5.0, 2.0), at[1]], vec![P(5.0, 3.0), at[2]]];
        let times = [f64::INFINITY, 5.0, 6.0];
        for (first, order) in [(FillOrder::FarthestFirst, [2, 1, 0]), (FillOrder::NearestFirst, [1, 2, 0])] {
            assert_eq!(fill_order(&at, &ways, &times, first, 0.5, 0.0).order, order);
        }
    }
}
