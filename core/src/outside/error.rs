//! What can be wrong with a question about the outside.

/// Why the outside of a can cannot be computed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum OutsideError {
    /// Radius or length of the can is not a positive number.
    NotASize {
        /// Radius, m.
        radius_m: f64,
        /// Length, m.
        length_m: f64,
    },
    /// Funnel, flange or cup is not wider than the can.
    RimNotWider {
        /// Its radius, m.
        outside_m: f64,
        /// Smallest radius that would do, m.
        least_m: f64,
    },
    /// The cup of a choke is not shallower than the can is long.
    CupTooDeep {
        /// Its depth, m.
        depth_m: f64,
        /// Largest depth that would do, m.
        most_m: f64,
    },
    /// A funnel's half angle is not between 0 and a right angle.
    FunnelAngle {
        /// The angle, rad.
        half_angle_rad: f64,
    },
    /// The body is too large in wavelengths for this computation.
    TooLarge {
        /// Panels it would take.
        panels: usize,
        /// Most that are taken.
        most: usize,
    },
    /// The frequency is outside what the body was prepared for, or `k a` outside
    /// the range in which the modes make sense.
    Frequency {
        /// The frequency, Hz.
        frequency_hz: f64,
        /// Lowest, Hz.
        low_hz: f64,
        /// Highest, Hz.
        high_hz: f64,
    },
}
