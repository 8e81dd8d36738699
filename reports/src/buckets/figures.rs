//! The figures of buckets.

use super::findings::BucketsSays;
use crate::chart::{ChartError, Figure, Size, add, bucket_worth, saved};

/// The figures of buckets that there is something to draw in: `saved` and, where worth was asked for, `worth`.
///
/// # Errors
/// If the drawing library fails or the size has no room for a figure.
pub fn bucket_figures(says: &BucketsSays, size: Size) -> Result<Vec<Figure>, ChartError> {
    let mut figures = Vec::new();
    for data in [bucket_worth::prepare_saved(says), bucket_worth::prepare_worth(says)] {
        add(&mut figures, data.figure, data.title.clone(), saved::draw(&data, size))?;
    }
    Ok(figures)
}
