//! The usual floor: the six numbers of a load drawn with the usual samplers, and nothing done with them.

use crate::contest::{Contestant, Pass, Work, ns_per};
use crate::draws::{Draws, Laws};
use std::hint::black_box;
use std::time::Instant;

/// Loads of a run of either job, about.
const LOADS: [u64; 2] = [73, 722];

pub fn contestant(laws: Laws) -> Contestant {
    let pass = move |work, runs: u32, seed| {
        let loads = u64::from(runs) * LOADS[usize::from(work == Work::Yard)];
        let mut draws = Draws::new(laws, seed);
        let start = Instant::now();
        let mut sum = 0.0;
        for _ in 0..loads {
            let load = draws.next_load();
            sum += load.fill + load.loading + load.haul + load.dump + load.back + load.raking;
        }
        black_box(sum);
        Ok(Pass { ns_per_load: ns_per(start.elapsed(), loads), answers: None })
    };
    let name = "the usual floor: drawing the numbers, nothing else".into();
    Contestant { name, runs: [20_000, 2_000], pass: Box::new(pass) }
}
