//! Loss between isotropic antennas in free space.

use crate::constants::SPEED_OF_LIGHT;
use crate::math;

/// Wavelength in free space, m, of a frequency above zero.
#[must_use]
pub fn wavelength_m(frequency_hz: f64) -> f64 {
    SPEED_OF_LIGHT / frequency_hz
}

/// Basic free-space transmission loss `20 log10(4π d/λ)`, dB.
///
/// Distance and frequency above zero; the far field of both antennas, so distances of
/// many wavelengths. Source: ITU-R P.525, eq. 3 (from memory).
#[must_use]
pub fn free_space_loss_db(distance_m: f64, frequency_hz: f64) -> f64 {
    let turns = distance_m / wavelength_m(frequency_hz);
    20.0 * math::log10(4.0 * core::f64::consts::PI * turns)
}

/// Distance, m, at which the free-space loss has a value: the inverse of
/// [`free_space_loss_db`].
#[must_use]
pub fn free_space_distance_m(loss_db: f64, frequency_hz: f64) -> f64 {
    let ratio = math::pow(10.0, loss_db / 20.0);
    ratio * wavelength_m(frequency_hz) / (4.0 * core::f64::consts::PI)
}
