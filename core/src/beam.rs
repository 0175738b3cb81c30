//! The beam of the can at the band's centre, from the exact open pipe.
//!
//! The pipe is endless; the outer wall of a finite can carries a standing wave
//! that moves gain and beamwidth by the uncertainty given here.

use crate::complex::Complex;
use crate::constants::wavenumber;
use crate::design::{Design, Kilohertz, Mouth};
use crate::math;
use crate::mouth::{mouth_reflection, pipe_beam};
use crate::si::{SiDesign, kilohertz};
use crate::waveguide_mode::Mode;
use crate::whole_can::WholeCan;

/// The beam at one frequency. Directions: E plane through the probe, H plane
/// across it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beam {
    /// Frequency.
    pub at_khz: Kilohertz,
    /// Directivity on the axis, dB over isotropic.
    pub directivity_dbi: f64,
    /// Directivity less mismatch and wall loss; `None` where the match isn't known.
    pub realised_gain_dbi: Option<f64>,
    /// Full width of the half-power beam in the E plane, degrees.
    pub beamwidth_e_deg: f64,
    /// The same in the H plane.
    pub beamwidth_h_deg: f64,
    /// Front over back, dB.
    pub front_to_back_db: f64,
    /// Transverse-E reflection of TE11 at the mouth.
    pub mouth_reflection: Complex,
}

impl Beam {
    /// The beam of an open can; `None` for other mouths and outside the range
    /// of the mouth's solution.
    #[must_use]
    pub fn new(design: &Design, si: &SiDesign, can: Option<&WholeCan>) -> Option<Self> {
        if design.mouth != Mouth::Open {
            return None;
        }
        let centre = si.centre_hz();
        let ka = wavenumber(centre) * si.radius_m;
        let pipe = pipe_beam(ka).ok()?;
        let delivered = can.and_then(|can| {
            let point = can.match_at(centre).ok()?;
            let power = can.power_at(centre).ok()?;
            // TE11's share alone counts on the axis: TM01 has a null there.
            Some((1.0 - point.reflection.norm_sqr()) * power.te11)
        });
        Some(Self {
            at_khz: kilohertz(centre),
            directivity_dbi: pipe.directivity_dbi,
            realised_gain_dbi: delivered
                .filter(|share| *share > 0.0)
                .map(|share| pipe.directivity_dbi + 10.0 * math::log10(share)),
            beamwidth_e_deg: pipe.beamwidth_e_deg,
            beamwidth_h_deg: pipe.beamwidth_h_deg,
            front_to_back_db: pipe.front_to_back_db,
            mouth_reflection: mouth_reflection(Mode::TE11, ka).ok()?,
        })
    }
}

/// How far gain (dB) and beamwidth (degrees) of a finite can may lie from the
/// endless pipe's.
///
/// The outer wall's standing wave changes directivity by `A cos(2kL+p)/√(L/λ)`;
/// `A` against `k a` from body-of-revolution solutions of 200 mm class cans
/// (our own calculation): 0.400 dB at 1.95, 0.336 at 2.10, 0.256 at 2.30, 0.154
/// at 2.60, 0.065 at 3.00, 0.022 at 3.40. Beamwidths of the same solutions
/// spread by up to 6 degrees at 2.3, taken in proportion.
#[must_use]
pub fn endless_pipe_uncertainty(si: &SiDesign, frequency_hz: f64) -> (f64, f64) {
    const TABLE: [(f64, f64); 6] = [
        (1.95, 0.400),
        (2.10, 0.336),
        (2.30, 0.256),
        (2.60, 0.154),
        (3.00, 0.065),
        (3.40, 0.022),
    ];
    let k = wavenumber(frequency_hz);
    let ka = (k * si.radius_m).clamp(1.95, 3.40);
    let mut amplitude = 0.022;
    for pair in TABLE.windows(2) {
        if let [(low, a), (high, b)] = pair
            && ka >= *low
            && ka <= *high
        {
            amplitude = a + (b - a) * (ka - low) / (high - low);
        }
    }
    let wavelengths = si.open_length_m * k / (2.0 * core::f64::consts::PI);
    let gain_db = amplitude / math::sqrt(wavelengths.max(0.5));
    (gain_db, gain_db * 6.0 / 0.256)
}
