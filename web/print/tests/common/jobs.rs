//! The jobs of the golden prints.

use tinwave_core::metal::Metal;
use tinwave_maker::entry::LengthUnit;
use tinwave_print::PrintJob;
use tinwave_protocol::print::{
    Bracket, Can, Cap, CutLimits, Fixing, Mouth, Orientation, Panel, PaperSize, Part,
    PrintedRulers, Probe, Rim, SideSeam, WallHole,
};

const fn limits(shortest_um: u32, longest_um: u32) -> Option<CutLimits> {
    Some(CutLimits {
        shortest_um,
        longest_um,
    })
}

/// A food can of 83 mm with an N socket on a flange and a bracket.
pub(crate) fn orchard_gate() -> PrintJob {
    PrintJob {
        name: "Orchard gate".into(),
        link: "https://example.org/tinwave/#v=1&d=83.0&l=140&p=28.4&b=45".into(),
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
            within_1_5: limits(27_700, 29_100),
            within_2: limits(26_900, 29_900),
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
        bracket: Some(Bracket {
            angle_millideg: 180_000,
            hole_um: 4_100,
            spacing_um: 30_000,
            deepest_um: Some(4_500),
        }),
        mouth: Mouth::Open,
        cap: None,
        notes: vec![
            "Match at the middle of the band: VSWR 1.12, under 1.5 from 2401 to 2480 MHz.".into(),
        ],
        images: Vec::new(),
    }
}

/// A duct of 100 mm in inches on Letter, with everything that a design may have.
pub(crate) fn barn_roof() -> PrintJob {
    let screw = |axial_um, angle_millideg, depth_um| WallHole {
        axial_um,
        angle_millideg,
        hole_um: 4_000,
        depth_um,
    };
    PrintJob {
        name: "Barn roof, east side".into(),
        link: "https://example.org/tinwave/#v=1&barn".into(),
        unit: LengthUnit::Inch,
        paper: PaperSize::Letter,
        rim: Rim::Open,
        seam: SideSeam::Through,
        can: Can {
            outside_diameter_um: 100_000,
            wall_um: 500,
            open_length_um: 160_000,
            base_recess_um: 0,
            metal: Metal::Galvanised,
        },
        probe: Probe {
            wire_diameter_um: 1_626,
            length_um: 27_100,
            backshort_um: 52_000,
            gauge: "SWG 16".into(),
            sleeve_um: Some(3_200),
            within_1_5: None,
            within_2: limits(26_000, 28_000),
        },
        panel: Panel {
            name: "TNC socket".into(),
            drill_um: 12_900,
            fixing: Fixing::Nut,
            mass_mg: 18_000,
        },
        screws: vec![screw(95_000, 180_000, 6_000), screw(110_000, 40_000, 2_500)],
        bracket: Some(Bracket {
            angle_millideg: 90_000,
            hole_um: 4_100,
            spacing_um: 30_000,
            deepest_um: None,
        }),
        mouth: Mouth::Funnel {
            mouth_diameter_um: 180_000,
            half_angle_millideg: 25_000,
            sheet_um: 500,
        },
        cap: Some(Cap {
            sheet_um: 500,
            permittivity_milli: 2_250,
        }),
        notes: vec!["A cap of 0.5 mm moves the VSWR from 1.21 to 1.24 at 2437 MHz.".into()],
        ..orchard_gate()
    }
}

/// A copper pipe of 50 mm with a choke cup and the cable soldered on.
pub(crate) fn beehive_camera() -> PrintJob {
    PrintJob {
        name: "Beehive camera".into(),
        link: String::new(),
        orientation: Orientation::Portrait,
        seam: SideSeam::None,
        can: Can {
            outside_diameter_um: 54_000,
            wall_um: 2_000,
            open_length_um: 90_000,
            base_recess_um: 0,
            metal: Metal::Copper,
        },
        probe: Probe {
            wire_diameter_um: 900,
            length_um: 11_800,
            backshort_um: 16_500,
            gauge: String::new(),
            sleeve_um: None,
            within_1_5: None,
            within_2: None,
        },
        panel: Panel {
            name: "Cable of 5 mm".into(),
            drill_um: 2_950,
            fixing: Fixing::Solder,
            mass_mg: 0,
        },
        bracket: None,
        mouth: Mouth::Choke {
            inside_diameter_um: 90_000,
            depth_um: 14_000,
            sheet_um: 500,
        },
        cap: Some(Cap {
            sheet_um: 1_000,
            permittivity_milli: 2_300,
        }),
        notes: Vec::new(),
        ..orchard_gate()
    }
}
