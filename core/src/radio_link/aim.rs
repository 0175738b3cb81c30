//! How exactly an antenna must be aimed, in movements that a hand can make.

use super::pointing::error_for_loss_rad;
use crate::math;

/// Angle, rad, by which a lever turns when its end moves sideways: `atan(s/L)`.
///
/// For a can held at the back, the lever is the can's length and the end its mouth; for
/// a mast or tripod, the lever is the arm that is pushed. Lever above zero.
#[must_use]
pub fn turn_of_lever_rad(sideways_m: f64, lever_m: f64) -> f64 {
    math::atan(sideways_m / lever_m)
}

/// Degrees per millimetre at the end of a lever of so many metres.
#[must_use]
pub fn degrees_per_mm(lever_m: f64) -> f64 {
    turn_of_lever_rad(1e-3, lever_m).to_degrees()
}

/// Sideways movement, m, of a lever's end that turns it by an angle below a right
/// angle: the inverse of [`turn_of_lever_rad`].
#[must_use]
pub fn sideways_of_turn_m(turn_rad: f64, lever_m: f64) -> f64 {
    lever_m * math::tan(turn_rad)
}

/// Width of the half-power beam, m, at a distance: `2 d tan(width/2)`. Infinite for a
/// beam of half a circle or more.
#[must_use]
pub fn spot_width_m(distance_m: f64, half_power_width_rad: f64) -> f64 {
    if half_power_width_rad >= core::f64::consts::PI {
        return f64::INFINITY;
    }
    2.0 * distance_m * math::tan(0.5 * half_power_width_rad)
}

/// What aiming asks for in one plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aim {
    /// Turn per millimetre at the can's mouth, degrees.
    pub degrees_per_mm_at_mouth: f64,
    /// Turn per millimetre at the end of the arm or tripod, degrees.
    pub degrees_per_mm_at_tripod: f64,
    /// Turn that costs 1 dB, degrees.
    pub degrees_for_1_db: f64,
    /// Movement of the mouth that costs 1 dB, m.
    pub mouth_for_1_db_m: f64,
    /// Movement at the arm or tripod that costs 1 dB, m.
    pub tripod_for_1_db_m: f64,
    /// Turn that costs 3 dB, half the half-power width, degrees.
    pub degrees_for_3_db: f64,
    /// Width of the half-power beam at the far end, m.
    pub spot_width_m: f64,
    /// How far the beam's axis moves at the far end per millimetre at the mouth, m.
    pub far_end_per_mm_m: f64,
}

impl Aim {
    /// The figures for a can's length, an arm or tripod, a beam, and a path. All above
    /// zero; the width below half a circle.
    #[must_use]
    pub fn new(
        can_length_m: f64,
        tripod_arm_m: f64,
        half_power_width_rad: f64,
        distance_m: f64,
    ) -> Self {
        let one_db = error_for_loss_rad(1.0, half_power_width_rad);
        Self {
            degrees_per_mm_at_mouth: degrees_per_mm(can_length_m),
            degrees_per_mm_at_tripod: degrees_per_mm(tripod_arm_m),
            degrees_for_1_db: one_db.to_degrees(),
            mouth_for_1_db_m: sideways_of_turn_m(one_db, can_length_m),
            tripod_for_1_db_m: sideways_of_turn_m(one_db, tripod_arm_m),
            degrees_for_3_db: (0.5 * half_power_width_rad).to_degrees(),
            spot_width_m: spot_width_m(distance_m, half_power_width_rad),
            far_end_per_mm_m: distance_m * 1e-3 / can_length_m,
        }
    }
}
