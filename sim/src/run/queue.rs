//! The state of a server: its places, and the loaders in its queue.

use crate::activity::Micros;

/// The time when a place will be free that somebody holds who cannot tell.
pub(super) const UNKNOWN: Micros = Micros::MAX;

/// The places of a face or pass: when each is free again.
#[derive(Clone, Debug)]
pub(super) struct Places {
    /// Of the only one, where there is one.
    only: Micros,
    several: Box<[Micros]>,
}

impl Places {
    pub(super) fn new(places: usize) -> Self {
        let several = if places > 1 { vec![0; places] } else { Vec::new() };
        Self { only: 0, several: several.into() }
    }

    pub(super) fn clear(&mut self) {
        self.only = 0;
        self.several.fill(0);
    }

    /// When the first of them is free.
    #[inline(always)]
    pub(super) fn free_at(&self) -> Micros {
        if self.several.is_empty() {
            return self.only;
        }
        self.several.iter().fold(UNKNOWN, |first, free| first.min(*free))
    }

    /// Whether none of them can be free before it is told.
    #[inline(always)]
    pub(super) fn all_are_known(&self) -> bool {
        self.only != UNKNOWN && self.several.iter().all(|free| *free != UNKNOWN)
    }

    /// Takes the place that is free first, until then.
    #[inline(always)]
    pub(super) fn take(&mut self, until: Micros) {
        *self.several.iter_mut().min().unwrap_or(&mut self.only) = until;
    }

    /// Somebody who could not tell gives a place back.
    pub(super) fn give_back(&mut self, now: Micros) {
        *self.several.iter_mut().max().unwrap_or(&mut self.only) = now;
    }
}

/// Loaders in a queue, the first first.
#[derive(Clone, Debug)]
pub(super) struct Queue {
    loaders: [u8; 64],
    first: u8,
    length: u8,
}

impl Queue {
    pub(super) const fn new() -> Self {
        Self { loaders: [0; _], first: 0, length: 0 }
    }

    pub(super) fn clear(&mut self) {
        self.length = 0;
    }

    #[inline(always)]
    pub(super) fn is_empty(&self) -> bool {
        self.length == 0
    }

    #[inline(always)]
    pub(super) fn first(&self) -> Option<usize> {
        (self.length > 0).then(|| usize::from(self.loaders[usize::from(self.first % 64)]))
    }

    pub(super) fn push(&mut self, loader: usize) {
        self.loaders[usize::from((self.first + self.length) % 64)] = loader as u8;
        self.length += 1;
    }

    pub(super) fn pop(&mut self) {
        self.first = (self.first + 1) % 64;
        self.length -= 1;
    }

    /// Lets all leave but these.
    pub(super) fn retain(&mut self, stays: impl Fn(usize) -> bool) {
        for _ in 0..self.length {
            let Some(loader) = self.first() else { return };
            self.pop();
            if stays(loader) {
                self.push(loader);
            }
        }
    }
}
