//! How match and band move with each dimension.

use alloc::sync::Arc;
use alloc::vec::Vec;

use crate::changed_can::ChangedCan;
use crate::design::Design;
use crate::design_error::DesignError;
use crate::dimension::Dimension;
use crate::match_band::band_frequencies;
use crate::outside::OutsideSpectrum;
use crate::reflection::vswr;
use crate::si::hertz;

/// What one dimension alone does.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sensitivity {
    /// Which.
    pub dimension: Dimension,
    /// Deviation either way that the figures are for, in the unit of [`Dimension::of`].
    pub change: f64,
    /// Largest VSWR over the band with that much less and that much more.
    pub worst_vswr: (f64, f64),
    /// Largest change of the reflection over the band per unit of [`Dimension::of`].
    pub reflection_slope: f64,
    /// How far the frequency of the best match moves per unit, Hz; `None` where the
    /// best match lies beyond the range looked at (the band and its own width to each
    /// side).
    pub best_slope_hz: Option<f64>,
}

/// Points over the band, and over the wider range.
const BAND_POINTS: u32 = 11;
const WIDE_POINTS: u32 = 61;

/// Sensitivities of a design to deviations of these sizes, as stated; empty where the
/// can is not computed.
///
/// # Errors
/// A number outside its hard range.
pub fn sensitivities(
    design: &Design,
    outside: Option<&Arc<OutsideSpectrum>>,
    changes: &[(Dimension, f64)],
) -> Result<Vec<Sensitivity>, DesignError> {
    let Some(mut can) = ChangedCan::new(design, outside)? else {
        return Ok(Vec::new());
    };
    let hz = |points: Vec<u32>| -> Vec<f64> { points.into_iter().map(hertz).collect() };
    let band = hz(band_frequencies(design.band, BAND_POINTS));
    let width = design.band.high_khz.saturating_sub(design.band.low_khz);
    let wide = hz(band_frequencies(
        crate::design::Band {
            low_khz: design.band.low_khz.saturating_sub(width),
            high_khz: design.band.high_khz.saturating_add(width),
        },
        WIDE_POINTS,
    ));
    let mut out = Vec::new();
    for (dimension, change) in changes {
        out.extend(one(&mut can, &band, &wide, *dimension, *change));
    }
    Ok(out)
}

fn one(
    can: &mut ChangedCan,
    band: &[f64],
    wide: &[f64],
    dimension: Dimension,
    change: f64,
) -> Option<Sensitivity> {
    let step = dimension.step();
    let at = |can: &mut ChangedCan, change: f64, hz: &[f64]| {
        let si = can.changed(&[(dimension, change)]);
        can.reflections(&si, hz).ok()
    };
    let worst = |can: &mut ChangedCan, change: f64| {
        let s = at(can, change, band)?;
        Some(vswr(s.iter().map(|s| s.abs()).fold(0.0, f64::max)))
    };
    let worst_vswr = (worst(can, -change)?, worst(can, change)?);
    let (less, more) = (at(can, -step, band)?, at(can, step, band)?);
    let slopes = less.iter().zip(&more);
    let reflection_slope = slopes
        .map(|(a, b)| (*b - *a).abs() / (2.0 * step))
        .fold(0.0, f64::max);
    let best = |can: &mut ChangedCan, change: f64| {
        let s = at(can, change, wide).unwrap_or_default();
        let sizes: Vec<f64> = s.iter().map(|s| s.norm_sqr()).collect();
        lowest(wide, &sizes)
    };
    let best = (best(can, -step), best(can, step));
    let best_slope_hz = match best {
        (Some(less), Some(more)) => Some((more - less) / (2.0 * step)),
        _ => None,
    };
    Some(Sensitivity {
        dimension,
        change,
        worst_vswr,
        reflection_slope,
        best_slope_hz,
    })
}

/// Where a parabola through the lowest point and its neighbours is lowest; `None` at an
/// end.
fn lowest(x: &[f64], y: &[f64]) -> Option<f64> {
    let pairs = x.windows(3).zip(y.windows(3));
    let mut best: Option<(f64, f64)> = None;
    for (x, y) in pairs {
        let ([x0, x1, _], [y0, y1, y2]) = (x, y) else {
            continue;
        };
        if y1 <= y0 && y1 <= y2 && best.is_none_or(|(value, _)| *y1 < value) {
            let bend = y0 - 2.0 * y1 + y2;
            let shift = if bend > 0.0 {
                0.5 * (y0 - y2) / bend
            } else {
                0.0
            };
            best = Some((*y1, x1 + shift * (x1 - x0)));
        }
    }
    best.map(|(_, place)| place)
}
