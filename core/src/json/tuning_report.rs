//! Screws and sensitivities in the report file.

use alloc::sync::Arc;
use alloc::vec::Vec;

use serde::Serialize;

use super::diagnosis_report::key;
use super::report::{mm, tidy};
use crate::design::{Design, Screw};
use crate::design_error::DesignError;
use crate::dimension::Dimension;
use crate::outside::OutsideSpectrum;
use crate::screw_search::{
    ScrewProgress, ScrewSearch, ScrewSettings, ScrewSettingsError, depth_curve,
};
use crate::tolerance::{Sensitivity, sensitivities};

/// The screw that the report tries: M4 (pitch: ISO 261), opposite the probe.
const TRIED: ScrewSettings = ScrewSettings {
    count: 1,
    diameter_um: 4000,
    angle_millideg: 180_000,
};
const PITCH_UM: u32 = 700;

#[derive(Serialize)]
pub(super) struct ScrewsOut {
    worst_vswr_without: f64,
    worst_vswr_in_band: f64,
    screws: Vec<ScrewOut>,
}

#[derive(Serialize)]
struct ScrewOut {
    axial_mm: f64,
    angle_deg: f64,
    depth_mm: f64,
    diameter_mm: f64,
    pitch_mm: f64,
    /// Depth and largest VSWR over the band, for each quarter turn.
    quarter_turns: Vec<(f64, Option<f64>)>,
}

#[derive(Serialize)]
pub(super) struct SensitivityOut {
    dimension: &'static str,
    unit: &'static str,
    change: f64,
    worst_vswr_less: f64,
    worst_vswr_more: f64,
    reflection_per_unit: f64,
    best_mhz_per_unit: Option<f64>,
}

/// The best further screw of the report's kind; `None` where the can is not computed.
pub(super) fn screws_out(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
) -> Result<Option<ScrewsOut>, DesignError> {
    let mut search = match ScrewSearch::new(design, outside, TRIED) {
        Ok(search) => search,
        Err(ScrewSettingsError::Design(error)) => return Err(error),
        Err(ScrewSettingsError::Count(_)) => return Ok(None),
    };
    let found = loop {
        if let ScrewProgress::Done(found) = search.step() {
            break found;
        }
    };
    let Some(found) = found else { return Ok(None) };
    let mut screws = Vec::new();
    for screw in &found.screws {
        screws.push(screw_out(design, outside, *screw)?);
    }
    Ok(Some(ScrewsOut {
        worst_vswr_without: tidy(found.worst_vswr_without),
        worst_vswr_in_band: tidy(found.worst_vswr),
        screws,
    }))
}

fn screw_out(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
    screw: Screw,
) -> Result<ScrewOut, DesignError> {
    let deepest = screw.depth_um.saturating_add(2 * PITCH_UM);
    let curve = depth_curve(design, outside, screw, PITCH_UM, deepest)?;
    Ok(ScrewOut {
        axial_mm: mm(screw.axial_um),
        angle_deg: f64::from(screw.angle_millideg) / 1e3,
        depth_mm: mm(screw.depth_um),
        diameter_mm: mm(screw.diameter_um),
        pitch_mm: mm(PITCH_UM),
        quarter_turns: curve
            .iter()
            .map(|point| (mm(point.depth_um), point.worst_vswr.map(tidy)))
            .collect(),
    })
}

/// Every dimension at the usual tolerance.
pub(super) fn sensitivity_out(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
) -> Result<Vec<SensitivityOut>, DesignError> {
    let changes = Dimension::ALL.map(|dimension| (dimension, dimension.usual_tolerance()));
    let found = sensitivities(design, outside, &changes)?;
    Ok(found.iter().map(one_out).collect())
}

fn one_out(one: &Sensitivity) -> SensitivityOut {
    let (dimension, unit, per_si) = key(one.dimension);
    SensitivityOut {
        dimension,
        unit,
        change: tidy(one.change * per_si),
        worst_vswr_less: tidy(one.worst_vswr.0),
        worst_vswr_more: tidy(one.worst_vswr.1),
        reflection_per_unit: tidy(one.reflection_slope / per_si),
        best_mhz_per_unit: one.best_slope_hz.map(|hz| tidy(hz / per_si / 1e6)),
    }
}
