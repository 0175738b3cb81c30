//! A design as people state it: whole micrometres and kilohertz.
//!
//! Integers make links, undo and comparison exact. Physics takes SI floats; the
//! one place where the two meet is [`crate::si`].

use alloc::string::String;
use alloc::vec::Vec;

use crate::metal::Metal;

/// A length in whole micrometres.
pub type Micrometres = u32;
/// A frequency in whole kilohertz.
pub type Kilohertz = u32;

/// The band a design must serve.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Band {
    /// Lower edge.
    pub low_khz: Kilohertz,
    /// Upper edge, above `low_khz`.
    pub high_khz: Kilohertz,
}

/// The can: a round tube closed at the back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Can {
    /// Inside diameter.
    pub inside_diameter_um: Micrometres,
    /// Inside length from the inside of the back wall to the rim of the mouth.
    pub open_length_um: Micrometres,
    /// Wall thickness.
    pub wall_um: Micrometres,
    /// How far the outside of the base sits in from the closed end's outer rim.
    pub base_recess_um: Micrometres,
    /// Metal of the wall.
    pub metal: Metal,
}

/// An insulating sleeve over the probe wire, over its whole length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sleeve {
    /// Outside diameter of the sleeve.
    pub outside_diameter_um: Micrometres,
    /// Relative permittivity in thousandths (2300 is 2.3).
    pub permittivity_milli: u32,
}

/// The fed probe: a round wire through a hole, from a coaxial line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Probe {
    /// Wire diameter.
    pub wire_diameter_um: Micrometres,
    /// From the inner wall surface to the flat tip.
    pub length_um: Micrometres,
    /// From the inside of the back wall to the wire's axis.
    pub backshort_distance_um: Micrometres,
    /// Hole diameter; `None`: the hole that makes a 50-ohm air line with the wire.
    pub hole_diameter_um: Option<Micrometres>,
    /// Reference impedance of the line, milliohm.
    pub reference_milliohm: u32,
    /// Extra shunt capacitance at the wall, femtofarad.
    pub shunt_ff: u32,
    /// Insulating sleeve, if any.
    pub sleeve: Option<Sleeve>,
}

/// What is at the mouth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Mouth {
    /// Cut straight off: a thin-walled open pipe.
    Open,
    /// The guide goes on for ever. For checks.
    Absorbing,
    /// A conical funnel.
    Funnel {
        /// Inside diameter of the funnel's wide end.
        mouth_diameter_um: Micrometres,
        /// Angle of its wall to the axis, thousandths of a degree.
        half_angle_millideg: u32,
    },
    /// A flat ring in the plane of the mouth.
    Flange {
        /// Outside diameter of the ring.
        outside_diameter_um: Micrometres,
    },
    /// A cup round the mouth, rims flush.
    Choke {
        /// Inside diameter of the cup.
        outside_diameter_um: Micrometres,
        /// Depth of the cup.
        depth_um: Micrometres,
    },
}

/// A tuning screw: a radial rod on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Screw {
    /// From the inside of the back wall to the screw's axis.
    pub axial_um: Micrometres,
    /// Round the axis from the probe, thousandths of a degree.
    pub angle_millideg: i32,
    /// How far it sticks in.
    pub depth_um: Micrometres,
    /// Its diameter.
    pub diameter_um: Micrometres,
}

/// The frequencies a chart or table asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sweep {
    /// First frequency.
    pub low_khz: Kilohertz,
    /// Last frequency, above `low_khz`.
    pub high_khz: Kilohertz,
    /// Number of evenly spaced points, ends included.
    pub points: u32,
}

/// Everything about one antenna.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Design {
    /// What the maker calls it. May be empty.
    pub name: String,
    /// Band to serve.
    pub band: Band,
    /// The can.
    pub can: Can,
    /// The fed probe.
    pub probe: Probe,
    /// The mouth.
    pub mouth: Mouth,
    /// Tuning screws, usually none.
    pub screws: Vec<Screw>,
    /// Frequencies to compute; `None`: the band widened by its own width on
    /// each side, 101 points.
    pub sweep: Option<Sweep>,
}

impl Band {
    /// Centre of the band.
    #[must_use]
    pub const fn centre_khz(self) -> Kilohertz {
        self.low_khz + (self.high_khz - self.low_khz) / 2
    }
}

impl Design {
    /// The sweep that holds: the stated one or the default. The default is the
    /// band widened by its own width on each side, never below 1 MHz.
    #[must_use]
    pub fn effective_sweep(&self) -> Sweep {
        self.sweep.unwrap_or_else(|| {
            let width = self.band.high_khz.saturating_sub(self.band.low_khz);
            Sweep {
                low_khz: self.band.low_khz.saturating_sub(width).max(1_000),
                high_khz: self.band.high_khz.saturating_add(width),
                points: 101,
            }
        })
    }
}
