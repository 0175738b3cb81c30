//! Solution at one frequency.

use alloc::vec::Vec;

use super::assembly::System;
use super::error::OutsideError;
use super::far_series::{FarSeries, PanelCurrent, terms};
use super::mode_probe::{BACK_PROBE, BACK_SOURCE, FRONT_PROBE, MODES, NEAR_SOURCE, ROLES};
use super::mouth_mode::MouthMode;
use super::prepared::{PreparedOutside, frequency_range};
use crate::complex::Complex;
use crate::constants::wavenumber;
use crate::math;
use crate::waveguide_mode::Family;

/// Nepers from the back source to the probes beyond which the near one is used, for
/// each order. Near its cutoff TM01 needs the tubes.
const TOO_FAR: [f64; 3] = [2.0, 1.0, 1.0];

/// The outside of a can at one frequency.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct OutsideSolution {
    /// Frequency, Hz.
    pub frequency_hz: f64,
    /// TM01, TE11 and TE21: the place is the azimuthal order.
    pub modes: [MouthMode; 3],
}

impl OutsideSolution {
    /// The TE11 mode.
    #[must_use]
    pub const fn te11(&self) -> &MouthMode {
        &self.modes[1]
    }

    /// The TM01 mode.
    #[must_use]
    pub const fn tm01(&self) -> &MouthMode {
        &self.modes[0]
    }

    /// The TE21 mode.
    #[must_use]
    pub const fn te21(&self) -> &MouthMode {
        &self.modes[2]
    }
}

/// A mode's standing wave along the can: `cos(hz)` and `sin(hz)/h` with `h²` of
/// either sign, both smooth through cutoff.
fn standing(square: f64, z: f64) -> (f64, f64) {
    let argument = square * z * z;
    if math::fabs(argument) < 1e-6 {
        return (1.0 - 0.5 * argument, z * (1.0 - argument / 6.0));
    }
    let h = math::sqrt(math::fabs(square));
    if square > 0.0 {
        let (s, c) = math::sin_cos(h * z);
        (c, s / h)
    } else {
        let e = math::exp(h * z);
        (0.5 * (e + 1.0 / e), 0.5 * (e - 1.0 / e) / h)
    }
}

/// The source that feeds a mode with `h²`, by role.
fn source(z: &[f64; ROLES], square: f64, too_far: f64) -> usize {
    let nepers = math::sqrt((-square).max(0.0)) * (z[BACK_PROBE] - z[BACK_SOURCE]);
    if nepers > too_far && z[NEAR_SOURCE].is_finite() {
        NEAR_SOURCE
    } else {
        BACK_SOURCE
    }
}

impl PreparedOutside {
    /// Solves at one frequency, not above the one it was prepared for.
    ///
    /// # Errors
    /// [`OutsideError::Frequency`].
    pub fn solve(&self, frequency_hz: f64) -> Result<OutsideSolution, OutsideError> {
        let low_hz = frequency_range(self.outline.radius_m).0;
        if !(low_hz..=self.top_hz * (1.0 + 1e-9)).contains(&frequency_hz) {
            return Err(OutsideError::Frequency {
                frequency_hz,
                low_hz,
                high_hz: self.top_hz,
            });
        }
        let k = wavenumber(frequency_hz);
        let modes = self.assemble(k).map(|system| self.mouth_mode(k, system));
        Ok(OutsideSolution {
            frequency_hz,
            modes,
        })
    }

    /// Solves one order.
    fn mouth_mode(&self, k: f64, mut system: System) -> MouthMode {
        let order = system.order();
        let a = self.outline.radius_m;
        let mode = MODES.get(order).copied().unwrap_or(MODES[1]);
        let cutoff = mode.root().unwrap_or(0.0) / a;
        let square = (k - cutoff) * (k + cutoff);
        let z = self.probes.z.get(order).copied().unwrap_or_default();
        let source = source(&z, square, TOO_FAR.get(order).copied().unwrap_or(1.0));
        system.matrix.factor();
        let mut currents: Vec<Complex> = system.rows[source].iter().map(|row| -*row).collect();
        system.matrix.solve(&mut currents);
        // The mode's field at a probe, over -jη and the overlap.
        let seen = |probe: usize| {
            let own = system.mutual[probe][source];
            system.rows[probe]
                .iter()
                .zip(&currents)
                .fold(own, |sum, (row, current)| sum + *row * *current)
        };
        let (front, back) = (seen(FRONT_PROBE), seen(BACK_PROBE));
        let (c1, s1) = standing(square, z[FRONT_PROBE]);
        let (c2, s2) = standing(square, z[BACK_PROBE]);
        // The field at z is `value cos(hz) + slope sin(hz)/h`, the rim at z = 0.
        let determinant = c1 * s2 - c2 * s1;
        let value = (front.scale(s2) - back.scale(s1)).scale(1.0 / determinant);
        let slope = (back.scale(c1) - front.scale(c2)).scale(1.0 / determinant);
        let (admittance, transverse) = match mode.family {
            Family::Te => ((Complex::J * slope / value).scale(1.0 / k), value),
            // Seen by its axial field, whose slope is the transverse field.
            Family::Tm => (
                (-Complex::J * value / slope).scale(k),
                slope.scale(1.0 / cutoff),
            ),
        };
        let overlap = self.probes.overlap(order, square);
        let mut series = self.series(k, order, source, &system, &currents);
        series.scale((transverse * Complex::new(0.0, -1.0 / overlap)).inv());
        MouthMode {
            ka: k * a,
            k,
            centre_m: self.centre_m(),
            radius_m: a,
            admittance,
            series,
        }
    }

    /// Middle of the body on the axis, m in front of the rim.
    fn centre_m(&self) -> f64 {
        0.5 * (self.outline.front_m() - self.outline.length_m)
    }

    fn series(
        &self,
        k: f64,
        order: usize,
        source: usize,
        system: &System,
        currents: &[Complex],
    ) -> FarSeries {
        let unknown = |n: usize| currents.get(n).copied().unwrap_or(Complex::ZERO);
        let mut list = Vec::with_capacity(self.arc.panels.len() + 8);
        for (n, panel) in self.arc.panels.iter().enumerate() {
            let along = [0, 1].map(|end: usize| {
                let triangles = panel.ends[end].triangles();
                triangles
                    .iter()
                    .fold(Complex::ZERO, |sum, &(triangle, sign)| {
                        sum + unknown(triangle).scale(sign)
                    })
            });
            let round = if order == 0 {
                Complex::ZERO
            } else {
                unknown(system.triangles() + n)
            };
            list.push((panel, PanelCurrent { along, round }));
        }
        for (n, carrier) in self.probes.carriers.iter().enumerate() {
            let Some(carrier) = carrier else { continue };
            let Some(Some(share)) = carrier.shares.get(order) else {
                continue;
            };
            if carrier.role != source {
                continue;
            }
            if let Some((_, current)) = list.get_mut(n) {
                current.add(share, Complex::ONE);
            } else if let Some(panel) = self.panel(n) {
                let mut current = PanelCurrent::default();
                current.add(share, Complex::ONE);
                list.push((panel, current));
            }
        }
        let half = 0.5 * (self.outline.length_m + self.outline.front_m());
        let size = math::hypot(half, self.outline.widest_m());
        let terms = terms(wavenumber(self.top_hz), size);
        FarSeries::new(order, terms, k, self.centre_m(), &list)
    }
}
