//! Where to tip: points of least driving, and the best two places of many.

use super::{Values, l_shape, last_digit, p};
use crate::comparison::{Comparison, Status};
use site::{Weighted, least_mean_distance, least_mean_distance_along, screened, weber};

/// The points and weights of one case, with where the best point is.
type Case<'a> = (&'a str, &'a [(f64, f64)], &'a [f64], (f64, f64));

const CORNERS: [(f64, f64); 4] = [(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)];
const CASES: [Case<'static>; 5] = [
    ("weights=[1 1 1]", &[(0.0, 0.0), (4.0, 0.0), (0.0, 3.0)], &[1.0, 1.0, 1.0], (0.695_789, 0.751_176)),
    ("weights=[20 30 44]", &[(0.0, 0.0), (10.0, 0.0), (5.0, 8.0)], &[20.0, 30.0, 44.0], (5.0, 8.0)),
    ("weights=[10 15 40 6.7]", &CORNERS, &[10.0, 15.0, 40.0, 6.7], (30.0, 20.0)),
    ("weights=[10 15 20 12]", &CORNERS, &[10.0, 15.0, 20.0, 12.0], (23.503_478, 12.908_940)),
    ("weights=[3 2]", &[(0.0, 0.0), (100.0, 0.0)], &[3.0, 2.0], (0.0, 0.0)),
];

pub(crate) fn least_driving() -> Comparison {
    let mut comparison = Comparison::new(
        "Places of least driving are those of two optimisers and, on a grid, of an integer program",
        "Weiszfeld's iteration and Nelder & Mead; bounded search and a grid of 1 mm; all subsets and an integer program \
         (place/tipping.csv)",
        Status::Computed,
        0.0,
    );
    let mut values = Values::of("tipping");
    for (words, at, weights, best) in CASES {
        let points: Vec<Weighted> =
            at.iter().zip(weights).map(|(&(x, y), &weight)| Weighted { at: p(x, y), weight }).collect();
        let expected = values.value(words);
        let (found, sum) = weber(&points).unwrap();
        comparison.exact(format!("{words}: sum of distances"), sum, expected, last_digit(expected));
        // The table prints the place to a thousandth of a millimetre.
        comparison.exact(format!("{words}: x"), found.x, best.0, 5e-7);
        comparison.exact(format!("{words}: y"), found.y, best.1, 5e-7);
    }
    values.skip();
    let shape = l_shape();
    let expected = values.value("least mean straight distance to the L-shape");
    let (_, mean) = least_mean_distance(&[&shape]);
    comparison.exact("best point for an L: mean distance", mean, expected, last_digit(expected));
    let expected = values.value("pile only on the road");
    let (at, mean) = least_mean_distance_along(&[&shape], &[p(-60.0, -6.0), p(100.0, -6.0)]);
    comparison.exact("best point of a road: mean distance", mean, expected, last_digit(expected));
    comparison.exact("best point of a road: x", at.x, 15.5855, 5e-5);
    let expected = values.value("p-median on a 4 x 3 grid");
    let grid: Vec<_> = (0..12).map(|k| p(f64::from(k / 3) * 10.0, f64::from(k % 3) * 10.0)).collect();
    let times: Vec<Vec<f64>> = grid.iter().map(|a| grid.iter().map(|b| a.distance(*b)).collect()).collect();
    let loads = [3.0, 1.0, 4.0, 1.0, 5.0, 9.0, 2.0, 6.0, 5.0, 3.0, 5.0, 8.0];
    let best = screened(&times, &loads, &[f64::INFINITY; 12], 2, 1);
    comparison.exact("two places on a grid: total", best[0].total, expected, last_digit(expected));
    comparison.exact("the first of them", best[0].places[0] as f64, 5.0, 0.0);
    comparison.exact("the second", best[0].places[1] as f64, 10.0, 0.0);
    comparison
}

#[test]
fn places_of_least_driving_are_those_of_two_optimisers() {
    least_driving().judge(21);
}
