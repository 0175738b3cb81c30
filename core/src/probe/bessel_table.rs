//! `J_m(x)` of many orders and arguments from one small table.
//!
//! The table holds all orders on a grid of arguments, by Miller's backward
//! recurrence (M. Abramowitz and I. A. Stegun, *Handbook of Mathematical
//! Functions*, 1964, 9.12, normalised by 9.1.46). In between, Neumann's addition
//! theorem (9.1.75) moves from the nearest grid point: `J_m(x + d) = Σ_k
//! J_{m-k}(x) J_k(d)`. Thousands of values cost about as much as a few dozen by
//! the usual series. Absolute error below 1e-11.

use alloc::vec;
use alloc::vec::Vec;

use crate::math;

/// Spacing of the grid.
const STEP: f64 = 0.25;
/// The sum over k runs from -SPREAD to SPREAD; the next term is below 1e-12.
const SPREAD: usize = 6;
const SUM: usize = 2 * SPREAD + 1;
/// Column of order 0.
const ORIGIN: usize = SPREAD + 1;

/// Bessel functions of the orders -1 to `order_max + 1`.
pub(super) struct BesselTable {
    width: usize,
    values: Vec<f64>,
}

impl BesselTable {
    /// A table for arguments up to `x_max` and orders up to `order_max + 1`.
    pub(super) fn new(x_max: f64, order_max: usize) -> Self {
        let rows = (x_max / STEP) as usize + 2;
        let width = ORIGIN + order_max + 2 + SPREAD;
        let highest = width - ORIGIN;
        let mut values = vec![0.0; rows * width];
        let mut downward = vec![0.0; highest + rows / 4 + 32];
        for (i, row) in values.chunks_exact_mut(width).enumerate() {
            miller(i as f64 * STEP, &mut downward);
            let (below, above) = row.split_at_mut(ORIGIN);
            for (to, &from) in above.iter_mut().zip(&downward) {
                *to = from;
            }
            let mut sign = -1.0;
            for (to, &from) in below.iter_mut().rev().zip(downward.iter().skip(1)) {
                *to = sign * from;
                sign = -sign;
            }
        }
        Self { width, values }
    }

    /// `(J_{m-1}(x), J_{m+1}(x))` for x of either sign. Zero outside the table.
    pub(super) fn neighbours(&self, order: usize, x: f64) -> (f64, f64) {
        let magnitude = math::fabs(x);
        let row = (magnitude / STEP + 0.5) as usize;
        let start = row * self.width + order;
        let Some(window) = self.values.get(start..start + SUM + 2) else {
            return (0.0, 0.0);
        };
        let shift = shifts(magnitude - row as f64 * STEP);
        let (mut below, mut above) = (0.0, 0.0);
        for ((b, l), h) in shift.iter().zip(window).zip(window.iter().skip(2)) {
            below += b * l;
            above += b * h;
        }
        // J_n(-x) = (-1)^n J_n(x).
        if x < 0.0 && order.is_multiple_of(2) {
            (-below, -above)
        } else {
            (below, above)
        }
    }

    /// `J_m(x)`, m >= 0, x >= 0.
    pub(super) fn at(&self, order: usize, x: f64) -> f64 {
        if order == 0 {
            self.neighbours(1, x).0
        } else {
            self.neighbours(order - 1, x).1
        }
    }
}

/// `J_k(d)` for k = SPREAD down to -SPREAD, |d| <= STEP/2, by the power series
/// (A&S 9.1.10).
fn shifts(d: f64) -> [f64; SUM] {
    let half = 0.5 * d;
    let t = half * half;
    let mut out = [0.0; SUM];
    let mut lead = 1.0;
    let mut sign = 1.0;
    for k in 0..=SPREAD {
        let n = k as f64;
        let tail =
            1.0 - t / (n + 1.0) * (1.0 - t / (2.0 * (n + 2.0)) * (1.0 - t / (3.0 * (n + 3.0))));
        let value = lead * tail;
        out[SPREAD - k] = value;
        out[SPREAD + k] = sign * value;
        sign = -sign;
        lead *= half / (n + 1.0);
    }
    out
}

/// Fills `out[n]` with `J_n(x)`, x >= 0; `out` must reach far beyond x.
fn miller(x: f64, out: &mut [f64]) {
    out.fill(0.0);
    if x == 0.0 {
        if let Some(first) = out.first_mut() {
            *first = 1.0;
        }
        return;
    }
    let (mut above, mut here) = (0.0, 1e-280);
    let mut sum = 0.0;
    let mut n = out.len();
    for slot in out.iter_mut().rev() {
        *slot = here;
        n -= 1;
        if n.is_multiple_of(2) {
            sum += if n == 0 { here } else { 2.0 * here };
        }
        let below = 2.0 * n as f64 / x * here - above;
        (above, here) = (here, below);
    }
    let scale = 1.0 / sum;
    for slot in out.iter_mut() {
        *slot *= scale;
    }
}
