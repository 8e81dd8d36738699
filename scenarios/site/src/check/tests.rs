use super::*;
use crate::{Fence, Gate, Obstacle, Pile, Surface, TippingPlace, Zone};

const P: fn(f64, f64) -> Point = Point::new;

fn square(x: f64, y: f64, side: f64) -> Outline {
    Outline::rectangle(P(x, y), side, side, 0.0)
}

fn zone(outline: Outline) -> Zone {
    Zone { name: "pen".into(), outline, depth: 0.1 }
}

fn shed(outline: Outline) -> Obstacle {
    Obstacle { name: "shed".into(), outline }
}

fn said(site: &Site) -> Vec<String> {
    site.errors().iter().map(ToString::to_string).collect()
}

#[test]
fn a_place_that_is_right_has_no_errors() {
    let holed = square(0.0, 0.0, 20.0).with_hole(square(5.0, 5.0, 4.0).ring);
    let gate = Gate::between("gate", [P(3.0, 25.0), P(6.0, 25.0)], 8.0);
    let site = Site {
        boundary: Some(square(0.0, 0.0, 40.0)),
        obstacles: vec![shed(square(5.0, 5.0, 4.0)), shed(square(20.0, 0.0, 5.0))],
        fences: vec![Fence {
            name: "fence".into(),
            line: vec![P(0.0, 25.0), P(40.0, 25.0)],
            gates: vec![gate],
        }],
        surfaces: vec![Surface { name: "mud".into(), outline: square(10.0, 30.0, 5.0), share: 0.5 }],
        zones: vec![zone(holed)],
        piles: vec![Pile { name: "heap".into(), at: P(30.0, 30.0) }],
        tipping: vec![TippingPlace {
            name: "road".into(),
            shape: TippingShape::Along(vec![P(0.0, 39.0), P(40.0, 39.0)]),
            room: None,
        }],
    };
    assert_eq!(said(&site), Vec::<String>::new());
}

#[test]
fn a_shape_that_is_wrong_is_told_with_its_owner_and_nothing_further_is_asked() {
    let bow = Outline::from_corners(vec![P(0.0, 0.0), P(2.0, 2.0), P(2.0, 0.0), P(0.0, 2.0)]);
    let site = Site { boundary: Some(square(50.0, 50.0, 1.0)), zones: vec![zone(bow)], ..Site::default() };
    let expected = "zone \"pen\": the side from corner 1 and the side from corner 3 cross at (1.00 1.00); give the corners in the \
                    order in which one walks round";
    assert_eq!(said(&site), [expected]);
}

#[test]
fn a_zone_that_leaves_the_boundary_is_told_by_its_corner_or_side() {
    let boundary =
        Outline::from_corners(vec![P(0.0, 0.0), P(30.0, 0.0), P(30.0, 30.0), P(15.0, 5.0), P(0.0, 30.0)]);
    let with =
        |outline| Site { boundary: Some(boundary.clone()), zones: vec![zone(outline)], ..Site::default() };
    assert_eq!(said(&with(square(1.0, 1.0, 4.0))), Vec::<String>::new());
    let out = with(square(-0.5, 1.0, 4.0)).errors();
    assert!(
        matches!(out[..], [SiteError::OutsideBoundary { corner: 1, off, .. }] if (off - 0.5).abs() < 1e-9)
    );
    let across = Outline::from_corners(vec![P(2.0, 1.0), P(28.0, 1.0), P(28.0, 20.0), P(2.0, 20.0)]);
    assert!(matches!(with(across).errors()[..], [SiteError::LeavesBoundary { side: 3, .. }]));
}

