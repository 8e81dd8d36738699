//! The event list: for each actor the time of its next event, and which of all is first.
//!
//! A flat array, scanned: with a few dozen actors nothing is quicker. Time and actor share one key, so that at equal times
//! the lower slot comes first. Nothing is allocated in a run.

use crate::activity::Micros;

const SLOT_BITS: u32 = 8;
/// Most slots a calendar can hold; the last is never used.
pub(crate) const MOST_SLOTS: usize = 1 << SLOT_BITS;
/// Far beyond any job, and small enough to share a key with the slot (over a thousand years).
pub(crate) const END_OF_TIME: Micros = 1 << (62 - SLOT_BITS);

const NOTHING: u64 = u64::MAX;
/// Keys looked at in one step of a scan.
const STEP: usize = 4;

/// See the file's head.
#[derive(Clone, Debug)]
pub(crate) struct Calendar {
    /// As long as the most slots need, so that a masked place needs no check.
    keys: [u64; MOST_SLOTS],
    /// How many of them are scanned.
    scanned: usize,
    /// The least of them.
    first: u64,
}

impl Calendar {
    /// A calendar for this many slots, all without an event.
    pub(crate) fn new(slots: usize) -> Self {
        let scanned = slots.next_multiple_of(STEP).min(MOST_SLOTS);
        Self { keys: [NOTHING; MOST_SLOTS], scanned, first: NOTHING }
    }

    /// Forgets all events.
    pub(crate) fn clear(&mut self) {
        self.keys[..self.scanned].fill(NOTHING);
        self.first = NOTHING;
    }

    /// Sets the next event of a slot that has none.
    #[inline(always)]
    pub(crate) fn set(&mut self, slot: usize, at: Micros) {
        debug_assert!(self.time_of(slot).is_none(), "slot {slot} has an event");
        let key = ((at as u64) << SLOT_BITS) + slot as u64;
        self.keys[slot % MOST_SLOTS] = key;
        self.first = self.first.min(key);
    }

    /// Takes the slot's event away, if it has one.
    #[inline]
    pub(crate) fn clear_slot(&mut self, slot: usize) {
        let key = std::mem::replace(&mut self.keys[slot % MOST_SLOTS], NOTHING);
        if key == self.first {
            self.scan();
        }
    }

    /// The time of the slot's event.
    #[inline(always)]
    pub(crate) fn time_of(&self, slot: usize) -> Option<Micros> {
        Some(self.keys[slot % MOST_SLOTS]).filter(|k| *k != NOTHING).map(|k| (k >> SLOT_BITS) as Micros)
    }

    /// The first event: time and slot; a time beyond [`END_OF_TIME`] if there is none.
    #[inline(always)]
    pub(crate) fn first(&self) -> (Micros, usize) {
        ((self.first >> SLOT_BITS) as Micros, self.first as usize % MOST_SLOTS)
    }

    /// Takes the first event off.
    #[inline(always)]
    pub(crate) fn take_first(&mut self) {
        self.keys[self.first as usize % MOST_SLOTS] = NOTHING;
        self.scan();
    }

    #[inline(always)]
    fn scan(&mut self) {
        let least = |least: u64, k: &[u64; STEP]| least.min(k[0].min(k[1]).min(k[2].min(k[3])));
        self.first = self.keys[..self.scanned].as_chunks().0.iter().fold(NOTHING, least);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_earliest_event_comes_first_and_of_equal_times_the_lower_slot() {
        for slots in [5, 100, MOST_SLOTS - 1] {
            let mut calendar = Calendar::new(slots);
            assert!(calendar.first().0 > END_OF_TIME);
            calendar.set(3, 20);
            calendar.set(1, 30);
            calendar.set(4, 20);
            assert_eq!(calendar.first(), (20, 3));
            calendar.take_first();
            assert_eq!(calendar.first(), (20, 4));
            calendar.clear_slot(4);
            calendar.set(4, 31);
            assert_eq!(calendar.first(), (30, 1));
            assert_eq!((calendar.time_of(4), calendar.time_of(0)), (Some(31), None));
            calendar.set(slots - 1, 5);
            assert_eq!(calendar.first(), (5, slots - 1));
        }
    }

    #[test]
    fn a_calendar_that_forgets_is_as_new() {
        let mut calendar = Calendar::new(5);
        calendar.set(3, 20);
        calendar.clear();
        assert!(calendar.first().0 > END_OF_TIME);
        assert_eq!(calendar.time_of(3), None);
    }
}
