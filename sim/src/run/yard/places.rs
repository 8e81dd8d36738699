//! Places of a pass or a face, served in the order of arrival: all there is to know is when each is free again.

use crate::activity::Micros;

/// See the file's head.
#[derive(Clone, Debug)]
pub(super) struct Places {
    /// When the only place is free again, where there is one; else when each of them is.
    only: Micros,
    several: Box<[Micros]>,
}

impl Places {
    pub(super) fn new(places: u32) -> Self {
        let several = if places > 1 { vec![0; places as usize] } else { Vec::new() };
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
        self.several.iter().fold(Micros::MAX, |first, free| first.min(*free))
    }

    /// Takes the place that is free first for so long, from `at` or from when it is free. Returns the start.
    #[inline(always)]
    pub(super) fn take(&mut self, at: Micros, length: Micros) -> Micros {
        let place = self.several.iter_mut().min().unwrap_or(&mut self.only);
        let start = at.max(*place);
        *place = start + length;
        start
    }
}
