//! The event list: for each actor the time of its next event, and which of all is first.
//!
//! A tournament of minima over a fixed array. Time and actor share one key, so that at equal times the lower slot wins
//! and a change costs at most one comparison for every doubling of the number of actors. Nothing is allocated in a run.

use crate::activity::Micros;

const SLOT_BITS: u32 = 8;
/// Most slots a calendar can hold.
pub(crate) const MOST_SLOTS: usize = 1 << SLOT_BITS;
/// Far beyond any job, and small enough to share a key with the slot (over a thousand years).
pub(crate) const END_OF_TIME: Micros = 1 << (62 - SLOT_BITS);

const NOTHING: u64 = u64::MAX;
const KEYS: usize = 2 * MOST_SLOTS;

/// See the file's head.
#[derive(Clone, Debug)]
pub(crate) struct Calendar {
    /// `keys[leaves..]` belong to the slots; every other is the lesser of its two children; `keys[1]` is the first. As
    /// long as the most slots need, so that a masked place needs no check.
    keys: Box<[u64; KEYS]>,
    leaves: usize,
}

impl Calendar {
    /// A calendar for this many slots, all without an event.
    pub(crate) fn new(slots: usize) -> Self {
        let leaves = slots.next_power_of_two().max(2);
        Self { keys: Box::new([NOTHING; KEYS]), leaves }
    }

    /// Forgets all events.
    pub(crate) fn clear(&mut self) {
        self.keys[..2 * self.leaves].fill(NOTHING);
    }

    /// Sets the slot's next event.
    #[inline]
    pub(crate) fn set(&mut self, slot: usize, at: Micros) {
        self.put(slot, ((at as u64) << SLOT_BITS) + slot as u64);
    }

    /// Takes the slot's event away.
    #[inline]
    pub(crate) fn clear_slot(&mut self, slot: usize) {
        self.put(slot, NOTHING);
    }

    /// Plays the tournament again from this slot up; to the top, since a way of one length is cheaper than a shorter one.
    #[inline]
    fn put(&mut self, slot: usize, key: u64) {
        let (keys, mut winner) = (&mut *self.keys, key);
        let mut i = (self.leaves + slot) % KEYS;
        keys[i] = winner;
        while i > 1 {
            winner = winner.min(keys[i ^ 1]);
            i >>= 1;
            keys[i] = winner;
        }
    }

    /// The time of the slot's event.
    pub(crate) fn time_of(&self, slot: usize) -> Option<Micros> {
        Some(self.keys[self.leaves + slot]).filter(|k| *k != NOTHING).map(|k| (k >> SLOT_BITS) as Micros)
    }

    /// The first event: time and slot; a time beyond [`END_OF_TIME`] if there is none.
    #[inline]
    pub(crate) fn first(&self) -> (Micros, usize) {
        self.first_key().time_and_slot()
    }

    /// The first event, to be compared with that of another calendar.
    #[inline]
    pub(crate) fn first_key(&self) -> Key {
        Key(self.keys[1])
    }
}

/// An event: time and slot in one number, in their order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Key(u64);

impl Key {
    /// A time beyond [`END_OF_TIME`] if there is no event.
    #[inline]
    pub(crate) fn time_and_slot(self) -> (Micros, usize) {
        ((self.0 >> SLOT_BITS) as Micros, (self.0 & (MOST_SLOTS as u64 - 1)) as usize)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_earliest_event_comes_first_and_of_equal_times_the_lower_slot() {
        for slots in [5, 100, MOST_SLOTS] {
            let mut calendar = Calendar::new(slots);
            assert!(calendar.first().0 > END_OF_TIME);
            calendar.set(3, 20);
            calendar.set(1, 30);
            calendar.set(4, 20);
            assert_eq!(calendar.first(), (20, 3));
            calendar.clear_slot(3);
            assert_eq!(calendar.first(), (20, 4));
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
