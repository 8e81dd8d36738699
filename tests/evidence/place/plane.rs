//! Drop points, degrees and tapes.

use super::{Values, last_digit, p};
use crate::comparison::{Comparison, Status};
use site::{Fixed, Projection, Side, Tape, fixed_by_tapes, spacing};

pub(crate) fn drop_points_degrees_and_tapes() -> Comparison {
    let mut comparison = Comparison::new(
        "Drop points are as far apart as a load covers; degrees are as long as on the ellipsoid, and tapes meet where they should",
        "volume balance; WGS 84 and a geodesic by pyproj; difference of circles, triangulation, least squares \
         (place/heaps_grades.csv, place/tracks_tapes.csv)",
        Status::Computed,
        0.0,
    );
    let mut values = Values::of("heaps_grades");
    for (words, volume, depth) in [
        ("V=0.5 m3 t=0.05 m", 0.5, 0.05),
        ("V=0.5 m3 t=0.1 m", 0.5, 0.1),
        ("V=0.765 m3 t=0.0508 m", 0.765, 0.0508),
    ] {
        let expected = values.value(words);
        comparison.exact(format!("spacing, {words}"), spacing(volume, depth), expected, last_digit(expected));
    }
    let mut values = Values::of("tracks_tapes");
    let degree = |latitude| Projection::about(8.0, latitude).metres_per_degree();
    for (words, obtained) in [
        ("degree of latitude", degree(45.0).1),
        ("degree of longitude", degree(45.0).0),
        ("degree of latitude", degree(60.0).1),
    ] {
        let expected = values.value(words);
        comparison.exact(format!("metres per {words}"), obtained, expected, last_digit(expected));
    }
    // The tapes are given to a thousandth of a millimetre, and the corner is known as well as they are.
    let given = 1e-6;
    let three = tapes(&[(0.0, 0.0, 14.450_346), (30.0, 0.0, 18.942_347), (0.0, 20.0, 17.855_321)]);
    comparison.exact("three tapes: x", three.at.x, values.value("tape: point from distances"), given);
    comparison.exact("three tapes: y", three.at.y, values.value("same, y"), given);
    let two = tapes(&[(0.0, 0.0, 14.450_346), (30.0, 0.0, 18.942_347)]);
    comparison.exact("two tapes: y", two.at.y, values.value("two tapes from a base line"), given);
    let rough = tapes(&[(0.0, 0.0, 14.5), (30.0, 0.0, 18.9), (0.0, 20.0, 18.0)]);
    let expected = values.value("three tapes that do not quite meet");
    // The table's own two methods part at the ninth decimal; in 50 digits the value is 7.17927526250684.
    comparison.exact("tapes that miss, least squares: y", rough.at.y, expected, 3e-9);
    comparison
}

fn tapes(tapes: &[(f64, f64, f64)]) -> Fixed {
    let tapes: Vec<Tape> = tapes.iter().map(|&(x, y, length)| Tape { post: p(x, y), length }).collect();
    fixed_by_tapes(&tapes, Side::Left).unwrap()
}

#[test]
fn drop_points_degrees_and_tapes_are_as_they_should_be() {
    drop_points_degrees_and_tapes().judge(10);
}
