//! Scale and place of the can on its sheet.

use std::f64::consts::PI;

use tinwave_core::design::{Design, Mouth};
use tinwave_core::math;

use super::drafting::LetterSize;

/// A sheet of paper, px.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SheetSize {
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// Letters on it.
    pub letter: LetterSize,
}

impl SheetSize {
    /// On a phone, before the page has been measured; the styles have the same height.
    pub const PHONE: Self = Self {
        width: 328.0,
        height: 236.0,
        letter: LetterSize::USUAL,
    };
    /// On a desk, before the page has been measured.
    pub const WIDE: Self = Self {
        width: 680.0,
        height: 392.0,
        letter: LetterSize::USUAL,
    };

    /// A sheet as it was measured, kept to what can be drawn on.
    #[must_use]
    pub fn measured(width: f64, height: f64, letter_px: f64) -> Self {
        let kept = |value: f64, least: f64, usual: f64| {
            if value.is_finite() {
                value.clamp(least, 4_000.0)
            } else {
                usual
            }
        };
        Self {
            width: kept(width, 240.0, Self::PHONE.width),
            height: kept(height, 180.0, Self::PHONE.height),
            letter: LetterSize::of_words(kept(letter_px, 8.0, 13.0)),
        }
    }
}

/// Thinnest wall that can still be hatched, px.
const LEAST_WALL: f64 = 5.0;
/// Left of the closed end's rim: the axis runs past it.
const ROOM_LEFT: f64 = 9.0;

/// Scale and position: px from micrometres inside the can.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionScale {
    /// The sheet.
    pub sheet: SheetSize,
    /// px per micrometre, the same along and across.
    pub px_per_um: f64,
    /// Inner face of the back wall.
    pub back_x: f64,
    /// Rim of the mouth.
    pub mouth_x: f64,
    /// Inner surface, far from the wire.
    pub far_wall_y: f64,
    /// Inner surface through which the wire comes.
    pub near_wall_y: f64,
    /// Drawn thickness of the wall.
    pub wall: f64,
    /// Whether the wall is drawn thicker than it is.
    pub wall_is_thickened: bool,
    /// Outer rim of the closed end.
    pub rim_x: f64,
    /// Whether the diameter's figure is turned, beside its line.
    pub turned: bool,
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

/// Rooms round the can for its dimensions, px.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Rooms {
    pub(super) above: f64,
    pub(super) below: f64,
    pub(super) right: f64,
    pub(super) right_upright: f64,
}

impl Rooms {
    /// Rooms for so many dimension lines below the can.
    pub(super) fn new(letter: LetterSize, rows_below: u32) -> Self {
        let below = if rows_below == 0 {
            4.0
        } else {
            first_row(letter) + f64::from(rows_below - 1) * next_row(letter) + letter.words * 0.5
        };
        Self {
            above: letter.figure + 21.0,
            below,
            right: letter.figure + 20.0,
            right_upright: 16.0 + letter.figure_width("⌀ 000.0"),
        }
    }
}

/// From the outside of the wall to the first dimension line below it: the connector
/// stands between.
pub(super) fn first_row(letter: LetterSize) -> f64 {
    letter.figure + 14.0
}

/// From one dimension line below the can to the next.
pub(super) fn next_row(letter: LetterSize) -> f64 {
    letter.figure + 12.0
}

impl SectionScale {
    /// The largest scale at which the can and its dimensions fit a sheet. The wire
    /// has no part in it: the can stands still while the wire is dragged.
    #[must_use]
    pub fn new(design: &Design, sheet: SheetSize, rows_below: u32) -> Self {
        let rooms = Rooms::new(sheet.letter, rows_below);
        let turned = Self::with_room(design, sheet, rooms, rooms.right, true);
        if turned.near_wall_y - turned.far_wall_y >= 4.6 * sheet.letter.figure {
            return turned;
        }
        Self::with_room(design, sheet, rooms, rooms.right_upright, false)
    }

