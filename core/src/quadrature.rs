//! Gauss-Legendre quadrature.
//!
//! Nodes by Newton's method on the Legendre polynomial; source: M. Abramowitz
//! and I. A. Stegun, *Handbook of Mathematical Functions*, 1964, 25.4.29-30.

use alloc::vec::Vec;
use core::f64::consts::PI;

use crate::math;

/// Nodes and weights of an `n`-point rule on a given interval.
#[derive(Clone, Debug)]
pub struct GaussLegendre {
    /// Pairs (node, weight) on the standard interval [-1, 1], ascending.
    nodes: Vec<(f64, f64)>,
}

impl GaussLegendre {
    /// The rule with `n` points, n >= 1 (0 is taken as 1). Exact for
    /// polynomials up to degree 2n - 1, nodes good to 1e-15.
    #[must_use]
    pub fn new(n: usize) -> Self {
        let n = n.max(1);
        let count = n as f64;
        let mut nodes = Vec::with_capacity(n);
        for i in (0..n).rev() {
            let mut x = math::cos(PI * (i as f64 + 0.75) / (count + 0.5));
            let mut slope = 1.0;
            for _ in 0..20 {
                let (p, d) = legendre_and_slope(n, x);
                slope = d;
                let dx = p / d;
                x -= dx;
                if math::fabs(dx) < 1e-15 {
                    break;
                }
            }
            nodes.push((x, 2.0 / ((1.0 - x * x) * slope * slope)));
        }
        Self { nodes }
    }

    /// Number of points.
    #[must_use]
    pub fn len(&self) -> usize {
        self.nodes.len()
    }

    /// Never true: a rule has at least one point.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.nodes.is_empty()
    }

    /// Pairs (node, weight) mapped to the interval [low, high].
    pub fn on(&self, low: f64, high: f64) -> impl Iterator<Item = (f64, f64)> + '_ {
        let half = 0.5 * (high - low);
        let middle = 0.5 * (high + low);
        self.nodes
            .iter()
            .map(move |&(x, w)| (middle + half * x, half * w))
    }

    /// Integral of `f` over [low, high].
    pub fn integrate(&self, low: f64, high: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
        self.on(low, high).map(|(x, w)| w * f(x)).sum()
    }
}

/// `P_n(x)` and its derivative, by the three-term recurrence (A&S 8.5.3).
#[must_use]
pub fn legendre_and_slope(n: usize, x: f64) -> (f64, f64) {
    let (mut before, mut p) = (0.0, 1.0);
    let (mut slope_before, mut slope) = (0.0, 0.0);
    for k in 0..n {
        let kf = k as f64;
        let next = ((2.0 * kf + 1.0) * x * p - kf * before) / (kf + 1.0);
        let slope_next = slope_before + (2.0 * kf + 1.0) * p;
        (before, p) = (p, next);
        (slope_before, slope) = (slope, slope_next);
    }
    (p, slope)
}
