//! Currents at one frequency and the waves they launch.

use alloc::vec;

use super::elimination::{eliminate, substitute_back};
use super::expansion::TERMS;
use super::guide_condition::{GuideCondition, ModeWave};
use super::prepared::{AtFrequency, PreparedProbe};
use crate::complex::Complex;
use crate::constants::ETA_0;
use crate::math;

/// Forward wave of one mode, per volt at the feed.
///
/// Amplitudes are peak values over the square root of the wave impedance's
/// magnitude: where the mode propagates, `(|aligned|² + |crossed|²)/2` is the
/// power of the wave going forward, in W per V². Phase is that of the transverse
/// electric field, whose shape has the sign that [`crate::mouth::FarField`] gives
/// it: at the foot of the fed wire a positive real amplitude points to the wall for
/// TE11 and TE21, to the axis for TM01.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ModeExcitation {
    /// Polarisation whose radial field goes as `cos n(φ - φ_feed)`.
    pub aligned: Complex,
    /// Polarisation whose radial field goes as `sin n(φ - φ_feed)`; only screws
    /// off the fed wire's plane excite it.
    pub crossed: Complex,
    /// Net power through the plane in both polarisations over the power that
    /// enters at the feed.
    pub power_fraction: f64,
    /// Whether the mode is above cutoff.
    pub propagates: bool,
}

/// What the probe does at one frequency.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ProbeSolution {
    /// Input admittance at the guide's inner wall, S.
    pub input_admittance: Complex,
    /// Plane the waves are given at, m from the inside of the back wall: the
    /// mouth, or the wire farthest ahead when the guide goes on for ever.
    pub plane_m: f64,
    /// The TE11 mode.
    pub te11: ModeExcitation,
    /// The TM01 mode.
    pub tm01: ModeExcitation,
    /// The TE21 mode.
    pub te21: ModeExcitation,
}

impl PreparedProbe {
    /// Input admittance and launched waves at `frequency_hz`.
    ///
    /// In a lossless guide the power fractions add up to one.
    #[must_use]
    pub fn solve(&self, frequency_hz: f64, condition: &GuideCondition) -> ProbeSolution {
        let mut at = self.at_frequency(frequency_hz, condition);
        let size = self.size();
        let pivot = eliminate(size, &mut at.matrix);
        let input_admittance = self.admittance(at.k, pivot);
        let mut currents = vec![Complex::ZERO; size];
        substitute_back(size, &at.matrix, &mut currents);
        // Reactions are impedances over jη/k; the frill itself counts as the dipole
        // moment jk/η per volt and area.
        for current in &mut currents {
            *current = Complex::new(0.0, -at.k / ETA_0) * *current;
        }
        if let Some(frill) = currents.last_mut() {
            *frill = Complex::new(0.0, at.k / ETA_0);
        }
        let farthest = self.axial().iter().copied().fold(0.0, f64::max);
        let plane_m = condition.end.map_or(farthest, |end| end.length_m);
        let excitation = |transverse_electric, order| {
            self.excitation(
                &at,
                &currents,
                plane_m,
                (transverse_electric, order),
                input_admittance.re,
            )
        };
        ProbeSolution {
            input_admittance,
            plane_m,
            te11: excitation(true, 1),
            tm01: excitation(false, 0),
            te21: excitation(true, 2),
        }
    }

    /// The first mode of a family and order at the plane.
    fn excitation(
        &self,
        at: &AtFrequency,
        currents: &[Complex],
        plane: f64,
        (transverse_electric, order): (bool, usize),
        conductance: f64,
    ) -> ModeExcitation {
        let fixed = self.fixed();
        let found = fixed
            .modes
            .modes
            .iter()
            .zip(&at.waves)
            .enumerate()
            .find(|(_, (mode, _))| {
                mode.transverse_electric == transverse_electric && mode.order == order
            });
        let Some((index, (mode, wave))) = found else {
            return ModeExcitation::default();
        };
        let (mut aligned, mut crossed) = (Complex::ZERO, Complex::ZERO);
        let feed_angle = fixed.wires.last().map_or(0.0, |feed| feed.wire.angle_rad);
        for (number, (wire, &z)) in fixed.wires.iter().zip(self.axial()).enumerate() {
            let Some(coupling) = wire.couplings.get(index) else {
                continue;
            };
            let own = currents.iter().skip(number * TERMS).take(wire.parts);
            let source = own
                .zip(coupling)
                .fold(Complex::ZERO, |sum, (c, p)| sum + c.scale(*p));
            let forward = source * wave.towards(z, plane);
            let (s, c) = math::sin_cos(order as f64 * (wire.wire.angle_rad - feed_angle));
            aligned += forward.scale(c);
            crossed += forward.scale(s);
        }
        let scale = launch_factor(wave);
        let (aligned, crossed) = (aligned * scale, crossed * scale);
        let power = net_power(wave, aligned.norm_sqr() + crossed.norm_sqr());
        let norm = 1.0 / math::sqrt(wave.impedance.abs());
        ModeExcitation {
            aligned: aligned.scale(norm),
            crossed: crossed.scale(norm),
            power_fraction: power / conductance,
            propagates: at.k > mode.cutoff,
        }
    }
}

/// Forward electric wave of a unit source, all echoes of the far end included.
fn launch_factor(wave: &ModeWave) -> Complex {
    let echo = wave.end.map_or(Complex::ONE, |end| end.echo);
    (wave.impedance * echo).scale(0.5)
}

/// Twice the power through the plane when the forward electric wave there has
/// the squared magnitude `forward_sqr`; evanescent waves carry power only
/// together with their reflection.
fn net_power(wave: &ModeWave, forward_sqr: f64) -> f64 {
    let reflection = wave.end.map_or(Complex::ZERO, |end| end.reflection);
    let current = (Complex::ONE - reflection) / wave.impedance;
    ((Complex::ONE + reflection) * current.conj()).re * forward_sqr
}
