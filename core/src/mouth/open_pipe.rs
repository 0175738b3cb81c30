//! Exact solution for the semi-infinite thin-walled open pipe.
//!
//! Method: L. A. Weinstein, *The Theory of Diffraction and the Factorization
//! Method*, 1969, chapter on the open circular guide. Lengths in units of the
//! radius, `κ = k a`, wave impedance of space 1.

use core::f64::consts::PI;

use super::error::MouthError;
use super::kernel::{KernelFactor, kernel_factors};
use super::real_bessel::bessel_first;
use crate::bessel_roots::BESSEL_ROOTS;
use crate::complex::Complex;
use crate::math;
use crate::waveguide_mode::{Family, Mode};

/// Largest azimuthal order computed.
const HIGHEST_ORDER: u8 = 2;
/// Smallest `k a` computed.
const LOWEST_KA: f64 = 0.1;
/// Largest `k a` computed.
const HIGHEST_KA: f64 = 12.0;

/// A perfectly conducting, infinitely thin pipe that ends at z = 0 and reaches
/// back to z = -∞, with one mode arriving at its mouth.
///
/// The mode may be below its own cutoff: its phase constant is then
/// `h = -j|h|` and the reflection is the analytic continuation.
#[derive(Clone, Debug)]
pub struct OpenPipe {
    pub(super) mode: Mode,
    pub(super) ka: f64,
    pub(super) root: f64,
    /// Phase constant times radius.
    pub(super) h: Complex,
    pub(super) axial: KernelFactor,
    pub(super) round: KernelFactor,
    /// Constant part of the axial current's transform.
    pub(super) a: Complex,
    /// Constant part of the round current's transform.
    pub(super) b: Complex,
    reflection: Complex,
    /// Coefficient of the mode's transverse E for the currents as scaled here.
    pub(super) amplitude: Complex,
}

impl OpenPipe {
    /// Solves for a mode of azimuthal order 0 to 2 at `ka = 2π f a/c`, from 0.1 to
    /// 12. Errors of the reflection stay below 1e-11 except within a millionth of a
    /// cutoff, where the roots' own rounding limits it.
    ///
    /// # Errors
    /// [`MouthError`] for a mode or `ka` out of range, and within 1e-9 of the
    /// mode's cutoff.
    pub fn new(mode: Mode, ka: f64) -> Result<Self, MouthError> {
        let unsupported = MouthError::UnsupportedMode {
            mode,
            highest_order: HIGHEST_ORDER,
        };
        let root = mode.root().ok_or(unsupported)?;
        if mode.order > HIGHEST_ORDER {
            return Err(unsupported);
        }
        if !(LOWEST_KA..=HIGHEST_KA).contains(&ka) {
            let (low, high) = (LOWEST_KA, HIGHEST_KA);
            return Err(MouthError::ElectricalRadius { ka, low, high });
        }
        if math::fabs(ka - root) < 1e-9 * root {
            return Err(MouthError::AtCutoff { ka, root });
        }
        let (axial, round) = kernel_factors(mode.order, ka);
        let mut pipe = Self {
            mode,
            ka,
            root,
            h: phase_constant(ka, root),
            axial,
            round,
            a: Complex::ZERO,
            b: Complex::ZERO,
            reflection: Complex::ZERO,
            amplitude: Complex::ONE,
        };
        pipe.couple();
        pipe.reflect();
        Ok(pipe)
    }

    /// The two constants that keep the field finite at the branch points; they
    /// couple the axial and the round current for m > 0.
    fn couple(&mut self) {
        let (m, ka) = (f64::from(self.mode.order), self.ka);
        let edge = Complex::real(-ka);
        let ratio = self.axial.plus(edge) / self.round.plus(edge);
        let q = (ratio * ratio).scale(m * m / (4.0 * ka * ka));
        let (sum, difference) = ((self.h + ka).inv(), (Complex::real(ka) - self.h).inv());
        let turn = Complex::J * ratio;
        match self.mode.family {
            Family::Te => {
                self.b = (sum + q * difference) / (Complex::ONE - q);
                self.a = -turn.scale(0.5 * m / (ka * ka)) * (self.b + difference);
            }
            Family::Tm => {
                self.a = -(difference + q * sum) / (Complex::ONE - q);
                self.b = turn.scale(0.5 * m) * (self.a - sum);
            }
        }
    }

