//! A drawn figure.

use super::ChartError;

/// A drawn figure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Figure {
    /// Its name: `completion`, `progress`, `waiting`, `relief`, `timeline`.
    pub name: &'static str,
    /// Its title, which states the finding.
    pub title: String,
    /// The figure as SVG.
    pub svg: String,
}

/// Adds a figure there is something to show in.
pub(crate) fn add(
    figures: &mut Vec<Figure>,
    name: &'static str,
    title: String,
    drawn: Result<String, ChartError>,
) -> Result<(), ChartError> {
    match drawn {
        Ok(svg) => figures.push(Figure { name, title, svg }),
        Err(ChartError::Nothing(_)) => {}
        Err(error) => return Err(error),
    }
    Ok(())
}
