//! A short section of filled guide, as one mode crosses it.

use crate::complex::Complex;
use crate::waveguide_mode::Family;

/// Below this `|x|` sine and cosine come from their series.
const SMALL: f64 = 1e-3;

/// ABCD matrix of a section, fields over the vacuum's wave impedance: `E` and `η0 H` of
/// the mode's transverse shape on the near side from those on the far side. `D` is `A`.
///
/// Everything is even in the phase constant, so that no branch has to be chosen and
/// cutoff, of the empty or the filled guide, is no special case.
#[derive(Clone, Copy, Debug)]
pub(super) struct FilledSection {
    a: Complex,
    b: Complex,
    c: Complex,
}

impl FilledSection {
    /// For a mode of cutoff wavenumber times radius `root` at electrical radius `ka`,
    /// through `kt` radian (of free space) of the relative permittivity.
    ///
    /// Source: D. M. Pozar, *Microwave Engineering*, 4th ed. 2012, table 4.1, with the
    /// wave admittances of section 3.4 (from memory).
    pub(super) fn new(family: Family, root: f64, ka: f64, kt: f64, permittivity: Complex) -> Self {
        let below = root / ka;
        // Square of phase constant over free-space wavenumber.
        let square = permittivity - below * below;
        let (cosine, over) = cosine_and_sine_over(square.scale(kt * kt));
        let turned = Complex::new(0.0, kt) * over;
        let (b, c) = match family {
            Family::Te => (turned, turned * square),
            Family::Tm => (turned * square / permittivity, turned * permittivity),
        };
        Self { a: cosine, b, c }
    }

    /// Admittance on the near side of one on the far side, both over the vacuum's.
    pub(super) fn admittance(&self, load: Complex) -> Complex {
        (self.c + self.a * load) / (self.a + self.b * load)
    }

    /// Power that enters over power that leaves into a load. Real part of the load
    /// above 0.
    pub(super) fn power_ratio(&self, load: Complex) -> f64 {
        let (field, current) = (self.a + self.b * load, self.c + self.a * load);
        (field * current.conj()).re / load.re
    }
}

/// `cos x` and `sin x / x` of `x²`.
fn cosine_and_sine_over(square: Complex) -> (Complex, Complex) {
    if square.norm_sqr() < SMALL * SMALL * SMALL * SMALL {
        let series = |second: f64, fourth: f64| {
            Complex::ONE - square.scale(second) + (square * square).scale(fourth)
        };
        return (series(0.5, 1.0 / 24.0), series(1.0 / 6.0, 1.0 / 120.0));
    }
    let x = square.sqrt();
    let turn = (Complex::new(0.0, 1.0) * x).exp();
    let back = turn.inv();
    let sine = (turn - back) * Complex::new(0.0, -0.5);
    ((turn + back).scale(0.5), sine / x)
}
