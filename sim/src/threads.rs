//! Work shared out over the threads of the current pool. Without the feature `threads` it is done piece by piece, to the same bits.

#[cfg(feature = "threads")]
use rayon::prelude::*;

/// What each piece gives, in their order. `start` makes what the pieces done one after the other may share.
#[cfg(feature = "threads")]
pub(crate) fn each<P: Send, S, R: Send>(
    pieces: Vec<P>,
    start: impl Fn() -> S + Sync + Send,
    work: impl Fn(&mut S, usize, P) -> R + Sync + Send,
) -> Vec<R> {
    let pieces = pieces.into_par_iter().enumerate();
    // Each for whoever is free: threads are not always equally fast.
    pieces.with_max_len(1).map_init(start, |shared, (number, piece)| work(shared, number, piece)).collect()
}

/// What each piece gives, in their order. `start` makes what they may share.
#[cfg(not(feature = "threads"))]
pub(crate) fn each<P, S, R>(
    pieces: Vec<P>,
    start: impl Fn() -> S,
    mut work: impl FnMut(&mut S, usize, P) -> R,
) -> Vec<R> {
    let mut shared = start();
    pieces.into_iter().enumerate().map(|(number, piece)| work(&mut shared, number, piece)).collect()
}

/// Two pieces of work, at the same time where there is a thread for each.
///
/// ```
/// assert_eq!(sim::both(|| 1, || "two"), (1, "two"));
/// ```
#[cfg(feature = "threads")]
pub fn both<A: Send, B: Send>(a: impl FnOnce() -> A + Send, b: impl FnOnce() -> B + Send) -> (A, B) {
    rayon::join(a, b)
}

/// Two pieces of work, one after the other.
#[cfg(not(feature = "threads"))]
pub fn both<A, B>(a: impl FnOnce() -> A, b: impl FnOnce() -> B) -> (A, B) {
    (a(), b())
}

/// Puts figures in rising order.
pub(crate) fn sort(values: &mut [f64]) {
    #[cfg(feature = "threads")]
    values.par_sort_unstable_by(f64::total_cmp);
    #[cfg(not(feature = "threads"))]
    values.sort_unstable_by(f64::total_cmp);
}

/// Adds so many of the same. In parallel where that is to be had: fresh memory is slow to touch.
pub(crate) fn lengthen<T: Clone + Send + Sync>(all: &mut Vec<T>, with: T, by: usize) {
    #[cfg(feature = "threads")]
    all.par_extend(rayon::iter::repeat_n(with, by));
    #[cfg(not(feature = "threads"))]
    all.resize(all.len() + by, with);
}
