//! The point from which an area is nearest on the mean, anywhere or along a line.

use crate::outline::Outline;
use crate::point::Point;

/// The share of a stretch at which the golden section cuts it.
const GOLDEN: f64 = 0.618_033_988_749_894_9;
/// After so many cuts a stretch is too short to tell its ends apart.
const CUTS: usize = 60;

/// The point with the least mean straight distance to some areas together, and that distance \[m\]. Each area counts by its size; at
/// least one is given, and all have an area.
///
/// ```
/// use site::{Outline, Point, least_mean_distance};
/// let square = Outline::rectangle(Point::new(3.0, 5.0), 1.0, 1.0, 0.0);
/// let (at, mean) = least_mean_distance(&[&square]);
/// assert!(at.distance(Point::new(3.5, 5.5)) < 1e-6 && (mean - 0.382_597_858_2).abs() < 1e-9);
/// ```
pub fn least_mean_distance(areas: &[&Outline]) -> (Point, f64) {
    let corners = || areas.iter().flat_map(|area| &area.ring);
    let low = corners()
        .fold(Point::new(f64::INFINITY, f64::INFINITY), |a, b| Point::new(a.x.min(b.x), a.y.min(b.y)));
    let high = corners().fold(low, |a, b| Point::new(a.x.max(b.x), a.y.max(b.y)));
    // The mean distance is convex: the least of each upright line is convex along the lines.
    let upright = |x: f64| least(low.y, high.y, &|y| mean(areas, Point::new(x, y)));
    let (x, _) = least(low.x, high.x, &|x| upright(x).1);
    let (y, mean) = upright(x);
    (Point::new(x, y), mean)
}

/// The point of a line (at least two corners) with the least mean straight distance to some areas together, and that distance \[m\].
pub fn least_mean_distance_along(areas: &[&Outline], line: &[Point]) -> (Point, f64) {
    let legs = line.windows(2).map(|leg| {
        let at = |share: f64| leg[0] + (leg[1] - leg[0]) * share;
        let (share, mean) = least(0.0, 1.0, &|share| mean(areas, at(share)));
        (at(share), mean)
    });
    let first = line.first().copied().unwrap_or_default();
    legs.reduce(|best, next| if next.1 < best.1 { next } else { best }).unwrap_or((first, mean(areas, first)))
}

fn mean(areas: &[&Outline], from: Point) -> f64 {
    let all: f64 = areas.iter().map(|area| area.area()).sum();
    areas.iter().map(|area| area.area() * area.mean_distance(from)).sum::<f64>() / all
}

/// Where a convex function of one figure is least, and how much it is there.
fn least(mut low: f64, mut high: f64, of: &dyn Fn(f64) -> f64) -> (f64, f64) {
    let (mut left, mut right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut at_left, mut at_right) = (of(left), of(right));
    for _ in 0..CUTS {
        if at_left <= at_right {
            (high, right, at_right) = (right, left, at_left);
            left = high - GOLDEN * (high - low);
            at_left = of(left);
        } else {
            (low, left, at_left) = (left, right, at_right);
            right = low + GOLDEN * (high - low);
            at_right = of(right);
        }
    }
    let ends = [low, high].map(|end| (end, of(end)));
    [(left, at_left), (right, at_right)]
        .into_iter()
        .chain(ends)
        .fold((low, f64::INFINITY), |best, next| if next.1 < best.1 { next } else { best })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{L_SHAPE, close, outline};

    const P: fn(f64, f64) -> Point = Point::new;

    #[test]
    fn the_best_point_for_an_l_is_that_of_two_optimisers() {
        let shape = outline(&L_SHAPE);
        let (at, mean) = least_mean_distance(&[&shape]);
        close(mean, 13.155_191_91, 1e-8);
        close(at.distance(P(13.625_01, 8.677_27)), 0.0, 2e-5);
        let (at, mean) =
            least_mean_distance_along(&[&shape], &[P(-20.0, -6.0), P(10.0, -6.0), P(60.0, -6.0)]);
        close(mean, 20.131_552_01, 1e-8);
        close(at.x, 15.5855, 1e-4);
    }

    #[test]
    fn between_two_like_areas_it_lies_in_the_middle_and_areas_count_by_size() {
        let square = |x: f64, side: f64| Outline::rectangle(P(x, 0.0), side, side, 0.0);
        let (at, mean) = least_mean_distance_along(
            &[&square(0.0, 2.0), &square(10.0, 2.0)],
            &[P(-5.0, 9.0), P(20.0, 9.0)],
        );
        close(at.x, 6.0, 1e-5);
        assert!(mean > 9.0);
        let (at, _) = least_mean_distance(&[&square(0.0, 4.0), &square(100.0, 1.0)]);
        assert!(at.x < 5.0, "{at:?}");
    }
}
