//! Reflection at an open mouth from a table, for sweeps and searches.

use super::chebyshev::Position;
use super::error::MouthError;
use super::table_data::{ADMITTANCE_TE11, ADMITTANCE_TE21, ADMITTANCE_TM01};
use crate::complex::Complex;
use crate::math;
use crate::waveguide_mode::{Family, Mode};

/// Cutoffs (root) of the next mode that couples to TE11, TM01 and TE21: TM11,
/// TM02 and TM21. Abramowitz and Stegun 1964, table 9.5.
const NEXT_TM11: f64 = 3.831_705_970_207_512_5;
const NEXT_TM02: f64 = 5.520_078_110_286_311;
const NEXT_TM21: f64 = 5.135_622_301_840_683;

/// Reflection coefficient of transverse E at the mouth of a thin-walled open
/// pipe for TE11, TM01 or TE21, `ka = 2π f a/c` from 1.2 to 3.83.
///
/// Within 1e-7 of [`super::OpenPipe::reflection`], above and below the mode's own
/// cutoff, and continuous across it; at cutoff exactly -1 (TE) or +1 (TM).
///
/// # Errors
/// [`MouthError::ElectricalRadius`] outside that range,
/// [`MouthError::NotTabulated`] for any other mode.
pub fn mouth_reflection(mode: Mode, ka: f64) -> Result<Complex, MouthError> {
    let (next, table) = match mode {
        Mode::TE11 => (NEXT_TM11, &ADMITTANCE_TE11),
        Mode::TM01 => (NEXT_TM02, &ADMITTANCE_TM01),
        Mode::TE21 => (NEXT_TM21, &ADMITTANCE_TE21),
        _ => return Err(MouthError::NotTabulated { mode }),
    };
    let [re, im] = Position::of(ka, next)?.sum(table);
    let y = Complex::new(re, im);
    Ok(reflection_of_admittance(mode, ka, y))
}

/// Reflection coefficient of transverse E that an aperture admittance y means
/// for a mode at `ka`: with `β = h/k` TE `(β - y)/(β + y)`, TM `(1/β - y)/(1/β + y)`.
/// A mode without a root is infinitely far below cutoff: +1 (TE) or -1 (TM).
#[must_use]
pub fn reflection_of_admittance(mode: Mode, ka: f64, y: Complex) -> Complex {
    let Some(root) = mode.root() else {
        return match mode.family {
            Family::Te => Complex::ONE,
            Family::Tm => Complex::real(-1.0),
        };
    };
    // β = h/k, -j|β| below cutoff.
    let square = (1.0 - root / ka) * (1.0 + root / ka);
    let size = math::sqrt(math::fabs(square));
    let beta = if square >= 0.0 {
        Complex::new(size, 0.0)
    } else {
        Complex::new(0.0, -size)
    };
    // TE: wave admittance β; TM: 1/β, with β multiplied through.
    match mode.family {
        Family::Te => (beta - y) / (beta + y),
        Family::Tm => {
            let product = beta * y;
            (Complex::ONE - product) / (Complex::ONE + product)
        }
    }
}

/// Cutoff of the next mode that couples to TE11 at the mouth.
pub(super) const fn next_after_te11() -> f64 {
    NEXT_TM11
}
