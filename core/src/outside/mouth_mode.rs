//! One mode at the mouth: what comes back, and the field it sends out.

use core::f64::consts::PI;

use super::far_series::FarSeries;
use super::mode_probe::MODES;
use crate::complex::Complex;
use crate::math;
use crate::mouth::real_bessel::bessel_first;
use crate::mouth::{FarField, reflection_of_admittance};
use crate::waveguide_mode::{Family, Mode};

/// Least `|h/k|` that fields are scaled with; at cutoff exactly no wave arrives.
const LEAST_PHASE_RATIO: f64 = 1e-6;

/// A mode of the can at its mouth (the plane of the rim), at one frequency.
///
/// The plane of the rim is a funnel's throat, too.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct MouthMode {
    /// Electrical radius.
    pub(super) ka: f64,
    /// Wavenumber, rad/m.
    pub(super) k: f64,
    /// Point that the series' phase is about, m in front of the rim.
    pub(super) centre_m: f64,
    /// Can's radius, m.
    pub(super) radius_m: f64,
    /// Aperture admittance.
    pub(super) admittance: Complex,
    /// Far field per unit of transverse electric field at the rim's plane.
    pub(super) series: FarSeries,
}

impl MouthMode {
    /// Which mode.
    #[must_use]
    pub fn mode(&self) -> Mode {
        MODES.get(self.series.order).copied().unwrap_or(Mode::TE11)
    }

    /// Admittance y of the mouth, smooth through the mode's cutoff: with `β = h/k`
    /// TE `Γ = (β - y)/(β + y)`, TM `Γ = (1/β - y)/(1/β + y)`.
    #[must_use]
    pub const fn aperture_admittance(&self) -> Complex {
        self.admittance
    }

    /// Reflection coefficient of the mode's transverse E at the rim's plane; the
    /// analytic continuation below cutoff, exactly -1 (TE) or +1 (TM) at cutoff.
    #[must_use]
    pub fn reflection(&self) -> Complex {
        reflection_of_admittance(self.mode(), self.ka, self.admittance)
    }

    /// Factor from the field per unit of transverse electric field at the rim to
    /// that per arriving wave, as [`FarField`] counts it.
    pub(crate) fn scale(&self) -> Complex {
        let mode = self.mode();
        let root = mode.root().unwrap_or(1.0);
        let n = f64::from(mode.order);
        let (j, slope) = bessel_first(mode.order, root);
        let ratio = root / self.ka;
        let phase_ratio =
            math::sqrt(math::fabs((1.0 - ratio) * (1.0 + ratio))).max(LEAST_PHASE_RATIO);
        let turn = if mode.order == 0 { 2.0 * PI } else { PI };
        let half_area = 0.5 * self.radius_m * self.radius_m;
        // Power (magnitude below cutoff) of a wave whose shape has the amplitude 1.
        let power = 0.5
            * turn
            * half_area
            * match mode.family {
                Family::Te => phase_ratio * (1.0 - n * n / (root * root)) * j * j,
                Family::Tm => slope * slope / phase_ratio,
            };
        (self.reflection() + 1.0).scale(math::sqrt(2.0 * PI / power))
    }

    /// Far field at the polar angle `theta_rad`, 0 (straight ahead) to π, per
    /// arriving wave; unit and phase as [`FarField`] has them, the phase at the
    /// rim's plane.
    #[must_use]
    pub fn far_field(&self, theta_rad: f64) -> FarField {
        let (theta, phi) = self.unscaled(theta_rad);
        let scale = self.scale();
        FarField {
            theta: theta * scale,
            phi: phi * scale,
        }
    }

    /// The same over [`Self::scale`].
    pub(crate) fn unscaled(&self, theta_rad: f64) -> (Complex, Complex) {
        let (theta, phi) = self.series.at(theta_rad);
        let turn = Complex::from_polar(1.0, self.k * self.centre_m * math::cos(theta_rad));
        (theta * turn, phi * turn)
    }

    /// Power radiated, by integration of the far field, over the power of the
    /// arriving wave (below cutoff: over the magnitude of `½∫E×H*`).
    #[must_use]
    pub fn radiated_power(&self) -> f64 {
        // |F|² is the gain: its mean over the sphere.
        2.0 * self.series.power() * self.scale().norm_sqr() / (4.0 * PI)
    }
}
