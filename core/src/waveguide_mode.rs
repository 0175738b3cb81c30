//! Modes of the air-filled circular waveguide.
//!
//! Formulas: D. M. Pozar, *Microwave Engineering*, 4th ed. 2012, section 3.4;
//! N. Marcuvitz, *Waveguide Handbook*, 1951, section 2.3 (both from memory).
//! Wall losses are in [`crate::wall_loss`].

use alloc::vec::Vec;
use core::f64::consts::PI;
use core::fmt;

use crate::bessel_roots::{BESSEL_ROOTS, BesselRoot};
use crate::complex::Complex;
use crate::constants::{ETA_0, SPEED_OF_LIGHT, wavenumber};
use crate::math;

/// Which axial field component a mode lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Family {
    /// Transverse electric: cutoff at a root of `J_n'`.
    Te,
    /// Transverse magnetic: cutoff at a root of `J_n`.
    Tm,
}

/// One mode of a circular guide, in the usual notation `TE_nm` or `TM_nm`.
///
/// A mode whose root lies beyond [`crate::bessel_roots::COMPLETE_UP_TO`] (or that
/// does not exist, such as index 0) has no [`Mode::root`]; it then counts as
/// infinitely far below cutoff everywhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Mode {
    /// Transverse electric or transverse magnetic.
    pub family: Family,
    /// Order n: periods of the field once round the axis.
    pub order: u8,
    /// Radial index m, from 1.
    pub index: u8,
}

impl Mode {
    /// The fundamental mode.
    pub const TE11: Self = Self::te(1, 1);
    /// The first mode after the fundamental, circularly symmetric.
    pub const TM01: Self = Self::tm(0, 1);
    /// The third mode.
    pub const TE21: Self = Self::te(2, 1);
    /// The circular electric mode; shares its cutoff with TM11.
    pub const TE01: Self = Self::te(0, 1);
    /// Shares its cutoff with TE01.
    pub const TM11: Self = Self::tm(1, 1);
    /// The second radial mode of TE11's symmetry.
    pub const TE12: Self = Self::te(1, 2);

    /// `TE_nm`.
    #[must_use]
    pub const fn te(order: u8, index: u8) -> Self {
        Self {
            family: Family::Te,
            order,
            index,
        }
    }

    /// `TM_nm`.
    #[must_use]
    pub const fn tm(order: u8, index: u8) -> Self {
        Self {
            family: Family::Tm,
            order,
            index,
        }
    }

    /// The mode a row of the root table belongs to.
    #[must_use]
    pub const fn from_root(root: &BesselRoot) -> Self {
        if root.of_derivative {
            Self::te(root.order, root.index)
        } else {
            Self::tm(root.order, root.index)
        }
    }

    /// Cutoff wavenumber times radius: the mode's root of `J_n'` (TE) or `J_n`
    /// (TM). `None` if the root lies beyond the table or does not exist.
    #[must_use]
    pub fn root(self) -> Option<f64> {
        BESSEL_ROOTS
            .iter()
            .find(|root| Self::from_root(root) == self)
            .map(|root| root.x)
    }

    /// Cutoff frequency in Hz of a guide of the given radius (m, > 0).
    /// Infinite if the mode has no root in the table. Pozar eq. 3.127, 3.140.
    #[must_use]
    pub fn cutoff_frequency_hz(self, radius_m: f64) -> f64 {
        self.root().map_or(f64::INFINITY, |x| {
            x * SPEED_OF_LIGHT / (2.0 * PI * radius_m)
        })
    }

    /// `1 - (f_c/f)²`: positive above cutoff, negative below. `None` if the
    /// mode has no root or an argument is not a positive finite number.
    #[must_use]
    pub fn squared_phase_ratio(self, radius_m: f64, frequency_hz: f64) -> Option<f64> {
        let ka = wavenumber(frequency_hz) * radius_m;
        if !(ka.is_finite() && ka > 0.0 && radius_m > 0.0) {
            return None;
        }
        let ratio = self.root()? / ka;
        Some((1.0 - ratio) * (1.0 + ratio))
    }

    /// Wavelength along the guide in metres, `λ/√(1-(f_c/f)²)`; `None` at or
    /// below cutoff. Pozar section 3.4.
    #[must_use]
    pub fn guide_wavelength_m(self, radius_m: f64, frequency_hz: f64) -> Option<f64> {
        self.squared_phase_ratio(radius_m, frequency_hz)
            .filter(|ratio| *ratio > 0.0)
            .map(|ratio| SPEED_OF_LIGHT / (frequency_hz * math::sqrt(ratio)))
    }

    /// Decay of the field along the guide below cutoff in Np/m,
    /// `(2π/λ_c)·√(1-(f/f_c)²)`; `None` at or above cutoff.
    #[must_use]
    pub fn evanescent_decay_np_per_m(self, radius_m: f64, frequency_hz: f64) -> Option<f64> {
        self.squared_phase_ratio(radius_m, frequency_hz)
            .filter(|ratio| *ratio < 0.0)
            .map(|ratio| wavenumber(frequency_hz) * math::sqrt(-ratio))
    }

    /// Wave impedance in ohm of the wave that leaves along +z: transverse E over
    /// transverse H.
    ///
    /// Above cutoff real: `η k/h` (TE), `η h/k` (TM). Below cutoff `h = -j|h|`, so
    /// TE is inductive (`+j`) and TM capacitive (`-j`). Exactly at cutoff TE is
    /// infinite and TM zero. Not a number for arguments that are not positive
    /// and finite; a mode without a root gives the limit far below cutoff.
    #[must_use]
    pub fn wave_impedance_ohm(self, radius_m: f64, frequency_hz: f64) -> Complex {
        let ka = wavenumber(frequency_hz) * radius_m;
        let ratio = self.root().map_or(f64::INFINITY, |x| x / ka);
        let square = (1.0 - ratio) * (1.0 + ratio);
        let size = math::sqrt(math::fabs(square));
        match (self.family, square >= 0.0) {
            (Family::Te, true) => Complex::new(ETA_0 / size, 0.0),
            (Family::Te, false) => Complex::new(0.0, ETA_0 / size),
            (Family::Tm, true) => Complex::new(ETA_0 * size, 0.0),
            (Family::Tm, false) => Complex::new(0.0, -ETA_0 * size),
        }
    }
}

impl fmt::Display for Mode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let family = match self.family {
            Family::Te => "TE",
            Family::Tm => "TM",
        };
        // A comma only where the two numbers would run together.
        let comma = if self.order > 9 || self.index > 9 {
            ","
        } else {
            ""
        };
        write!(f, "{family}{}{comma}{}", self.order, self.index)
    }
}

/// Modes whose cutoff is below a frequency, sorted by cutoff; TM11 comes before
/// TE01, which shares its cutoff.
///
/// Complete up to `k·a` = [`crate::bessel_roots::COMPLETE_UP_TO`]; above it the
/// list stops there. Empty for arguments that are not positive and finite.
#[must_use]
pub fn modes_up_to(radius_m: f64, frequency_hz: f64) -> Vec<Mode> {
    let ka = wavenumber(frequency_hz) * radius_m;
    if !(ka.is_finite() && radius_m > 0.0) {
        return Vec::new();
    }
    BESSEL_ROOTS
        .iter()
        .take_while(|root| root.x < ka)
        .map(Mode::from_root)
        .collect()
}
