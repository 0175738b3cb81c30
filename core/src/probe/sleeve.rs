//! An insulating sleeve on the wire.
//!
//! The bound charge at the sleeve's outer surface screens the wire's charge: the
//! potential of each ring of charge on the wire loses `1 - 1/εr` of itself and
//! gains as much from a ring at the outer radius. For long waves on a long wire
//! this is the usual `(1 - 1/εr) ln(b/a)/(2π)`; see B. D. Popović and A. Nešić,
//! "Generalisation of the concept of equivalent radius of thin cylindrical
//! antennas", *IEE Proc. H* 131, 1984, 153-158 (quoted from memory).

use super::short_range::ring_potential;
use super::wire::Insulation;

/// What a sleeve does to the charge's potential.
#[derive(Clone, Copy, Debug)]
pub(super) struct Sleeve {
    radius: f64,
    /// `1 - 1/εr`.
    pub(super) screening: f64,
}

impl Sleeve {
    pub(super) fn new(insulation: &Insulation) -> Self {
        Self {
            radius: insulation.radius_m,
            screening: 1.0 - 1.0 / insulation.relative_permittivity,
        }
    }

    /// Added to the potential of a ring of charge on a wire of radius `r`, at the
    /// distance `t` along it, 1/m.
    pub(super) fn charge_potential(&self, r: f64, t: f64) -> f64 {
        self.screening * (ring_potential(self.radius, r, t) - ring_potential(r, r, t))
    }
}
