//! Scale and place of the can on its sheet.

use std::f64::consts::PI;

use tinwave_core::design::{Design, Mouth};
use tinwave_core::math;

/// Height of the sheet where it is narrow, px.
pub const NARROW_HEIGHT: f64 = 300.0;
/// Height where it is wide.
pub const WIDE_HEIGHT: f64 = 372.0;
/// Width from which the wide sheet is used.
pub const WIDE_FROM: f64 = 560.0;
/// Width assumed before the page has been measured.
pub const FIRST_WIDTH: f64 = 340.0;

/// A sheet narrower than this is shown smaller rather than laid out anew.
pub const LEAST_WIDTH: f64 = 320.0;
/// A sheet wider than this is shown larger.
pub const MOST_WIDTH: f64 = 1_600.0;

/// Thinnest wall that can still be hatched, px.
const LEAST_WALL: f64 = 6.0;
/// Above the can: the dimension of its length.
const ROOM_ABOVE: f64 = 34.0;
/// Below it: connector, two dimensions, the note.
const ROOM_BELOW: f64 = 102.0;
/// Right of the mouth: the dimension of the diameter.
const ROOM_RIGHT: f64 = 40.0;
/// The same where the can is drawn too small to turn its figure.
const ROOM_RIGHT_UPRIGHT: f64 = 94.0;
const ROOM_LEFT: f64 = 10.0;

/// A can drawn lower than this has its diameter's figure upright, px.
pub const TURNED_FROM: f64 = 62.0;

/// Scale and position: px from micrometres inside the can.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionScale {
    /// Width of the sheet, px.
    pub width: f64,
    /// Height of the sheet, px.
    pub height: f64,
    /// px per micrometre, the same along and across.
    pub px_per_um: f64,
    /// Inner face of the back wall.
    pub back_x: f64,
    /// Rim of the mouth.
    pub mouth_x: f64,
    /// Inner surface, far from the probe.
    pub far_wall_y: f64,
    /// Inner surface through which the probe comes.
    pub near_wall_y: f64,
    /// Drawn thickness of the wall.
    pub wall: f64,
    /// Whether the wall is drawn thicker than it is.
    pub wall_is_thickened: bool,
    /// Outer rim of the closed end.
    pub rim_x: f64,
}

/// How far the mouth's part reaches past the rim and past the wall, micrometres.
fn mouth_extent_um(design: &Design) -> (f64, f64) {
    let half = f64::from(design.can.inside_diameter_um) / 2.0;
    match design.mouth {
        Mouth::Open | Mouth::Absorbing => (0.0, 0.0),
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        } => {
            let rise = (f64::from(mouth_diameter_um) / 2.0 - half).max(0.0);
            let angle = f64::from(half_angle_millideg) * (PI / 180_000.0);
            let (sine, cosine) = math::sin_cos(angle);
            (rise * cosine / sine.max(0.01), rise)
        }
        Mouth::Flange {
            outside_diameter_um,
        }
        | Mouth::Choke {
            outside_diameter_um,
            ..
        } => (0.0, (f64::from(outside_diameter_um) / 2.0 - half).max(0.0)),
    }
}

impl SectionScale {
    /// The largest scale at which the can and its dimensions fit a sheet of
    /// that width. The probe has no part in it: the can stands still while the
    /// probe is dragged.
    #[must_use]
    pub fn new(design: &Design, width_px: f64) -> Self {
        let width = if width_px.is_finite() {
            width_px.clamp(LEAST_WIDTH, MOST_WIDTH)
        } else {
            FIRST_WIDTH
        };
        let height = if width >= WIDE_FROM {
            WIDE_HEIGHT
        } else {
            NARROW_HEIGHT
        };
        let turned = Self::with_room(design, width, height, ROOM_RIGHT);
        if turned.near_wall_y - turned.far_wall_y >= TURNED_FROM {
            return turned;
        }
        Self::with_room(design, width, height, ROOM_RIGHT_UPRIGHT)
    }

