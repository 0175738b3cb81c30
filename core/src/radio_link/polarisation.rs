//! Loss between antennas whose polarisations differ.

use crate::math;

/// Sense of a turning field, seen along the way the wave goes (IEEE Std 145).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Sense {
    /// Clockwise.
    RightHand,
    /// Anticlockwise.
    LeftHand,
}

/// Polarisation of an antenna as a transmitter. Tilts at both ends are measured by the
/// same observer from the same line, such as the vertical.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Polarisation {
    /// Linear, tilted by an angle, rad.
    Linear {
        /// Tilt, rad.
        tilt_rad: f64,
    },
    /// Circular.
    Circular {
        /// Which way it turns.
        sense: Sense,
    },
    /// Elliptic.
    Elliptic {
        /// Long axis over short axis of the ellipse, dB, zero or more.
        axial_ratio_db: f64,
        /// Which way it turns.
        sense: Sense,
        /// Tilt of the long axis, rad.
        tilt_rad: f64,
    },
}

impl Polarisation {
    /// Vertical.
    pub const VERTICAL: Self = Self::Linear { tilt_rad: 0.0 };
    /// Horizontal.
    pub const HORIZONTAL: Self = Self::Linear {
        tilt_rad: core::f64::consts::FRAC_PI_2,
    };

    /// Signed short axis over long axis, and tilt.
    fn ellipse(self) -> (f64, f64) {
        let signed = |sense, ratio: f64| match sense {
            Sense::RightHand => ratio,
            Sense::LeftHand => -ratio,
        };
        match self {
            Self::Linear { tilt_rad } => (0.0, tilt_rad),
            Self::Circular { sense } => (signed(sense, 1.0), 0.0),
            Self::Elliptic {
                axial_ratio_db,
                sense,
                tilt_rad,
            } => {
                let ratio = math::pow(10.0, -math::fabs(axial_ratio_db) / 20.0);
                (signed(sense, ratio), tilt_rad)
            }
        }
    }
}

/// Share of the power that an antenna takes from a wave of another's polarisation,
/// 0 to 1. The same both ways.
///
/// Source: T. A. Milligan, *Modern Antenna Design*, 2nd ed. 2005, section 1-11 (from
/// memory): for axial ratios `r` with sign, `[(1+r1²)(1+r2²) + 4 r1 r2 + (1-r1²)(1-r2²)
/// cos 2Δ] / [2 (1+r1²)(1+r2²)]`, here with reciprocal ratios, which changes nothing.
#[must_use]
pub fn polarisation_efficiency(one: Polarisation, other: Polarisation) -> f64 {
    let ((a, tilt_a), (b, tilt_b)) = (one.ellipse(), other.ellipse());
    let sums = (1.0 + a * a) * (1.0 + b * b);
    let differences = (1.0 - a * a) * (1.0 - b * b);
    let twice = math::cos(2.0 * (tilt_a - tilt_b));
    let share = (sums + 4.0 * a * b + differences * twice) / (2.0 * sums);
    share.clamp(0.0, 1.0)
}

/// Loss by unlike polarisations, dB, of perfect antennas: infinite for crossed ones.
#[must_use]
pub fn polarisation_loss_db(one: Polarisation, other: Polarisation) -> f64 {
    -10.0 * math::log10(polarisation_efficiency(one, other)) + 0.0
}

/// Most that crossed polarisations cost in practice, dB: antennas and surroundings turn
/// some of the power round (common practice, no source: 20 to 30 dB).
pub const MOST_POLARISATION_LOSS_DB: f64 = 25.0;

/// Loss by unlike polarisations for planning, dB: as [`polarisation_loss_db`], at most
/// [`MOST_POLARISATION_LOSS_DB`].
#[must_use]
pub fn practical_polarisation_loss_db(one: Polarisation, other: Polarisation) -> f64 {
    polarisation_loss_db(one, other).min(MOST_POLARISATION_LOSS_DB)
}
