//! Funnels by the quick fit, before any is solved.

use std::f64::consts::PI;

use tinwave_core::funnel::funnel_gain_fit_dbi;
use tinwave_core::si::metres;
use tinwave_protocol::beam::{FunnelLimits, FunnelPoint};

use super::can::BareCan;
use super::funnel_size::{self, sheet};

/// Half angles looked at, degrees, and the steps.
const ANGLES_DEG: (f64, f64) = (8.0, 60.0);
const ANGLE_STEP_DEG: f64 = 0.5;
/// Widest mouth looked at, wavelengths.
const WIDEST: f64 = 4.0;
/// Narrowest, can diameters.
const NARROWEST: f64 = 1.02;
/// Mouths tried for each angle.
const MOUTHS: u32 = 48;
/// Points of a trade, and the longest of them in wavelengths.
const POINTS: u32 = 8;
const LONGEST: f64 = 3.0;

fn angles() -> impl Iterator<Item = f64> {
    let count = ((ANGLES_DEG.1 - ANGLES_DEG.0) / ANGLE_STEP_DEG).round() as u32;
    (0..=count).map(|n| (ANGLES_DEG.0 + ANGLE_STEP_DEG * f64::from(n)) * (PI / 180.0))
}

/// A funnel with the gain of the fit.
fn funnel(can: &BareCan, mouth_m: f64, half_angle_rad: f64) -> FunnelPoint {
    let gain = funnel_gain_fit_dbi(mouth_m, half_angle_rad, can.wavelength_m());
    funnel_size::funnel(can, mouth_m, half_angle_rad, gain, false)
}

/// Whether a funnel keeps to mouth and sheet, and to the length where that counts.
fn keeps(can: &BareCan, limits: &FunnelLimits, funnel: &FunnelPoint, length_counts: bool) -> bool {
    const SLACK: f64 = 1e-6;
    let within = |value: f64, most: Option<u32>| most.is_none_or(|um| value <= metres(um) + SLACK);
    let on_sheet = limits.sheet_um.is_none_or(|(one, other)| {
        let needed = sheet(funnel, can, metres(limits.seam_um));
        let needed = needed.map(|sheet| sheet.rectangle_m());
        let fits = |(width, height): (f64, f64), w: u32, h: u32| {
            width <= metres(w) + SLACK && height <= metres(h) + SLACK
        };
        needed.is_some_and(|needed| fits(needed, one, other) || fits(needed, other, one))
    });
    on_sheet
        && within(metres(funnel.mouth_um), limits.mouth_um)
        && (!length_counts || within(funnel.length_m, limits.length_um))
}

fn better(best: Option<FunnelPoint>, found: FunnelPoint) -> Option<FunnelPoint> {
    match best {
        Some(best) if best.gain_dbi >= found.gain_dbi => Some(best),
        _ if found.gain_dbi.is_finite() => Some(found),
        best => best,
    }
}

/// The best within the limits; `None` where none fits.
pub(super) fn best(can: &BareCan, limits: &FunnelLimits) -> Option<FunnelPoint> {
    let narrowest = 2.0 * can.radius_m() * NARROWEST;
    let widest = WIDEST * can.wavelength_m();
    let widest = limits.mouth_um.map_or(widest, |um| widest.min(metres(um)));
    if widest < narrowest {
        return None;
    }
    angles()
        .flat_map(|angle| {
            (0..=MOUTHS).map(move |n| {
                let share = f64::from(n) / f64::from(MOUTHS);
                (narrowest + (widest - narrowest) * share, angle)
            })
        })
        .map(|(mouth, angle)| funnel(can, mouth, angle))
        .filter(|found| keeps(can, limits, found, true))
        .fold(None, better)
}

/// To 5 mm, so that makers can read it off.
fn round(metres: f64) -> f64 {
    (metres * 200.0).round() / 200.0
}

/// The best of each length, mouth and sheet kept to.
pub(super) fn by_length(can: &BareCan, limits: &FunnelLimits) -> Vec<FunnelPoint> {
    let longest = LONGEST * can.wavelength_m();
    let entered = limits.length_um.map_or(0.0, metres);
    let longest = longest.min((1.5 * entered).max(2.0 * can.wavelength_m()));
    let of_length = |length: f64| {
        angles()
            .map(|angle| funnel(can, 2.0 * (can.radius_m() + length * angle.tan()), angle))
            .filter(|found| metres(found.mouth_um) <= WIDEST * can.wavelength_m())
            .filter(|found| keeps(can, limits, found, false))
            .fold(None, better)
    };
    (1..=POINTS)
        .filter_map(|n| of_length(round(longest * f64::from(n) / f64::from(POINTS))))
        .collect()
}

/// Mouths from little wider than the can to far beyond the best, at one length.
pub(super) fn by_mouth(can: &BareCan, length_m: f64, best_mouth_m: f64) -> Vec<FunnelPoint> {
    if length_m <= 0.0 {
        return Vec::new();
    }
    let can_m = 2.0 * can.radius_m();
    let steepest = can_m + 2.0 * length_m * (ANGLES_DEG.1 * (PI / 180.0)).tan();
    let widest = (WIDEST * can.wavelength_m())
        .min(steepest)
        .min((1.5 * best_mouth_m).max(1.5 * can_m));
    let narrowest = 1.2 * can_m;
    let step = (widest - narrowest).max(0.0) / f64::from(POINTS - 1);
    let mut funnels: Vec<FunnelPoint> = (0..POINTS)
        .map(|n| round(narrowest + step * f64::from(n)))
        .map(|mouth| (mouth, ((0.5 * mouth - can.radius_m()) / length_m).atan()))
        .filter(|(_, angle)| *angle > 0.02)
        .map(|(mouth, angle)| funnel(can, mouth, angle))
        .collect();
    funnels.dedup_by_key(|funnel| funnel.mouth_um);
    funnels
}
