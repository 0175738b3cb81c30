//! Loss in the wall of a circular guide.
//!
//! Source: N. Marcuvitz, *Waveguide Handbook*, 1951, section 2.3 (from memory);
//! D. M. Pozar, *Microwave Engineering*, 4th ed. 2012, eq. 3.133 (TE11 form).

use crate::constants::ETA_0;
use crate::math;
use crate::waveguide_mode::{Family, Mode};

/// Decibels in one neper, `20/ln 10`.
pub const DB_PER_NEPER: f64 = 8.685_889_638_065_037;

impl Mode {
    /// Attenuation in Np/m by a wall of the given surface resistance (ohm, >= 0),
    /// air inside; `None` at or below cutoff.
    ///
    /// TE: `Rs/(a η √(1-r²))·(r² + n²/(χ'² - n²))`; TM: `Rs/(a η √(1-r²))`, with
    /// `r = f_c/f`. First order in the loss: not valid within a few parts in ten
    /// thousand of cutoff.
    #[must_use]
    pub fn wall_attenuation_np_per_m(
        self,
        radius_m: f64,
        frequency_hz: f64,
        surface_resistance_ohm: f64,
    ) -> Option<f64> {
        let root = self.root()?;
        let ratio = self
            .squared_phase_ratio(radius_m, frequency_hz)
            .filter(|ratio| *ratio > 0.0)?;
        let tm = surface_resistance_ohm / (radius_m * ETA_0 * math::sqrt(ratio));
        Some(match self.family {
            Family::Tm => tm,
            Family::Te => {
                let n = f64::from(self.order);
                tm * (1.0 - ratio + n * n / (root * root - n * n))
            }
        })
    }
}
