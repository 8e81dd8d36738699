use super::*;
use crate::testing::{Draw, L_SHAPE, close, outline};

const P: fn(f64, f64) -> Point = Point::new;

fn sum(points: &[DropPoint]) -> f64 {
    points.iter().map(|point| point.share).sum()
}

/// Shares and places of the points as one point: area-weighted middle.
fn middle(points: &[DropPoint]) -> Point {
    points.iter().fold(Point::default(), |sum, point| sum + point.at * point.share)
}

#[test]
fn spacing_is_the_side_of_the_square_a_load_covers() {
    close(spacing(0.5, 0.05), 3.162_277_66, 1e-8);
    close(spacing(0.765, 0.0508), 3.880_599_84, 1e-8);
}

#[test]
fn a_rectangle_that_fits_is_cut_into_squares_row_by_row() {
    let points = Outline::rectangle(P(2.0, 3.0), 6.0, 4.0, 0.0).drop_points(2.0);
    let expected = [(3.0, 4.0), (5.0, 4.0), (7.0, 4.0), (3.0, 6.0), (5.0, 6.0), (7.0, 6.0)];
    assert_eq!(points.len(), 6);
    for (point, (x, y)) in points.iter().zip(expected) {
        close(point.at.distance(P(x, y)), 0.0, 1e-12);
        close(point.share, 1.0 / 6.0, 1e-12);
    }
    // Upright, the grid runs along the longer side all the same.
    let upright = Outline::rectangle(P(2.0, 3.0), 4.0, 6.0, 0.0).drop_points(2.0);
    close(upright[0].at.distance(upright[1].at), 2.0, 1e-12);
    assert!((upright[0].at.x - upright[1].at.x).abs() < 1e-12);
}

#[test]
fn shares_come_to_one_and_the_points_balance_about_the_middle_of_the_zone() {
    let mut draw = Draw::new(5);
    for round in 0..40 {
        let turn = draw.between(0.0, 6.0);
        let about = P(draw.between(-500.0, 500.0), draw.between(-500.0, 500.0));
        let (sin, cos) = (libm::sin(turn), libm::cos(turn));
        let map = |&(x, y): &(f64, f64)| about + P(x * cos - y * sin, x * sin + y * cos);
        let mut zone = Outline::from_corners(L_SHAPE.iter().map(map).collect());
        if round % 2 == 0 {
            zone = zone.with_hole([(3.0, 2.0), (9.0, 2.0), (9.0, 6.0), (3.0, 6.0)].iter().map(map).collect());
        }
        let points = zone.drop_points(draw.between(0.7, 7.0));
        close(sum(&points), 1.0, 1e-9);
        assert!(points.iter().all(|point| point.share > 0.0 && is_in(point.at, &zone)));
        // A piece that is bent round its own middle has its point beside it: there are few of them.
        assert!(middle(&points).distance(zone.centroid()) < 0.5);
    }
}

#[test]
fn turning_and_mirroring_the_zone_turns_and_mirrors_its_points() {
    let zone = outline(&L_SHAPE);
    let points = zone.drop_points(3.0);
    let (sin, cos) = (libm::sin(0.7), libm::cos(0.7));
    let maps: [&dyn Fn(Point) -> Point; 3] = [
        &|p: Point| P(p.x * cos - p.y * sin + 90.0, p.x * sin + p.y * cos - 40.0),
        &|p: Point| P(-p.x, p.y),
        &|p: Point| p * (1.0 / 0.3048),
    ];
    for (k, map) in maps.iter().enumerate() {
        let scale = if k == 2 { 1.0 / 0.3048 } else { 1.0 };
        let moved = Outline::from_corners(zone.ring.iter().map(|p| map(*p)).collect());
        let found = moved.drop_points(3.0 * scale);
        assert_eq!(found.len(), points.len());
        for point in &points {
            let twin = found.iter().find(|other| other.at.distance(map(point.at)) < 1e-7).unwrap();
            close(twin.share, point.share, 1e-9);
        }
    }
}

#[test]
fn the_finer_the_cutting_the_nearer_its_mean_distance_to_the_closed_form() {
    let zone = outline(&L_SHAPE).with_hole(vec![P(12.0, 2.0), P(30.0, 3.0), P(20.0, 8.0)]);
    let from = P(25.0, -8.0);
    let exact = zone.mean_distance(from);
    let mean = |spacing| {
        zone.drop_points(spacing).iter().map(|point| point.share * point.at.distance(from)).sum::<f64>()
    };
    close(mean(3.0), exact, 0.01 * exact);
    close(mean(1.0), exact, 0.001 * exact);
    close(mean(0.3), exact, 0.0001 * exact);
}

#[test]
fn slivers_go_to_their_neighbours_and_a_spacing_that_is_none_gives_one_point() {
    // Of the second row two cells have 5 cm by 2 m of it.
    let step = outline(&[(0.0, 0.0), (10.0, 0.0), (10.0, 4.0), (5.0, 4.0), (5.0, 2.05), (0.0, 2.05)]);
    let points = step.drop_points(2.0);
    assert_eq!(points.len(), 8);
    close(points[0].share * step.area(), 2.0 * 2.05, 1e-12);
    close(sum(&points), 1.0, 1e-12);
    let zone = Outline::rectangle(P(0.0, 0.0), 4.04, 2.0, 0.0);
    for spacing in [1e9, 0.0, f64::NAN, 1e-9] {
        let points = zone.drop_points(spacing);
        assert_eq!(points.len(), 1);
        close(points[0].at.distance(P(2.02, 1.0)), 0.0, 1e-9);
    }
}

#[test]
fn a_piece_whose_middle_is_in_a_hole_has_its_point_in_the_zone() {
    let zone = outline(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]).with_hole(vec![
        P(1.0, 1.0),
        P(3.0, 1.0),
        P(3.0, 3.0),
        P(1.0, 3.0),
    ]);
    let points = zone.drop_points(10.0);
    assert_eq!(points.len(), 1);
    assert!(is_in(points[0].at, &zone), "{points:?}");
}