    fn with_room(design: &Design, width: f64, height: f64, room_right: f64) -> Self {
        let can = &design.can;
        let (past_rim, past_wall) = mouth_extent_um(design);
        let length = f64::from(can.open_length_um);
        let recess = f64::from(can.base_recess_um);
        let across = f64::from(can.inside_diameter_um) + 2.0 * past_wall;
        let along = length + recess + past_rim;
        let free_width = width - ROOM_LEFT - room_right - LEAST_WALL;
        let free_height = height - ROOM_ABOVE - ROOM_BELOW - 2.0 * LEAST_WALL;
        // Twice: a thick wall takes room of its own at the scale found first.
        let mut px_per_um = (free_width / along).min(free_height / across);
        let true_wall = f64::from(can.wall_um);
        let excess = (true_wall * px_per_um - LEAST_WALL).max(0.0);
        px_per_um = ((free_width - excess) / along).min((free_height - 2.0 * excess) / across);
        let wall = (true_wall * px_per_um).max(LEAST_WALL);

        let spare = free_width + LEAST_WALL - wall - along * px_per_um;
        let rim_x = ROOM_LEFT + spare * 0.35;
        let back_x = rim_x + recess * px_per_um + wall;
        let middle = ROOM_ABOVE + LEAST_WALL + free_height / 2.0;
        let half = f64::from(can.inside_diameter_um) * px_per_um / 2.0;
        Self {
            width,
            height,
            px_per_um,
            back_x,
            mouth_x: back_x + length * px_per_um,
            far_wall_y: middle - half,
            near_wall_y: middle + half,
            wall,
            wall_is_thickened: wall > true_wall * px_per_um * 1.05,
            rim_x,
        }
    }

    /// Place of a distance from the back wall.
    #[must_use]
    pub fn along(&self, um: u32) -> f64 {
        self.back_x + f64::from(um) * self.px_per_um
    }

    /// A length in px.
    #[must_use]
    pub fn px(&self, um: u32) -> f64 {
        f64::from(um) * self.px_per_um
    }

    /// The can's axis.
    #[must_use]
    pub fn axis_y(&self) -> f64 {
        (self.far_wall_y + self.near_wall_y) / 2.0
    }

    /// Past-the-rim and past-the-wall extents of the mouth's part, px.
    #[must_use]
    pub fn mouth_extent(&self, design: &Design) -> (f64, f64) {
        let (along, across) = mouth_extent_um(design);
        (along * self.px_per_um, across * self.px_per_um)
    }
}

#[cfg(test)]
mod tests {
    use super::SectionScale;
    use crate::section_sheet::tests::orchard_gate;

    /// A ruler on the sheet must read the true proportion.
    #[test]
    fn along_and_across_share_one_scale() {
        let design = orchard_gate();
        for width in [320.0, 340.0, 700.0, 1200.0] {
            let scale = SectionScale::new(&design, width);
            let across = scale.near_wall_y - scale.far_wall_y;
            let along = scale.mouth_x - scale.back_x;
            // 87 mm by 150 mm.
            assert!((along / across - 150.0 / 87.0).abs() < 1e-9);
            assert!(scale.rim_x >= 0.0 && scale.mouth_x + 40.0 <= scale.width + 1e-9);
            assert!(scale.far_wall_y >= 34.0);
            assert!(scale.near_wall_y + 102.0 <= scale.height + 1e-9);
        }
    }

    #[test]
    fn extreme_cans_stay_on_the_sheet() {
        for (diameter, length) in [(20_000, 1_200_000), (300_000, 30_000), (10_000, 5_000)] {
            let mut design = orchard_gate();
            design.can.inside_diameter_um = diameter;
            design.can.open_length_um = length;
            let scale = SectionScale::new(&design, 340.0);
            assert!(scale.px_per_um > 0.0);
            assert!(scale.rim_x >= 0.0 && scale.mouth_x < scale.width);
            assert!(scale.far_wall_y > 0.0 && scale.near_wall_y < scale.height);
        }
    }
}
