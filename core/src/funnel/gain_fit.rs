//! Quick estimates of a funnel's gain.

use core::f64::consts::PI;

use crate::math;

/// Directivity of a conical horn by the handbook, dB over isotropic, from the
/// mouth's diameter, the half angle and the wavelength.
///
/// `20 log10(π D/λ) - (0.8 - 1.71 s + 26.25 s² - 17.79 s³)`, s the greatest phase
/// deviation `D²/(8 λ l)`, l along the wall from the apex. Source: A. P. King, *The
/// radiation characteristics of conical horn antennas*, Proc. IRE 38 (1950)
/// 249-251; C. A. Balanis, *Antenna Theory*, 3rd ed. 2005, eq. 13-57 (from memory).
/// For horns of 2 to 5 wavelengths.
#[must_use]
pub fn handbook_horn_dbi(mouth_diameter_m: f64, half_angle_rad: f64, wavelength_m: f64) -> f64 {
    let slant = 0.5 * mouth_diameter_m / math::sin(half_angle_rad);
    let s = mouth_diameter_m * mouth_diameter_m / (8.0 * wavelength_m * slant);
    let loss = 0.8 + s * (-1.71 + s * (26.25 - 17.79 * s));
    20.0 * math::log10(PI * mouth_diameter_m / wavelength_m) - loss
}

/// Directivity of a funnel on a can by a fit to solutions of the whole body, dB over
/// isotropic.
///
/// Own body-of-revolution solutions of funnels on a 90 mm can at 2437 MHz, mouths 1
/// to 2.4 wavelengths, half angles 10 to 45 degrees: within 0.4 dB of those.
#[must_use]
pub fn funnel_gain_fit_dbi(mouth_diameter_m: f64, half_angle_rad: f64, wavelength_m: f64) -> f64 {
    let round = PI * mouth_diameter_m / wavelength_m;
    let slant = 0.5 * mouth_diameter_m / math::sin(half_angle_rad);
    // Here the true deviation of the sphere from the plane of the mouth.
    let s = slant * (1.0 - math::cos(half_angle_rad)) / wavelength_m;
    let loss = 1.721 + s * (-4.505 + s * (27.809 - 14.502 * s));
    20.0 * math::log10(round) - loss + 4.159 / math::pow(round, 0.938)
}
