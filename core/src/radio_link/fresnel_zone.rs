//! Fresnel zones, and the bulge of the Earth between two ends.

use super::free_space::wavelength_m;
use crate::math;

/// Mean radius of the Earth, m (ITU-R P.526).
pub const EARTH_RADIUS_M: f64 = 6.371e6;

/// Effective Earth radius over the true one in a standard atmosphere: 4/3, about
/// 8500 km (ITU-R P.526, section 1).
pub const STANDARD_EARTH_FACTOR: f64 = 4.0 / 3.0;

/// Radius of the n-th Fresnel zone, m: `sqrt(n λ d1 d2/(d1 + d2))`.
///
/// Distances to the two ends, not both zero. Source: ITU-R P.526, section 2.1, eq. 2.
#[must_use]
pub fn fresnel_radius_m(n: u32, near_m: f64, far_m: f64, frequency_hz: f64) -> f64 {
    let product = near_m * far_m / (near_m + far_m);
    math::sqrt(f64::from(n) * wavelength_m(frequency_hz) * product)
}

/// Height of the curved Earth above the chord between two ends, m:
/// `d1 d2/(2 k a)`, `k` the effective Earth radius factor, above zero.
///
/// Source: ITU-R P.530, section 2.2 (from memory); with `k = 1` and distances in km it
/// is the usual `d1 d2/12.74` m.
#[must_use]
pub fn earth_bulge_m(near_m: f64, far_m: f64, earth_factor: f64) -> f64 {
    near_m * far_m / (2.0 * earth_factor * EARTH_RADIUS_M)
}
