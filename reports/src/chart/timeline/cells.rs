//! Makes a run drawable: blocks thinner than a cell of the figure are merged into what lasts longest there, and where
//! blocks are too many to be told apart at all, each stretch of time is split by shares instead.

use super::{Block, Row, TimelineData};
use crate::chart::days::{DayScale, Days};
use crate::chart::doing::Doing;
use crate::chart::ticks::{multiples, time_step};

/// Most rectangles in a figure; keeps it under 300 kB.
const MOST: usize = 2_600;
/// Mean width under which blocks can no longer be told apart \[px\].
const THIN: f64 = 3.0;
/// Mean width from which blocks are easily told apart \[px\].
const CLEAR: f64 = 5.0;
/// Lengths a line can have where a run is broken into several \[min\].
const LINES_MIN: [f64; 7] = [480.0, 240.0, 120.0, 60.0, 30.0, 20.0, 10.0];
/// Most rows a run may be broken into, all lines together.
const MOST_ROWS: f64 = 18.0;
/// Least width of a stretch that is split by shares \[px\].
const COLUMN: f64 = 6.0;
/// Shares smaller than this are not drawn.
const SLIVER: f64 = 0.02;

/// A rectangle of one activity: from and to on the time axis \[px\], from and to in its row \[0 at the foot, 1 at the top\].
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Cell {
    pub(super) doing: Doing,
    pub(super) left: f64,
    pub(super) right: f64,
    pub(super) foot: f64,
    pub(super) top: f64,
}

/// The rows of the crew over one stretch of time: a line of the figure.
pub(super) struct Line {
    /// The time it shows.
    pub(super) days: Days,
    /// Where it ends \[px\].
    pub(super) right: f64,
    /// One list of rectangles for each row.
    pub(super) rows: Vec<Vec<Cell>>,
}

/// A run as rectangles.
pub(super) struct Cells {
    /// One for the whole run, or several below one another.
    pub(super) lines: Vec<Line>,
    /// Length of a line where there are several, and of the longest of them \[min\].
    pub(super) line_min: Option<(f64, f64)>,
    /// Length of a stretch that is split by shares \[min\]; `None` where the blocks themselves are drawn.
    pub(super) stretch_min: Option<f64>,
}

impl Cells {
    /// Lays a run out between `left` and `right`: on one line if its blocks can be told apart there, else on as few
    /// lines as that takes, and where those would be too many, on one line split by shares.
    pub(super) fn new(data: &TimelineData, left: f64, right: f64, night: f64) -> Self {
        let blocks: usize = data.rows.iter().map(|row| row.blocks.len()).sum();
        let rows = data.rows.len() as f64;
        let (width, shown) = (right - left, data.days.shown());
        let wide_enough =
            |line_min: f64, px: f64| width / line_min * shown * rows / blocks.max(1) as f64 >= px;
        let whole = || vec![(data.days.clone(), right)];
        if wide_enough(shown, THIN) {
            return Self {
                lines: merged_lines(data, whole(), left, night),
                line_min: None,
                stretch_min: None,
            };
        }
        let few_enough = |line_min: f64| {
            let lines: f64 = data.days.worked.iter().map(|(from, to)| ((to - from) / line_min).ceil()).sum();
            lines * rows <= MOST_ROWS
        };
        let lines_min = |px: f64| LINES_MIN.into_iter().find(|min| wide_enough(*min, px) && few_enough(*min));
        if let Some(min) = lines_min(CLEAR).or_else(|| lines_min(THIN)) {
            let pieces = data.days.cut(min);
            let longest = pieces.iter().map(Days::shown).fold(0.0, f64::max);
            let each = pieces.into_iter().map(|days| {
                let right = left + width * days.shown() / longest;
                (days, right)
            });
            let lines = merged_lines(data, each.collect(), left, night);
            return Self { lines, line_min: Some((min, longest)), stretch_min: None };
        }
        let scale = DayScale::new(&data.days, left, right, night);
        let mut step_min = time_step(COLUMN / scale.per_min() * 60.0) / 60.0;
        loop {
            let rows: Vec<_> =
                data.rows.iter().map(|row| shares(row, &data.days, &scale, step_min)).collect();
            if rows.iter().map(Vec::len).sum::<usize>() <= MOST || step_min > shown {
                let lines = vec![Line { days: data.days.clone(), right, rows }];
                return Self { lines, line_min: None, stretch_min: Some(step_min) };
            }
            step_min = time_step(step_min * 60.0 * 1.01) / 60.0;
        }
    }

    /// Every rectangle.
    pub(super) fn all(&self) -> impl Iterator<Item = &Cell> {
        self.lines.iter().flat_map(|line| &line.rows).flatten()
    }
}

