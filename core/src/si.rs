//! Where whole micrometres and kilohertz become SI floats: the only place.

use core::f64::consts::PI;

use crate::constants::ETA_0;
use crate::design::{Design, Kilohertz, Micrometres, Sleeve};
use crate::math;

/// Metres.
#[must_use]
pub fn metres(um: Micrometres) -> f64 {
    f64::from(um) / 1e6
}

/// Hertz.
#[must_use]
pub fn hertz(khz: Kilohertz) -> f64 {
    f64::from(khz) * 1e3
}

/// Nearest whole micrometre, held within 0 and `u32::MAX`.
#[must_use]
pub fn micrometres(metres: f64) -> Micrometres {
    whole(metres * 1e6)
}

/// Nearest whole kilohertz, held within 0 and `u32::MAX`.
#[must_use]
pub fn kilohertz(hertz: f64) -> Kilohertz {
    whole(hertz / 1e3)
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a float-to-integer cast saturates, and NaN becomes 0"
)]
fn whole(value: f64) -> u32 {
    math::round(value) as u32
}

/// Ratio of outer to inner diameter of an air line of the given impedance.
///
/// Source: D. M. Pozar, *Microwave Engineering*, 4th ed. 2012, table 2.1
/// (coaxial line): `Z0 = η/(2π) ln(b/a)`.
#[must_use]
pub fn air_line_ratio(impedance_ohm: f64) -> f64 {
    math::exp(2.0 * PI * impedance_ohm / ETA_0)
}

/// Impedance in ohm of the air line that a hole and a wire make; the same
/// source as [`air_line_ratio`]. Not positive unless the hole is the larger.
#[must_use]
pub fn air_line_impedance_ohm(hole_diameter_m: f64, wire_diameter_m: f64) -> f64 {
    ETA_0 / (2.0 * PI) * math::log(hole_diameter_m / wire_diameter_m)
}

/// A design in SI units, defaults filled in.
#[derive(Clone, Debug, PartialEq)]
pub struct SiDesign {
    /// Band's lower edge, Hz.
    pub band_low_hz: f64,
    /// Band's upper edge, Hz.
    pub band_high_hz: f64,
    /// Inside radius of the can.
    pub radius_m: f64,
    /// Inside of the back wall to the rim.
    pub open_length_m: f64,
    /// Wire radius.
    pub wire_radius_m: f64,
    /// Inner wall to flat tip.
    pub probe_length_m: f64,
    /// Inside of the back wall to the wire's axis.
    pub backshort_distance_m: f64,
    /// Hole radius, the default filled in.
    pub hole_radius_m: f64,
    /// Reference impedance.
    pub reference_ohm: f64,
    /// Stray capacitance at the wall.
    pub shunt_capacitance_f: f64,
    /// Sleeve's outside radius and relative permittivity.
    pub sleeve: Option<(f64, f64)>,
    /// Screws.
    pub screws: alloc::vec::Vec<SiScrew>,
}

/// A tuning screw in SI units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SiScrew {
    /// Radius.
    pub radius_m: f64,
    /// How far it sticks in.
    pub depth_m: f64,
    /// From the inside of the back wall.
    pub axial_m: f64,
    /// From the probe, round the axis.
    pub angle_rad: f64,
}

impl SiDesign {
    /// Converts a design.
    #[must_use]
    pub fn new(design: &Design) -> Self {
        let probe = &design.probe;
        let wire_radius_m = 0.5 * metres(probe.wire_diameter_um);
        Self {
            band_low_hz: hertz(design.band.low_khz),
            band_high_hz: hertz(design.band.high_khz),
            radius_m: 0.5 * metres(design.can.inside_diameter_um),
            open_length_m: metres(design.can.open_length_um),
            wire_radius_m,
            probe_length_m: metres(probe.length_um),
            backshort_distance_m: metres(probe.backshort_distance_um),
            hole_radius_m: probe.hole_diameter_um.map_or_else(
                || wire_radius_m * air_line_ratio(50.0),
                |hole| 0.5 * metres(hole),
            ),
            reference_ohm: f64::from(probe.reference_milliohm) / 1e3,
            shunt_capacitance_f: f64::from(probe.shunt_ff) * 1e-15,
            sleeve: probe.sleeve.map(|sleeve: Sleeve| {
                (
                    0.5 * metres(sleeve.outside_diameter_um),
                    f64::from(sleeve.permittivity_milli) / 1e3,
                )
            }),
            screws: design
                .screws
                .iter()
                .map(|screw| SiScrew {
                    radius_m: 0.5 * metres(screw.diameter_um),
                    depth_m: metres(screw.depth_um),
                    axial_m: metres(screw.axial_um),
                    angle_rad: f64::from(screw.angle_millideg) * (PI / 180_000.0),
                })
                .collect(),
        }
    }

    /// Centre of the band, Hz.
    #[must_use]
    pub fn centre_hz(&self) -> f64 {
        0.5 * (self.band_low_hz + self.band_high_hz)
    }
}
