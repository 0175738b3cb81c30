//! The point that the waves seem to come from.

use super::sum_pattern::SumPattern;
use crate::complex::Complex;
use crate::constants::wavenumber;
use crate::math;

/// The point on whose sphere the phase of one cut is most even.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PhaseCentre {
    /// In front of the rim's plane (a funnel's throat), m.
    pub axial_m: f64,
    /// Off the axis towards the cut's azimuth, m; 0 but for rounding where TE11
    /// alone radiates.
    pub sideways_m: f64,
}

/// Points to each side of the axis.
const POINTS: i32 = 24;

impl SumPattern {
    /// Phase centre in the cut of an azimuth (rad), over directions up to
    /// `half_angle_rad` off the axis: least squares of the wanted polarisation's
    /// phase, each direction with the weight of its power. `None` where the
    /// directions do not tell (half angle 0, no field).
    #[must_use]
    pub fn phase_centre(&self, azimuth_rad: f64, half_angle_rad: f64) -> Option<PhaseCentre> {
        let k = wavenumber(self.frequency_hz());
        let wanted = |angle: f64| self.wanted_in_cut(azimuth_rad, angle);
        let ahead = wanted(0.0);
        let step = half_angle_rad / f64::from(POINTS);
        // Normal equations of phase = c + k (z cos θ + x sin θ).
        let mut system = [[0.0; 4]; 3];
        for side in [1.0, -1.0] {
            let (mut phase, mut last) = (0.0, ahead);
            for n in 1..=POINTS {
                let angle = side * step * f64::from(n);
                let field = wanted(angle);
                phase += (field * last.conj()).arg();
                last = field;
                let (s, c) = math::sin_cos(angle);
                // From the axis, so that the columns do not cancel.
                add(&mut system, [1.0, k * (c - 1.0), k * s], phase, field);
            }
        }
        add(&mut system, [1.0, 0.0, 0.0], 0.0, ahead);
        let [_, axial_m, sideways_m] = solve(system)?;
        let centre = PhaseCentre {
            axial_m,
            sideways_m,
        };
        (axial_m.is_finite() && sideways_m.is_finite()).then_some(centre)
    }
}

fn add(system: &mut [[f64; 4]; 3], row: [f64; 3], phase: f64, field: Complex) {
    let weight = field.norm_sqr();
    for (equation, a) in system.iter_mut().zip(row) {
        for (place, b) in equation.iter_mut().zip([row[0], row[1], row[2], phase]) {
            *place += weight * a * b;
        }
    }
}

/// Solves three equations by elimination; they are positive definite.
fn solve(mut system: [[f64; 4]; 3]) -> Option<[f64; 3]> {
    for pivot in 0..3 {
        let row = system[pivot];
        if row[pivot].is_nan() || row[pivot] <= 0.0 {
            return None;
        }
        for (n, other) in system.iter_mut().enumerate() {
            if n != pivot {
                let factor = other[pivot] / row[pivot];
                for (place, value) in other.iter_mut().zip(row) {
                    *place -= factor * value;
                }
            }
        }
    }
    let [a, b, c] = system;
    Some([a[3] / a[0], b[3] / b[1], c[3] / c[2]])
}
