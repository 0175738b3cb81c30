//! How many of a batch pass.

use crate::math;

/// What to expect of a batch of cans made alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Batch {
    /// Cans made.
    pub size: u32,
    /// Cans expected to pass.
    pub expected: f64,
    /// At least this many pass with 95 % chance.
    pub at_least: u32,
    /// Chance that all pass.
    pub all: f64,
}

/// Largest batch.
const MOST: u32 = 10_000;

/// A batch of `size` cans (at most 10,000), each of which passes with probability
/// `pass` (0 to 1), independently: the binomial distribution.
#[must_use]
pub fn batch(size: u32, pass: f64) -> Batch {
    let size = size.min(MOST);
    let pass = pass.clamp(0.0, 1.0);
    let n = f64::from(size);
    Batch {
        size,
        expected: n * pass,
        at_least: at_least(size, pass, 0.95),
        all: math::pow(pass, n),
    }
}

/// Largest number of a batch (at most 10,000 cans) that pass with this chance or a
/// better one, 0 to 1; each passes with probability `pass`, 0 to 1.
#[must_use]
pub fn at_least(size: u32, pass: f64, chance: f64) -> u32 {
    let size = size.min(MOST);
    // Failures are counted up from none.
    if pass <= 0.0 {
        return 0;
    }
    if pass >= 1.0 {
        return size;
    }
    let n = f64::from(size);
    let mut log_chance = n * math::log(pass);
    let step = math::log(1.0 - pass) - math::log(pass);
    let mut sum = 0.0;
    for failures in 0..=size {
        sum += math::exp(log_chance);
        if sum >= chance {
            return size - failures;
        }
        let k = f64::from(failures);
        log_chance += step + math::log((n - k).max(f64::MIN_POSITIVE) / (k + 1.0));
    }
    0
}
