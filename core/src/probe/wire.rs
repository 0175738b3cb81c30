//! The wires of a guide and how the fed one is fed.

use alloc::vec::Vec;

/// A straight round wire that stands radially on the guide's wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wire {
    /// Radius of the wire, m.
    pub radius_m: f64,
    /// From the inner wall surface to the flat tip, m.
    pub insertion_m: f64,
    /// From the inside of the back wall to the wire's axis, m.
    pub axial_m: f64,
    /// Angle round the guide's axis, rad.
    pub angle_rad: f64,
}

/// An insulating sleeve over the whole length of a wire.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Insulation {
    /// Outer radius of the sleeve, m.
    pub radius_m: f64,
    /// Relative permittivity, 1 or more.
    pub relative_permittivity: f64,
}

/// The fed wire: the inner conductor of a coaxial line that ends in the wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Feed {
    /// The wire.
    pub wire: Wire,
    /// Radius of the hole in the wall (the line's outer conductor), m.
    pub hole_radius_m: f64,
    /// Sleeve over the wire, if any.
    pub insulation: Option<Insulation>,
    /// Extra capacitance of the connector across the hole, F.
    pub shunt_capacitance_f: f64,
}

/// A round guide with its fed wire and its tuning screws.
#[derive(Clone, Debug, PartialEq)]
pub struct ProbeGeometry {
    /// Inside radius of the guide, m.
    pub guide_radius_m: f64,
    /// The fed wire.
    pub feed: Feed,
    /// Tuning screws. One of insertion 0 is the bare wall.
    pub screws: Vec<Wire>,
}