#[test]
fn a_zone_over_an_obstacle_is_told_whichever_of_them_is_inside_the_other() {
    let with = |outline| Site {
        zones: vec![zone(outline)],
        obstacles: vec![shed(square(10.0, 10.0, 10.0))],
        ..Site::default()
    };
    assert!(matches!(
        with(square(15.0, 15.0, 20.0)).errors()[..],
        [SiteError::InsideObstacle { corner: 1, .. }]
    ));
    assert!(matches!(with(square(0.0, 0.0, 40.0)).errors()[..], [SiteError::UnderObstacle { .. }]));
    let strip = Outline::rectangle(P(0.0, 12.0), 40.0, 2.0, 0.0);
    assert!(matches!(with(strip).errors()[..], [SiteError::UnderObstacle { .. }]));
    assert!(matches!(with(square(10.0, 10.0, 10.0)).errors()[..], [SiteError::UnderObstacle { .. }]));
    assert_eq!(said(&with(square(20.0, 10.0, 10.0))), Vec::<String>::new());
}

#[test]
fn piles_and_tipping_points_stand_inside_the_boundary_and_outside_of_obstacles() {
    let pile = |x, y| Pile { name: "heap".into(), at: P(x, y) };
    let tip = TippingPlace { name: "road".into(), shape: TippingShape::Point(P(60.0, 1.0)), room: Some(0.0) };
    let mut site = Site {
        boundary: Some(square(0.0, 0.0, 40.0)),
        obstacles: vec![shed(square(10.0, 10.0, 10.0))],
        piles: vec![pile(15.0, 15.0), pile(5.0, 5.0), pile(f64::NAN, 0.0)],
        tipping: vec![tip],
        ..Site::default()
    };
    assert_eq!(said(&site).len(), 2);
    site.piles.pop();
    site.tipping[0].room = Some(3.0);
    assert!(matches!(
        site.errors()[..],
        [SiteError::InsideObstacle { corner: 1, .. }, SiteError::OutsideBoundary { corner: 1, .. }]
    ));
}

#[test]
fn a_gate_stands_with_both_posts_on_one_side_of_its_fence_and_apart_from_the_next() {
    let line = vec![P(0.0, 0.0), P(20.0, 0.0), P(20.0, 20.0)];
    let with = |posts: &[[Point; 2]]| {
        let gates = posts.iter().map(|posts| Gate::between("gate", *posts, 5.0)).collect();
        Site { fences: vec![Fence { name: "fence".into(), line: line.clone(), gates }], ..Site::default() }
    };
    assert_eq!(said(&with(&[[P(2.0, 0.03), P(5.0, 0.0)], [P(5.0, 0.0), P(8.0, 0.0)]])), Vec::<String>::new());
    let off = with(&[[P(2.0, 0.0), P(5.0, 1.0)]]).errors();
    assert!(matches!(off[..], [SiteError::PostOffFence { post: 2, off, .. }] if (off - 1.0).abs() < 1e-9));
    let corner = with(&[[P(18.0, 0.0), P(20.0, 2.0)]]).errors();
    assert!(matches!(corner[..], [SiteError::PostOffFence { .. }]));
    let over = with(&[[P(2.0, 0.0), P(5.0, 0.0)], [P(6.0, 0.0), P(4.0, 0.0)]]).errors();
    assert!(matches!(over[..], [SiteError::GatesOverlap { .. }]));
}

#[test]
fn figures_out_of_range_are_told_with_what_they_may_be() {
    let mut site = Site { zones: vec![zone(square(0.0, 0.0, 5.0))], ..Site::default() };
    site.zones[0].depth = 0.0;
    site.surfaces = vec![Surface { name: "mud".into(), outline: square(0.0, 0.0, 5.0), share: -0.5 }];
    let wide = Gate { width: 4.0, ..Gate::between("gate", [P(0.0, 0.0), P(3.0, 0.0)], -1.0) };
    site.fences =
        vec![Fence { name: "fence".into(), line: vec![P(0.0, 0.0), P(9.0, 0.0)], gates: vec![wide] }];
    let expected = [
        "zone \"pen\": depth is 0; it must be above 0 m",
        "surface \"mud\": share of speed is -0.5; it must be above 0 and at most 2",
        "gate \"gate\": width is 4; it must be above 0 m and at most the distance of its posts",
        "gate \"gate\": passing time is -1; it must be 0 s or more",
    ];
    assert_eq!(said(&site), expected);
}
