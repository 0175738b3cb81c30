//! Far field in any direction as the sum of modes.

use alloc::vec::Vec;
use core::f64::consts::PI;

use crate::complex::Complex;
use crate::math;
use crate::outside::{MouthMode, OutsideSolution};
use crate::probe::{ModeExcitation, ProbeSolution};

/// Far field in one direction, in units whose squared magnitude is the gain over
/// isotropic for the power that enters at the connector.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FieldSample {
    /// Component along θ.
    pub theta: Complex,
    /// Component along φ.
    pub phi: Complex,
}

impl FieldSample {
    /// Gain over isotropic, both polarisations together.
    #[must_use]
    pub fn gain(&self) -> f64 {
        self.theta.norm_sqr() + self.phi.norm_sqr()
    }

    /// Wanted and crossed part in the direction of azimuth φ (rad) for a beam
    /// polarised along φ = 0.
    ///
    /// Source: A. C. Ludwig, *The definition of cross polarization*, IEEE Trans.
    /// Antennas Propag. AP-21 (1973) 116-119, third definition.
    #[must_use]
    pub fn wanted_and_crossed(&self, azimuth_rad: f64) -> (Complex, Complex) {
        let (s, c) = math::sin_cos(azimuth_rad);
        (
            self.theta.scale(c) - self.phi.scale(s),
            self.theta.scale(s) + self.phi.scale(c),
        )
    }
}

/// One mode with its share in the sum, what belongs to the arriving wave included.
#[derive(Clone, Debug, PartialEq)]
struct Part {
    mode: MouthMode,
    aligned: Complex,
    crossed: Complex,
}

/// The far field of a can at one frequency. Angles: θ from the axis, 0 straight
/// ahead; azimuth φ from the probe round the axis.
#[derive(Clone, Debug, PartialEq)]
pub struct SumPattern {
    frequency_hz: f64,
    parts: [Part; 3],
    radiated: f64,
}

impl SumPattern {
    /// From the outside and what the probe launches, both at the same frequency.
    #[must_use]
    pub fn new(outside: &OutsideSolution, probe: &ProbeSolution) -> Self {
        let conductance = probe.input_admittance.re.max(f64::MIN_POSITIVE);
        let norm = 1.0 / math::sqrt(conductance);
        let excitations = [&probe.tm01, &probe.te11, &probe.te21].map(|mode| (mode, norm));
        Self::with_amplitudes(outside, excitations)
    }

    /// The field of TE11 alone for a unit of arriving power.
    #[must_use]
    pub fn of_te11(outside: &OutsideSolution) -> Self {
        let one = ModeExcitation {
            aligned: Complex::ONE,
            ..ModeExcitation::default()
        };
        let none = ModeExcitation::default();
        Self::with_amplitudes(outside, [(&none, 0.0), (&one, 1.0), (&none, 0.0)])
    }

    fn with_amplitudes(
        outside: &OutsideSolution,
        excitations: [(&ModeExcitation, f64); 3],
    ) -> Self {
        let [tm01, te11, te21] = &outside.modes;
        let mut radiated = 0.0;
        let mut part = |mode: &MouthMode, (excitation, scale): (&ModeExcitation, f64)| {
            let (aligned, crossed) = (
                excitation.aligned.scale(scale),
                excitation.crossed.scale(scale),
            );
            let amplitude = aligned.norm_sqr() + crossed.norm_sqr();
            if amplitude > 0.0 {
                radiated += amplitude * mode.radiated_power();
            }
            let scale = mode.scale();
            Part {
                mode: mode.clone(),
                aligned: aligned * scale,
                crossed: crossed * scale,
            }
        };
        let [zero, one, two] = excitations;
        let parts = [part(tm01, zero), part(te11, one), part(te21, two)];
        Self {
            frequency_hz: outside.frequency_hz,
            parts,
            radiated,
        }
    }

    /// Frequency, Hz.
    #[must_use]
    pub const fn frequency_hz(&self) -> f64 {
        self.frequency_hz
    }

    /// Power radiated over the power that enters at the connector, 0 to 1: what
    /// the walls do not keep. Modes share no power.
    #[must_use]
    pub const fn radiated_share(&self) -> f64 {
        self.radiated
    }

    /// Field at polar angle θ and azimuth φ, rad; phase at the rim's middle.
    #[must_use]
    pub fn field(&self, theta_rad: f64, azimuth_rad: f64) -> FieldSample {
        let (mut theta, mut phi) = (Complex::ZERO, Complex::ZERO);
        for (order, part) in self.parts.iter().enumerate() {
            if part.aligned == Complex::ZERO && part.crossed == Complex::ZERO {
                continue;
            }
            let field = part.mode.unscaled(theta_rad);
            let (s, c) = math::sin_cos(order as f64 * azimuth_rad);
            theta += field.0 * (part.aligned.scale(c) + part.crossed.scale(s));
            phi += field.1 * (part.aligned.scale(s) - part.crossed.scale(c));
        }
        FieldSample { theta, phi }
    }

    /// Wanted polarisation in the cut of an azimuth, at a signed angle in (-π, π]:
    /// positive on the azimuth's own side.
    #[must_use]
    pub fn wanted_in_cut(&self, azimuth_rad: f64, angle_rad: f64) -> Complex {
        let own = if angle_rad >= 0.0 {
            azimuth_rad
        } else {
            azimuth_rad + PI
        };
        let field = self.field(math::fabs(angle_rad), own);
        field.wanted_and_crossed(own).0
    }

    /// Directivity in a direction, dB over isotropic; `-∞` where there is none.
    #[must_use]
    pub fn directivity_dbi(&self, theta_rad: f64, azimuth_rad: f64) -> f64 {
        10.0 * math::log10(self.directivity(theta_rad, azimuth_rad))
    }

    /// The same as a ratio.
    #[must_use]
    pub fn directivity(&self, theta_rad: f64, azimuth_rad: f64) -> f64 {
        self.field(theta_rad, azimuth_rad).gain() / self.radiated
    }

    /// Directivity of the wanted polarisation in dB over isotropic at signed angles
    /// (rad) in the cut of an azimuth (0: E plane, a quarter turn: H plane),
    /// positive on the azimuth's own side. In the H plane TM01 and TE21 are crossed
    /// and not in it.
    #[must_use]
    pub fn cut_dbi(&self, azimuth_rad: f64, angles_rad: &[f64]) -> Vec<f64> {
        angles_rad
            .iter()
            .map(|angle| self.wanted_in_cut(azimuth_rad, *angle).norm_sqr() / self.radiated)
            .map(|ratio| 10.0 * math::log10(ratio))
            .collect()
    }
}
