//! What stands at the can's mouth.

use tinwave_core::constants::SPEED_OF_LIGHT;
use tinwave_core::design::{Design, Mouth};
use tinwave_core::si::{SiDesign, micrometres};

use super::live::Named;
use super::model::Model;
use crate::workpiece::Workpiece;

/// The kinds that are offered, by the words of their choices.
fn kind(mouth: Mouth) -> &'static str {
    match mouth {
        Mouth::Funnel { .. } => "funnel",
        Mouth::Flange { .. } => "flange",
        Mouth::Choke { .. } => "choke",
        Mouth::Absorbing => "absorbing",
        Mouth::Open => "open",
    }
}

/// A quarter of the wavelength in air at the band's centre.
fn quarter_wave_um(design: &Design) -> u32 {
    micrometres(SPEED_OF_LIGHT / (4.0 * SiDesign::new(design).centre_hz()))
}

/// Takes another kind of mouth, in a size to begin with: a funnel twice as wide as
/// the can, a ring or cup a quarter wave wide (common practice, no source).
pub(super) fn take_kind(work: &mut Workpiece, wanted: &str) {
    let design = &mut work.design;
    if wanted == kind(design.mouth) {
        return;
    }
    let inside = design.can.inside_diameter_um;
    let quarter = quarter_wave_um(design);
    let round = |um: u32| um / 1_000 * 1_000;
    let ring = round(inside.saturating_add(quarter.saturating_mul(2)));
    design.mouth = match wanted {
        "funnel" => Mouth::Funnel {
            mouth_diameter_um: round(inside.saturating_mul(2)),
            half_angle_millideg: 30_000,
        },
        "flange" => Mouth::Flange {
            outside_diameter_um: ring,
        },
        "choke" => Mouth::Choke {
            outside_diameter_um: ring,
            depth_um: round(quarter),
        },
        _ => Mouth::Open,
    };
}

/// What the places of this part show.
pub(super) const NAMES: &[Named] = &[("mouth-kind", |model: &Model| {
    kind(model.work.design.mouth).to_owned()
})];
