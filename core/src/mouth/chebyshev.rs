//! Chebyshev expansions of the mouth's tables.
//!
//! Two pieces in `k a`. The upper one is expanded in `√(next² - (ka)²)`, because
//! at the cutoff `next` of the next mode of the same symmetry the functions have a
//! square-root branch point. Summation: C. W. Clenshaw, *Math. Tables Aids
//! Comput.* 9 (1955) 118-120.

use super::error::MouthError;
use super::table_data::{ENDS, TERMS};
use crate::math;

/// Where a value of `k a` lies: the piece and the Chebyshev variable in [-1, 1].
#[derive(Clone, Copy, Debug)]
pub(super) struct Position {
    piece: usize,
    t: f64,
}

impl Position {
    /// The place of `ka` for a function whose next cutoff is `next`.
    pub(super) fn of(ka: f64, next: f64) -> Result<Self, MouthError> {
        let [low, middle, high] = ENDS;
        if !(low..=high).contains(&ka) {
            return Err(MouthError::ElectricalRadius { ka, low, high });
        }
        let (piece, v, from, to) = if ka < middle {
            (0, ka, low, middle)
        } else {
            let variable = |x: f64| math::sqrt((next - x) * (next + x));
            (1, variable(ka), variable(middle), variable(high))
        };
        let t = (2.0 * v - (from + to)) / (to - from);
        Ok(Self { piece, t })
    }

    /// Sums the expansions of N quantities at once.
    pub(super) fn sum<const N: usize>(self, pieces: &[[[f64; N]; TERMS]; 2]) -> [f64; N] {
        let [low, high] = pieces;
        let terms = if self.piece == 0 { low } else { high };
        let double = 2.0 * self.t;
        let (mut here, mut above) = ([0.0; N], [0.0; N]);
        let [first, rest @ ..] = terms;
        for term in rest.iter().rev() {
            for ((h, a), c) in here.iter_mut().zip(&mut above).zip(term) {
                (*h, *a) = (double * *h - *a + c, *h);
            }
        }
        let mut out = *first;
        for ((o, h), a) in out.iter_mut().zip(here).zip(above) {
            *o += self.t * h - a;
        }
        out
    }
}
