//! Loss of an antenna that does not look where it should.

use crate::math;

/// Most that the law of the main lobe is trusted for, dB; beyond it the pattern itself
/// must say.
pub const MOST_POINTING_LOSS_DB: f64 = 20.0;

/// Loss by a pointing error, dB: `12 (error/width)²`, at most [`MOST_POINTING_LOSS_DB`].
///
/// The width is the full one between the half-power points, above zero, both angles in
/// the same plane. 3 dB at half the width. Source: main lobe in ITU-R F.1336 and F.699
/// (form from memory). Good within the half-power width; near enough to about one width.
#[must_use]
pub fn pointing_loss_db(error_rad: f64, half_power_width_rad: f64) -> f64 {
    let ratio = error_rad / half_power_width_rad;
    (12.0 * ratio * ratio).min(MOST_POINTING_LOSS_DB)
}

/// Pointing error that costs so many dB, rad: the inverse of [`pointing_loss_db`].
#[must_use]
pub fn error_for_loss_rad(loss_db: f64, half_power_width_rad: f64) -> f64 {
    half_power_width_rad * math::sqrt(loss_db.max(0.0) / 12.0)
}
