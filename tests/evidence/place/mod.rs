//! The place of a job: areas, ways, tracks, drop points, where to tip, tapes and degrees, against closed forms and second methods.
//!
//! Sources stand in each table beside its values: closed forms and own derivations with their second method, formulas of Shkel & Lumelsky
//! (Dubins) and of Reeds & Shepp, pyproj for degrees; status computed, two of the mean distances seen.

mod distances;
mod plane;
mod tipping;
mod ways;

pub(super) use distances::mean_distances;
pub(super) use plane::drop_points_degrees_and_tapes;
pub(super) use tipping::least_driving;
pub(super) use ways::{round_corners, shortest, with_a_radius};

use super::table::Table;
use site::{Outline, Point};

/// The values of a table in their order, each asked for by words of its row.
struct Values {
    table: Table,
    next: usize,
}

impl Values {
    fn of(name: &str) -> Self {
        Self { table: Table::read(&format!("place/{name}.csv")), next: 0 }
    }

    /// The next value; its row must say these words.
    fn value(&mut self, words: &str) -> f64 {
        let row = &self.table.rows[self.next];
        let told = format!("{} {}", self.table.text(row, "what"), self.table.text(row, "inputs"));
        assert!(told.contains(words), "{words} is not said by {told}");
        self.next += 1;
        self.table.number(row, "value")
    }

    /// Leaves a row out.
    fn skip(&mut self) {
        self.next += 1;
    }
}

/// Half of the last of the ten digits that the tables print.
fn last_digit(value: f64) -> f64 {
    0.5 * 10f64.powi(value.abs().log10().floor() as i32 - 9)
}

fn p(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

fn outline(corners: &[(f64, f64)]) -> Outline {
    Outline::from_corners(corners.iter().map(|&(x, y)| p(x, y)).collect())
}

fn l_shape() -> Outline {
    outline(&[(0.0, 0.0), (40.0, 0.0), (40.0, 10.0), (10.0, 10.0), (10.0, 30.0), (0.0, 30.0)])
}

fn rectangle(length: f64, width: f64) -> Outline {
    Outline::rectangle(p(0.0, 0.0), length, width, 0.0)
}
