//! Wiener-Hopf factors of the open pipe's two kernels.
//!
//! Lengths in units of the pipe's radius, `κ = k a`. For azimuthal order m and
//! `γ = √(t² - κ²)` the kernels are `2 γ I_m K_m` (axial current) and
//! `-2 γ I_m' K_m'` (current round the axis); both tend to 1 at infinity. Method:
//! L. A. Weinstein, *The Theory of Diffraction and the Factorization Method*,
//! 1969, chapter on the open circular guide.

use alloc::vec::Vec;
use core::f64::consts::{FRAC_1_SQRT_2, PI};

use super::modified_bessel::ScaledModifiedBessel;
use crate::bessel_roots::BESSEL_ROOTS;
use crate::complex::Complex;
use crate::math;

/// Step in `ln(t/κ)`. Every singularity stays at least π/4 away from the path in
/// this variable, so the trapezoidal rule errs by `e^(-π²/(2·STEP))`, 5e-15.
const STEP: f64 = 0.15;
/// The kernels differ from 1 by less than 1e-11 beyond `t = κ e^TOP`, and what is
/// left out of the integral falls with the cube.
const TOP: f64 = 13.0;
/// So far below the nearest zero, in `ln t`, the kernels are constant to 1e-17.
const MARGIN_BELOW: f64 = 20.0;

/// One point of the path: t, t² and ln F(t).
#[derive(Clone, Copy, Debug)]
struct Node {
    t: Complex,
    square: Complex,
    ln_f: Complex,
}

/// The plus factor of one kernel: analytic and free of zeros above the path.
#[derive(Clone, Debug)]
pub(super) struct KernelFactor {
    ka: f64,
    /// From large t to small.
    nodes: Vec<Node>,
}

/// The factors of both kernels: (axial current, current round the axis).
pub(super) fn kernel_factors(order: u8, ka: f64) -> (KernelFactor, KernelFactor) {
    let nearest = BESSEL_ROOTS
        .iter()
        .filter(|root| root.order == order)
        .map(|root| math::fabs((ka - root.x) * (ka + root.x)) / (ka * ka))
        .fold(1.0, f64::min);
    let bottom = 0.5 * math::log(nearest.max(1e-22)) - MARGIN_BELOW;
    let count = ((TOP - bottom) / STEP) as usize;
    let mut axial = KernelFactor {
        ka,
        nodes: Vec::with_capacity(count),
    };
    let mut round = KernelFactor {
        ka,
        nodes: Vec::with_capacity(count),
    };
    for index in 0..count {
        // The path leaves the origin at 45 degrees: t² = j r².
        let r = ka * math::exp(TOP - STEP * index as f64);
        let t = Complex::new(r * FRAC_1_SQRT_2, r * FRAC_1_SQRT_2);
        let square = Complex::new(0.0, r * r);
        let gamma = (square - ka * ka).sqrt();
        let bessel = ScaledModifiedBessel::new(gamma);
        let f_axial = (gamma * bessel.product(order)).scale(2.0);
        let f_round = (gamma * bessel.i_slope(order) * bessel.k_slope(order)).scale(-2.0);
        axial.push(t, square, f_axial);
        round.push(t, square, f_round);
    }
    (axial, round)
}

impl KernelFactor {
    /// Adds a point; the logarithm's branch follows the point before it.
    fn push(&mut self, t: Complex, square: Complex, f: Complex) {
        let before = self.nodes.last().map_or(0.0, |node| node.ln_f.im);
        let turns = math::round((before - f.arg()) / (2.0 * PI));
        // Exactly at a zero the logarithm is cut off; its weight is nil there.
        let size = f.abs().max(1e-300);
        let ln_f = Complex::new(math::log(size), f.arg() + 2.0 * PI * turns);
        self.nodes.push(Node { t, square, ln_f });
    }

    /// `F₊(w)` for w on or above the path: real in `[-κ, 0]` or positive imaginary.
    fn plain(&self, w: Complex) -> Complex {
        let Some(last) = self.nodes.last() else {
            return Complex::ONE;
        };
        let size = w.abs();
        if size == 0.0 {
            return last.ln_f.scale(0.5).exp();
        }
        let w_square = w * w;
        let mut sum = Complex::ZERO;
        for node in &self.nodes {
            sum += node.ln_f * node.t / (node.square - w_square);
        }
        // Below the last node the kernel is constant.
        let shrink = math::exp(-STEP);
        let (mut t, mut tail) = (last.t.scale(shrink), Complex::ZERO);
        while t.re > 1e-18 * size {
            tail += t / (t * t - w_square);
            t = t.scale(shrink);
        }
        sum += tail * last.ln_f;
        // F₊ = exp{ (w/(π j)) ∫ ln F(t)/(t² - w²) dt }, dt = t d(ln t).
        let exponent = sum * w.scale(STEP / PI);
        Complex::new(exponent.im, -exponent.re).exp()
    }

    /// `F₊(w)/√(2j(κ - w))`: the plus factor of `F/(2γ)`, same range of w.
    pub(super) fn plus(&self, w: Complex) -> Complex {
        let under = Complex::J * (Complex::real(self.ka) - w);
        self.plain(w) / under.scale(2.0).sqrt()
    }
}
