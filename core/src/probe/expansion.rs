//! The current along a wire as a short polynomial.
//!
//! `I(s) = Σ c_n f_n(s)` with `f_n = u P_{n-1}(2u - 1)` and `u = 1 - s/l'`: one at
//! the wall (`s = 0`), zero at the end (`s = l'`). The electrical length `l'` is a
//! little longer than the wire: it stands for the flat end's charge and for the
//! peak of charge at its rim, which five polynomials cannot follow. The length
//! goes with the number of terms; it was fitted to finite-element results of a
//! bare monopole between 10 and 155 radii long.

use super::wire::Wire;
use crate::math;

/// Number of polynomials.
pub(super) const TERMS: usize = 5;
/// Lengthening, in `sqrt(length · radius)`, that goes with [`TERMS`].
const LENGTHENING: f64 = 0.061;
/// Share of the lengthening that a plastic sleeve (screening 0.5, permittivity 2)
/// takes away; in proportion below, no more above.
const SLEEVE_TAKES: f64 = 0.3;

/// The polynomials over one wire.
#[derive(Clone, Copy, Debug)]
pub(super) struct Expansion {
    /// Electrical length `l'`, m.
    pub(super) length: f64,
}

/// Values and slopes (per metre) of all polynomials at one place.
#[derive(Clone, Copy, Debug)]
pub(super) struct BasisValues {
    pub(super) value: [f64; TERMS],
    pub(super) slope: [f64; TERMS],
}

impl Expansion {
    /// Of a wire whose sleeve, if any, screens the share `screening` of its charge.
    pub(super) fn new(wire: &Wire, screening: f64) -> Self {
        let share = 1.0 - SLEEVE_TAKES * (2.0 * screening).min(1.0);
        let longer = share * LENGTHENING * math::sqrt(wire.insertion_m * wire.radius_m);
        Self {
            length: wire.insertion_m + longer,
        }
    }

    /// The polynomials at the distance `s` from the wall, `0 <= s <= length`.
    pub(super) fn at(&self, s: f64) -> BasisValues {
        let u = 1.0 - s / self.length;
        let x = 2.0 * u - 1.0;
        let mut out = BasisValues {
            value: [0.0; TERMS],
            slope: [0.0; TERMS],
        };
        let (mut before, mut p) = (0.0, 1.0);
        let (mut slope_before, mut slope) = (0.0, 0.0);
        for n in 0..TERMS {
            out.value[n] = u * p;
            out.slope[n] = -(p + 2.0 * u * slope) / self.length;
            // Legendre's recurrences, Abramowitz and Stegun 1964, 8.5.3 and 8.5.4.
            let k = n as f64;
            let next = ((2.0 * k + 1.0) * x * p - k * before) / (k + 1.0);
            let slope_next = slope_before + (2.0 * k + 1.0) * p;
            (before, p) = (p, next);
            (slope_before, slope) = (slope, slope_next);
        }
        out
    }
}