/// Lines with their blocks, merged as little as keeps the figure small.
fn merged_lines(data: &TimelineData, lines: Vec<(Days, f64)>, left: f64, night: f64) -> Vec<Line> {
    let mut cell = 0.5;
    loop {
        let line = |(days, right): &(Days, f64)| {
            let scale = DayScale::new(days, left, *right, night);
            let rows = data.rows.iter().map(|row| merged(&within(&row.blocks, days), &scale, cell)).collect();
            Line { days: days.clone(), right: *right, rows }
        };
        let drawn: Vec<Line> = lines.iter().map(line).collect();
        if drawn.iter().flat_map(|line| &line.rows).map(Vec::len).sum::<usize>() <= MOST || cell > 1_000.0 {
            return drawn;
        }
        cell *= 1.5;
    }
}

/// Blocks cut to the time a line shows.
fn within(blocks: &[Block], days: &Days) -> Vec<Block> {
    let (from, to) = (days.worked.first().map_or(0.0, |(from, _)| *from), days.until());
    let cut = blocks.iter().map(|b| Block { doing: b.doing, from: b.from.max(from), to: b.to.min(to) });
    cut.filter(|b| b.to > b.from).collect()
}

/// Blocks at least a cell wide stay as they are; of a cluster of thinner ones each cell shows what lasts longest in it.
fn merged(blocks: &[Block], scale: &DayScale<'_>, cell: f64) -> Vec<Cell> {
    let mut cells: Vec<Cell> = Vec::new();
    let mut push = |doing: Doing, left: f64, right: f64| match cells.last_mut() {
        Some(last) if last.doing == doing && left - last.right < 1e-6 => last.right = right,
        _ if right > left => cells.push(Cell { doing, left, right, foot: 0.0, top: 1.0 }),
        _ => {}
    };
    let mut cluster: Vec<(Doing, f64)> = Vec::new();
    let mut cluster_left = 0.0;
    let mut end = f64::NEG_INFINITY;
    for block in blocks {
        let (left, right) = (scale.x(block.from), scale.x(block.to));
        let (width, joined) = (right - left, left - end < 1e-6);
        if !cluster.is_empty() && (!joined || width >= cell || end - cluster_left >= cell) {
            push(longest(&cluster), cluster_left, end);
            cluster.clear();
        }
        if width >= cell {
            push(block.doing, left, right);
        } else {
            if cluster.is_empty() {
                cluster_left = left;
            }
            cluster.push((block.doing, width));
        }
        end = right;
    }
    if !cluster.is_empty() {
        push(longest(&cluster), cluster_left, end);
    }
    cells
}

fn longest(cluster: &[(Doing, f64)]) -> Doing {
    let total = |doing: Doing| cluster.iter().filter(|(d, _)| *d == doing).map(|(_, w)| w).sum::<f64>();
    let best =
        cluster.iter().map(|(doing, _)| (*doing, total(*doing))).reduce(|a, b| if b.1 > a.1 { b } else { a });
    best.map_or(Doing::Done, |(doing, _)| doing)
}

/// What stands lowest in a split stretch, and so on upwards.
const ORDER: [Doing; 12] = [
    Doing::Working,
    Doing::Raking,
    Doing::Walking,
    Doing::StandingClear,
    Doing::Stopped,
    Doing::WaitingForRoom,
    Doing::WaitingForFace,
    Doing::WaitingForPass,
    Doing::WaitingForDelivery,
    Doing::WaitingForHeap,
    Doing::SetUpAndCleanUp,
    Doing::OnBreak,
];

/// Stretches of `step_min` at round clock times, each split by the share of time spent on what.
fn shares(row: &Row, days: &Days, scale: &DayScale<'_>, step_min: f64) -> Vec<Cell> {
    let start_min = days.start_s / 60.0;
    let mut cells = Vec::new();
    let mut first = 0;
    for (from, to) in &days.worked {
        let mut edges = vec![*from];
        edges
            .extend(multiples(start_min + from, start_min + to, step_min).into_iter().map(|e| e - start_min));
        edges.push(*to);
        for pair in edges.windows(2).filter(|pair| pair[1] - pair[0] > 1e-9) {
            while row.blocks.get(first).is_some_and(|b| b.to <= pair[0]) {
                first += 1;
            }
            split(&row.blocks[first..], (pair[0], pair[1]), scale, &mut cells);
        }
    }
    cells
}

