//! Jobs for tests.

use tinwave_core::metal::Metal;
use tinwave_maker::entry::LengthUnit;
use tinwave_protocol::print::{
    Can, CutLimits, Fixing, Mouth, Orientation, Panel, PaperSize, Part, PrintJob, PrintedRulers,
    Probe, Rim, SideSeam,
};

/// A food can of 83 mm with an N socket on a flange.
pub(crate) fn plain_can() -> PrintJob {
    PrintJob {
        name: "Orchard gate".into(),
        link: String::new(),
        unit: LengthUnit::Millimetre,
        paper: PaperSize::A4,
        orientation: Orientation::Automatic,
        rulers: PrintedRulers::default(),
        paper_thickness_um: 100,
        parts: Part::ALL.to_vec(),
        can: Can {
            outside_diameter_um: 83_400,
            wall_um: 200,
            open_length_um: 140_000,
            base_recess_um: 4_000,
            metal: Metal::Tinplate,
        },
        rim: Rim::Closed,
        seam: SideSeam::Opposite,
        probe: Probe {
            wire_diameter_um: 2_053,
            length_um: 28_400,
            backshort_um: 45_000,
            gauge: "AWG 12".into(),
            sleeve_um: None,
            within_1_5: Some(CutLimits {
                shortest_um: 27_700,
                longest_um: 29_100,
            }),
            within_2: Some(CutLimits {
                shortest_um: 26_900,
                longest_um: 29_900,
            }),
        },
        panel: Panel {
            name: "N socket".into(),
            drill_um: 10_000,
            fixing: Fixing::Flange {
                square_um: 25_400,
                pitch_um: 18_260,
                hole_um: 3_300,
            },
            mass_mg: 25_000,
        },
        screws: Vec::new(),
        bracket: None,
        mouth: Mouth::Open,
        cap: None,
        notes: Vec::new(),
        images: Vec::new(),
    }
}
