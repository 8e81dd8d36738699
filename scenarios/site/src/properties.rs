//! What must hold for every place: drawn places, turned, moved, mirrored, in other units; wider machines; more obstacles.

use crate::testing::Draw;
use crate::*;
use std::f64::consts::PI;

const PACE: Pace = Pace { speed: 1.5, start_and_stop: 6.0 };

/// Sheds, a bent fence with two gates, a patch of mud; nobody checks that they do not overlap, and some do.
pub(crate) fn place(draw: &mut Draw) -> Site {
    let mut site = Site::default();
    let boundary = Outline::rectangle(Point::new(0.0, 0.0), 80.0, 60.0, 0.0);
    site.boundary = Some(boundary);
    for k in 0..8 {
        let at = Point::new(draw.between(5.0, 70.0), draw.between(5.0, 50.0));
        let outline = match k % 3 {
            0 => Outline::disc_of_sides(at, draw.between(2.0, 9.0), 12),
            1 => {
                Outline::rectangle(at, draw.between(2.0, 12.0), draw.between(1.0, 6.0), draw.between(0.0, PI))
            }
            _ => bent(at, draw.between(4.0, 9.0)),
        };
        site.obstacles.push(Obstacle { name: "shed".into(), outline });
    }
    let x = draw.between(30.0, 50.0);
    let line = vec![Point::new(x, 0.0), Point::new(x + 5.0, 30.0), Point::new(x - 4.0, 60.0)];
    let gate = |from: Point, to: Point, share: f64, width: f64| {
        let at = from + (to - from) * share;
        Gate::between("gate", [at, at + (to - from).unit() * width], 7.0)
    };
    let gates = vec![gate(line[0], line[1], 0.3, 3.0), gate(line[1], line[2], 0.6, 4.5)];
    site.fences.push(Fence { name: "fence".into(), line, gates });
    let mud =
        Outline::rectangle(Point::new(draw.between(5.0, 60.0), draw.between(5.0, 40.0)), 14.0, 9.0, 0.3);
    site.surfaces.push(Surface { name: "mud".into(), outline: mud, share: 0.5 });
    site
}

fn bent(at: Point, size: f64) -> Outline {
    let corners = [(0.0, 0.0), (1.0, 0.0), (1.0, 0.3), (0.4, 0.3), (0.4, 1.0), (0.0, 1.0)];
    Outline::from_corners(corners.iter().map(|&(x, y)| at + Point::new(x, y) * size).collect())
}

fn mapped(site: &Site, map: &dyn Fn(Point) -> Point, scale: f64) -> Site {
    let ring = |ring: &Vec<Point>| ring.iter().map(|p| map(*p)).collect::<Vec<_>>();
    let outline = |o: &Outline| Outline { ring: ring(&o.ring), holes: o.holes.iter().map(ring).collect() };
    let mut site = site.clone();
    site.boundary = site.boundary.as_ref().map(outline);
    site.obstacles.iter_mut().for_each(|o| o.outline = outline(&o.outline));
    site.surfaces.iter_mut().for_each(|s| s.outline = outline(&s.outline));
    for fence in &mut site.fences {
        fence.line = ring(&fence.line);
        for gate in &mut fence.gates {
            (gate.posts, gate.width) = (gate.posts.map(map), gate.width * scale);
        }
    }
    site
}

pub(crate) fn machines() -> [Machine; 3] {
    let on_the_spot = Turning::OnTheSpot { quarter_turn: 4.0 };
    let radius = Turning::Radius { radius: 2.5, reversal: 9.0 };
    [
        Machine { width: 1.1, clearance: 0.2, turning: on_the_spot },
        Machine { width: 1.7, clearance: 0.3, turning: radius },
        Machine { width: 0.7, clearance: 0.0, turning: radius },
    ]
}

/// A start and ends where there is room for a machine.
pub(crate) fn ends(draw: &mut Draw, space: &FreeSpace, count: usize) -> Vec<Point> {
    let mut ends = Vec::new();
    while ends.len() < count {
        let at = Point::new(draw.between(0.0, 80.0), draw.between(0.0, 60.0));
        ends.extend(space.is_free(at).then_some(at));
    }
    ends
}

fn alike(one: &Way, other: &Way, scale: f64) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() <= 1e-9 * a.abs().max(1.0);
    near(one.length * scale, other.length) && near(one.time, other.time) && one.gates == other.gates
}

