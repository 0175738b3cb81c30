//! Ewald's split of a mode's axial field into a far part and a near part.
//!
//! A mode's response at the axial distance z from its source,
//! `e^(-γz)/(2γ)`, is an integral over a Gaussian width s from 0 to infinity. What
//! comes from widths above `E` is the far part: it falls off with the mode's
//! cutoff as a Gaussian, so some hundred modes suffice. What comes from widths
//! below `E` is the near part, which is summed over all modes in space: there
//! only the wire itself and its image in the flat wall are seen.
//!
//! Source: P. P. Ewald, "Die Berechnung optischer und elektrostatischer
//! Gitterpotentiale", *Annalen der Physik* 369, 1921, 253-287; for waves,
//! K. E. Jordan, G. R. Richter and P. Sheng, *J. Comput. Phys.* 63, 1986, 222-235.

use core::f64::consts::PI;

use crate::math;
use crate::quadrature::GaussLegendre;

/// Split width in guide radii when the wire is long enough.
const WIDTH_RADII: f64 = 0.12;
/// Modes are summed up to this many inverse widths.
const CUTOFF_WIDTHS: f64 = 2.6;
/// The same when the width is the smallest one.
const CUTOFF_WIDTHS_LEAST: f64 = 2.3;
/// Beyond this many widths the near part is nothing (below erfc(2)/2 of the field,
/// and the modes alone converge).
const NEAR_WIDTHS: f64 = 4.0;
/// Terms of the near part's power series; the argument is at most 1.
const SERIES: usize = 12;

/// The width `E` and how far the modes must be summed.
#[derive(Clone, Copy, Debug)]
pub(super) struct AxialSplit {
    /// Split width, m.
    pub(super) width: f64,
    /// Largest root to sum.
    pub(super) root_max: f64,
}

impl AxialSplit {
    /// For a guide of radius `a` and a wire of electrical length `length`. The
    /// wall's curvature is taken to first order in the width over the length, so
    /// a short wire asks for a smaller width.
    pub(super) fn new(a: f64, length: f64) -> Self {
        let roots = crate::bessel_roots::COMPLETE_UP_TO;
        let least = CUTOFF_WIDTHS_LEAST * a / roots;
        let width = (WIDTH_RADII * a).min(length / 3.0).max(least);
        Self {
            width,
            root_max: (CUTOFF_WIDTHS * a / width).min(roots),
        }
    }

    /// Whether a pair at the axial distance `z` has a near part at all.
    pub(super) fn is_near(&self, z: f64) -> bool {
        z < NEAR_WIDTHS * self.width
    }

    /// Far part of `e^(-γz)/(2γ)` for a mode well below cutoff, m.
    pub(super) fn far(&self, gamma: f64, z: f64) -> f64 {
        if !self.is_near(z) {
            return math::exp(-gamma * z) / (2.0 * gamma);
        }
        let (ge, ze) = (gamma * self.width, 0.5 * z / self.width);
        if z == 0.0 {
            return math::erfc(ge) / (2.0 * gamma);
        }
        let rise = math::exp(gamma * z);
        (math::erfc(ge - ze) / rise + math::erfc(ge + ze) * rise) / (4.0 * gamma)
    }

    /// Near part at the distance `z` as a function of `γ²`.
    pub(super) fn near(&self, z: f64) -> NearSeries {
        let mut coefficients = [0.0; SERIES];
        if self.is_near(z) {
            let rule = GaussLegendre::new(20);
            for (s, w) in rule.on(0.0, self.width) {
                let mut term = w / math::sqrt(PI) * math::exp(-0.25 * z * z / (s * s));
                for (j, c) in coefficients.iter_mut().enumerate() {
                    *c += term;
                    term *= -s * s / (j as f64 + 1.0);
                }
            }
        }
        NearSeries { coefficients }
    }
}

/// Near part of a mode's axial field, entire in `γ²`: it knows no cutoff.
pub(super) struct NearSeries {
    coefficients: [f64; SERIES],
}

impl NearSeries {
    /// Value at `γ²`, m.
    pub(super) fn at(&self, gamma_sqr: f64) -> f64 {
        self.coefficients
            .iter()
            .rev()
            .fold(0.0, |sum, c| sum * gamma_sqr + c)
    }
}
