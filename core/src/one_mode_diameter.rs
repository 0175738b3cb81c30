//! Diameters of a guide that carry exactly one mode.
//!
//! TE11 must pass everywhere in the band and TM01, the next mode, nowhere. The
//! ratio of the two cutoffs is 1.306 (roots: Abramowitz and Stegun 1964, table
//! 9.5), so a band wider than that has no such diameter.

use core::f64::consts::PI;

use crate::constants::{CHI_TE11, CHI_TM01, SPEED_OF_LIGHT};

/// How far a band stays from the two cutoffs that bound one-mode operation.
/// Both are positive if exactly one mode passes over the whole band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OneModeMargins {
    /// `f_low / f_c(TE11) - 1`.
    pub lower: f64,
    /// `f_c(TM01) / f_high - 1`.
    pub upper: f64,
}

/// Inside diameters in metres, (smallest, largest), that carry exactly one mode
/// from `low_hz` to `high_hz`; the ends themselves sit on a cutoff, no safety
/// margin is taken. `None` if there is none, or for a band that is not
/// `0 < low_hz <= high_hz`, finite.
#[must_use]
pub fn one_mode_diameters_m(low_hz: f64, high_hz: f64) -> Option<(f64, f64)> {
    if !(low_hz > 0.0 && high_hz >= low_hz && high_hz.is_finite()) {
        return None;
    }
    let smallest = CHI_TE11 * SPEED_OF_LIGHT / (PI * low_hz);
    let largest = CHI_TM01 * SPEED_OF_LIGHT / (PI * high_hz);
    (smallest < largest).then_some((smallest, largest))
}

/// Margins of a guide of inside diameter `diameter_m` (m, > 0) over the band
/// `low_hz` to `high_hz` (Hz, > 0).
#[must_use]
pub fn one_mode_margins(diameter_m: f64, low_hz: f64, high_hz: f64) -> OneModeMargins {
    let scale = SPEED_OF_LIGHT / (PI * diameter_m);
    OneModeMargins {
        lower: low_hz / (CHI_TE11 * scale) - 1.0,
        upper: CHI_TM01 * scale / high_hz - 1.0,
    }
}
