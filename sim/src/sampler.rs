//! Drawing by inversion: a distribution compiled once into a table of its quantile function, one 64-bit number a draw.
//!
//! The middle of the law is cut into 1,024 equal cells, linear between. The four outermost cells at each end are cut
//! again, 32 parts to every halving of the remaining chance, down to one in 2^28; what lies beyond is computed exactly.
//! Table entries are single precision: half a part in ten million, small against every tolerance here, and the last
//! digit in which mathematics libraries differ between platforms is rounded away.

use crate::chance::Distribution;
use crate::threads;

const CELLS: usize = 1 << CELL_BITS;
const CELL_BITS: u32 = 10;
const OUTER: usize = 4;
/// Leading zeros of the smallest number that is not in an outer cell's tail.
const FIRST_OCTAVE: u32 = CELL_BITS - OUTER.ilog2();
const OCTAVES: u32 = 20;
const PARTS_BITS: u32 = 5;
const PARTS: usize = 1 << PARTS_BITS;
const TAIL: usize = OCTAVES as usize * PARTS + 1;

/// A distribution ready to be drawn from.
#[derive(Clone, Debug)]
pub struct Sampler(Form);

#[derive(Clone, Debug)]
enum Form {
    Table(Box<Table>),
    Values(Values),
}

/// What needs no table.
#[derive(Clone, Debug)]
enum Values {
    One(f64),
    AnyOf(Box<[f64]>),
}

#[derive(Clone, Debug)]
struct Table {
    middle: [f32; CELLS + 1],
    /// Quantiles at rising chance from 2^-28 up to 2^-8.
    lower: [f32; TAIL],
    /// Quantiles at 1 minus those chances.
    upper: [f32; TAIL],
    law: Distribution,
}

impl Sampler {
    /// Compiles a distribution that has been checked.
    pub fn new(law: &Distribution) -> Self {
        Self(match law {
            Distribution::Observed(values) => {
                let mut values = values.to_vec();
                values.sort_unstable_by(f64::total_cmp);
                Form::Values(Values::AnyOf(values.into()))
            }
            law if law.sd() == 0.0 => Form::Values(Values::One(law.mean())),
            law => Form::Table(Box::new(Table::new(law))),
        })
    }

    /// The value for 64 random bits, read as a chance in \[0, 1) and inverted.
    ///
    /// ```
    /// let law = sim::Distribution::Uniform { least: 2.0, greatest: 4.0 };
    /// assert_eq!(sim::Sampler::new(&law).at(1 << 63), 3.0);
    /// ```
    #[inline]
    pub fn at(&self, bits: u64) -> f64 {
        match &self.0 {
            Form::Table(table) => table.at(bits),
            Form::Values(values) => values.at(bits),
        }
    }
}

impl Values {
    #[inline(never)]
    fn at(&self, bits: u64) -> f64 {
        match self {
            Self::One(value) => *value,
            Self::AnyOf(values) => {
                let place = (u128::from(bits) * values.len() as u128) >> 64;
                values[place as usize]
            }
        }
    }
}

/// Quantiles worked out in one go by a thread.
const AT_ONCE: usize = 32;

impl Table {
    fn new(law: &Distribution) -> Self {
        let mut table =
            Self { middle: [0.0; CELLS + 1], lower: [0.0; TAIL], upper: [0.0; TAIL], law: law.clone() };
        // A beta's quantile takes some ten thousand instructions.
        let fill = |knots: &mut [f32], chance: fn(usize) -> f64| {
            threads::each(
                knots.chunks_mut(AT_ONCE).collect(),
                || (),
                |(), piece, knots| {
                    for (i, knot) in knots.iter_mut().enumerate() {
                        *knot = law.quantile(chance(piece * AT_ONCE + i)) as f32;
                    }
                },
            );
        };
        fill(&mut table.lower, tail_chance);
        fill(&mut table.upper, |i| 1.0 - tail_chance(i));
        fill(&mut table.middle[OUTER..=CELLS - OUTER], |i| (i + OUTER) as f64 / CELLS as f64);
        table
    }

    #[inline]
    fn at(&self, bits: u64) -> f64 {
        let cell = (bits >> (64 - CELL_BITS)) as usize;
        if cell.wrapping_sub(OUTER) < CELLS - 2 * OUTER {
            between(&self.middle, cell, fraction(bits << CELL_BITS))
        } else {
            self.in_a_tail(bits)
        }
    }

    #[cold]
    fn in_a_tail(&self, bits: u64) -> f64 {
        let upper = bits >> 63 == 1;
        let rest = if upper { !bits } else { bits };
        let zeros = rest.leading_zeros();
        if zeros >= FIRST_OCTAVE + OCTAVES {
            let chance = ((rest as f64 + 0.5) / TWO_64).max(f64::EPSILON / 2.0);
            return self.law.quantile(if upper { 1.0 - chance } else { chance });
        }
        let below_the_leading_one = rest << (zeros + 1);
        let octave = (FIRST_OCTAVE + OCTAVES - 1 - zeros) as usize;
        let part = octave * PARTS + (below_the_leading_one >> (64 - PARTS_BITS)) as usize;
        let tail = if upper { &self.upper } else { &self.lower };
        between(tail, part, fraction(below_the_leading_one << PARTS_BITS))
    }
}

const TWO_64: f64 = 18_446_744_073_709_551_616.0;

/// Bits as a number in \[0, 1).
#[inline]
fn fraction(bits: u64) -> f64 {
    (bits >> 11) as f64 * (1.0 / 9_007_199_254_740_992.0)
}

#[inline]
fn between(knots: &[f32], i: usize, fraction: f64) -> f64 {
    let (low, high) = (f64::from(knots[i]), f64::from(knots[i + 1]));
    low + (high - low) * fraction
}

/// The chance at knot `i` of a tail.
fn tail_chance(i: usize) -> f64 {
    let (octave, part) = (i / PARTS, i % PARTS);
    let start = libm::exp2(octave as f64 - f64::from(FIRST_OCTAVE + OCTAVES));
    start * (1.0 + part as f64 / PARTS as f64)
}

#[cfg(test)]
mod tests;
