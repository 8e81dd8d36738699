//! Makes a run drawable: blocks thinner than a cell of the figure are merged into what lasts longest there, and where
//! blocks are too many to be told apart at all, each stretch of time is split by shares instead.

use super::{Block, Row, TimelineData};
use crate::chart::days::DayScale;
use crate::chart::doing::Doing;
use crate::chart::ticks::{multiples, time_step};

/// Most rectangles in a figure; keeps it under 300 kB.
const MOST: usize = 2_600;
/// Mean width under which blocks can no longer be told apart \[px\].
const THIN: f64 = 2.5;
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

/// The rows of a figure as rectangles.
pub(super) struct Cells {
    /// One list for each row.
    pub(super) rows: Vec<Vec<Cell>>,
    /// Length of a stretch that is split by shares \[min\]; `None` where the blocks themselves are drawn.
    pub(super) stretch_min: Option<f64>,
}

impl Cells {
    pub(super) fn new(data: &TimelineData, scale: &DayScale<'_>) -> Self {
        let blocks: usize = data.rows.iter().map(|row| row.blocks.len()).sum();
        let px = data.days.shown() * scale.per_min() * data.rows.len() as f64;
        if px / blocks.max(1) as f64 >= THIN {
            return Self::merged(data, scale);
        }
        let mut step_min = time_step(COLUMN / scale.per_min() * 60.0) / 60.0;
        loop {
            let rows: Vec<_> = data.rows.iter().map(|row| shares(row, data, scale, step_min)).collect();
            if rows.iter().map(Vec::len).sum::<usize>() <= MOST || step_min > data.days.shown() {
                return Self { rows, stretch_min: Some(step_min) };
            }
            step_min = time_step(step_min * 60.0 * 1.01) / 60.0;
        }
    }

    fn merged(data: &TimelineData, scale: &DayScale<'_>) -> Self {
        let mut cell = 0.5;
        loop {
            let rows: Vec<_> = data.rows.iter().map(|row| merged(&row.blocks, scale, cell)).collect();
            if rows.iter().map(Vec::len).sum::<usize>() <= MOST || cell > 1_000.0 {
                return Self { rows, stretch_min: None };
            }
            cell *= 1.5;
        }
    }
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
fn shares(row: &Row, data: &TimelineData, scale: &DayScale<'_>, step_min: f64) -> Vec<Cell> {
    let start_min = data.days.start_s / 60.0;
    let mut cells = Vec::new();
    let mut first = 0;
    for (from, to) in &data.days.worked {
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
    use crate::chart::Days;
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
        let cells = Cells::new(&data, &DayScale::new(&data.days, 0.0, 400.0, 10.0));
        assert_eq!(cells.stretch_min, None);
        assert_eq!(cells.rows[0].len(), 40);
        assert!(cells.rows[0].iter().all(|c| (c.right - c.left - 10.0).abs() < 1e-9));
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
    fn a_long_run_is_split_by_shares_that_fill_each_stretch() {
        let data = data(3, 4_000, 0.6);
        let cells = Cells::new(&data, &DayScale::new(&data.days, 0.0, 600.0, 10.0));
        assert!(cells.stretch_min.is_some());
        for cell in &cells.rows[0] {
            assert_eq!((cell.doing, cell.foot), (Doing::Working, 0.0));
            assert!((cell.top - 1.0).abs() < 1e-6);
        }
    }

    #[test]
    fn however_long_the_run_there_are_not_too_many_rectangles() {
        for (rows, blocks) in [(1, 100_000), (22, 5_000), (22, 400), (128, 1_000), (128, 60)] {
            let data = data(rows, blocks, 0.7);
            let cells = Cells::new(&data, &DayScale::new(&data.days, 0.0, 560.0, 10.0));
            let count: usize = cells.rows.iter().map(Vec::len).sum();
            assert!(count <= MOST, "{rows} rows of {blocks} blocks: {count}");
            assert!(cells.rows.iter().all(|row| !row.is_empty()));
        }
    }
}
