//! As many of a kind as a job may have, in a row of fixed length, so that a masked place needs no check.

use crate::plan::{MOST_LOADERS, MOST_RAKERS};
use std::ops::{Index, IndexMut};

/// Most of a kind; also the number of bits in a mask of them.
const MOST: usize = 64;
const _: () = assert!(MOST == MOST_LOADERS && MOST == MOST_RAKERS && MOST == u64::BITS as usize);

/// Up to 64 of a kind, by number.
#[derive(Clone, Debug)]
pub(super) struct Row<T> {
    all: [T; MOST],
    len: usize,
}

impl<T: Clone> Row<T> {
    /// A row of those that there are; the places beyond are blank.
    pub(super) fn new(those: impl IntoIterator<Item = T>, blank: &T) -> Self {
        let (mut those, mut len) = (those.into_iter(), 0);
        let all = std::array::from_fn(|_| match those.next() {
            Some(one) => {
                len += 1;
                one
            }
            None => blank.clone(),
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

/// The numbers of the bits that are set, lowest first.
#[inline(always)]
pub(super) fn bits(mut mask: u64) -> impl Iterator<Item = usize> + Clone {
    std::iter::from_fn(move || {
        let lowest = (mask != 0).then(|| mask.trailing_zeros() as usize);
        mask &= mask.wrapping_sub(1);
        lowest
    })
}
