//! A geometry made ready for many frequencies.

use alloc::sync::Arc;
use alloc::vec::Vec;

use super::assembly::Fixed;
use super::elimination::eliminate;
use super::error::{ProbeError, check, check_position};
use super::expansion::TERMS;
use super::guide_condition::{GuideCondition, ModeWave};
use super::reaction::{AtNodes, packed};
use super::wire::ProbeGeometry;
use crate::complex::Complex;
use crate::constants::{ETA_0, SPEED_OF_LIGHT, wavenumber};

/// Smallest `ka` a frequency is taken at; far below every cutoff.
const LEAST_KA: f64 = 1e-3;

/// A probe made ready: only the frequency, the wall's loss and the far end are open.
///
/// Current expansion and testing on each wire's axis with entire-domain
/// polynomials (method of moments, Galerkin), the guide's Green's function split
/// after Ewald, a magnetic frill as the feed. Source of the guide's Green's
/// function: R. E. Collin, *Field Theory of Guided Waves*, 2nd ed. 1991, chapters
/// 5 and 7. Range in which it is compared with finite elements: `ka` 1.85 to 3.8,
/// wire length over radius 10 to 155. Outside that it stays finite but loses
/// accuracy; above `ka` = 3.83 more modes propagate than the solution reports.
#[derive(Clone)]
pub struct PreparedProbe {
    fixed: Arc<Fixed>,
    /// Distance of each wire from the back wall, m; same order as the wires.
    axial: Vec<f64>,
    /// Reactions without the exact modes, packed; last the frill.
    matrix: Vec<AtNodes>,
}

/// Everything that holds at one frequency.
pub(super) struct AtFrequency {
    pub(super) k: f64,
    pub(super) waves: Vec<ModeWave>,
    /// Reactions, packed; last the frill.
    pub(super) matrix: Vec<Complex>,
}

impl core::fmt::Debug for PreparedProbe {
    /// Its tables would tell a reader nothing.
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("PreparedProbe").finish_non_exhaustive()
    }
}

impl PreparedProbe {
    /// Makes a geometry ready.
    ///
    /// # Errors
    /// When the geometry is impossible: see [`ProbeError`].
    pub fn new(geometry: &ProbeGeometry) -> Result<Self, ProbeError> {
        check(geometry)?;
        let fixed = Arc::new(Fixed::new(geometry.clone()));
        let axial: Vec<_> = fixed.wires.iter().map(|w| w.wire.axial_m).collect();
        let mut matrix = Vec::new();
        for row in 0..fixed.wires.len() {
            fixed.append_rows(row, &axial, &mut matrix);
        }
        Ok(Self {
            fixed,
            axial,
            matrix,
        })
    }

    /// The same guide and wires with the fed wire at another distance from the
    /// back wall, `axial_m` metres; much cheaper than [`PreparedProbe::new`].
    ///
    /// # Errors
    /// When the wire would touch the back wall or a screw.
    pub fn at_backshort_distance(&self, axial_m: f64) -> Result<Self, ProbeError> {
        let geometry = &self.fixed.geometry;
        check_position(geometry, axial_m)?;
        let mut axial = self.axial.clone();
        if let Some(feed) = axial.last_mut() {
            *feed = axial_m;
        }
        let row = axial.len().saturating_sub(1);
        let unchanged = packed(row * TERMS, 0);
        let mut matrix = Vec::with_capacity(self.matrix.len());
        matrix.extend(self.matrix.iter().take(unchanged));
        self.fixed.append_rows(row, &axial, &mut matrix);
        Ok(Self {
            fixed: Arc::clone(&self.fixed),
            axial,
            matrix,
        })
    }

    /// Input admittance in siemens at the plane of the guide's inner wall, at
    /// `frequency_hz`. The geometry is lossless but for the guide's wall.
    #[must_use]
    pub fn input_admittance(&self, frequency_hz: f64, condition: &GuideCondition) -> Complex {
        let mut at = self.at_frequency(frequency_hz, condition);
        let pivot = eliminate(self.size(), &mut at.matrix);
        self.admittance(at.k, pivot)
    }

    /// Number of unknowns, and the frill.
    pub(super) fn size(&self) -> usize {
        self.axial.len() * TERMS + 1
    }

    pub(super) fn fixed(&self) -> &Fixed {
        &self.fixed
    }

    pub(super) fn axial(&self) -> &[f64] {
        &self.axial
    }

    /// Admittance from the frill's pivot.
    pub(super) fn admittance(&self, k: f64, pivot: Complex) -> Complex {
        let feed = &self.fixed.geometry.feed;
        let omega = k * SPEED_OF_LIGHT;
        let shunt = k * self.fixed.frill_length / ETA_0 + omega * feed.shunt_capacitance_f;
        Complex::new(0.0, k / ETA_0) * pivot + Complex::new(0.0, shunt)
    }

    /// Reactions and modes at one frequency.
    pub(super) fn at_frequency(
        &self,
        frequency_hz: f64,
        condition: &GuideCondition,
    ) -> AtFrequency {
        let fixed = &*self.fixed;
        let a = fixed.geometry.guide_radius_m;
        let k = wavenumber(frequency_hz).max(LEAST_KA / a);
        let weights = fixed.nodes.weights(k * k);
        let mut matrix: Vec<_> = self
            .matrix
            .iter()
            .map(|at| {
                let value = weights[0] * at[0] + weights[1] * at[1] + weights[2] * at[2];
                Complex::real(value)
            })
            .collect();
        let exact = fixed.modes.modes.iter().take(fixed.modes.exact);
        let waves: Vec<_> = exact
            .map(|mode| ModeWave::new(mode, a, k, condition))
            .collect();
        for (index, wave) in waves.iter().enumerate() {
            self.add_exact_mode(index, wave, &mut matrix);
        }
        AtFrequency { k, waves, matrix }
    }

    /// Adds the reactions through one exact mode.
    fn add_exact_mode(&self, index: usize, wave: &ModeWave, matrix: &mut [Complex]) {
        let fixed = &*self.fixed;
        let wires = fixed.wires.iter().zip(&self.axial).enumerate();
        for (row, (wire, &z)) in wires.clone() {
            let Some(coupling) = wire.couplings.get(index) else {
                continue;
            };
            for (column, (other, &z_other)) in wires.clone().take(row + 1) {
                let Some(other_coupling) = other.couplings.get(index) else {
                    continue;
                };
                let cosine = fixed.pair_cosine(row, column, index);
                let field = (wave.weight * wave.axial_field(z, z_other)).scale(cosine);
                for (i, part) in coupling.iter().take(wire.parts).enumerate() {
                    let count = if row == column { i + 1 } else { TERMS };
                    let start = packed(row * TERMS + i, column * TERMS);
                    let factor = field.scale(*part);
                    let targets = matrix.iter_mut().skip(start);
                    let others = other_coupling.iter().take(count);
                    // Most modes are below cutoff: a real field.
                    if factor.im == 0.0 {
                        targets.zip(others).for_each(|(m, c)| m.re += factor.re * c);
                    } else {
                        targets.zip(others).for_each(|(m, c)| {
                            m.re += factor.re * c;
                            m.im += factor.im * c;
                        });
                    }
                }
            }
        }
    }
}
