//! Reflection coefficient, impedance, standing-wave ratio and return loss.
//!
//! Source: D. M. Pozar, *Microwave Engineering*, 4th ed. 2012, eqs. 2.35, 2.38,
//! 2.41.

use crate::complex::Complex;
use crate::math;

/// Largest reflection that a standing-wave ratio is given for; more is shown as this.
const NEARLY_ALL: f64 = 0.999_9;

/// Match at one frequency.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointMatch {
    /// Impedance at the inner wall's plane, ohm.
    pub impedance_ohm: Complex,
    /// Reflection coefficient against the reference impedance.
    pub reflection: Complex,
    /// Voltage standing-wave ratio, 1 to 19,999.
    pub vswr: f64,
}

impl PointMatch {
    /// From an admittance in siemens and the reference in ohm.
    #[must_use]
    pub fn from_admittance(admittance: Complex, reference_ohm: f64) -> Self {
        let normal = admittance.scale(reference_ohm);
        let reflection = (Complex::ONE - normal) / (Complex::ONE + normal);
        Self {
            impedance_ohm: admittance.inv(),
            reflection,
            vswr: vswr(reflection.abs()),
        }
    }
}

/// Reflection coefficient of an impedance against a real reference, both ohm.
#[must_use]
pub fn reflection_coefficient(impedance_ohm: Complex, reference_ohm: f64) -> Complex {
    (impedance_ohm - reference_ohm) / (impedance_ohm + reference_ohm)
}

/// Voltage standing-wave ratio of a reflection's magnitude (0 to 1; more counts
/// as 0.9999, that is 19,999).
#[must_use]
pub fn vswr(magnitude: f64) -> f64 {
    let magnitude = magnitude.clamp(0.0, NEARLY_ALL);
    (1.0 + magnitude) / (1.0 - magnitude)
}

/// Magnitude of the reflection that a standing-wave ratio (>= 1) means.
#[must_use]
pub fn magnitude_of_vswr(vswr: f64) -> f64 {
    (vswr - 1.0) / (vswr + 1.0)
}

/// Return loss in dB of a reflection's magnitude, at most 100.
#[must_use]
pub fn return_loss_db(magnitude: f64) -> f64 {
    -20.0 * math::log10(magnitude.max(1e-5))
}
