//! As many of a kind as a yard may have, so that a masked place needs no check.

use std::ops::{Index, IndexMut};

/// Most of a kind in a yard.
pub(crate) const MOST: usize = 64;

/// Up to [`MOST`] of a kind, by number.
#[derive(Clone, Debug)]
pub(super) struct Row<T> {
    all: [T; MOST],
    len: usize,
}

impl<T> Row<T> {
    /// A row of those that there are, at most [`MOST`]; the places beyond are blank.
    pub(super) fn new(those: impl IntoIterator<Item = T>, blank: impl Fn() -> T) -> Self {
        let (mut those, mut len) = (those.into_iter(), 0);
        let all = std::array::from_fn(|_| match those.next() {
            Some(one) => {
                len += 1;
                one
            }
            None => blank(),
        });
        Self { all, len }
    }

    #[inline(always)]
    pub(super) fn len(&self) -> usize {
        self.len
    }

    pub(super) fn iter(&self) -> std::slice::Iter<'_, T> {
        self.all[..self.len].iter()
    }

    pub(super) fn iter_mut(&mut self) -> std::slice::IterMut<'_, T> {
        self.all[..self.len].iter_mut()
    }
}

impl<T> Index<usize> for Row<T> {
    type Output = T;

    #[inline(always)]
    fn index(&self, number: usize) -> &T {
        &self.all[number % MOST]
    }
}

impl<T> IndexMut<usize> for Row<T> {
    #[inline(always)]
    fn index_mut(&mut self, number: usize) -> &mut T {
        &mut self.all[number % MOST]
    }
}
