//! The outside of a design over the frequencies that it asks for.

use super::error::OutsideError;
use super::outline::Outline;
use super::spectrum::OutsideSteps;
use crate::constants::SPEED_OF_LIGHT;
use crate::design::Design;
use crate::mouth::COVERED_KA;
use crate::si::{SiDesign, hertz};

impl OutsideSteps {
    /// Prepares a design's outside for its sweep and band, as far as `k a` from 1.2
    /// to 3.83 allows; a sweep too wide for the computation is left to the band
    /// alone. `None` where the guide is taken to go on for ever.
    ///
    /// # Errors
    /// As [`Self::new`].
    pub fn of_design(design: &Design) -> Result<Option<Self>, OutsideError> {
        let si = SiDesign::new(design);
        let Some(outline) = Outline::new(design, &si) else {
            return Ok(None);
        };
        let sweep = design.effective_sweep();
        let band = (si.band_low_hz, si.band_high_hz);
        let both = (
            band.0.min(hertz(sweep.low_khz)),
            band.1.max(hertz(sweep.high_khz)),
        );
        let scale = SPEED_OF_LIGHT / (2.0 * core::f64::consts::PI * si.radius_m);
        let (low, high) = (COVERED_KA.0 * scale, COVERED_KA.1 * scale);
        let prepare = |wanted: (f64, f64)| {
            let (from, to) = (wanted.0.max(low), wanted.1.min(high));
            if from <= to {
                return Self::new(&outline, from, to);
            }
            Err(OutsideError::Frequency {
                frequency_hz: wanted.0,
                low_hz: low,
                high_hz: high,
            })
        };
        match prepare(both) {
            Err(OutsideError::TooLarge { .. }) => prepare(band).map(Some),
            other => other.map(Some),
        }
    }
}
