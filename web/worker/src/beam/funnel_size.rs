//! A funnel in whole numbers of the design.

use std::f64::consts::PI;

use tinwave_core::funnel::{FlatPattern, FunnelLimits as SiLimits};
use tinwave_core::outside::Rim;
use tinwave_core::si::{metres, micrometres};
use tinwave_protocol::beam::{FunnelLimits, FunnelPoint};

use super::can::BareCan;

/// Limits as the core takes them.
pub(super) fn si(limits: &FunnelLimits) -> SiLimits {
    SiLimits {
        mouth_m: limits.mouth_um.map(metres),
        length_m: limits.length_um.map(metres),
        sheet_m: limits
            .sheet_um
            .map(|(one, other)| (metres(one), metres(other))),
        seam_m: metres(limits.seam_um),
    }
}

/// In sizes that can be marked out: mouth to 0.1 mm, never wider, angle to 0.01
/// degrees.
pub(super) fn funnel(
    can: &BareCan,
    mouth_m: f64,
    half_angle_rad: f64,
    gain_dbi: f64,
    is_solved: bool,
) -> FunnelPoint {
    let mouth_um = (micrometres(mouth_m).saturating_add(1) / 100).saturating_mul(100);
    let half_angle_millideg =
        ((half_angle_rad * (18_000.0 / PI)).round() as u32).saturating_mul(10);
    let angle = f64::from(half_angle_millideg) * (PI / 180_000.0);
    FunnelPoint {
        mouth_um,
        half_angle_millideg,
        length_m: (0.5 * metres(mouth_um) - can.radius_m()) / angle.tan(),
        gain_dbi,
        is_solved,
    }
}

/// Half angle, rad.
pub(super) fn half_angle_rad(funnel: &FunnelPoint) -> f64 {
    f64::from(funnel.half_angle_millideg) * (PI / 180_000.0)
}

pub(super) fn rim(funnel: &FunnelPoint) -> Rim {
    Rim::Funnel {
        mouth_radius_m: 0.5 * metres(funnel.mouth_um),
        half_angle_rad: half_angle_rad(funnel),
    }
}

pub(super) fn sheet(funnel: &FunnelPoint, can: &BareCan, seam_m: f64) -> Option<FlatPattern> {
    let mouth_radius_m = 0.5 * metres(funnel.mouth_um);
    FlatPattern::new(
        can.radius_m(),
        mouth_radius_m,
        half_angle_rad(funnel),
        seam_m,
    )
}
