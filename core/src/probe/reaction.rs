//! The matrix of reactions between all parts of all currents, at three
//! frequencies.
//!
//! A reaction here is `M`, with impedance `j (η/k) M`. Without the few modes that
//! propagate or nearly do, it is real and so smooth in `k²` that a parabola
//! through three points replaces it over the whole range.

use alloc::vec;
use alloc::vec::Vec;

use super::expansion::{BasisValues, TERMS};
use crate::math;

/// One real value at each of the three frequencies.
pub(super) type AtNodes = [f64; 3];

/// Range of `(ka)²` the parabola serves: `ka` from 1 to 3.87.
const SQUARE_RANGE: [f64; 2] = [1.0, 15.0];

/// The three values of `k²`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Nodes {
    /// `k²` in rad²/m².
    pub(super) k_sqr: AtNodes,
}

impl Nodes {
    /// Chebyshev's points of the range, for a guide of radius `a`.
    pub(super) fn new(a: f64) -> Self {
        let middle = 0.5 * (SQUARE_RANGE[0] + SQUARE_RANGE[1]);
        let half = 0.5 * (SQUARE_RANGE[1] - SQUARE_RANGE[0]) * 0.5 * math::sqrt(3.0);
        Self {
            k_sqr: [middle - half, middle, middle + half].map(|x| x / (a * a)),
        }
    }

    /// Lagrange's weights at `k²`.
    pub(super) fn weights(&self, k_sqr: f64) -> AtNodes {
        let [p, q, r] = self.k_sqr;
        let (x, y, z) = (k_sqr - p, k_sqr - q, k_sqr - r);
        [
            y * z / ((p - q) * (p - r)),
            x * z / ((q - p) * (q - r)),
            x * y / ((r - p) * (r - q)),
        ]
    }
}

/// Index of an element of a packed lower triangle.
pub(super) const fn packed(row: usize, column: usize) -> usize {
    row * (row + 1) / 2 + column
}

/// A block of reactions between the parts of two wires, or of one with itself.
#[derive(Clone, Debug)]
pub(super) struct Block {
    columns: usize,
    values: Vec<AtNodes>,
}

impl Block {
    pub(super) fn new(rows: usize, columns: usize) -> Self {
        Self {
            columns,
            values: vec![[0.0; 3]; rows * columns],
        }
    }

    /// One row; empty outside the block.
    pub(super) fn row(&self, index: usize) -> &[AtNodes] {
        let start = index * self.columns;
        self.values.get(start..start + self.columns).unwrap_or(&[])
    }

    /// Adds `factor · row_i · column_j` to every element.
    pub(super) fn add_product(&mut self, factor: AtNodes, row: &[f64], column: &[f64]) {
        for (values, r) in self.values.chunks_exact_mut(self.columns.max(1)).zip(row) {
            let scaled = factor.map(|f| f * r);
            for (value, c) in values.iter_mut().zip(column) {
                for (v, s) in value.iter_mut().zip(scaled) {
                    *v += s * c;
                }
            }
        }
    }

    /// Adds `factor` times a matrix.
    pub(super) fn add_matrix(&mut self, factor: AtNodes, matrix: &[[f64; TERMS]; TERMS]) {
        for (values, row) in self
            .values
            .chunks_exact_mut(self.columns.max(1))
            .zip(matrix)
        {
            for (value, entry) in values.iter_mut().zip(row) {
                for (v, f) in value.iter_mut().zip(factor) {
                    *v += f * entry;
                }
            }
        }
    }

    /// Adds the reaction of two current elements of unit length: through the
    /// vector potential `current` and the scalar potential `charge`.
    pub(super) fn add_elements(
        &mut self,
        current: AtNodes,
        charge: AtNodes,
        row: &BasisValues,
        column: &BasisValues,
    ) {
        self.add_product(current, &row.value, &column.value);
        self.add_product(charge.map(|c| -c), &row.slope, &column.slope);
    }
}
