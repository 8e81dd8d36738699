//! How fast ways are found: a large place, in the order in which a person waits for it.
//!
//! What it is for: all ways of a place of 20 zones, 40 obstacles, 3 machines and 500 drop points in under 1 s, and an answer while a
//! pile is dragged in under 0.1 s.

#![allow(missing_docs, reason = "a benchmark is no library")]
#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a benchmark prints, and ends where it cannot go on"
)]

use criterion::Criterion;
use site::{Fence, FreeSpace, Gate, Machine, Obstacle, Outline, Pace, Point, Site, Surface, Turning, Zone};
use std::f64::consts::PI;
use std::hint::black_box;

const PACE: Pace = Pace { speed: 1.5, start_and_stop: 6.0 };

/// A place of 200 m x 150 m: zones in a grid, between them sheds, beds and ponds, all within a fence with gates.
fn large() -> Site {
    let p = Point::new;
    let mut site =
        Site { boundary: Some(Outline::rectangle(p(0.0, 0.0), 200.0, 150.0, 0.0)), ..Site::default() };
    for k in 0..20 {
        let corner = p(f64::from(k % 5) * 38.0 + 8.0, f64::from(k / 5) * 35.0 + 8.0);
        let outline = Outline::rectangle(corner, 24.0, 15.0, 0.0);
        site.zones.push(Zone { name: format!("zone {k}"), outline, depth: 0.1 });
    }
    for k in 0..40 {
        let at = p(f64::from(k % 8) * 24.0 + 9.0, f64::from(k / 8) * 28.0 + 29.0);
        let outline = match k % 5 {
            0 => Outline::disc_of_sides(at, 5.0, 24),
            1 | 2 => Outline::rectangle(at, 7.0, 3.0, f64::from(k) * PI / 9.0),
            _ => Outline::rectangle(at, 4.0, 4.0, f64::from(k) * PI / 7.0),
        };
        site.obstacles.push(Obstacle { name: format!("obstacle {k}"), outline });
    }
    for k in 0..3 {
        let outline = Outline::rectangle(p(f64::from(k) * 60.0 + 20.0, 48.0), 30.0, 9.0, 0.1);
        site.surfaces.push(Surface { name: format!("soft {k}"), outline, share: 0.6 });
    }
    let line = vec![p(118.0, 0.0), p(118.0, 150.0)];
    let gate = |y: f64| Gate::between("gate", [p(118.0, y), p(118.0, y + 3.5)], 8.0);
    site.fences.push(Fence { name: "fence".into(), line, gates: vec![gate(30.0), gate(110.0)] });
    site
}

fn machines() -> [Machine; 3] {
    let on_the_spot = Turning::OnTheSpot { quarter_turn: 4.0 };
    let arcs = Turning::Radius { radius: 2.5, reversal: 9.0 };
    [(1.1, on_the_spot), (1.7, arcs), (2.4, arcs)].map(|(width, turning)| Machine {
        width,
        clearance: 0.2,
        turning,
    })
}

/// 25 points in each zone.
fn drop_points(site: &Site) -> Vec<Point> {
    let of_zone = |zone: &Zone| {
        let corner = zone.outline.ring[0];
        (0..25).map(move |k| corner + Point::new(f64::from(k % 5) * 5.0 + 2.0, f64::from(k / 5) * 3.0 + 1.5))
    };
    site.zones.iter().flat_map(of_zone).collect()
}

fn all_ways(spaces: &[FreeSpace], pile: Point, to: &[Point]) -> f64 {
    let ways = spaces.iter().flat_map(|space| space.ways(pile, to, &PACE));
    ways.flatten().map(|way| way.time).sum()
}

fn main() {
    let mut criterion = Criterion::default().configure_from_args().sample_size(10);
    let mut site = large();
    let to = drop_points(&site);
    let pile = Point::new(3.0, 3.0);
    let spaces = machines().map(|machine| site.free_space(&machine));
    let reached = spaces.iter().flat_map(|space| space.ways(pile, &to, &PACE)).filter(Result::is_ok).count();
    println!("{} of {} ways lead there", reached, 3 * to.len());
    assert!(reached > 1_200);
    let mut group = criterion.benchmark_group("a large place");
    group.bench_function("all ways", |b| {
        b.iter(|| {
            let spaces = machines().map(|machine| black_box(&site).free_space(&machine));
            all_ways(&spaces, pile, &to)
        });
    });
    group
        .bench_function("all ways from a pile moved", |b| b.iter(|| all_ways(&spaces, black_box(pile), &to)));
    site.surfaces.clear();
    group.bench_function("all ways on ordinary ground", |b| {
        b.iter(|| {
            let spaces = machines().map(|machine| black_box(&site).free_space(&machine));
            all_ways(&spaces, pile, &to)
        });
    });
    group.finish();
    criterion.final_summary();
}
