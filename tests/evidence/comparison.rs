//! A comparison of evidence: one question, the source of its answers, and every figure compared. Tests judge comparisons, and the page
//! (`page.rs`) prints them, so that the page says what the tests checked and nothing else.

/// How well the expected figures are known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Status {
    /// Read in the source named.
    Seen,
    /// Read as a quotation of the source named.
    SecondHand,
    /// Recalled; the source named was not before us.
    Memory,
    /// Worked out apart from heapcast by the method named, and checked by a second method.
    Computed,
    /// What people of the trade say; no source.
    CommonPractice,
}

impl Status {
    pub(crate) const ALL: [Self; 5] =
        [Self::Seen, Self::SecondHand, Self::Memory, Self::Computed, Self::CommonPractice];

    /// As the page says it.
    pub(crate) fn words(self) -> &'static str {
        match self {
            Self::Seen => "seen",
            Self::SecondHand => "second hand",
            Self::Memory => "from memory",
            Self::Computed => "computed",
            Self::CommonPractice => "common practice",
        }
    }
}

/// What a figure is compared with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Against {
    /// One figure.
    Figure,
    /// A band: `expected` is its middle and `rounding` half its width.
    Band,
}

/// One figure compared.
#[derive(Clone, Debug)]
pub(crate) struct Figure {
    /// The case and the figure: `10 loads, 1 raker, room 1: P80`.
    pub(crate) what: String,
    pub(crate) expected: f64,
    pub(crate) obtained: f64,
    /// Standard error of the difference; 0 where nothing is drawn.
    pub(crate) error: f64,
    /// What is allowed besides: the rounding of a printed figure, the way in and out of a long run. Never a margin for doubt.
    pub(crate) rounding: f64,
    pub(crate) against: Against,
}

impl Figure {
    /// How far apart, in standard errors, beyond what rounding explains; infinite where nothing is drawn and they differ.
    pub(crate) fn off(&self) -> f64 {
        let apart = (self.obtained - self.expected).abs() - self.rounding;
        if apart <= 0.0 { 0.0 } else { apart / self.error }
    }
}

/// One question put to heapcast, and the answers.
#[derive(Clone, Debug)]
pub(crate) struct Comparison {
    /// A sentence: `Several loaders at one face move what the finite-source queue says`.
    pub(crate) claim: String,
    /// Book, paper, standard, table or method, in words a reader can look up.
    pub(crate) source: String,
    pub(crate) status: Status,
    /// Standard errors allowed to any figure: chosen from how many are compared, before looking.
    pub(crate) most: f64,
    pub(crate) figures: Vec<Figure>,
}

impl Comparison {
    pub(crate) fn new(
        claim: impl Into<String>,
        source: impl Into<String>,
        status: Status,
        most: f64,
    ) -> Self {
        Self { claim: claim.into(), source: source.into(), status, most, figures: Vec::new() }
    }

    /// Adds an estimate with its standard error beside the figure it should be, and the table's own rounding.
    pub(crate) fn compare(
        &mut self,
        what: impl Into<String>,
        obtained: f64,
        error: f64,
        expected: f64,
        rounding: f64,
    ) {
        let against = Against::Figure;
        self.figures.push(Figure { what: what.into(), expected, obtained, error, rounding, against });
    }

    /// Adds a figure in which nothing is drawn: only rounding may part it from what it should be.
    pub(crate) fn exact(&mut self, what: impl Into<String>, obtained: f64, expected: f64, rounding: f64) {
        self.compare(what, obtained, 0.0, expected, rounding);
    }

    /// Adds a figure that should lie in a band, its ends included.
    pub(crate) fn within(&mut self, what: impl Into<String>, obtained: f64, low: f64, high: f64) {
        self.figures.push(Figure {
            what: what.into(),
            expected: f64::midpoint(low, high),
            obtained,
            error: 0.0,
            // The last digits of a sum may not push a band's own end out of it.
            rounding: (high - low) / 2.0 + 1e-12 * high.abs(),
            against: Against::Band,
        });
    }

    /// Fails unless at least so many figures were compared and none is too far off.
    pub(crate) fn judge(&self, at_least: usize) {
        let compared = self.figures.len();
        assert!(compared >= at_least, "only {compared} figures were compared");
        // A figure that is no number fails.
        let apart: Vec<String> = (self.figures.iter().filter(|f| f.off() > self.most || f.off().is_nan()))
            .map(|f| {
                format!(
                    "{}: {} with standard error {:.2e}, expected {}",
                    f.what, f.obtained, f.error, f.expected
                )
            })
            .collect();
        assert!(apart.is_empty(), "{} of {compared} apart:\n{}", apart.len(), apart.join("\n"));
    }
}

#[test]
#[should_panic(expected = "1 of 1 apart")]
fn a_figure_that_is_no_number_is_apart() {
    let mut comparison = Comparison::new("nothing", "nothing", Status::Computed, 4.0);
    comparison.compare("no number", f64::NAN, 1.0, 0.0, 1.0);
    comparison.judge(1);
}
