//! Small symmetric systems of normal equations.
//!
//! Source: G. H. Golub and C. F. Van Loan, *Matrix Computations*, 4th ed. 2013,
//! section 4.2 (Cholesky factorisation).

use alloc::vec;
use alloc::vec::Vec;

use crate::math;

/// A small square matrix, row by row.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct SquareMatrix {
    size: usize,
    values: Vec<f64>,
}

impl SquareMatrix {
    /// All zero.
    #[must_use]
    pub fn zero(size: usize) -> Self {
        Self {
            size,
            values: vec![0.0; size * size],
        }
    }

    /// Rows and columns.
    #[must_use]
    pub const fn size(&self) -> usize {
        self.size
    }

    /// An element; 0 outside.
    #[must_use]
    pub fn at(&self, row: usize, column: usize) -> f64 {
        if column < self.size {
            let place = row * self.size + column;
            self.values.get(place).copied().unwrap_or(0.0)
        } else {
            0.0
        }
    }

    /// Adds to an element; nothing outside.
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        if column < self.size
            && let Some(place) = self.values.get_mut(row * self.size + column)
        {
            *place += value;
        }
    }

    /// Product with a vector.
    #[must_use]
    pub fn times(&self, vector: &[f64]) -> Vec<f64> {
        (0..self.size)
            .map(|row| {
                let line = vector.iter().enumerate();
                line.map(|(column, v)| self.at(row, column) * v).sum()
            })
            .collect()
    }

    /// The rows and columns with these indices.
    #[must_use]
    pub fn part(&self, indices: &[usize]) -> Self {
        let mut part = Self::zero(indices.len());
        for (i, row) in indices.iter().enumerate() {
            for (k, column) in indices.iter().enumerate() {
                part.add(i, k, self.at(*row, *column));
            }
        }
        part
    }

    /// Solution of `M x = b` for a symmetric positive definite matrix; `None` where it
    /// is not.
    #[must_use]
    pub fn solve(&self, right: &[f64]) -> Option<Vec<f64>> {
        let factor = self.cholesky()?;
        let mut x: Vec<f64> = right.to_vec();
        x.resize(self.size, 0.0);
        for row in 0..self.size {
            let known: f64 = (0..row).map(|k| factor.at(row, k) * at(&x, k)).sum();
            let value = (at(&x, row) - known) / factor.at(row, row);
            set(&mut x, row, value);
        }
        for row in (0..self.size).rev() {
            let known: f64 = (row + 1..self.size)
                .map(|k| factor.at(k, row) * at(&x, k))
                .sum();
            let value = (at(&x, row) - known) / factor.at(row, row);
            set(&mut x, row, value);
        }
        Some(x)
    }

    /// Inverse of a symmetric positive definite matrix; `None` where it is not.
    #[must_use]
    pub fn inverse(&self) -> Option<Self> {
        let mut inverse = Self::zero(self.size);
        for column in 0..self.size {
            let mut unit = vec![0.0; self.size];
            set(&mut unit, column, 1.0);
            for (row, value) in self.solve(&unit)?.into_iter().enumerate() {
                inverse.add(row, column, value);
            }
        }
        Some(inverse)
    }

    /// Lower factor.
    fn cholesky(&self) -> Option<Self> {
        let mut factor = Self::zero(self.size);
        for row in 0..self.size {
            for column in 0..=row {
                let known: f64 = (0..column)
                    .map(|k| factor.at(row, k) * factor.at(column, k))
                    .sum();
                let rest = self.at(row, column) - known;
                if row == column {
                    if !(rest > 0.0 && rest.is_finite()) {
                        return None;
                    }
                    factor.add(row, row, math::sqrt(rest));
                } else {
                    factor.add(row, column, rest / factor.at(column, column));
                }
            }
        }
        Some(factor)
    }
}

fn at(values: &[f64], index: usize) -> f64 {
    values.get(index).copied().unwrap_or(0.0)
}

fn set(values: &mut [f64], index: usize, value: f64) {
    if let Some(place) = values.get_mut(index) {
        *place = value;
    }
}
