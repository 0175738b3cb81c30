//! Bessel and Hankel functions of real argument, with derivatives.
//!
//! Recurrences: M. Abramowitz and I. A. Stegun, *Handbook of Mathematical
//! Functions*, 1964, 9.1.27.

use crate::complex::Complex;
use crate::math;

/// `H_m^(2)(x) = J_m(x) - j Y_m(x)` and its derivative, x > 0.
#[must_use]
pub fn hankel_second(m: u8, x: f64) -> (Complex, Complex) {
    let order = i32::from(m);
    let here = Complex::new(math::jn(order, x), -math::yn(order, x));
    if m == 0 {
        let next = Complex::new(math::j1(x), -math::yn(1, x));
        return (here, -next);
    }
    let below = Complex::new(math::jn(order - 1, x), -math::yn(order - 1, x));
    (here, below - here.scale(f64::from(m) / x))
}

/// `J_m(x)` and its derivative, x >= 0.
#[must_use]
pub fn bessel_first(m: u8, x: f64) -> (f64, f64) {
    let order = i32::from(m);
    if m == 0 {
        return (math::j0(x), -math::j1(x));
    }
    let slope = 0.5 * (math::jn(order - 1, x) - math::jn(order + 1, x));
    (math::jn(order, x), slope)
}
