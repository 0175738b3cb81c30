//! The dimensions of a can that a maker gets a little wrong.

use crate::si::SiDesign;

/// One dimension of a can.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Dimension {
    /// Probe length, inner wall to tip.
    ProbeLength,
    /// Distance of the probe from the back wall.
    BackshortDistance,
    /// Inside diameter of the can.
    InsideDiameter,
    /// Hole diameter in the wall.
    HoleDiameter,
    /// Stray capacitance at the wall.
    ShuntCapacitance,
    /// Inside length of the can.
    OpenLength,
    /// Wire diameter.
    WireDiameter,
}

impl Dimension {
    /// Every dimension.
    pub const ALL: [Self; 7] = [
        Self::ProbeLength,
        Self::BackshortDistance,
        Self::InsideDiameter,
        Self::HoleDiameter,
        Self::ShuntCapacitance,
        Self::OpenLength,
        Self::WireDiameter,
    ];

    /// Its value in a design: metres; for the capacitance farads.
    #[must_use]
    pub const fn of(self, si: &SiDesign) -> f64 {
        match self {
            Self::ProbeLength => si.probe_length_m,
            Self::BackshortDistance => si.backshort_distance_m,
            Self::InsideDiameter => 2.0 * si.radius_m,
            Self::HoleDiameter => 2.0 * si.hole_radius_m,
            Self::ShuntCapacitance => si.shunt_capacitance_f,
            Self::OpenLength => si.open_length_m,
            Self::WireDiameter => 2.0 * si.wire_radius_m,
        }
    }

    /// Sets it, in the unit of [`Self::of`].
    pub const fn set(self, si: &mut SiDesign, value: f64) {
        match self {
            Self::ProbeLength => si.probe_length_m = value,
            Self::BackshortDistance => si.backshort_distance_m = value,
            Self::InsideDiameter => si.radius_m = 0.5 * value,
            Self::HoleDiameter => si.hole_radius_m = 0.5 * value,
            Self::ShuntCapacitance => si.shunt_capacitance_f = value,
            Self::OpenLength => si.open_length_m = value,
            Self::WireDiameter => si.wire_radius_m = 0.5 * value,
        }
    }

    /// What a careful maker with hand tools is off by (half width or standard
    /// deviation), in the unit of [`Self::of`]. Common practice, no source.
    #[must_use]
    pub const fn usual_tolerance(self) -> f64 {
        match self {
            Self::ProbeLength | Self::InsideDiameter => 0.5e-3,
            Self::BackshortDistance | Self::OpenLength => 1.0e-3,
            Self::HoleDiameter => 0.2e-3,
            Self::ShuntCapacitance => 0.05e-12,
            Self::WireDiameter => 0.02e-3,
        }
    }

    /// Step of finite differences, in the unit of [`Self::of`]: small against what
    /// changes the match, large against rounding.
    pub(crate) const fn step(self) -> f64 {
        match self {
            Self::ShuntCapacitance => 1e-15,
            Self::WireDiameter | Self::HoleDiameter => 2e-6,
            _ => 1e-5,
        }
    }
}