    /// The reflection and the amplitude of the arriving mode.
    fn reflect(&mut self) {
        let (h, root) = (self.h, self.root);
        let (j, slope) = bessel_first(self.mode.order, root);
        let half = h.scale(2.0).inv();
        match self.mode.family {
            Family::Te => {
                let m_over_root = f64::from(self.mode.order) / root;
                let factor = (h + self.ka) * self.round.plus(-h);
                let norm = h.scale(1.0 - m_over_root * m_over_root);
                self.reflection = (self.b - half) * factor * factor / norm;
                self.amplitude = Complex::J / factor.scale(root * j);
            }
            Family::Tm => {
                let factor = self.axial.plus(-h).scale(root);
                self.reflection = (half - self.a) * factor * factor / h;
                self.amplitude = h / factor.scale(root * slope);
            }
        }
    }

    /// Reflection coefficient of the mode's transverse E at the mouth plane.
    #[must_use]
    pub const fn reflection(&self) -> Complex {
        self.reflection
    }

    /// The mode that arrives.
    #[must_use]
    pub const fn mode(&self) -> Mode {
        self.mode
    }

    /// Electrical radius `k a`.
    #[must_use]
    pub const fn ka(&self) -> f64 {
        self.ka
    }

    /// Aperture admittance y, smooth through the mode's cutoff.
    ///
    /// With `β = h/k`: TE `Γ = (β - y)/(β + y)`, TM `Γ = (1/β - y)/(1/β + y)`.
    #[must_use]
    pub fn aperture_admittance(&self) -> Complex {
        let beta = self.h / self.ka;
        let ratio = (Complex::ONE - self.reflection) / (Complex::ONE + self.reflection);
        match self.mode.family {
            Family::Te => beta * ratio,
            Family::Tm => ratio / beta,
        }
    }

    /// Power that goes back in another propagating mode of the same order, as a
    /// share of the arriving wave's unit (see [`Self::radiated_power`]). `None`
    /// if that mode is of another order, does not propagate, or is the arriving
    /// one.
    #[must_use]
    pub fn converted_power(&self, into: Mode) -> Option<f64> {
        let root = into.root()?;
        if into.order != self.mode.order || into == self.mode || root >= self.ka {
            return None;
        }
        let h = phase_constant(self.ka, root);
        let (n_e, n_h) = self.transforms(-h);
        let size = match into.family {
            Family::Te => {
                let ratio = f64::from(self.mode.order) / root;
                (n_h * (h + self.ka) * self.round.plus(-h)).norm_sqr()
                    / (root * root * (1.0 - ratio * ratio))
            }
            Family::Tm => (n_e * self.axial.plus(-h)).norm_sqr() * self.ka * self.ka,
        };
        let both = if self.mode.order == 0 { 2.0 } else { 1.0 };
        Some(both * 0.25 * PI * size / (self.ka * h.re) / self.unit_power())
    }

    /// Radiated power as a share of the arriving wave's unit: its power above
    /// cutoff; below cutoff (no power in the arriving wave alone) the magnitude
    /// of `½∫E×H*` over the cross-section.
    #[must_use]
    pub fn radiated_power(&self) -> f64 {
        let kept: f64 = BESSEL_ROOTS
            .iter()
            .take_while(|root| root.x < self.ka)
            .filter_map(|root| self.converted_power(Mode::from_root(root)))
            .sum();
        let passed = match (self.ka > self.root, self.mode.family) {
            (true, _) => 1.0 - self.reflection.norm_sqr(),
            (false, Family::Te) => -2.0 * self.reflection.im,
            (false, Family::Tm) => 2.0 * self.reflection.im,
        };
        passed - kept
    }

    /// Transforms of the axial and the round current without the kernel factors.
    pub(super) fn transforms(&self, w: Complex) -> (Complex, Complex) {
        let pole = (w - self.h).inv();
        match self.mode.family {
            Family::Te => (self.a, self.b + pole),
            Family::Tm => (self.a + pole, self.b),
        }
    }

    /// Power (magnitude below cutoff) of the arriving mode, currents as scaled here.
    pub(super) fn unit_power(&self) -> f64 {
        let m = f64::from(self.mode.order);
        let (j, slope) = bessel_first(self.mode.order, self.root);
        let h_over_k = self.h.abs() / self.ka;
        let both = if self.mode.order == 0 { 2.0 } else { 1.0 };
        let shape = match self.mode.family {
            Family::Te => h_over_k * (1.0 - m * m / (self.root * self.root)) * j * j,
            Family::Tm => slope * slope / h_over_k,
        };
        both * 0.25 * PI * shape * self.amplitude.norm_sqr()
    }
}

/// `h = √(κ² - root²)`, `-j|h|` below cutoff.
fn phase_constant(ka: f64, root: f64) -> Complex {
    let square = (ka - root) * (ka + root);
    if square >= 0.0 {
        Complex::real(math::sqrt(square))
    } else {
        Complex::new(0.0, -math::sqrt(-square))
    }
}
