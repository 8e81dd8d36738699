//! The cutting: a grid along the zone's longer side, clipped to its outline, each piece with its share of the area.

use crate::area::moments;
use crate::inside::{is_in, meetings};
use crate::outline::{Outline, sides};
use crate::point::Point;

/// A piece of less than this share of a whole cell is added to its neighbour: no load is taken for it.
const LEAST_PIECE: f64 = 0.05;
/// The most pieces a zone is cut into: finer cutting tells nobody anything.
const MOST_CELLS: f64 = 1e5;

/// Where a load is dumped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DropPoint {
    /// The middle of its piece of the zone, or where that is outside of the zone, a place in the piece \[m\].
    pub at: Point,
    /// Its share of the zone's area; all shares come to 1.
    pub share: f64,
}

/// How far drop points are from each other, for loads of a volume \[m3\] at a loose depth \[m\], both above 0: the side of the square
/// that a load covers \[m\].
pub fn spacing(volume: f64, depth: f64) -> f64 {
    libm::sqrt(volume / depth)
}

impl Outline {
    /// Cuts it into drop points so far from each other \[m\], row by row: the grid runs along the longer side of the smallest
    /// rectangle around it and is centred on it. Where no grid is fine enough to fit (or the spacing is no length above 0) it is
    /// one drop point.
    ///
    /// ```
    /// use site::{Outline, Point, spacing};
    /// let arena = Outline::rectangle(Point::new(0.0, 0.0), 40.0, 20.0, 0.0);
    /// let points = arena.drop_points(spacing(0.5, 0.05));
    /// assert_eq!(points.len(), 13 * 7);
    /// assert!((points.iter().map(|point| point.share).sum::<f64>() - 1.0).abs() < 1e-9);
    /// ```
    pub fn drop_points(&self, spacing: f64) -> Vec<DropPoint> {
        let frame = Frame::around(&self.ring);
        let counts = [frame.length, frame.width].map(|side| f64::max(1.0, libm::ceil(side / spacing - 1e-9)));
        let is_one = !(spacing > 0.0 && (1.5..=MOST_CELLS).contains(&(counts[0] * counts[1])));
        let (columns, rows) = if is_one { (1, 1) } else { (counts[0] as usize, counts[1] as usize) };
        let side = if is_one { f64::max(frame.length, frame.width) } else { spacing };
        let local = frame.local(self);
        let area = local.area();
        let corner = Point::new(
            (frame.length - columns as f64 * side) / 2.0,
            (frame.width - rows as f64 * side) / 2.0,
        );
        let mut cells: Vec<Option<Cell>> = Vec::with_capacity(columns * rows);
        for k in 0..columns * rows {
            let low = corner + Point::new((k % columns) as f64, (k / columns) as f64) * side;
            cells.push(Cell::new(&local, low, low + Point::new(side, side)));
        }
        merge_slivers(&mut cells, columns, LEAST_PIECE * side * side);
        let point = |cell: &Cell| DropPoint { at: frame.back(cell.place(&local)), share: cell.area / area };
        cells.iter().flatten().map(point).collect()
    }
}

/// The smallest rectangle around a ring, with its longer side first.
struct Frame {
    corner: Point,
    along: Point,
    length: f64,
    width: f64,
}

impl Frame {
    fn around(ring: &[Point]) -> Self {
        let mut best: Option<Self> = None;
        for (from, to) in sides(ring) {
            let frame = Self::along((to - from).unit(), ring);
            // Of sides that are alike but for the last digits the first is taken, however the zone is turned.
            let is_better = |best: &Self| frame.size() < best.size() * (1.0 - 1e-9);
            if best.as_ref().is_none_or(is_better) {
                best = Some(frame);
            }
        }
        best.unwrap_or(Self {
            corner: Point::default(),
            along: Point::new(1.0, 0.0),
            length: 0.0,
            width: 0.0,
        })
    }

    fn size(&self) -> f64 {
        self.length * self.width
    }

    fn along(mut along: Point, ring: &[Point]) -> Self {
        let across = |along: Point| Point::new(-along.y, along.x);
        let range = |direction: Point| {
            let parts = ring.iter().map(|p| (*p - ring[0]).dot(direction));
            parts.fold((0.0_f64, 0.0_f64), |(low, high), part| (low.min(part), high.max(part)))
        };
        let length = |(low, high): (f64, f64)| high - low;
        if length(range(across(along))) > length(range(along)) * (1.0 + 1e-9) {
            along = across(along);
        }
        let (on, off) = (range(along), range(across(along)));
        let corner = ring[0] + along * on.0 + across(along) * off.0;
        Self { corner, along, length: length(on), width: length(off) }
    }

