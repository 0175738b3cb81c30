//! Random numbers that are the same on every machine.
//!
//! Source: D. Blackman and S. Vigna, *Scrambled linear pseudorandom number
//! generators*, ACM Trans. Math. Software 47 (2021) 36 (xoshiro256**); seeding by
//! splitmix64: G. Steele, D. Lea and C. Flood, *OOPSLA* 2014. Normal numbers: G. Box
//! and M. Muller, *Ann. Math. Statist.* 29 (1958) 610-611.

use crate::math;

/// The generator xoshiro256**.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Random {
    state: [u64; 4],
}

impl Random {
    /// From any seed.
    #[must_use]
    pub fn new(seed: u64) -> Self {
        let mut x = seed;
        let state = [(); 4].map(|()| {
            x = x.wrapping_add(0x9e37_79b9_7f4a_7c15);
            let z = (x ^ (x >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
            let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
            z ^ (z >> 31)
        });
        Self { state }
    }

    /// From the generator's own state; all zero yields only zeros.
    #[must_use]
    pub const fn from_state(state: [u64; 4]) -> Self {
        Self { state }
    }

    /// The next 64 bits.
    pub const fn bits(&mut self) -> u64 {
        let [mut a, mut b, mut c, mut d] = self.state;
        let out = b.wrapping_mul(5).rotate_left(7).wrapping_mul(9);
        let shifted = b << 17;
        c ^= a;
        d ^= b;
        b ^= c;
        a ^= d;
        c ^= shifted;
        self.state = [a, b, c, d.rotate_left(45)];
        out
    }

    /// Evenly spread over [0, 1).
    #[allow(clippy::cast_precision_loss, reason = "53 bits are exact")]
    pub const fn uniform(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Normal with mean 0 and deviation 1.
    pub fn normal(&mut self) -> f64 {
        let radius = math::sqrt(-2.0 * math::log(1.0 - self.uniform()));
        radius * math::cos(2.0 * core::f64::consts::PI * self.uniform())
    }
}
