//! A figure over a range of two things: a field of cells, the darker the more, with the number in each.

mod sketch;

pub(crate) use sketch::draw;

/// A field of cells, ready to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct HeatData {
    /// Its name: `sweep` or `cost`.
    pub figure: &'static str,
    /// The finding.
    pub title: String,
    /// What the numbers are, with their unit.
    pub what: String,
    /// What varies downwards, with its unit, and its values.
    pub down: (String, Vec<String>),
    /// What varies across, with its unit, and its values.
    pub across: (String, Vec<String>),
    /// The cells, row by row.
    pub cells: Vec<Cell>,
    /// What the letters mean.
    pub keys: Vec<String>,
}

/// One cell.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Cell {
    /// How dark it is drawn: the more, the darker.
    pub value: f64,
    /// The number in it.
    pub words: String,
    /// Letters that mark it; none for most.
    pub letters: String,
}

impl HeatData {
    /// With the longer side downwards, where a figure can grow.
    fn upright(&self) -> Self {
        let (rows, columns) = (self.down.1.len(), self.across.1.len());
        if rows >= columns {
            return self.clone();
        }
        let cells = (0..columns).flat_map(|c| (0..rows).map(move |r| r * columns + c));
        Self {
            down: self.across.clone(),
            across: self.down.clone(),
            cells: cells.filter_map(|place| self.cells.get(place).cloned()).collect(),
            ..self.clone()
        }
    }

    /// From 0 for the least value to 1 for the greatest.
    fn darkness(&self, value: f64) -> f64 {
        let values = || self.cells.iter().map(|cell| cell.value);
        let (low, high) =
            (values().fold(f64::INFINITY, f64::min), values().fold(f64::NEG_INFINITY, f64::max));
        if high > low { (value - low) / (high - low) } else { 0.0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wide_field_is_turned_so_that_it_grows_downwards() {
        let cell = |value: f64| Cell { value, words: String::new(), letters: String::new() };
        let wide = HeatData {
            figure: "sweep",
            title: String::new(),
            what: String::new(),
            down: ("rakers".into(), vec!["1".into(), "2".into()]),
            across: ("room".into(), vec!["1".into(), "2".into(), "3".into()]),
            cells: [1.0, 2.0, 3.0, 4.0, 5.0, 6.0].map(cell).to_vec(),
            keys: Vec::new(),
        };
        let tall = wide.upright();
        assert_eq!((tall.down.0.as_str(), tall.across.1.len()), ("room", 2));
        assert_eq!(tall.cells.iter().map(|c| c.value).collect::<Vec<_>>(), [1.0, 4.0, 2.0, 5.0, 3.0, 6.0]);
        assert_eq!((tall.darkness(1.0), tall.darkness(6.0), tall.darkness(3.5)), (0.0, 1.0, 0.5));
    }
}
