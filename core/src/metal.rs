//! Metals a guide is made of, and their surface resistance.
//!
//! Conductivities: D. M. Pozar, *Microwave Engineering*, 4th ed. 2012, appendix
//! F, and CRC Handbook resistivities, both quoted from memory. Tin on a food can
//! (EN 10202: 1 to 15 g/m², 0.1 to 1.5 µm) is far thinner than its skin depth of
//! 3.4 µm at 2.45 GHz, so tinplate counts as its steel; zinc on galvanised duct
//! (EN 10346 Z275: 19 µm a side) is many skin depths, so it counts as zinc. The
//! permeability of steel at these frequencies is uncertain (1 to 50 published);
//! 50, the pessimistic end, is used.

use crate::constants::{EPSILON_0, MU_0};
use crate::math;

/// The metal of the guide's wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum Metal {
    /// A perfect conductor: no loss. For checks.
    Perfect,
    /// Tinplate, the usual food can: counts as mild steel.
    Tinplate,
    /// Galvanised steel: counts as zinc.
    Galvanised,
    /// Aluminium can stock (3004, 42 % IACS).
    Aluminium,
    /// Copper, annealed.
    Copper,
    /// Brass 70/30.
    Brass,
    /// Zinc sheet.
    Zinc,
    /// Bare mild steel.
    Steel,
    /// Stainless steel 304.
    Stainless,
}

impl Metal {
    /// Every metal, in the order a list should show them.
    pub const ALL: [Self; 9] = [
        Self::Tinplate,
        Self::Galvanised,
        Self::Aluminium,
        Self::Copper,
        Self::Brass,
        Self::Zinc,
        Self::Steel,
        Self::Stainless,
        Self::Perfect,
    ];

    /// Conductivity in S/m; `None` for the perfect conductor.
    #[must_use]
    pub const fn conductivity(self) -> Option<f64> {
        match self {
            Self::Perfect => None,
            Self::Tinplate | Self::Steel => Some(7.0e6),
            Self::Galvanised | Self::Zinc => Some(1.67e7),
            Self::Aluminium => Some(2.4e7),
            Self::Copper => Some(5.8e7),
            Self::Brass => Some(1.6e7),
            Self::Stainless => Some(1.39e6),
        }
    }

    /// Relative permeability used for the skin depth.
    #[must_use]
    pub const fn relative_permeability(self) -> f64 {
        match self {
            Self::Tinplate | Self::Steel => 50.0,
            _ => 1.0,
        }
    }

    /// Surface resistance `Rs = sqrt(π f µ / σ)` in ohm; 0 for the perfect conductor.
    ///
    /// Source: Pozar, *Microwave Engineering*, 4th ed. 2012, eq. 1.125.
    #[must_use]
    pub fn surface_resistance(self, frequency_hz: f64) -> f64 {
        self.conductivity().map_or(0.0, |sigma| {
            let mu = MU_0 * self.relative_permeability();
            math::sqrt(core::f64::consts::PI * frequency_hz * mu / sigma)
        })
    }

    /// Skin depth in metres; `None` for the perfect conductor.
    #[must_use]
    pub fn skin_depth_m(self, frequency_hz: f64) -> Option<f64> {
        self.conductivity()
            .map(|sigma| 1.0 / (sigma * self.surface_resistance(frequency_hz)))
    }

    /// The word of the design file (`"tinplate"`).
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Perfect => "perfect",
            Self::Tinplate => "tinplate",
            Self::Galvanised => "galvanised",
            Self::Aluminium => "aluminium",
            Self::Copper => "copper",
            Self::Brass => "brass",
            Self::Zinc => "zinc",
            Self::Steel => "steel",
            Self::Stainless => "stainless",
        }
    }

    /// The metal of a word of the design file.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|metal| metal.key() == key)
    }
}

// The two constants belong together: µ0 ε0 c² = 1 (compile-time sanity).
const _: () = assert!(MU_0 * EPSILON_0 > 1.11e-17 && MU_0 * EPSILON_0 < 1.12e-17);
