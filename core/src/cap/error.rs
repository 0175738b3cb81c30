//! Why the effect of a cap can't be computed.

use crate::design_error::DesignError;
use crate::whole_can::CanError;

/// One number of a [`super::Sheet`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SheetField {
    /// Thickness, micrometres.
    Thickness,
    /// Relative permittivity, thousandths.
    Permittivity,
    /// Loss tangent, millionths.
    LossTangent,
}

/// Why the effect of a cap can't be computed.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum CapError {
    /// A number of the design is outside its range.
    Design(DesignError),
    /// A number of the sheet is outside its range.
    Sheet {
        /// Which number.
        field: SheetField,
        /// What it was, in the sheet's own whole units.
        value: u32,
        /// Smallest that would be right.
        low: u32,
        /// Largest that would be right.
        high: u32,
    },
    /// A funnel's cap lies at its wide end, which this model doesn't reach.
    Funnel,
    /// The can itself isn't computed.
    Can(CanError),
    /// A frequency of the band is beyond what the mouth's solution covers.
    Band,
}

impl SheetField {
    /// The range outside which nothing is computed.
    #[must_use]
    pub const fn range(self) -> (u32, u32) {
        match self {
            Self::Thickness => (0, 20_000),
            Self::Permittivity => (1_000, 20_000),
            Self::LossTangent => (0, 1_000_000),
        }
    }

    pub(super) const fn check(self, value: u32) -> Result<(), CapError> {
        let (low, high) = self.range();
        if value < low || value > high {
            return Err(CapError::Sheet {
                field: self,
                value,
                low,
                high,
            });
        }
        Ok(())
    }
}

impl From<DesignError> for CapError {
    fn from(error: DesignError) -> Self {
        Self::Design(error)
    }
}

impl From<CanError> for CapError {
    fn from(error: CanError) -> Self {
        Self::Can(error)
    }
}
