//! The point from which the weighted sum of straight distances to given points is least (Weber's point).

use crate::point::Point;

/// Steps of the search at most; it is at its end long before.
const MOST_STEPS: usize = 10_000;

/// A point that counts so much.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighted {
    /// Where \[m\].
    pub at: Point,
    /// How much it counts, such as loads brought there; at least 0.
    pub weight: f64,
}

/// Weber's point of some points, and the weighted sum of distances from it; `None` where nothing weighs anything. Where several points are
/// as good (points in one line), it is one of them.
///
/// Weiszfeld's iteration, led out of the given points by the rule of Vardi and Zhang (2000); a given point that outweighs the pull of all others is the answer itself.
///
/// ```
/// use site::{Point, Weighted, weber};
/// let points = [(0.0, 0.0), (4.0, 0.0), (0.0, 3.0)].map(|(x, y)| Weighted { at: Point::new(x, y), weight: 1.0 });
/// let (at, sum) = weber(&points).unwrap();
/// assert!((sum - (25.0 + 12.0 * 3.0_f64.sqrt()).sqrt()).abs() < 1e-9);
/// assert!(at.distance(Point::new(0.695_789, 0.751_176)) < 1e-6);
/// ```
pub fn weber(points: &[Weighted]) -> Option<(Point, f64)> {
    let points: Vec<Weighted> = points.iter().copied().filter(|point| point.weight > 0.0).collect();
    let weight: f64 = points.iter().map(|point| point.weight).sum();
    if points.is_empty() {
        return None;
    }
    // The best of the given points is known without a search, and the search begins from it.
    let sums = points.iter().map(|point| (point.at, sum(&points, point.at)));
    let (mut at, mut least) = sums.reduce(|best, next| if next.1 < best.1 { next } else { best })?;
    let around = points.iter().map(|point| point.at.distance(at)).fold(0.0, f64::max);
    for _ in 0..MOST_STEPS {
        let next = step(&points, at, weight, around);
        let sum = sum(&points, next);
        let moved = next.distance(at);
        if sum > least || moved <= 1e-13 * around {
            break;
        }
        (at, least) = (next, sum);
    }
    Some((at, least))
}

fn sum(points: &[Weighted], from: Point) -> f64 {
    points.iter().map(|point| point.weight * point.at.distance(from)).sum()
}

/// One step from a point.
fn step(points: &[Weighted], at: Point, weight: f64, around: f64) -> Point {
    let (mut pull, mut here, mut inverse) = (Point::default(), 0.0, 0.0);
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for point in points {
        let (off, distance) = (point.at - at, point.at.distance(at));
        if distance <= 1e-12 * around {
            here += point.weight;
            continue;
        }
        let unit = off * (1.0 / distance);
        let part = point.weight / distance;
        pull = pull + unit * point.weight;
        inverse += part;
        xx += part * unit.y * unit.y;
        xy -= part * unit.x * unit.y;
        yy += part * unit.x * unit.x;
    }
    let strength = pull.length();
    if here > 0.0 || inverse == 0.0 {
        // At a given point: it holds what is pulled less than it weighs.
        if strength <= here * (1.0 + 1e-12) || inverse == 0.0 {
            return at;
        }
        return at + pull * ((1.0 - here / strength) / inverse);
    }
    // Newton's step goes straight to the end where it leads down; Weiszfeld's always leads down.
    let determinant = xx * yy - xy * xy;
    if determinant > 1e-9 * inverse * inverse {
        let newton =
            at + Point::new(yy * pull.x - xy * pull.y, xx * pull.y - xy * pull.x) * (1.0 / determinant);
        if newton.distance(at) < around && sum(points, newton) < sum(points, at) {
            return newton;
        }
    }
    if strength <= 1e-13 * weight { at } else { at + pull * (1.0 / inverse) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{Draw, close};

    fn weighted(points: &[(f64, f64, f64)]) -> Vec<Weighted> {
        points.iter().map(|&(x, y, weight)| Weighted { at: Point::new(x, y), weight }).collect()
    }

    #[test]
    fn a_point_that_outweighs_the_others_is_the_answer() {
        let (at, sum) = weber(&weighted(&[(0.0, 0.0, 3.0), (100.0, 0.0, 2.0)])).unwrap();
        assert_eq!((at, sum), (Point::new(0.0, 0.0), 200.0));
        let (at, _) = weber(&weighted(&[(0.0, 0.0, 20.0), (10.0, 0.0, 30.0), (5.0, 8.0, 44.0)])).unwrap();
        assert_eq!(at, Point::new(5.0, 8.0));
        assert_eq!(weber(&weighted(&[(1.0, 2.0, 0.0)])), None);
        assert_eq!(weber(&weighted(&[(1.0, 2.0, 5.0)])), Some((Point::new(1.0, 2.0), 0.0)));
    }

    #[test]
    fn no_point_near_weber_s_is_better_and_turning_turns_it() {
        let mut draw = Draw::new(21);
        for _ in 0..200 {
            let points: Vec<Weighted> = (0..3 + (draw.between(0.0, 6.0) as usize))
                .map(|_| Weighted {
                    at: Point::new(draw.between(0.0, 90.0), draw.between(0.0, 60.0)),
                    weight: draw.between(0.5, 9.0),
                })
                .collect();
            let (at, least) = weber(&points).unwrap();
            close(sum(&points, at), least, 1e-12 * least);
            for k in 0..24 {
                let angle = f64::from(k) * 0.261_799;
                for off in [1e-3, 1.0, 20.0] {
                    let near = at + Point::new(libm::cos(angle), libm::sin(angle)) * off;
                    assert!(sum(&points, near) >= least * (1.0 - 1e-13));
                }
            }
            let turned: Vec<Weighted> = points
                .iter()
                .map(|p| Weighted { at: Point::new(-p.at.y * 2.0 + 7.0, p.at.x * 2.0), ..*p })
                .collect();
            close(weber(&turned).unwrap().1, 2.0 * least, 1e-9 * least);
        }
    }
}
