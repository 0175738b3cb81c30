//! Complete elliptic integrals by the arithmetic-geometric mean.
//!
//! Source: M. Abramowitz and I. A. Stegun, *Handbook of Mathematical
//! Functions*, 1964, 17.6.3-4. The argument is the complementary parameter
//! `m1 = 1 - m`, because the thin-wire kernels need `m1` down to 1e-12 without
//! cancellation.

use core::f64::consts::FRAC_PI_2;

use crate::math;

/// Most steps of the mean: it doubles the correct digits each time, and 16 are
/// enough from any `m1` above 1e-280.
const STEPS: usize = 16;

/// `K(m)` with `m = 1 - m1`, for `0 < m1 <= 1`. Grows like `ln(4/sqrt(m1))`;
/// below 1e-280 (0 included) the value at 1e-280 is returned.
#[must_use]
pub fn complete_first(m1: f64) -> f64 {
    let (mut a, mut b) = (1.0, math::sqrt(m1.max(1e-280)));
    for _ in 0..STEPS {
        if a - b < 1e-15 * a {
            break;
        }
        (a, b) = (0.5 * (a + b), math::sqrt(a * b));
    }
    FRAC_PI_2 / (0.5 * (a + b))
}

/// `E(m)` with `m = 1 - m1`, for `0 <= m1 <= 1`. Absolute error below 1e-15, growing
/// to 1e-13 at `m1` = 0.
#[must_use]
pub fn complete_second(m1: f64) -> f64 {
    let m1 = m1.max(1e-280);
    let (mut a, mut b) = (1.0, math::sqrt(m1));
    let mut sum = 0.5 * (1.0 - m1);
    let mut doubled = 1.0;
    for _ in 0..STEPS {
        let c = 0.5 * (a - b);
        if c < 1e-16 * a {
            break;
        }
        sum += doubled * c * c;
        doubled *= 2.0;
        (a, b) = (0.5 * (a + b), math::sqrt(a * b));
    }
    FRAC_PI_2 / a * (1.0 - sum)
}
