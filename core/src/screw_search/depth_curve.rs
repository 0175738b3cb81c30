//! VSWR against depth, a point for every quarter turn.

use alloc::sync::Arc;
use alloc::vec::Vec;
use core::ops::Range;

use super::search::{Band, worst_vswr};
use crate::design::{Design, Micrometres, Screw};
use crate::design_error::DesignError;
use crate::outside::OutsideSpectrum;

/// One depth of a screw.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct DepthPoint {
    /// Quarter turns from flush with the wall.
    pub quarter_turns: u32,
    /// Depth that this makes.
    pub depth_um: Micrometres,
    /// Largest VSWR over the band; `None` where the screw would touch something.
    pub worst_vswr: Option<f64>,
}

/// Most points of a curve.
const MOST_POINTS: u32 = 400;

/// The curve of one more screw in a design, its own depth left aside, from flush to
/// `deepest_um`, by quarter turns of a thread of `pitch_um` (M3: 500, M4: 700; ISO 261).
/// Empty where the can is not computed or the pitch is 0.
///
/// # Errors
/// A number of the design outside its hard range.
pub fn depth_curve(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
    screw: Screw,
    pitch_um: Micrometres,
    deepest_um: Micrometres,
) -> Result<Vec<DepthPoint>, DesignError> {
    let points = depth_points(pitch_um, deepest_um);
    depth_curve_part(design, outside, screw, pitch_um, 0..points)
}

/// Points of a whole curve, at most 400; none where the pitch is 0.
#[must_use]
pub fn depth_points(pitch_um: Micrometres, deepest_um: Micrometres) -> u32 {
    deepest_um
        .saturating_mul(4)
        .checked_div(pitch_um)
        .map_or(0, |last| last.min(MOST_POINTS - 1) + 1)
}

/// The part of [`depth_curve`] over a range of quarter turns, for work in steps.
///
/// # Errors
/// A number of the design outside its hard range.
pub fn depth_curve_part(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
    screw: Screw,
    pitch_um: Micrometres,
    quarter_turns: Range<u32>,
) -> Result<Vec<DepthPoint>, DesignError> {
    design.check()?;
    let Some(band) = Band::new(design, outside) else {
        return Ok(Vec::new());
    };
    Ok(quarter_turns
        .map(|quarter_turns| {
            let depth_um = quarter_turns.saturating_mul(pitch_um) / 4;
            let screw = Screw { depth_um, ..screw };
            DepthPoint {
                quarter_turns,
                depth_um,
                worst_vswr: worst_vswr(design, &band, &[screw]),
            }
        })
        .collect())
}
