//! The port's extra length: air line between the analyser's plane and the can's.

use alloc::vec::Vec;
use core::f64::consts::PI;

use crate::complex::Complex;
use crate::constants::SPEED_OF_LIGHT;
use crate::least_squares::SquareMatrix;

/// Longest extra length looked for, metres.
const LONGEST_M: f64 = 3.0;

/// What one passage there and back turns a reflection by.
pub(super) fn turn(length_m: f64, frequency_hz: f64) -> Complex {
    Complex::from_polar(1.0, -4.0 * PI * frequency_hz * length_m / SPEED_OF_LIGHT)
}

/// Reflections (frequency in Hz) as seen through `length_m` of lossless air line.
#[must_use]
pub fn with_port_length(points: &[(f64, Complex)], length_m: f64) -> Vec<(f64, Complex)> {
    let turned = |(hz, s): &(f64, Complex)| (*hz, *s * turn(length_m, *hz));
    points.iter().map(turned).collect()
}

/// Reflections with `length_m` of air line between analyser and can taken away.
#[must_use]
pub fn remove_port_length(points: &[(f64, Complex)], length_m: f64) -> Vec<(f64, Complex)> {
    with_port_length(points, -length_m)
}

/// The length with which a model comes nearest to a measurement, small changes of
/// the model allowed: `slopes` by each, `known` the information on them from before
/// (residuals over `noise`). The shortest where several do equally well.
pub(super) fn search(
    measured: &[(f64, Complex)],
    model: &[Complex],
    slopes: &[Vec<Complex>],
    known: &SquareMatrix,
    noise: f64,
) -> Option<f64> {
    let (first, last) = (measured.first()?, measured.last()?);
    let gaps = measured.len().saturating_sub(1).max(1) as f64;
    let gap_hz = ((last.0 - first.0) / gaps).max(1.0);
    // Beyond half a turn from point to point a longer line looks like a shorter one.
    let longest = LONGEST_M.min(0.2 * SPEED_OF_LIGHT / gap_hz);
    // A sixteenth of a turn at the top frequency.
    let step = SPEED_OF_LIGHT / last.0.max(1.0) / 32.0;
    let mut normal = known.clone();
    for (i, one) in slopes.iter().enumerate() {
        for (k, other) in slopes.iter().enumerate() {
            normal.add(i, k, product(one, other) / (noise * noise));
        }
    }
    let inverse = normal.inverse()?;
    let cost = |length: f64| -> f64 {
        let off: Vec<Complex> = measured
            .iter()
            .zip(model)
            .map(|((hz, m), s)| *s - *m * turn(-length, *hz))
            .collect();
        let weight = 1.0 / (noise * noise);
        let pulls: Vec<f64> = slopes.iter().map(|d| weight * product(d, &off)).collect();
        let shifts = inverse.times(&pulls);
        let gained: f64 = pulls.iter().zip(&shifts).map(|(a, b)| a * b).sum();
        weight * product(&off, &off) - gained
    };
    let mut best = (cost(0.0), 0.0);
    let mut n = 1.0;
    while n * step <= longest {
        for length in [n * step, -n * step] {
            let value = cost(length);
            if value < best.0 {
                best = (value, length);
            }
        }
        n += 1.0;
    }
    // Between the points of the comb.
    let mut width = step;
    while width > 1e-5 {
        width *= 0.5;
        for length in [best.1 - width, best.1 + width] {
            let value = cost(length);
            if value < best.0 {
                best = (value, length);
            }
        }
    }
    Some(best.1)
}

/// Scalar product of two lists as plain numbers.
fn product(a: &[Complex], b: &[Complex]) -> f64 {
    a.iter()
        .zip(b)
        .map(|(a, b)| a.re * b.re + a.im * b.im)
        .sum()
}
