//! What one mode does along the guide at one frequency: wall loss, back wall,
//! far end.

use super::modal_field::GuideMode;
use crate::complex::Complex;
use crate::constants::ETA_0;
use crate::math;

/// The far end of the guide at one frequency.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GuideEnd {
    /// From the inside of the back wall to the plane of the mouth, m; beyond every wire.
    pub length_m: f64,
    /// Reflection of the TE11 mode there: reflected over incident transverse
    /// electric field, also when the mode is below cutoff.
    pub te11: Complex,
    /// The same of the TM01 mode.
    pub tm01: Complex,
    /// The same of the TE21 mode.
    pub te21: Complex,
}

/// Loss and far end of the guide at one frequency.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GuideCondition {
    /// Surface resistance of the wall, ohm; 0 for a perfect conductor.
    pub surface_resistance_ohm: f64,
    /// The far end; `None` when the guide goes on for ever.
    pub end: Option<GuideEnd>,
}

impl GuideCondition {
    /// A lossless guide that goes on for ever.
    pub const MATCHED: Self = Self {
        surface_resistance_ohm: 0.0,
        end: None,
    };
}

/// The end of the guide as one mode sees it.
#[derive(Clone, Copy, Debug)]
pub(super) struct ModeEnd {
    pub(super) length: f64,
    pub(super) reflection: Complex,
    /// `1/(1 + κ Γ e^(-2γL))`: waves that have gone to and fro any number of times.
    pub(super) echo: Complex,
}

/// One mode along the axis at one frequency.
#[derive(Clone, Copy, Debug)]
pub(super) struct ModeWave {
    /// Propagation constant, rad/m.
    pub(super) gamma: Complex,
    /// Wave impedance, ohm.
    pub(super) impedance: Complex,
    /// Factor that turns the axial field into a reaction, rad²/m².
    pub(super) weight: Complex,
    /// Image factor `κ` of the back wall: 1 for a perfect conductor.
    back: Complex,
    pub(super) end: Option<ModeEnd>,
}

/// A mode this close to cutoff, in `γ²/k²`, is moved off it: the response is
/// continuous there, the formulas are not.
const CLOSEST_TO_CUTOFF: f64 = 1e-10;

/// Attenuation in neper beyond which a wave is below the last bit of the others.
const NOTHING_LEFT: f64 = 40.0;

impl ModeWave {
    /// In a guide of radius `a` at the wavenumber `k`.
    pub(super) fn new(mode: &GuideMode, a: f64, k: f64, condition: &GuideCondition) -> Self {
        let rs = condition.surface_resistance_ohm;
        let square = Complex::new(
            mode.cutoff * mode.cutoff - k * k,
            twice_alpha_beta(mode, a, k, rs),
        );
        let closest = CLOSEST_TO_CUTOFF * k * k;
        let square = if square.norm_sqr() < closest * closest {
            Complex::real(closest)
        } else {
            square
        };
        let gamma = root(square);
        let (impedance, weight) = if mode.transverse_electric {
            (
                Complex::new(0.0, k * ETA_0) * gamma.inv(),
                Complex::real(k * k),
            )
        } else {
            (gamma * Complex::new(0.0, -ETA_0 / k), -square)
        };
        let back = if rs > 0.0 {
            let wall = Complex::new(rs, rs);
            Complex::ONE - wall.scale(2.0) / (wall + impedance)
        } else {
            Complex::ONE
        };
        let end = condition.end.and_then(|end| {
            let reflection = reflection_of(mode, &end)?;
            let length = end.length_m;
            let to_and_fro = back * reflection * decay(gamma, 2.0 * length);
            let echo = (Complex::ONE + to_and_fro).inv();
            Some(ModeEnd {
                length,
                reflection,
                echo,
            })
        });
        Self {
            gamma,
            impedance,
            weight,
            back,
            end,
        }
    }

    /// Axial field at `z` of a unit source at `z_source`, back wall and far end
    /// included; m.
    pub(super) fn axial_field(&self, z: f64, z_source: f64) -> Complex {
        let direct = if z == z_source {
            Complex::ONE
        } else {
            decay(self.gamma, math::fabs(z - z_source))
        };
        let mut sum = direct - self.back * decay(self.gamma, z + z_source);
        if let Some(end) = &self.end {
            let there = self.towards(z_source, end.length);
            let back = if z == z_source {
                there
            } else {
                self.towards(z, end.length)
            };
            sum += there * back * end.reflection * end.echo;
        }
        sum * (self.gamma.inv().scale(0.5))
    }

    /// Forward wave at the plane `plane` of a unit wave from `z`, with what the
    /// back wall returns.
    pub(super) fn towards(&self, z: f64, plane: f64) -> Complex {
        decay(self.gamma, plane - z) - self.back * decay(self.gamma, plane + z)
    }
}

/// Reflection of the modes the end is given for.
fn reflection_of(mode: &GuideMode, end: &GuideEnd) -> Option<Complex> {
    match (mode.transverse_electric, mode.order, mode.index) {
        (true, 1, 1) => Some(end.te11),
        (false, 0, 1) => Some(end.tm01),
        (true, 2, 1) => Some(end.te21),
        _ => None,
    }
}

/// `2αβ` of a mode, finite through its cutoff, rad²/m².
///
/// Source: N. Marcuvitz, *Waveguide Handbook*, 1951, section 2.4 (attenuation of
/// the modes of circular guide, multiplied out by the phase constant).
fn twice_alpha_beta(mode: &GuideMode, a: f64, k: f64, rs: f64) -> f64 {
    let common = 2.0 * rs * k / (a * ETA_0);
    if mode.transverse_electric {
        let n_sqr = (mode.order * mode.order) as f64;
        let below = mode.cutoff / k;
        common * (below * below + n_sqr / (mode.root * mode.root - n_sqr))
    } else {
        common
    }
}

/// Principal square root, quick when the number is real.
fn root(square: Complex) -> Complex {
    if square.im != 0.0 {
        square.sqrt()
    } else if square.re >= 0.0 {
        Complex::real(math::sqrt(square.re))
    } else {
        Complex::new(0.0, math::sqrt(-square.re))
    }
}

/// `e^(-γz)`, quick when `γ` is real; nothing is left beyond [`NOTHING_LEFT`].
fn decay(gamma: Complex, z: f64) -> Complex {
    if gamma.re * z > NOTHING_LEFT {
        Complex::ZERO
    } else if gamma.im == 0.0 {
        Complex::real(math::exp(-gamma.re * z))
    } else if gamma.re == 0.0 {
        let (s, c) = math::sin_cos(gamma.im * z);
        Complex::new(c, -s)
    } else {
        (-gamma.scale(z)).exp()
    }
}
