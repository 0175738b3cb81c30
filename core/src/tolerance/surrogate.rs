//! The reflection over the band as a parabola in all dimensions at once.

use alloc::vec::Vec;

use crate::changed_can::ChangedCan;
use crate::complex::Complex;
use crate::dimension::Dimension;

/// Coefficients per frequency; deviations in units of each dimension's reach.
#[derive(Clone, Debug)]
pub(super) struct Surrogate {
    dimensions: Vec<(Dimension, f64)>,
    frequencies_hz: Vec<f64>,
    centre: Vec<Complex>,
    slopes: Vec<Vec<Complex>>,
    /// Curvatures and mixed terms of pairs (i, k), k <= i.
    bends: Vec<Vec<Complex>>,
    plus: Vec<Vec<Complex>>,
}

impl Surrogate {
    pub(super) const fn new(dimensions: Vec<(Dimension, f64)>, frequencies_hz: Vec<f64>) -> Self {
        Self {
            dimensions,
            frequencies_hz,
            centre: Vec::new(),
            slopes: Vec::new(),
            bends: Vec::new(),
            plus: Vec::new(),
        }
    }

    /// Pieces of work: the drawing, then for each dimension itself and its pairs.
    pub(super) fn pieces(&self) -> usize {
        self.dimensions.len() + 1
    }

    fn at(&self, can: &mut ChangedCan, which: &[(usize, f64)]) -> Option<Vec<Complex>> {
        let changes: Vec<(Dimension, f64)> = which
            .iter()
            .filter_map(|(i, sign)| self.dimensions.get(*i).map(|(d, reach)| (*d, sign * reach)))
            .collect();
        let si = can.changed(&changes);
        can.reflections(&si, &self.frequencies_hz).ok()
    }

    /// Does one piece; `None` where the model can't be computed there.
    pub(super) fn sample(&mut self, can: &mut ChangedCan, piece: usize) -> Option<()> {
        let Some(i) = piece.checked_sub(1) else {
            self.centre = self.at(can, &[])?;
            return Some(());
        };
        let (less, more) = (self.at(can, &[(i, -1.0)])?, self.at(can, &[(i, 1.0)])?);
        for k in 0..i {
            let both = self.at(can, &[(i, 1.0), (k, 1.0)])?;
            let other = self.plus.get(k)?;
            let mixed = both.iter().zip(other).zip(more.iter().zip(&self.centre));
            let mixed = mixed.map(|((b, o), (m, c))| *b - *o - *m + *c).collect();
            self.bends.push(mixed);
        }
        let ends = less.iter().zip(&more);
        let own = ends.clone().zip(&self.centre);
        self.bends
            .push(own.map(|((l, m), c)| (*l + *m).scale(0.5) - *c).collect());
        self.slopes
            .push(ends.map(|(l, m)| (*m - *l).scale(0.5)).collect());
        self.plus.push(more);
        Some(())
    }

    /// Largest |Γ| over the band for deviations in units of the reach.
    pub(super) fn worst(&self, deviations: &[f64]) -> f64 {
        let mut products = Vec::with_capacity(self.bends.len());
        for (i, one) in deviations.iter().enumerate() {
            products.extend(deviations.iter().take(i + 1).map(|other| one * other));
        }
        let mut worst = 0.0_f64;
        for (n, centre) in self.centre.iter().enumerate() {
            let mut sum = *centre;
            let terms = self.slopes.iter().zip(deviations);
            let bends = self.bends.iter().zip(&products);
            for (list, factor) in terms.chain(bends) {
                sum += list.get(n).copied().unwrap_or_default().scale(*factor);
            }
            worst = worst.max(sum.norm_sqr());
        }
        crate::math::sqrt(worst)
    }

    /// The same with the true solver.
    pub(super) fn true_worst(&self, can: &mut ChangedCan, deviations: &[f64]) -> Option<f64> {
        let which: Vec<(usize, f64)> = deviations.iter().copied().enumerate().collect();
        let s = self.at(can, &which)?;
        Some(s.iter().map(|s| s.abs()).fold(0.0, f64::max))
    }
}
