//! Distance in front of a transmitting antenna from which the general public may stay.
//!
//! Power counts as sent all the time. The far-field formula, which over-estimates close
//! to an aperture, is used throughout; on top of it come the bounds of FCC OET Bulletin
//! 65 for aperture antennas, and a floor. Nobody looks into the mouth of a can that
//! transmits, whatever the figure says.
//!
//! Sources: ICNIRP, Health Phys. 118(5), 2020, 483-524, Table 5 (whole body, general
//! public, 30 min; from memory); 47 CFR 1.1310, Table 1(B), now (e)(1), general
//! population. FCC OET Bulletin 65, ed. 97-01, eqs. 3 to 7 (far field), 11 (surface of
//! an aperture, `4P/A`), 12 (near field, `D²/4λ`), 13, 16 (far field from `0.6 D²/λ`)
//! and 17 (between them as `1/R`); eqs. 11 to 17 from memory.

use core::f64::consts::PI;

use super::error::{LinkError, LinkQuantity, within};
use super::free_space::wavelength_m;
use crate::math;

/// Whose limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ExposureStandard {
    /// ICNIRP 2020, general public, whole body.
    Icnirp2020,
    /// 47 CFR 1.1310, general population, uncontrolled.
    Fcc1310,
}

impl ExposureStandard {
    /// Every standard.
    pub const ALL: [Self; 2] = [Self::Icnirp2020, Self::Fcc1310];

    /// Frequencies covered here, Hz.
    #[must_use]
    pub const fn frequency_range_hz(self) -> [f64; 2] {
        match self {
            Self::Icnirp2020 => [400e6, 300e9],
            Self::Fcc1310 => [300e6, 100e9],
        }
    }

    /// Limit of the power density, W/m²; both average over 30 minutes.
    ///
    /// ICNIRP: `f/200` from 400 to 2000 MHz, 10 above; FCC: `f/150` from 300 to
    /// 1500 MHz, 10 above (`f` in MHz).
    ///
    /// # Errors
    /// A frequency outside [`Self::frequency_range_hz`].
    pub fn limit_w_m2(self, frequency_hz: f64) -> Result<f64, LinkError> {
        let range = self.frequency_range_hz();
        let mhz = within(LinkQuantity::FrequencyHz, frequency_hz, range)? / 1e6;
        let slope = match self {
            Self::Icnirp2020 => mhz / 200.0,
            Self::Fcc1310 => mhz / 150.0,
        };
        Ok(slope.min(10.0))
    }
}

/// How much of the power that surroundings throw back is reckoned with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Reflection {
    /// None: free space.
    None,
    /// From the ground, usual: the field 1.6-fold, the power density 2.56-fold.
    Ground,
    /// Complete: the field twice, the power density fourfold.
    Complete,
}

impl Reflection {
    /// Factor of the power density (FCC OET Bulletin 65, eqs. 6 and 7).
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::None => 1.0,
            Self::Ground => 2.56,
            Self::Complete => 4.0,
        }
    }
}

/// What sends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Emitter {
    /// Power at the antenna's terminals, W, 0 to 10,000: line loss taken off.
    pub power_w: f64,
    /// Gain, dBi, -20 to 60.
    pub gain_dbi: f64,
    /// Diameter of the mouth, m, 1 mm to 10 m.
    pub aperture_diameter_m: f64,
    /// Frequency, Hz.
    pub frequency_hz: f64,
}

/// What decides the distance.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DistanceHeldBy {
    /// The far-field formula.
    FarField,
    /// The bound of the aperture's near field.
    Aperture,
    /// The reactive near field, `λ/2π`: no closer, whatever the power.
    ReactiveField,
}

/// A distance with what it rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SafeDistance {
    /// Distance from the mouth, m.
    pub distance_m: f64,
    /// What decides it.
    pub held_by: DistanceHeldBy,
    /// The limit, W/m².
    pub limit_w_m2: f64,
    /// Far-field formula alone, m.
    pub far_field_m: f64,
    /// Greatest power density in the mouth, W/m²: `4P/A`.
    pub surface_w_m2: f64,
}

/// Power density on the axis in the far field, W/m²: `k P G/(4π r²)`.
///
/// EIRP in W, distance above zero, `k` by [`Reflection::factor`].
#[must_use]
pub fn power_density_w_m2(eirp_w: f64, distance_m: f64, reflection: Reflection) -> f64 {
    reflection.factor() * eirp_w / (4.0 * PI * distance_m * distance_m)
}

/// Distance, m, at which [`power_density_w_m2`] falls to a limit above zero.
#[must_use]
pub fn far_field_distance_m(eirp_w: f64, limit_w_m2: f64, reflection: Reflection) -> f64 {
    math::sqrt(reflection.factor() * eirp_w / (4.0 * PI * limit_w_m2))
}

/// Distance on the axis from which the limit of a standard is kept.
///
/// The largest of: the far-field distance; where even the mouth's `4P/A` (with the same
/// reflection) passes the limit, the distance to which OET Bulletin 65 carries it, `D²/4λ`
/// and onward as `1/R`, up to where the far field begins at `0.6 D²/λ`; and, with any
/// power at all, `λ/2π`. Without power, zero.
///
/// # Errors
/// A number outside its range, or a frequency that the standard does not cover.
pub fn safe_distance(
    emitter: &Emitter,
    standard: ExposureStandard,
    reflection: Reflection,
) -> Result<SafeDistance, LinkError> {
    let hz = emitter.frequency_hz;
    let limit_w_m2 = standard.limit_w_m2(hz)?;
    let power_w = within(LinkQuantity::PowerW, emitter.power_w, [0.0, 1e4])?;
    let gain_dbi = within(LinkQuantity::LevelDb, emitter.gain_dbi, [-20.0, 60.0])?;
    let apertures = [1e-3, 10.0];
    let across = emitter.aperture_diameter_m;
    let across = within(LinkQuantity::ApertureM, across, apertures)?;

    let wavelength = wavelength_m(hz);
    let eirp_w = power_w * math::pow(10.0, gain_dbi / 10.0);
    let far_field_m = far_field_distance_m(eirp_w, limit_w_m2, reflection);
    let surface_w_m2 = 4.0 * power_w / (0.25 * PI * across * across);
    let over = reflection.factor() * surface_w_m2 / limit_w_m2;
    let aperture_m = if over > 1.0 {
        let near_field_m = across * across / (4.0 * wavelength);
        (near_field_m * over).min(0.6 * across * across / wavelength)
    } else {
        0.0
    };
    let reactive_m = if power_w > 0.0 {
        wavelength / (2.0 * PI)
    } else {
        0.0
    };
    let mut held = (far_field_m, DistanceHeldBy::FarField);
    for other in [
        (aperture_m, DistanceHeldBy::Aperture),
        (reactive_m, DistanceHeldBy::ReactiveField),
    ] {
        if other.0 > held.0 {
            held = other;
        }
    }
    Ok(SafeDistance {
        distance_m: held.0,
        held_by: held.1,
        limit_w_m2,
        far_field_m,
        surface_w_m2,
    })
}
