//! Any cut of a beam through its axis: wanted and crossed polarisation.

use std::f64::consts::PI;

use tinwave_core::radiation::{Cut, SumPattern};

/// Degrees between two points.
const STEP_DEG: usize = 2;
/// Crossed levels farther below the peak are rounding, dB.
const NONE_DB: f64 = 60.0;

/// The crossed polarisation ahead, where it is highest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crossed {
    /// Below the peak of the wanted one, dB.
    pub below_db: f64,
    /// Signed angle, degrees.
    pub at_deg: f64,
}

/// A cut: levels in dBi over the signed angle in degrees, −180 to 180.
#[derive(Clone, Debug, PartialEq)]
pub struct BeamCut {
    /// The polarisation that is meant, along the wire.
    pub wanted: Vec<(f64, f64)>,
    /// The one across it.
    pub crossed: Vec<(f64, f64)>,
    /// Highest wanted level, dBi.
    pub peak_dbi: f64,
    /// Its signed angle, degrees.
    pub peak_deg: f64,
    /// Half-power width; `None` where the level never falls to half.
    pub width_deg: Option<f64>,
    /// `None` where there is no crossed polarisation ahead.
    pub most_crossed: Option<Crossed>,
}

impl BeamCut {
    /// The cut at an azimuth: 0 degrees along the wire (E plane), 90 across it.
    #[must_use]
    pub fn new(pattern: &SumPattern, azimuth_deg: f64) -> Self {
        let azimuth = azimuth_deg * (PI / 180.0);
        let power = pattern.radiated_share();
        let level = |square: f64| 10.0 * (square / power).max(1e-12).log10();
        let (mut wanted, mut crossed) = (Vec::new(), Vec::new());
        for degrees in (-180..=180_i32).step_by(STEP_DEG) {
            let degrees = f64::from(degrees);
            let own = if degrees >= 0.0 {
                azimuth
            } else {
                azimuth + PI
            };
            let field = pattern.field(degrees.abs() * (PI / 180.0), own);
            let parts = field.wanted_and_crossed(own);
            wanted.push((degrees, level(parts.0.norm_sqr())));
            crossed.push((degrees, level(parts.1.norm_sqr())));
        }
        let cut = Cut::new(pattern, azimuth);
        let peak_dbi = cut.peak_dbi();
        Self {
            most_crossed: most_crossed(&crossed, peak_dbi),
            wanted,
            crossed,
            peak_dbi,
            peak_deg: cut.peak_angle_rad() * (180.0 / PI),
            width_deg: cut.half_power_width_deg(),
        }
    }
}

fn most_crossed(crossed: &[(f64, f64)], peak_dbi: f64) -> Option<Crossed> {
    let ahead = crossed.iter().filter(|point| point.0.abs() <= 90.0);
    let (at_deg, level) = ahead.copied().max_by(|a, b| a.1.total_cmp(&b.1))?;
    let below_db = peak_dbi - level;
    (below_db <= NONE_DB).then_some(Crossed { below_db, at_deg })
}