fn split(blocks: &[Block], (from, to): (f64, f64), scale: &DayScale<'_>, cells: &mut Vec<Cell>) {
    let inside = blocks.iter().take_while(|b| b.from < to);
    let parts: Vec<(Doing, f64)> =
        inside.map(|b| (b.doing.briefly(), (b.to.min(to) - b.from.max(from)).max(0.0))).collect();
    let share =
        |doing: Doing| parts.iter().filter(|(d, _)| *d == doing).map(|(_, t)| t).sum::<f64>() / (to - from);
    let (left, right) = (scale.x(from), scale.x(to));
    let mut foot = 0.0;
    for doing in ORDER.into_iter().chain([Doing::Done]) {
        let top = foot + share(doing);
        if top - foot >= SLIVER {
            // Equal neighbours become one rectangle.
            let same = cells.iter_mut().rev().take(ORDER.len()).find(|c| {
                c.doing == doing
                    && (c.right - left).abs() < 1e-6
                    && (c.foot - foot).abs() < 1e-6
                    && (c.top - top).abs() < 1e-6
            });
            match same {
                Some(cell) => cell.right = right,
                None => cells.push(Cell { doing, left, right, foot, top }),
            }
        }
        foot = top;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use scenarios::units::System;

    fn days(until: f64) -> Days {
        Days { start_s: 28_800.0, worked: vec![(0.0, until)], breaks: Vec::new(), units: System::Metric }
    }

    fn data(rows: usize, blocks: usize, each_min: f64) -> TimelineData {
        let kinds = [Doing::Loading, Doing::Hauling, Doing::Dumping, Doing::Returning];
        let block = |i: usize| Block {
            doing: kinds[i % 4],
            from: i as f64 * each_min,
            to: (i + 1) as f64 * each_min,
        };
        let row = |i: usize| Row { name: format!("loader {i}"), blocks: (0..blocks).map(block).collect() };
        TimelineData {
            title: String::new(),
            rows: (0..rows).map(row).collect(),
            loaders: rows,
            days: days(blocks as f64 * each_min),
            deliveries: Vec::new(),
        }
    }

    #[test]
    fn blocks_wide_enough_are_drawn_as_they_are() {
        let data = data(1, 40, 1.0);
        let cells = Cells::new(&data, 0.0, 400.0, 10.0);
        assert_eq!((cells.lines.len(), cells.stretch_min), (1, None));
        assert_eq!(cells.lines[0].rows[0].len(), 40);
        assert!(cells.lines[0].rows[0].iter().all(|c| (c.right - c.left - 10.0).abs() < 1e-9));
    }

    #[test]
    fn slivers_are_merged_into_what_lasts_longest_and_leave_no_gap() {
        let thin = |doing, from: f64, to: f64| Block { doing, from, to };
        let blocks = [
            thin(Doing::Hauling, 0.0, 10.0),
            thin(Doing::Dumping, 10.0, 10.1),
            thin(Doing::WaitingForRoom, 10.1, 10.5),
            thin(Doing::Returning, 10.5, 20.0),
        ];
        let days = days(20.0);
        let cells = merged(&blocks, &DayScale::new(&days, 0.0, 20.0, 0.0), 1.0);
        assert_eq!(
            cells.iter().map(|c| c.doing).collect::<Vec<_>>(),
            [Doing::Hauling, Doing::WaitingForRoom, Doing::Returning]
        );
        assert!(cells.windows(2).all(|pair| pair[0].right == pair[1].left));
    }

    #[test]
    fn a_run_too_dense_for_one_line_is_broken_into_lines_of_equal_scale() {
        let data = data(2, 380, 0.25);
        let cells = Cells::new(&data, 100.0, 600.0, 10.0);
        assert_eq!((cells.line_min, cells.stretch_min), (Some((20.0, 20.0)), None));
        let shown: Vec<_> = cells.lines.iter().map(|line| line.days.worked[0]).collect();
        assert_eq!(shown, [(0.0, 20.0), (20.0, 40.0), (40.0, 60.0), (60.0, 80.0), (80.0, 95.0)]);
        assert!((cells.lines[4].right - 100.0 - 500.0 * 0.75).abs() < 1e-9);
        assert_eq!(cells.all().count(), 760, "no block is lost or cut in two");
    }

    #[test]
    fn a_long_run_is_split_by_shares_that_fill_each_stretch() {
        let data = data(3, 4_000, 0.6);
        let cells = Cells::new(&data, 0.0, 600.0, 10.0);
        assert!(cells.stretch_min.is_some());
        assert!(cells.all().count() >= 3);
        for cell in cells.all() {
            assert_eq!((cell.doing, cell.foot), (Doing::Working, 0.0));
            assert!((cell.top - 1.0).abs() < 1e-6);
        }
    }

    #[test]
    fn however_long_the_run_there_are_not_too_many_rectangles() {
        for (rows, blocks) in [(1, 100_000), (2, 1_700), (22, 5_000), (22, 400), (128, 1_000), (128, 60)] {
            let data = data(rows, blocks, 0.7);
            let cells = Cells::new(&data, 0.0, 560.0, 10.0);
            assert!(cells.all().count() <= MOST, "{rows} rows of {blocks} blocks: {}", cells.all().count());
            assert!(cells.lines.iter().flat_map(|line| &line.rows).all(|row| !row.is_empty()));
        }
    }
}
