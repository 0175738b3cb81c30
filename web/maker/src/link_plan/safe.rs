//! Safe distance in front of an end that transmits.

use std::f64::consts::PI;

use tinwave_core::radio_link::{
    Emitter, ExposureStandard, LinkError, Reflection, SafeDistance, safe_distance, wavelength_m,
};

use super::antenna::PlanAntenna;

/// Nearer than this the American rules ask for the power absorbed in the body instead of
/// a power density, m (47 CFR 2.1091(b), 2.1093, from memory); so nothing shorter is said
/// by them.
pub const NO_CLOSER_M: f64 = 0.2;

/// Diameters that the mouth of an antenna which is only stated may have, m.
const STATED_MOUTHS_M: [f64; 2] = [0.05, 10.0];

/// Share of its mouth that a dish or horn makes use of (common practice, no source).
const APERTURE_EFFICIENCY: f64 = 0.5;

/// What one standard asks for in front of one end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SafeAnswer {
    /// Whose limit.
    pub standard: ExposureStandard,
    /// The distance and what it rests on; an error where the standard has no limit at
    /// this frequency, or so much power is not worked out.
    pub found: Result<SafeDistance, LinkError>,
    /// The distance to keep, m: never below what the standard can speak of.
    pub keep_m: Option<f64>,
}

impl SafeAnswer {
    fn new(emitter: &Emitter, standard: ExposureStandard) -> Self {
        let found = safe_distance(emitter, standard, Reflection::Complete);
        let least = match standard {
            ExposureStandard::Icnirp2020 => 0.0,
            ExposureStandard::Fcc1310 => NO_CLOSER_M,
        };
        Self {
            standard,
            found,
            keep_m: found.ok().map(|safe| safe.distance_m.max(least)),
        }
    }
}

/// What every standard asks for in front of an antenna that gets so much power.
pub(super) fn safe_answers(
    antenna: &PlanAntenna,
    at_antenna_dbm: f64,
    frequency_hz: f64,
) -> Vec<SafeAnswer> {
    let gain_dbi = antenna.peak_gain_dbi;
    let emitter = Emitter {
        power_w: 10_f64.powf((at_antenna_dbm - 30.0) / 10.0),
        gain_dbi,
        aperture_diameter_m: antenna
            .mouth_diameter_m
            .unwrap_or_else(|| mouth_of_gain_m(gain_dbi, frequency_hz)),
        frequency_hz,
    };
    ExposureStandard::ALL
        .into_iter()
        .map(|standard| SafeAnswer::new(&emitter, standard))
        .collect()
}

/// Diameter of the mouth that a gain needs, m: `λ/π sqrt(G/η)`, from `G = η (πD/λ)²`.
///
/// A mouth thought too small would end the near field too early, and its bound with it;
/// one thought too large would thin out the power in it.
fn mouth_of_gain_m(gain_dbi: f64, frequency_hz: f64) -> f64 {
    let [least, most] = STATED_MOUTHS_M;
    let gain = 10_f64.powf(gain_dbi / 10.0);
    let across = wavelength_m(frequency_hz) / PI * (gain / APERTURE_EFFICIENCY).sqrt();
    across.clamp(least, most)
}

/// Distance from which an antenna's far field holds, m: `2D²/λ` (D. M. Pozar, *Microwave
/// Engineering*, 4th ed. 2012, section 14.1).
pub(super) fn far_field_from_m(antenna: &PlanAntenna, frequency_hz: f64) -> f64 {
    let across = antenna
        .mouth_diameter_m
        .unwrap_or_else(|| mouth_of_gain_m(antenna.peak_gain_dbi, frequency_hz));
    2.0 * across * across / wavelength_m(frequency_hz)
}

#[cfg(test)]
mod tests {
    use super::mouth_of_gain_m;

    #[test]
    fn a_dish_of_a_metre_has_its_gain() {
        // π · 1 m/0.1230 m squared is 652; half of that is 25.1 dBi.
        let across = mouth_of_gain_m(25.13, 2.437e9);
        assert!((across - 1.0).abs() < 0.005, "{across}");
        assert!((mouth_of_gain_m(-20.0, 2.437e9) - 0.05).abs() < 1e-12);
    }
}