    /// A can alone, at a given scale: for a shelf where all have one.
    #[must_use]
    pub fn bare(design: &Design, px_per_um: f64) -> Self {
        let can = &design.can;
        let (past_rim, past_wall) = mouth_extent_um(design);
        let wall = (f64::from(can.wall_um) * px_per_um).max(2.0);
        let back_x = 1.0 + f64::from(can.base_recess_um) * px_per_um + wall;
        let mouth_x = back_x + f64::from(can.open_length_um) * px_per_um;
        let across = f64::from(can.inside_diameter_um) * px_per_um;
        let far_wall_y = 1.0 + wall.max(past_wall * px_per_um + wall);
        let height = far_wall_y + across + 14.0_f64.max(past_wall * px_per_um + wall + 1.0);
        Self {
            sheet: SheetSize {
                width: mouth_x + past_rim * px_per_um + 2.0,
                height,
                letter: LetterSize::USUAL,
            },
            px_per_um,
            back_x,
            mouth_x,
            far_wall_y,
            near_wall_y: far_wall_y + across,
            wall,
            wall_is_thickened: true,
            rim_x: 1.0,
            turned: true,
        }
    }

    fn with_room(
        design: &Design,
        sheet: SheetSize,
        rooms: Rooms,
        room_right: f64,
        turned: bool,
    ) -> Self {
        let can = &design.can;
        let (past_rim, past_wall) = mouth_extent_um(design);
        let length = f64::from(can.open_length_um);
        let recess = f64::from(can.base_recess_um);
        let across = f64::from(can.inside_diameter_um) + 2.0 * past_wall;
        let along = length + recess + past_rim;
        let free_width = (sheet.width - ROOM_LEFT - room_right - LEAST_WALL).max(20.0);
        let free_height = (sheet.height - rooms.above - rooms.below - 2.0 * LEAST_WALL).max(20.0);
        // Twice: a thick wall takes room of its own at the scale found first.
        let mut px_per_um = (free_width / along).min(free_height / across);
        let true_wall = f64::from(can.wall_um);
        let excess = (true_wall * px_per_um - LEAST_WALL).max(0.0);
        px_per_um = ((free_width - excess) / along).min((free_height - 2.0 * excess) / across);
        let wall = (true_wall * px_per_um).max(LEAST_WALL);

        let back_x = ROOM_LEFT + recess * px_per_um + wall;
        let far_wall_y = rooms.above + wall + past_wall * px_per_um;
        Self {
            sheet,
            px_per_um,
            back_x,
            mouth_x: back_x + length * px_per_um,
            far_wall_y,
            near_wall_y: far_wall_y + f64::from(can.inside_diameter_um) * px_per_um,
            wall,
            wall_is_thickened: wall > true_wall * px_per_um * 1.05,
            rim_x: ROOM_LEFT,
            turned,
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
    use super::{SectionScale, SheetSize};
    use crate::section::tests::orchard_gate;

    /// A ruler on the sheet must read the true proportion.
    #[test]
    fn along_and_across_share_one_scale() {
        let design = orchard_gate();
        for (width, height) in [
            (320.0, 236.0),
            (340.0, 300.0),
            (700.0, 392.0),
            (1_200.0, 500.0),
        ] {
            let sheet = SheetSize::measured(width, height, 13.0);
            let scale = SectionScale::new(&design, sheet, 2);
            let across = scale.near_wall_y - scale.far_wall_y;
            let along = scale.mouth_x - scale.back_x;
            // 87 mm by 150 mm.
            assert!((along / across - 150.0 / 87.0).abs() < 1e-9);
            assert!(scale.rim_x >= 0.0 && scale.mouth_x + 30.0 <= width + 1e-9);
            assert!(scale.far_wall_y >= 34.0);
            assert!(scale.near_wall_y + 60.0 <= height + 1e-9);
        }
    }

    #[test]
    fn extreme_cans_stay_on_the_sheet() {
        for (diameter, length) in [(20_000, 1_200_000), (300_000, 30_000), (10_000, 5_000)] {
            let mut design = orchard_gate();
            design.can.inside_diameter_um = diameter;
            design.can.open_length_um = length;
            let sheet = SheetSize::PHONE;
            let scale = SectionScale::new(&design, sheet, 2);
            assert!(scale.px_per_um > 0.0);
            assert!(scale.rim_x >= 0.0 && scale.mouth_x < sheet.width);
            assert!(scale.far_wall_y > 0.0 && scale.near_wall_y < sheet.height);
        }
    }
}
