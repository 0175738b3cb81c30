//! Interpolation through Chebyshev points of the second kind.
//!
//! Source: J.-P. Berrut and L. N. Trefethen, *Barycentric Lagrange
//! interpolation*, SIAM Review 46 (2004) 501-517, eqs. 4.2 and 5.4.

use alloc::vec::Vec;
use core::f64::consts::PI;

use crate::math;

/// The points of an interval, ascending, both ends included (one point: the middle).
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct ChebyshevPoints {
    points: Vec<f64>,
}

impl ChebyshevPoints {
    /// `count` points (0 counts as 1) over [low, high].
    #[must_use]
    pub fn new(low: f64, high: f64, count: usize) -> Self {
        let middle = 0.5 * (low + high);
        let half = 0.5 * (high - low);
        if count < 2 {
            return Self {
                points: alloc::vec![middle],
            };
        }
        let last = (count - 1) as f64;
        let points = (0..count)
            .map(|i| middle - half * math::cos(PI * i as f64 / last))
            .collect();
        Self { points }
    }

    /// The points.
    #[must_use]
    pub fn points(&self) -> &[f64] {
        &self.points
    }

    /// Weights, summing to 1, that interpolate at `x` from values at the points.
    #[must_use]
    pub fn weights(&self, x: f64) -> Vec<f64> {
        let count = self.points.len();
        if let Some(hit) = self.points.iter().position(|p| *p == x) {
            return (0..count).map(|i| f64::from(u8::from(i == hit))).collect();
        }
        let mut weights: Vec<f64> = self
            .points
            .iter()
            .enumerate()
            .map(|(i, p)| {
                let sign = if i % 2 == 0 { 1.0 } else { -1.0 };
                let end = if i == 0 || i + 1 == count { 0.5 } else { 1.0 };
                sign * end / (x - p)
            })
            .collect();
        let sum: f64 = weights.iter().sum();
        for weight in &mut weights {
            *weight /= sum;
        }
        weights
    }
}
