//! What is to be printed: everything that is known of a design, as plain numbers, so
//! that printing depends on no page. All lengths are whole micrometres.

use serde::{Deserialize, Serialize};
use tinwave_core::metal::Metal;
use tinwave_maker::entry::LengthUnit;

use super::paper::{Orientation, PaperSize, PrintedRulers};
use super::text_image::TextImage;

/// A part of the print.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Part {
    /// The strip that goes round the can.
    DrillTemplate,
    /// The wire at true size.
    CutGauge,
    /// Funnel, ring or choke cup, whichever the design has.
    MouthPattern,
    /// The cap over the mouth.
    Cap,
    /// The page of parts and steps.
    BuildSheet,
}

impl Part {
    /// Every part, in the order of the sheets.
    pub const ALL: [Self; 5] = [
        Self::BuildSheet,
        Self::DrillTemplate,
        Self::CutGauge,
        Self::MouthPattern,
        Self::Cap,
    ];
}

/// The rim that the template's edge is laid on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Rim {
    /// The outer rim of the closed end.
    #[default]
    Closed,
    /// The rim of the mouth.
    Open,
}

/// Where the can's own side seam goes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum SideSeam {
    /// Opposite the hole, under the ends of the paper.
    #[default]
    Opposite,
    /// Through the hole.
    Through,
    /// The can has none.
    None,
}

/// The can. Lengths in micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Can {
    /// Outside diameter of the body.
    pub outside_diameter_um: u32,
    /// Wall thickness, less than half the diameter.
    pub wall_um: u32,
    /// Inside of the back wall to the open rim.
    pub open_length_um: u32,
    /// How far the outside of the base sits in from the closed end's rim.
    pub base_recess_um: u32,
    /// Metal of the wall.
    pub metal: Metal,
}

/// Shortest and longest wire that keeps the match.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct CutLimits {
    /// Shortest, inner wall to tip.
    pub shortest_um: u32,
    /// Longest.
    pub longest_um: u32,
}

/// The probe. Lengths in micrometres.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Probe {
    /// Diameter of the wire.
    pub wire_diameter_um: u32,
    /// Inner wall to the flat tip.
    pub length_um: u32,
    /// Inside of the back wall to the wire's axis.
    pub backshort_um: u32,
    /// The wire by its gauge, for people; may be empty.
    pub gauge: String,
    /// Outside diameter of a sleeve.
    pub sleeve_um: Option<u32>,
    /// Lengths that keep the VSWR under 1.5.
    pub within_1_5: Option<CutLimits>,
    /// Lengths that keep the VSWR under 2.
    pub within_2: Option<CutLimits>,
}

/// How the connector is fixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Fixing {
    /// A square flange with four screws.
    Flange {
        /// Side of the square.
        square_um: u32,
        /// Between neighbouring screw holes.
        pitch_um: u32,
        /// Diameter of the screw holes.
        hole_um: u32,
    },
    /// One threaded hole with a nut.
    Nut,
    /// Soldered to the wall.
    Solder,
}

/// The connector's panel.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Panel {
    /// Its name, for people.
    pub name: String,
    /// Hole to drill for it.
    pub drill_um: u32,
    /// How it is fixed.
    pub fixing: Fixing,
    /// Its mass.
    pub mass_mg: u32,
}

/// A hole elsewhere on the wall: a tuning screw or a rivet of the bracket.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WallHole {
    /// Inside of the back wall to its axis.
    pub axial_um: u32,
    /// Round the axis from the probe, thousandths of a degree from 0 to
    /// 360000, to the right as one looks at the probe's hole with the mouth upwards.
    pub angle_millideg: u32,
    /// Diameter to drill.
    pub hole_um: u32,
    /// How far the screw sticks in; 0 for a rivet.
    pub depth_um: u32,
}

/// Where the bracket goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Bracket {
    /// Round the axis from the probe, as for [`WallHole`].
    pub angle_millideg: u32,
    /// Diameter of its two rivet or screw holes.
    pub hole_um: u32,
    /// Between the two, along the axis.
    pub spacing_um: u32,
    /// Farthest that a rivet may stick in before the VSWR moves by 0.1.
    pub deepest_um: Option<u32>,
}

/// What is made for the mouth out of sheet. Lengths in micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Mouth {
    /// Nothing.
    Open,
    /// A conical funnel, tabs outside the can's wall.
    Funnel {
        /// Inside diameter of its wide end.
        mouth_diameter_um: u32,
        /// Its wall to the axis, thousandths of a degree.
        half_angle_millideg: u32,
        /// Thickness of its sheet.
        sheet_um: u32,
    },
    /// A flat ring in the plane of the mouth.
    Ring {
        /// Its outside diameter.
        outside_diameter_um: u32,
        /// Thickness of its sheet.
        sheet_um: u32,
    },
    /// A cup round the mouth, rims flush.
    Choke {
        /// Inside diameter of the cup.
        inside_diameter_um: u32,
        /// Its depth.
        depth_um: u32,
        /// Thickness of its sheet.
        sheet_um: u32,
    },
}

/// The cap over the mouth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cap {
    /// Thickness of its sheet.
    pub sheet_um: u32,
    /// Relative permittivity in thousandths.
    pub permittivity_milli: u32,
}

/// Everything that is printed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PrintJob {
    /// The design's name, in any script; may be empty.
    pub name: String,
    /// The link that opens the design; may be empty.
    pub link: String,
    /// Unit of the figures.
    pub unit: LengthUnit,
    /// Paper.
    pub paper: PaperSize,
    /// How it lies.
    pub orientation: Orientation,
    /// What the last print's rulers measured.
    pub rulers: PrintedRulers,
    /// Thickness of the paper that goes round the can.
    pub paper_thickness_um: u32,
    /// Parts to print.
    pub parts: Vec<Part>,
    /// The can.
    pub can: Can,
    /// The rim that the template lies on.
    pub rim: Rim,
    /// Where the can's seam goes.
    pub seam: SideSeam,
    /// The probe.
    pub probe: Probe,
    /// The connector.
    pub panel: Panel,
    /// Tuning screws.
    pub screws: Vec<WallHole>,
    /// The bracket.
    pub bracket: Option<Bracket>,
    /// What is made for the mouth.
    pub mouth: Mouth,
    /// The cap over the mouth.
    pub cap: Option<Cap>,
    /// Sentences that the page computed, for the build sheet.
    pub notes: Vec<String>,
    /// Images of words that the standard fonts don't hold.
    pub images: Vec<TextImage>,
}

impl Can {
    /// From the outer rim of the closed end to the inside of the back wall: the
    /// recess and the base, which counts as thick as the wall.
    #[must_use]
    pub const fn base_um(&self) -> u32 {
        self.base_recess_um.saturating_add(self.wall_um)
    }

    /// From rim to rim.
    #[must_use]
    pub const fn overall_um(&self) -> u32 {
        self.open_length_um.saturating_add(self.base_um())
    }

    /// Inside diameter.
    #[must_use]
    pub const fn inside_diameter_um(&self) -> u32 {
        let walls = self.wall_um.saturating_mul(2);
        self.outside_diameter_um.saturating_sub(walls)
    }
}

impl PrintJob {
    /// From the rim that the template lies on to a place given from the inside
    /// of the back wall; negative beyond the open rim.
    #[must_use]
    pub fn from_rim(&self, axial_um: u32) -> i64 {
        match self.rim {
            Rim::Closed => i64::from(axial_um) + i64::from(self.can.base_um()),
            Rim::Open => i64::from(self.can.open_length_um) - i64::from(axial_um),
        }
    }
}
