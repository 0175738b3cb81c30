//! The sheet that a cap is made of.

use super::error::{CapError, SheetField};
use crate::complex::Complex;
use crate::design::Micrometres;
use crate::si::metres;

/// A flat sheet of plastic over the mouth, stated in whole numbers as a design is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sheet {
    /// Thickness, 0 to 20,000.
    pub thickness_um: Micrometres,
    /// Relative permittivity in thousandths, 1000 to 20,000 (2250 is 2.25).
    pub permittivity_milli: u32,
    /// Loss tangent in millionths, 0 to 1,000,000 (300 is 0.0003).
    pub loss_tangent_micro: u32,
}

impl Sheet {
    /// Checks every number against its range.
    ///
    /// # Errors
    /// [`CapError::Sheet`]: the first that is out of range.
    pub fn check(&self) -> Result<(), CapError> {
        SheetField::Thickness.check(self.thickness_um)?;
        SheetField::Permittivity.check(self.permittivity_milli)?;
        SheetField::LossTangent.check(self.loss_tangent_micro)
    }

    /// Thickness, m.
    #[must_use]
    pub fn thickness_m(&self) -> f64 {
        metres(self.thickness_um)
    }

    /// Complex relative permittivity `ε' (1 - j tan δ)`. Pozar section 1.3.
    #[must_use]
    pub fn relative_permittivity(&self) -> Complex {
        let real = f64::from(self.permittivity_milli) / 1e3;
        Complex::new(real, -real * f64::from(self.loss_tangent_micro) / 1e6)
    }
}
