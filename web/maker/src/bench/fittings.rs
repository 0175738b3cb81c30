//! What a maker may choose to put on: a cap over the mouth, a bracket.

use tinwave_core::cap::Sheet;

/// A sheet that a cap may be of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum CapSheet {
    /// A polyethylene lid.
    Polyethylene,
    /// Polypropylene.
    Polypropylene,
    /// Rigid PVC.
    Pvc,
    /// Acrylic.
    Acrylic,
}

impl CapSheet {
    /// Every sheet, in the order of a list.
    pub const ALL: [Self; 4] = [
        Self::Polyethylene,
        Self::Polypropylene,
        Self::Pvc,
        Self::Acrylic,
    ];

    /// The word it is kept under.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Polyethylene => "polyethylene",
            Self::Polypropylene => "polypropylene",
            Self::Pvc => "pvc",
            Self::Acrylic => "acrylic",
        }
    }

    /// The sheet of such a word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|sheet| sheet.key() == key)
    }

    /// Its usual thickness (common practice, no source) and its constants: polyethylene
    /// and acrylic as A. von Hippel, *Dielectric Materials and Applications*, 1954, has
    /// them at 3 GHz, from memory; polypropylene and PVC as measured by Riddle and
    /// others, 2003, at 9 and 11 GHz, seen second-hand.
    #[must_use]
    pub const fn sheet(self) -> Sheet {
        let (thickness_um, permittivity_milli, loss_tangent_micro) = match self {
            Self::Polyethylene => (800, 2_250, 300),
            Self::Polypropylene => (1_000, 2_270, 100),
            Self::Pvc => (1_000, 2_710, 6_000),
            Self::Acrylic => (2_000, 2_600, 5_700),
        };
        Sheet {
            thickness_um,
            permittivity_milli,
            loss_tangent_micro,
        }
    }
}

/// Where a bracket goes, seen with the hole in front and the mouth upwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BracketPlace {
    /// Opposite the hole.
    Opposite,
    /// A quarter round to the right.
    Right,
    /// A quarter round to the left.
    Left,
}

impl BracketPlace {
    /// Every place, in the order of a list.
    pub const ALL: [Self; 3] = [Self::Opposite, Self::Right, Self::Left];

    /// The word it is kept under.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Opposite => "opposite",
            Self::Right => "right",
            Self::Left => "left",
        }
    }

    /// The place of such a word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|place| place.key() == key)
    }

    /// Round the axis from the probe, thousandths of a degree.
    #[must_use]
    pub const fn millideg(self) -> u32 {
        match self {
            Self::Opposite => 180_000,
            Self::Right => 90_000,
            Self::Left => 270_000,
        }
    }
}
