//! Loss in trees.
//!
//! Three published forms that differ by a factor of two on the same wood: leaves,
//! wetness and species matter more than the formula. So [`foliage_loss`] states a span.

use super::error::{LinkError, LinkQuantity, within};
use crate::math;

/// Frequencies of the forms in depth, Hz (from memory).
const FREQUENCIES_HZ: [f64; 2] = [230e6, 95e9];

/// Depth of trees that the forms cover, m.
const DEPTH_M: [f64; 2] = [0.0, 400.0];

/// Loss in a belt of dense, dry trees in leaf, dB, path through the crowns:
/// `0.45 f^0.284 d` up to 14 m, `1.33 f^0.284 d^0.588` up to 400 m, `f` in GHz.
///
/// Source: M. A. Weissberger, ESD-TR-81-101, 1982; 230 MHz to 95 GHz.
///
/// # Errors
/// Depth or frequency outside those.
pub fn weissberger_loss_db(depth_m: f64, frequency_hz: f64) -> Result<f64, LinkError> {
    let (depth_m, hz) = covered(depth_m, frequency_hz)?;
    let by_frequency = math::pow(hz / 1e9, 0.284);
    Ok(if depth_m <= 14.0 {
        0.45 * by_frequency * depth_m
    } else {
        1.33 * by_frequency * math::pow(depth_m, 0.588)
    })
}

/// The older form of the same, dB: `0.2 f^0.3 d^0.6`, `f` in MHz, up to 400 m.
///
/// Source: CCIR Report 236-2 (from memory). Higher than the other forms.
///
/// # Errors
/// Depth or frequency outside those of [`weissberger_loss_db`].
pub fn early_itu_loss_db(depth_m: f64, frequency_hz: f64) -> Result<f64, LinkError> {
    let (depth_m, hz) = covered(depth_m, frequency_hz)?;
    Ok(0.2 * math::pow(hz / 1e6, 0.3) * math::pow(depth_m, 0.6))
}

/// Measured maximum attenuation of a wood, `A_m = A1 f^α`, `f` in MHz.
///
/// Source: ITU-R P.833, section 2.1 (sets from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum WoodlandSet {
    /// Tropical trees in a park, 900 to 1800 MHz.
    TropicalPark,
    /// Mixed wood, 900 to 2200 MHz.
    MixedWood,
    /// Mixed wood, 106 to 2117 MHz.
    MixedWoodWideBand,
}

impl WoodlandSet {
    /// Every set.
    pub const ALL: [Self; 3] = [Self::TropicalPark, Self::MixedWood, Self::MixedWoodWideBand];

    const fn row(self) -> [f64; 4] {
        match self {
            Self::TropicalPark => [0.18, 0.752, 900e6, 1800e6],
            Self::MixedWood => [1.15, 0.43, 900e6, 2200e6],
            Self::MixedWoodWideBand => [1.37, 0.42, 106e6, 2117e6],
        }
    }

    /// Frequencies measured, Hz. Beyond them the form is an extrapolation.
    #[must_use]
    pub const fn measured_range_hz(self) -> [f64; 2] {
        let [_, _, low, high] = self.row();
        [low, high]
    }

    /// Maximum attenuation for one end deep inside the wood, dB. Frequency above zero.
    #[must_use]
    pub fn maximum_attenuation_db(self, frequency_hz: f64) -> f64 {
        let [factor, power, ..] = self.row();
        factor * math::pow(frequency_hz / 1e6, power)
    }
}

/// Specific attenuation for short ways through a wood, dB/m: lowest, middle and highest.
///
/// Read from ITU-R P.833, Fig. 2 (from memory, to ±50 %): 0.1 to 0.2 at 1 GHz, 0.3 to
/// 0.4 at 2.4 GHz, 0.6 to 1 at 5 GHz; between them and to 6 GHz by a power law.
///
/// # Errors
/// A frequency outside 1 to 6 GHz.
pub fn specific_attenuation_db_per_m(frequency_hz: f64) -> Result<[f64; 3], LinkError> {
    let hz = within(LinkQuantity::FrequencyHz, frequency_hz, [1e9, 6e9])?;
    let ghz = hz / 1e9;
    let law = |at: [f64; 2], ends: [f64; 2]| {
        let [low_ghz, high_ghz] = at;
        let [low, high] = ends;
        let power = math::log(high / low) / math::log(high_ghz / low_ghz);
        low * math::pow(ghz / low_ghz, power)
    };
    let (low, high) = if ghz < 2.4 {
        let at = [1.0, 2.4];
        (law(at, [0.1, 0.3]), law(at, [0.2, 0.4]))
    } else {
        let at = [2.4, 5.0];
        (law(at, [0.3, 0.6]), law(at, [0.4, 1.0]))
    };
    Ok([low, math::sqrt(low * high), high])
}

/// Excess loss with one end inside a wood, dB: `A_m (1 - exp(-d γ/A_m))`.
///
/// Depth not below zero; `A_m` above zero. Source: ITU-R P.833, section 2.1, eq. 1.
#[must_use]
pub fn woodland_loss_db(
    depth_m: f64,
    specific_attenuation_db_per_m: f64,
    maximum_attenuation_db: f64,
) -> f64 {
    let share = depth_m * specific_attenuation_db_per_m / maximum_attenuation_db;
    -maximum_attenuation_db * math::expm1(-share)
}

/// Loss in trees with the span of the published forms.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FoliageLoss {
    /// Lowest of the forms, dB.
    pub low_db: f64,
    /// Figure to plan with, dB: Weissberger's.
    pub usual_db: f64,
    /// Highest of the forms, dB.
    pub high_db: f64,
}

/// Loss in a depth of trees: Weissberger's figure, and the span that it makes with the
/// older form and with ITU-R P.833 (where that has a specific attenuation).
///
/// # Errors
/// Depth outside 0 to 400 m, or frequency outside 230 MHz to 95 GHz.
pub fn foliage_loss(depth_m: f64, frequency_hz: f64) -> Result<FoliageLoss, LinkError> {
    let usual_db = weissberger_loss_db(depth_m, frequency_hz)?;
    let early = early_itu_loss_db(depth_m, frequency_hz)?;
    let mut span = [usual_db.min(early), usual_db.max(early)];
    if let Ok([low, _, high]) = specific_attenuation_db_per_m(frequency_hz) {
        let most = WoodlandSet::MixedWood.maximum_attenuation_db(frequency_hz);
        for gamma in [low, high] {
            let loss = woodland_loss_db(depth_m, gamma, most);
            span = [span[0].min(loss), span[1].max(loss)];
        }
    }
    let [low_db, high_db] = span;
    Ok(FoliageLoss {
        low_db,
        usual_db,
        high_db,
    })
}

fn covered(depth_m: f64, frequency_hz: f64) -> Result<(f64, f64), LinkError> {
    Ok((
        within(LinkQuantity::FoliageDepthM, depth_m, DEPTH_M)?,
        within(LinkQuantity::FrequencyHz, frequency_hz, FREQUENCIES_HZ)?,
    ))
}
