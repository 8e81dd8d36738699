//! The job in words.

use scenarios::Scenario;

/// What goes on a line of a screen with many figures, and above a report without pushing its answer away \[characters\].
const A_LINE: usize = 82;
const SOME_LINES: usize = 200;

/// The job in its sentence: what, how much, where to, with whom, when.
pub fn the_job(scenario: &Scenario) -> String {
    scenario.sentence.words()
}

/// The beginning of the sentence, in some lines; all of it stands further down in the report.
pub(crate) fn the_job_in_lines(scenario: &Scenario) -> String {
    scenario.sentence.first_words(SOME_LINES)
}

/// The beginning of the sentence, on one line.
pub(crate) fn the_job_in_short(scenario: &Scenario) -> String {
    scenario.sentence.first_words(A_LINE)
}
