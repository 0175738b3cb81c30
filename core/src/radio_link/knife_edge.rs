//! Diffraction over a single knife edge.
//!
//! Source: ITU-R P.526, section 4.1, eqs. 26 and 31 (equation numbers from memory).

use super::free_space::wavelength_m;
use crate::math;

/// Diffraction parameter `v = h sqrt(2 (d1 + d2)/(λ d1 d2))`.
///
/// `h` is the edge's height above the straight line between the ends, m, below zero
/// when the line clears it; both distances and the frequency above zero.
#[must_use]
pub fn diffraction_parameter(
    height_above_line_m: f64,
    near_m: f64,
    far_m: f64,
    frequency_hz: f64,
) -> f64 {
    let wavelength = wavelength_m(frequency_hz);
    height_above_line_m * math::sqrt(2.0 * (near_m + far_m) / (wavelength * near_m * far_m))
}

/// Loss of a knife edge, dB: `6.9 + 20 log10(sqrt((v - 0.1)² + 1) + v - 0.1)`, and none
/// below `v = -0.78`.
///
/// The form is within 0.1 dB of the Fresnel integrals for `v` above -0.7 or so.
#[must_use]
pub fn knife_edge_loss_db(v: f64) -> f64 {
    if v < -0.78 {
        return 0.0;
    }
    let t = v - 0.1;
    (6.9 + 20.0 * math::log10(math::sqrt(t * t + 1.0) + t)).max(0.0)
}