    fn local(&self, outline: &Outline) -> Outline {
        let ring = |ring: &[Point]| {
            ring.iter()
                .map(|p| *p - self.corner)
                .map(|p| Point::new(p.dot(self.along), self.along.cross(p)))
                .collect()
        };
        Outline { ring: ring(&outline.ring), holes: outline.holes.iter().map(|hole| ring(hole)).collect() }
    }

    fn back(&self, p: Point) -> Point {
        self.corner + self.along * p.x + Point::new(-self.along.y, self.along.x) * p.y
    }
}

/// What of the zone lies in one square of the grid.
#[derive(Clone, Copy, Debug)]
struct Cell {
    low: Point,
    high: Point,
    area: f64,
    moment: Point,
}

impl Cell {
    /// `None` where nothing of the zone lies there.
    fn new(local: &Outline, low: Point, high: Point) -> Option<Self> {
        let (mut area, mut moment) = (0.0, Point::default());
        for (k, ring) in local.rings().enumerate() {
            let clipped = clipped(ring, low, high);
            if clipped.len() < 3 {
                continue;
            }
            let (own, about_first) = moments(&clipped);
            let sign = if (own > 0.0) == (k == 0) { 1.0 } else { -1.0 };
            area += sign * own;
            moment = moment + (about_first + clipped[0] * own) * sign;
        }
        let least = 1e-12 * (high.x - low.x) * (high.y - low.y);
        (area > least).then_some(Self { low, high, area, moment })
    }

    /// The middle of the piece, or a place in it.
    fn place(&self, local: &Outline) -> Point {
        let middle = self.moment * (1.0 / self.area);
        if is_in(middle, local) {
            return middle;
        }
        // The middle of the longest stretch of the zone in the cell, level with the piece's middle or, failing that, upright.
        let y = middle.y.clamp(self.low.y, self.high.y);
        let x = middle.x.clamp(self.low.x, self.high.x);
        let level = longest(local, Point::new(self.low.x, y), Point::new(self.high.x, y));
        let upright = longest(local, Point::new(x, self.low.y), Point::new(x, self.high.y));
        level.or(upright).unwrap_or(middle)
    }
}

fn longest(local: &Outline, from: Point, to: Point) -> Option<Point> {
    let mut cuts = vec![0.0, 1.0];
    local.rings().flat_map(sides).for_each(|side| cuts.extend(meetings(from, to, side)));
    cuts.sort_by(f64::total_cmp);
    let middle = |cut: &[f64]| from + (to - from) * f64::midpoint(cut[0], cut[1]);
    let inside = cuts.windows(2).filter(|cut| is_in(middle(cut), local));
    inside.reduce(|a, b| if b[1] - b[0] > a[1] - a[0] { b } else { a }).map(middle)
}

/// What of a ring lies in a square. Where the ring is bent, parts hang together by stretches of no width, which change neither area
/// nor middle (Sutherland & Hodgman 1974).
fn clipped(ring: &[Point], low: Point, high: Point) -> Vec<Point> {
    let mut ring = ring.to_vec();
    let insides: [&dyn Fn(Point) -> f64; 4] =
        [&|p| p.x - low.x, &|p| high.x - p.x, &|p| p.y - low.y, &|p| high.y - p.y];
    for inside in insides {
        let mut kept = Vec::with_capacity(ring.len() + 4);
        for (from, to) in sides(&ring) {
            let (a, b) = (inside(from), inside(to));
            if a >= 0.0 {
                kept.push(from);
            }
            if (a > 0.0 && b < 0.0) || (a < 0.0 && b > 0.0) {
                kept.push(from + (to - from) * (a / (a - b)));
            }
        }
        ring = kept;
    }
    ring
}

/// Adds small pieces to the largest of the four beside them. What has no neighbour stays.
fn merge_slivers(cells: &mut [Option<Cell>], columns: usize, least: f64) {
    for k in 0..cells.len() {
        let Some(small) = cells[k].filter(|cell| cell.area < least) else { continue };
        let column = k % columns;
        let beside = [
            (column > 0).then(|| k - 1),
            (column + 1 < columns).then(|| k + 1),
            k.checked_sub(columns),
            Some(k + columns).filter(|k| *k < cells.len()),
        ];
        let area = |k: usize| cells[k].map_or(0.0, |cell| cell.area);
        let near = beside.into_iter().flatten().filter(|k| area(*k) > 0.0);
        let Some(into) = near.reduce(|a, b| if area(b) > area(a) { b } else { a }) else { continue };
        if let Some(cell) = &mut cells[into] {
            cell.area += small.area;
            cell.moment = cell.moment + small.moment;
            cells[k] = None;
        }
    }
}

#[cfg(test)]
mod tests;
