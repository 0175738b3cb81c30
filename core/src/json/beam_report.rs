//! The beam in the report file.

use alloc::vec::Vec;
use core::f64::consts::{FRAC_PI_2, PI};

use serde::Serialize;

use super::report::{mhz, pair, tidy};
use crate::analysis::Analysis;
use crate::design::Design;
use crate::mouth::{self, Plane};
use crate::radiation::{CanBeam, PhaseCentre, SideLobe};
use crate::si::SiDesign;

/// Angles between points of the patterns, degrees.
const PATTERN_STEP_DEG: usize = 5;

#[derive(Serialize)]
pub(super) struct BeamOut {
    at_mhz: f64,
    /// Whether it is the whole body's; else that of an endless pipe.
    whole_body: bool,
    directivity_dbi: f64,
    realised_gain_dbi: Option<f64>,
    peak_dbi: f64,
    /// In the E plane, positive on the probe's side.
    peak_angle_deg: f64,
    beamwidth_e_deg: Option<f64>,
    beamwidth_h_deg: Option<f64>,
    front_to_back_db: f64,
    mouth_reflection: [f64; 2],
    more: Option<MoreBeamOut>,
    e_plane_dbi: Vec<[f64; 2]>,
    h_plane_dbi: Vec<[f64; 2]>,
}

/// What only the solution of the whole body tells.
#[derive(Serialize)]
struct MoreBeamOut {
    radiated_share: f64,
    accepted_share: f64,
    front_to_rear_db: f64,
    cross_polar_db: f64,
    side_lobe_e: Option<LobeOut>,
    side_lobe_h: Option<LobeOut>,
    phase_centre_e_mm: Option<f64>,
    phase_centre_h_mm: Option<f64>,
}

#[derive(Serialize)]
struct LobeOut {
    angle_deg: f64,
    level_db: f64,
}

/// Angles of a pattern, degrees.
fn pattern_degrees(from: i32) -> Vec<f64> {
    (from..=180)
        .step_by(PATTERN_STEP_DEG)
        .map(f64::from)
        .collect()
}

fn pattern_out(degrees: &[f64], levels: Vec<f64>) -> Vec<[f64; 2]> {
    let points = degrees.iter().zip(levels);
    points.map(|(deg, dbi)| [*deg, tidy(dbi)]).collect()
}

fn radians(degrees: &[f64]) -> Vec<f64> {
    degrees.iter().map(|deg| deg * (PI / 180.0)).collect()
}

pub(super) fn beam_out(design: &Design, analysis: &Analysis) -> Option<BeamOut> {
    match &analysis.true_beam {
        Some(beam) => Some(true_beam_out(beam)),
        None => pipe_beam_out(design, analysis),
    }
}

/// The beam of the whole body.
fn true_beam_out(beam: &CanBeam) -> BeamOut {
    let figures = &beam.figures;
    let plane = |azimuth: f64, from: i32| {
        let degrees = pattern_degrees(from);
        let levels = beam.pattern.cut_dbi(azimuth, &radians(&degrees));
        pattern_out(&degrees, levels)
    };
    let lobe = |lobe: SideLobe| LobeOut {
        angle_deg: tidy(lobe.angle_rad * (180.0 / PI)),
        level_db: tidy(lobe.level_db),
    };
    let centre = |centre: PhaseCentre| tidy(centre.axial_m * 1e3);
    BeamOut {
        at_mhz: tidy(figures.frequency_hz / 1e6),
        whole_body: true,
        directivity_dbi: tidy(figures.directivity_dbi),
        realised_gain_dbi: beam.realised_gain_dbi.map(tidy),
        peak_dbi: tidy(figures.peak_dbi),
        peak_angle_deg: tidy(figures.e_peak_angle_deg),
        beamwidth_e_deg: figures.beamwidth_e_deg.map(tidy),
        beamwidth_h_deg: figures.beamwidth_h_deg.map(tidy),
        front_to_back_db: tidy(figures.front_to_back_db),
        mouth_reflection: pair(beam.mouth_reflection),
        more: Some(MoreBeamOut {
            radiated_share: tidy(figures.radiated_share),
            accepted_share: tidy(figures.accepted_share),
            front_to_rear_db: tidy(figures.front_to_rear_db),
            cross_polar_db: tidy(figures.cross_polar_db),
            side_lobe_e: figures.side_lobe_e.map(lobe),
            side_lobe_h: figures.side_lobe_h.map(lobe),
            phase_centre_e_mm: figures.phase_centre_e.map(centre),
            phase_centre_h_mm: figures.phase_centre_h.map(centre),
        }),
        e_plane_dbi: plane(0.0, -180),
        h_plane_dbi: plane(FRAC_PI_2, 0),
    }
}

/// The beam of an endless pipe in place of the can.
fn pipe_beam_out(design: &Design, analysis: &Analysis) -> Option<BeamOut> {
    let beam = analysis.beam?;
    let si = SiDesign::new(design);
    let ka = crate::constants::wavenumber(si.centre_hz()) * si.radius_m;
    let plane = |plane: Plane, from: i32| -> Option<Vec<[f64; 2]>> {
        let degrees = pattern_degrees(from);
        let angles: Vec<f64> = radians(&degrees).into_iter().map(f64::abs).collect();
        let levels = mouth::pipe_pattern_dbi(ka, plane, &angles).ok()?;
        Some(pattern_out(&degrees, levels))
    };
    Some(BeamOut {
        at_mhz: mhz(beam.at_khz),
        whole_body: false,
        directivity_dbi: tidy(beam.directivity_dbi),
        realised_gain_dbi: beam.realised_gain_dbi.map(tidy),
        peak_dbi: tidy(beam.directivity_dbi),
        peak_angle_deg: 0.0,
        beamwidth_e_deg: Some(tidy(beam.beamwidth_e_deg)),
        beamwidth_h_deg: Some(tidy(beam.beamwidth_h_deg)),
        front_to_back_db: tidy(beam.front_to_back_db),
        mouth_reflection: pair(beam.mouth_reflection),
        more: None,
        e_plane_dbi: plane(Plane::E, -180)?,
        h_plane_dbi: plane(Plane::H, 0)?,
    })
}