#[test]
fn turning_moving_mirroring_and_other_units_change_no_way() {
    let mut draw = Draw::new(11);
    let (mut compared, mut with_bends) = (0, 0);
    for round in 0..24 {
        let site = place(&mut draw);
        let machine = machines()[round % 3];
        let space = site.free_space(&machine);
        let points = ends(&mut draw, &space, 9);
        let (sin, cos) = (libm::sin(0.2 + round as f64), libm::cos(0.2 + round as f64));
        let turned = |p: Point| Point::new(p.x * cos - p.y * sin, p.x * sin + p.y * cos);
        let moved = |p: Point| p + Point::new(-531.7, 287.3);
        let mirrored = |p: Point| Point::new(-p.x, p.y);
        let in_feet = |p: Point| p * (1.0 / 0.3048);
        let maps: [(&dyn Fn(Point) -> Point, f64); 4] =
            [(&turned, 1.0), (&moved, 1.0), (&mirrored, 1.0), (&in_feet, 1.0 / 0.3048)];
        let ways = space.ways(points[0], &points[1..], &PACE);
        for (map, scale) in maps {
            let of_scale = |radius| Turning::Radius { radius, reversal: 9.0 };
            let turning = match machine.turning {
                Turning::Radius { radius, .. } => of_scale(radius * scale),
                other => other,
            };
            let machine =
                Machine { width: machine.width * scale, clearance: machine.clearance * scale, turning };
            let pace = Pace { speed: PACE.speed * scale, ..PACE };
            let space = mapped(&site, map, scale).free_space(&machine);
            let to: Vec<Point> = points[1..].iter().map(|p| map(*p)).collect();
            for (own, other) in ways.iter().zip(space.ways(map(points[0]), &to, &pace)) {
                match (own, &other) {
                    (Ok(own), Ok(other)) => {
                        assert!(alike(own, other, scale), "round {round}: {own:?}\n{other:?}");
                        with_bends += usize::from(!own.bends.is_empty());
                    }
                    (own, other) => assert_eq!(own.is_err(), other.is_err()),
                }
                compared += 1;
            }
        }
    }
    assert!(compared > 600 && with_bends > 200, "{compared} {with_bends}");
}

#[test]
fn a_way_there_is_as_long_as_the_way_back() {
    let mut draw = Draw::new(12);
    for round in 0..24 {
        let site = place(&mut draw);
        let space = site.free_space(&machines()[round % 3]);
        let points = ends(&mut draw, &space, 6);
        for pair in points.windows(2) {
            let (there, back) = (space.way(pair[0], pair[1], &PACE), space.way(pair[1], pair[0], &PACE));
            match (there, back) {
                (Ok(there), Ok(back)) => assert!((there.time - back.time).abs() < 1e-9 * there.time),
                (there, back) => assert_eq!(there.is_err(), back.is_err()),
            }
        }
    }
}

/// Turns cost nothing, and the ground is alike: the quickest way is the shortest.
pub(crate) fn plain(mut site: Site) -> Site {
    site.surfaces.clear();
    site.fences.iter_mut().flat_map(|fence| &mut fence.gates).for_each(|gate| gate.passing = 0.0);
    site
}

#[test]
fn a_wider_machine_never_has_a_shorter_way() {
    let mut draw = Draw::new(13);
    let mut longer = 0;
    for _ in 0..30 {
        let site = plain(place(&mut draw));
        let widest = Machine { width: 3.6, ..Machine::WALKER };
        let points = ends(&mut draw, &site.free_space(&widest), 8);
        let mut before: Vec<f64> = vec![0.0; 7];
        for width in [0.0, 0.4, 1.0, 1.8, 2.6, 3.1, 3.6] {
            let space = site.free_space(&Machine { width, ..Machine::WALKER });
            longer += none_shorter(&mut before, &space, &points);
        }
    }
    assert!(longer > 100, "{longer}");
}

/// Holds that no way from the first point to the others is shorter than it was; how many are longer.
fn none_shorter(before: &mut [f64], space: &FreeSpace, points: &[Point]) -> usize {
    let mut longer = 0;
    for (before, way) in before.iter_mut().zip(space.ways(points[0], &points[1..], &PACE)) {
        let length = way.map_or(f64::INFINITY, |way| way.length);
        assert!(length >= *before - 1e-7, "{length} after {before}");
        longer += usize::from(length > *before + 1e-7 && *before > 0.0);
        *before = length;
    }
    longer
}

#[test]
fn more_obstacles_never_shorten_a_way() {
    let mut draw = Draw::new(14);
    let mut longer = 0;
    for _ in 0..30 {
        let whole = plain(place(&mut draw));
        let machine = Machine { width: 1.4, ..Machine::WALKER };
        let points = ends(&mut draw, &whole.free_space(&machine), 8);
        let mut before: Vec<f64> = vec![0.0; 7];
        for count in 0..=whole.obstacles.len() {
            let mut site = whole.clone();
            site.obstacles.truncate(count);
            longer += none_shorter(&mut before, &site.free_space(&machine), &points);
        }
    }
    assert!(longer > 30, "{longer}");
}

/// No corner and no point of a way may be where there is no room for the machine.
#[test]
fn a_way_keeps_its_distance_from_everything() {
    let mut draw = Draw::new(15);
    let mut looked = 0;
    for round in 0..30 {
        let site = place(&mut draw);
        let machine = machines()[round % 3];
        let space = site.free_space(&machine);
        let points = ends(&mut draw, &space, 8);
        let ways = space.ways(points[0], &points[1..], &PACE);
        for way in ways.into_iter().flatten() {
            for leg in way.points.windows(2) {
                for k in 0..=100 {
                    let at = leg[0] + (leg[1] - leg[0]) * (f64::from(k) / 100.0);
                    let off = |outline: &Outline| crate::inside::distance_to_rim(at, outline);
                    let near = site.obstacles.iter().map(|o| off(&o.outline)).fold(f64::INFINITY, f64::min);
                    assert!(near >= machine.growth() - 1e-7, "{near} at {at:?}");
                    assert!(site.boundary.as_ref().is_none_or(|b| off(b) >= machine.growth() - 1e-7));
                    assert!(!site.obstacles.iter().any(|o| crate::inside::is_in(at, &o.outline)));
                    looked += 1;
                }
            }
        }
    }
    assert!(looked > 10_000, "{looked}");
}
