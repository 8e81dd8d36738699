//! The event list: for each actor the time of its next event, and which of all is first.
//!
//! Two flat levels, scanned: the slots in blocks of four, and the least of each block, in fours as well. With up to a hundred
//! or so actors nothing is quicker. Time and actor share one key, so that at equal times the lower slot comes first. Nothing is allocated
//! in a run.

use crate::activity::Micros;

const SLOT_BITS: u32 = 8;
/// Most slots a calendar can hold; the last is never used.
pub(crate) const MOST_SLOTS: usize = 1 << SLOT_BITS;
/// Far beyond any job, and small enough to share a key with the slot (over a thousand years).
pub(crate) const END_OF_TIME: Micros = 1 << (62 - SLOT_BITS);

const NOTHING: u64 = u64::MAX;
/// Slots in a block.
const BLOCK: usize = 4;
const BLOCKS: usize = MOST_SLOTS / BLOCK;

/// See the file's head.
#[derive(Clone, Debug)]
pub(crate) struct Calendar<T> {
    /// As long as the most slots need, so that a masked place needs no check.
    keys: [u64; MOST_SLOTS],
    /// What the event of each slot is about.
    about: [T; MOST_SLOTS],
    /// The least key of each block.
    least: [u64; BLOCKS],
    /// How many fours of blocks are in use.
    fours: usize,
    /// The least key of all.
    first: u64,
}

/// The first event of a calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Next<T> {
    /// Beyond [`END_OF_TIME`] if there is none.
    pub(crate) at: Micros,
    pub(crate) slot: usize,
    pub(crate) about: T,
}

impl<T: Copy> Calendar<T> {
    /// A calendar for this many slots, all without an event; `about` anything.
    pub(crate) fn new(slots: usize, about: T) -> Self {
        let fours = slots.div_ceil(BLOCK * BLOCK).min(BLOCKS / BLOCK);
        Self { keys: [NOTHING; _], about: [about; _], least: [NOTHING; _], fours, first: NOTHING }
    }

    /// Forgets all events.
    pub(crate) fn clear(&mut self) {
        self.keys[..self.fours * BLOCK * BLOCK].fill(NOTHING);
        self.least[..self.fours * BLOCK].fill(NOTHING);
        self.first = NOTHING;
    }

    /// Sets the next event of a slot that has none.
    #[inline(always)]
    pub(crate) fn set(&mut self, slot: usize, at: Micros, about: T) {
        debug_assert!(self.time_of(slot).is_none(), "slot {slot} has an event");
        let key = ((at as u64) << SLOT_BITS) + slot as u64;
        self.keys[slot % MOST_SLOTS] = key;
        self.about[slot % MOST_SLOTS] = about;
        let least = &mut self.least[block_of(slot)];
        *least = key.min(*least);
        self.first = self.first.min(key);
    }

    /// Takes the slot's event away, if it has one.
    #[inline]
    pub(crate) fn clear_slot(&mut self, slot: usize) {
        let key = std::mem::replace(&mut self.keys[slot % MOST_SLOTS], NOTHING);
        if key == self.least[block_of(slot)] {
            self.look_at(block_of(slot));
        }
    }

    /// The time of the slot's event.
    #[inline(always)]
    pub(crate) fn time_of(&self, slot: usize) -> Option<Micros> {
        Some(self.keys[slot % MOST_SLOTS]).filter(|k| *k != NOTHING).map(|k| (k >> SLOT_BITS) as Micros)
    }

    /// The first event.
    #[inline(always)]
    pub(crate) fn first(&self) -> Next<T> {
        let slot = self.first as usize % MOST_SLOTS;
        Next { at: (self.first >> SLOT_BITS) as Micros, slot, about: self.about[slot] }
    }

    /// Takes the first event off. Whether it was alone at its instant.
    #[inline(always)]
    pub(crate) fn take_first(&mut self) -> bool {
        let (first, slot) = (self.first, self.first as usize % MOST_SLOTS);
        self.keys[slot] = NOTHING;
        self.look_at(block_of(slot));
        (first ^ self.first) >> SLOT_BITS != 0
    }

    /// Finds the least key again after one of this block has gone.
    #[inline(always)]
    fn look_at(&mut self, block: usize) {
        let (blocks, _) = self.keys.as_chunks();
        self.least[block] = least_of(&blocks[block]);
        let (fours, _) = self.least.as_chunks();
        self.first = least_of(&fours[0]);
        if self.fours > 1 {
            self.look_further();
        }
    }

    #[inline(never)]
    fn look_further(&mut self) {
        let (fours, _) = self.least.as_chunks();
        self.first = fours.iter().take(self.fours).skip(1).map(least_of).fold(self.first, u64::min);
    }
}

#[inline(always)]
fn least_of(&[a, b, c, d]: &[u64; BLOCK]) -> u64 {
    a.min(b).min(c.min(d))
}

#[inline(always)]
const fn block_of(slot: usize) -> usize {
    slot / BLOCK % BLOCKS
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_earliest_event_comes_first_and_of_equal_times_the_lower_slot() {
        for slots in [5, 100, MOST_SLOTS - 1] {
            let mut calendar = Calendar::new(slots, ' ');
            assert!(calendar.first().at > END_OF_TIME);
            calendar.set(3, 20, 'a');
            calendar.set(1, 30, 'b');
            calendar.set(4, 20, 'c');
            assert_eq!(calendar.first(), Next { at: 20, slot: 3, about: 'a' });
            calendar.take_first();
            assert_eq!(calendar.first(), Next { at: 20, slot: 4, about: 'c' });
            calendar.clear_slot(4);
            calendar.set(4, 31, 'd');
            assert_eq!(calendar.first(), Next { at: 30, slot: 1, about: 'b' });
            assert_eq!((calendar.time_of(4), calendar.time_of(0)), (Some(31), None));
            calendar.clear_slot(slots - 1);
            calendar.set(slots - 1, 5, 'e');
            assert_eq!(calendar.first(), Next { at: 5, slot: slots - 1, about: 'e' });
        }
    }

    #[test]
    fn a_calendar_that_forgets_is_as_new() {
        let mut calendar = Calendar::new(5, ());
        calendar.set(3, 20, ());
        calendar.clear();
        assert!(calendar.first().at > END_OF_TIME);
        assert_eq!(calendar.time_of(3), None);
    }
}
