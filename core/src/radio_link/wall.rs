//! Loss of a wave straight through a wall: a single slab with all its reflections.
//!
//! Source: ITU-R P.2040-3 (08/2023), section 2.2.2.2, eqs. 41 to 44 (equation numbers
//! from memory), at normal incidence, where both polarisations are alike.

use super::building_material::BuildingMaterial;
use super::error::{LinkError, LinkQuantity, within};
use crate::complex::Complex;
use crate::constants::wavenumber;
use crate::math;

/// Decibels in a neper.
const DB_PER_NEPER: f64 = 8.685_889_638_065_037;

/// Thickness a wall may have, m.
const THICKNESS_M: [f64; 2] = [0.0, 3.0];

/// One leaf of one material, met straight on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wall {
    /// What it is made of.
    pub material: BuildingMaterial,
    /// Thickness, m, up to 3.
    pub thickness_m: f64,
}

impl Wall {
    /// Transmission loss, dB, waves between the faces adding with their phases.
    ///
    /// Rises and falls with thickness by up to a few dB; [`Self::averaged_loss_db`] is
    /// steadier where the thickness is not known to a few millimetres.
    ///
    /// # Errors
    /// A frequency outside the material's range, or a thickness outside 0 to 3 m.
    pub fn loss_db(&self, frequency_hz: f64) -> Result<f64, LinkError> {
        let slab = self.slab(frequency_hz)?;
        // T = (1 - R²) e^(-jq) / (1 - R² e^(-2jq)), its decay taken apart so that a
        // sheet of metal does not underflow.
        let twice = (Complex::new(0.0, -2.0) * slab.phase).exp();
        let round = (Complex::ONE - slab.reflection * slab.reflection * twice).abs();
        Ok(slab.decay_db + 20.0 * math::log10(round / slab.passed.abs()))
    }

    /// Transmission loss, dB, of the power averaged over all phases of the waves between
    /// the faces, their decay held: the loss of an average wall of about this thickness.
    ///
    /// # Errors
    /// As [`Self::loss_db`].
    pub fn averaged_loss_db(&self, frequency_hz: f64) -> Result<f64, LinkError> {
        let slab = self.slab(frequency_hz)?;
        let power = slab.reflection.norm_sqr();
        let decay = math::pow(10.0, -slab.decay_db / 10.0);
        let round = 1.0 - power * power * decay * decay;
        Ok(slab.decay_db + 10.0 * math::log10(round / slab.passed.norm_sqr()))
    }

    fn slab(&self, frequency_hz: f64) -> Result<Slab, LinkError> {
        let thickness_m = within(LinkQuantity::WallThicknessM, self.thickness_m, THICKNESS_M)?;
        let index = self.material.complex_permittivity(frequency_hz)?.sqrt();
        let outer = (index + 1.0).inv();
        let phase = index * (wavenumber(frequency_hz) * thickness_m);
        Ok(Slab {
            reflection: (Complex::ONE - index) * outer,
            passed: 4.0 * index * outer * outer,
            phase,
            decay_db: -phase.im * DB_PER_NEPER,
        })
    }
}

/// The quantities of a slab's formula.
struct Slab {
    /// Reflection at one face, `(1 - n)/(1 + n)`.
    reflection: Complex,
    /// `1 - R²`, without cancellation.
    passed: Complex,
    /// `q = k n d`.
    phase: Complex,
    /// Decay from face to face, dB.
    decay_db: f64,
}
