//! Mean straight distances.

use super::{Values, l_shape, last_digit, outline, p, rectangle};
use crate::comparison::{Comparison, Status};
use site::{Outline, Point};
use std::f64::consts::PI;

/// Sides of a polygon that is a disc to nine digits.
const SIDES: usize = 20_000;

pub(crate) fn mean_distances() -> Comparison {
    let mut comparison = Comparison::new(
        "The mean straight distance from a point to an area is that of the closed forms",
        "square point picking, rectangles, polygons by a fan of triangles, discs in polar coordinates (place/mean_distance.csv)",
        Status::Computed,
        0.0,
    );
    let mut values = Values::of("mean_distance");
    let mut compare = |words: &str, area: &Outline, from: Point| {
        let expected = values.value(words);
        let obtained = area.mean_distance(from);
        comparison.exact(words, obtained, expected, last_digit(expected));
    };
    compare("unit square, from its centre", &rectangle(1.0, 1.0), p(0.5, 0.5));
    compare("unit square, from middle of a side", &rectangle(1.0, 1.0), p(0.5, 0.0));
    compare("a=30 b=20 from=(0 0)", &rectangle(30.0, 20.0), p(0.0, 0.0));
    compare("a=30 b=20 from=(15 10)", &rectangle(30.0, 20.0), p(15.0, 10.0));
    compare("a=30 b=20 from=(-10 10)", &rectangle(30.0, 20.0), p(-10.0, 10.0));
    compare("a=60 b=10 from=(0 5)", &rectangle(60.0, 10.0), p(0.0, 5.0));
    compare("a=40 b=30 from=(50 40)", &rectangle(40.0, 30.0), p(50.0, 40.0));
    compare("rectangle, corner, by the classical formula", &rectangle(30.0, 20.0), p(0.0, 0.0));
    compare("from=(0 0)", &l_shape(), p(0.0, 0.0));
    compare("from=(10 10)", &l_shape(), p(10.0, 10.0));
    compare("from=(-5 35)", &l_shape(), p(-5.0, 35.0));
    compare("from=(25 -8)", &l_shape(), p(25.0, -8.0));
    let triangle = outline(&[(0.0, 0.0), (3.0, 0.0), (0.0, 4.0)]);
    compare("triangle 3-4-5, from the right angle", &triangle, p(0.0, 0.0));
    of_discs(&mut comparison, &mut values);
    between_two_points(&mut comparison, &mut values);
    comparison
}

fn of_discs(comparison: &mut Comparison, values: &mut Values) {
    let disc = Outline::disc_of_sides(p(0.0, 0.0), 2.0, SIDES);
    // The corners stick out of the rim by so much, the sides' middles stay inside by half of it.
    let sides = (PI / SIDES as f64).powi(2) / 3.0;
    for (words, from) in [("disc, from its rim", 1.0), ("D=0.5", 0.5), ("D=2", 2.0)] {
        let expected = values.value(words);
        let rounding = last_digit(expected) + sides;
        comparison.exact(format!("disc, {words}"), disc.mean_distance(p(from, 0.0)), expected, rounding);
    }
}

/// The closed form from each of many drop points, by their shares.
fn between_two_points(comparison: &mut Comparison, values: &mut Values) {
    for (words, area, spacing) in [
        ("unit square, two random points", rectangle(1.0, 1.0), 0.01),
        ("rectangle 30 x 40, two random points", rectangle(40.0, 30.0), 0.4),
    ] {
        let expected = values.value(words);
        let points = area.drop_points(spacing);
        let mean: f64 = points.iter().map(|point| point.share * area.mean_distance(point.at)).sum();
        // The middle of a cell stands for all of it: a 24th of its side squared, times the mean curvature, 2 over the distance.
        comparison.exact(words, mean, expected, spacing * spacing / 12.0 / expected * 2.0);
    }
}

#[test]
fn mean_distances_are_those_of_the_closed_forms() {
    mean_distances().judge(18);
}
