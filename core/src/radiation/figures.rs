//! The beam in numbers.

use core::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};

use super::cut::{Cut, SideLobe};
use super::phase_centre::PhaseCentre;
use super::sum_pattern::SumPattern;
use crate::complex::Complex;
use crate::math;

/// A direction: polar angle from the axis, azimuth from the probe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Direction {
    /// From the axis, rad.
    pub theta_rad: f64,
    /// Round the axis from the probe, rad.
    pub azimuth_rad: f64,
}

/// What can be said of a beam at one frequency. Levels in dB, angles in degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamFigures {
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// Directivity straight ahead, dB over isotropic.
    pub directivity_dbi: f64,
    /// Highest directivity in any direction.
    pub peak_dbi: f64,
    /// Where that is.
    pub peak: Direction,
    /// Highest directivity in the E plane.
    pub e_peak_dbi: f64,
    /// Its signed angle, positive on the probe's side.
    pub e_peak_angle_deg: f64,
    /// Gain straight ahead with everything lost in the walls and reflected at
    /// the connector, dB over isotropic.
    pub realised_gain_dbi: f64,
    /// Share of the power that is not reflected at the connector, 0 to 1.
    pub accepted_share: f64,
    /// Share of the accepted power that is radiated, 0 to 1.
    pub radiated_share: f64,
    /// Full half-power width about the highest point of the E plane.
    pub beamwidth_e_deg: Option<f64>,
    /// The same in the H plane.
    pub beamwidth_h_deg: Option<f64>,
    /// Straight ahead over straight back.
    pub front_to_back_db: f64,
    /// Straight ahead over the highest level in the rear half of all directions.
    pub front_to_rear_db: f64,
    /// Higher of the first side lobes in the E plane.
    pub side_lobe_e: Option<SideLobe>,
    /// The same in the H plane.
    pub side_lobe_h: Option<SideLobe>,
    /// Highest crossed polarisation ahead in the plane at 45 degrees, over the
    /// wanted one straight ahead.
    pub cross_polar_db: f64,
    /// Phase centre in the E plane over the half-power beam.
    pub phase_centre_e: Option<PhaseCentre>,
    /// The same in the H plane.
    pub phase_centre_h: Option<PhaseCentre>,
}

/// Steps of the search for the peak: degrees of polar angle, parts of half a turn.
const SEARCH_DEG: usize = 3;
const SEARCH_AZIMUTHS: usize = 12;

impl BeamFigures {
    /// Of a pattern, with the reflection coefficient at the connector (0 for the
    /// pattern of one mode alone).
    #[must_use]
    pub fn new(pattern: &SumPattern, reflection: Complex) -> Self {
        let e_plane = Cut::new(pattern, 0.0);
        let h_plane = Cut::new(pattern, FRAC_PI_2);
        let axis = pattern.field(0.0, 0.0).gain() / pattern.radiated_share();
        let directivity_dbi = 10.0 * math::log10(axis);
        let accepted_share = (1.0 - reflection.norm_sqr()).max(0.0);
        let radiated_share = pattern.radiated_share();
        let beamwidth_e_deg = e_plane.half_power_width_deg();
        let beamwidth_h_deg = h_plane.half_power_width_deg();
        let centre =
            |azimuth: f64, width: Option<f64>| pattern.phase_centre(azimuth, width? * (PI / 360.0));
        let (peak, peak_directivity) = peak(pattern, &e_plane);
        Self {
            frequency_hz: pattern.frequency_hz(),
            directivity_dbi,
            peak_dbi: 10.0 * math::log10(peak_directivity),
            peak,
            e_peak_dbi: e_plane.peak_dbi(),
            e_peak_angle_deg: e_plane.peak_angle_rad() * (180.0 / PI),
            realised_gain_dbi: directivity_dbi
                + 10.0 * math::log10(accepted_share * radiated_share),
            accepted_share,
            radiated_share,
            beamwidth_e_deg,
            beamwidth_h_deg,
            front_to_back_db: directivity_dbi - pattern.directivity_dbi(PI, 0.0),
            front_to_rear_db: directivity_dbi - rear_dbi(pattern),
            side_lobe_e: e_plane.first_side_lobe(),
            side_lobe_h: h_plane.first_side_lobe(),
            cross_polar_db: cross_polar_db(pattern),
            phase_centre_e: centre(0.0, beamwidth_e_deg),
            phase_centre_h: centre(FRAC_PI_2, beamwidth_h_deg),
        }
    }
}

/// Highest directivity in the rear half, dB over isotropic.
fn rear_dbi(pattern: &SumPattern) -> f64 {
    let mut highest: f64 = 0.0;
    for n in 0..SEARCH_AZIMUTHS {
        let azimuth = 2.0 * PI * n as f64 / SEARCH_AZIMUTHS as f64;
        for degrees in (90..=180).step_by(SEARCH_DEG) {
            let theta = degrees as f64 * (PI / 180.0);
            highest = highest.max(pattern.directivity(theta, azimuth));
        }
    }
    10.0 * math::log10(highest)
}

/// Highest crossed part ahead at 45 degrees over the wanted one on the axis.
fn cross_polar_db(pattern: &SumPattern) -> f64 {
    let wanted = pattern.field(0.0, 0.0).wanted_and_crossed(0.0).0.norm_sqr();
    let steps = 90;
    let mut highest: f64 = 0.0;
    for azimuth in [FRAC_PI_4, -FRAC_PI_4, 3.0 * FRAC_PI_4, -3.0 * FRAC_PI_4] {
        for n in 0..=steps {
            let theta = FRAC_PI_2 * f64::from(n) / f64::from(steps);
            let crossed = pattern.field(theta, azimuth).wanted_and_crossed(azimuth).1;
            highest = highest.max(crossed.norm_sqr());
        }
    }
    10.0 * math::log10(highest / wanted)
}

/// The highest point of the whole sphere: a grid, then the cut through its best
/// point and the neighbouring azimuths.
fn peak(pattern: &SumPattern, e_plane: &Cut<'_>) -> (Direction, f64) {
    let in_e = e_plane.peak_angle_rad();
    let direction = |azimuth: f64, angle: f64| Direction {
        theta_rad: math::fabs(angle),
        azimuth_rad: if angle < 0.0 { azimuth + PI } else { azimuth },
    };
    let level = |azimuth: f64, angle: f64| {
        let direction = direction(azimuth, angle);
        pattern.directivity(direction.theta_rad, direction.azimuth_rad)
    };
    let mut best = (0.0, in_e, level(0.0, in_e));
    for n in 1..SEARCH_AZIMUTHS {
        let azimuth = PI * n as f64 / SEARCH_AZIMUTHS as f64;
        for degrees in (0..180).step_by(SEARCH_DEG) {
            for side in [1.0, -1.0] {
                let angle = side * degrees as f64 * (PI / 180.0);
                let found = level(azimuth, angle);
                if found > best.2 * (1.0 + 1e-9) {
                    best = (azimuth, angle, found);
                }
            }
        }
    }
    // Downhill steps that halve; the grid has found the right hill.
    let mut step = PI / 60.0;
    while step > 1e-5 {
        let (azimuth, angle, _) = best;
        let around = [(step, 0.0), (-step, 0.0), (0.0, step), (0.0, -step)];
        let before = best.2;
        for (turn, tilt) in around {
            let (a, b) = (azimuth + turn, (angle + tilt).clamp(-PI, PI));
            let found = level(a, b);
            if found > best.2 {
                best = (a, b, found);
            }
        }
        if best.2 <= before * (1.0 + 1e-12) {
            step *= 0.5;
        }
    }
    (direction(best.0, best.1), best.2)
}
