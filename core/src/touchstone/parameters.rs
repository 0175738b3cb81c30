//! Network parameters of any kind as scattering parameters.
//!
//! With `v = a + b` and `i = a - b` (normalised), every kind is `x = M y` where
//! each `x` is a `v` or an `i` and the `y` of the same port the other one. Then
//! `S = D (1 + M)⁻¹ (M - 1)`, `D` diagonal: 1 where `x` is a voltage, -1 where it
//! is a current. Waves after D. M. Pozar, *Microwave Engineering*, 4th ed. 2012,
//! section 4.3; real reference impedances.

use super::option_line::{Format, Parameter};
use crate::complex::Complex;
use crate::math;

/// Two by two; a one-port uses the first place.
pub(super) type Matrix = [[Complex; 2]; 2];

/// A pair of a file as a complex number.
pub(super) fn complex(format: Format, first: f64, second: f64) -> Complex {
    let angle = second * (core::f64::consts::PI / 180.0);
    match format {
        Format::RealImaginary => Complex::new(first, second),
        Format::Magnitude => Complex::from_polar(first, angle),
        Format::Decibel => Complex::from_polar(math::pow(10.0, first / 20.0), angle),
    }
}

/// Whether the quantity on the left of each port is a voltage.
const fn left_is_voltage(parameter: Parameter) -> [bool; 2] {
    match parameter {
        Parameter::S | Parameter::Z => [true, true],
        Parameter::Y => [false, false],
        Parameter::H => [true, false],
        Parameter::G => [false, true],
    }
}

/// Ohms and siemens divided by the references, as version 1 files have them.
pub(super) fn normalised(parameter: Parameter, values: Matrix, reference_ohm: [f64; 2]) -> Matrix {
    if parameter == Parameter::S {
        return values;
    }
    let voltage = left_is_voltage(parameter);
    let factor = |port: usize, voltage: bool| {
        let root = math::sqrt(reference_ohm.get(port).copied().unwrap_or(50.0));
        if voltage { 1.0 / root } else { root }
    };
    let mut out = values;
    for (row, line) in out.iter_mut().enumerate() {
        let left = factor(row, voltage.get(row).copied().unwrap_or(true));
        for (column, value) in line.iter_mut().enumerate() {
            let right = factor(column, !voltage.get(column).copied().unwrap_or(true));
            *value = value.scale(left / right);
        }
    }
    out
}

/// Scattering parameters of normalised ones; `None` where they have none.
pub(super) fn scattering(parameter: Parameter, m: Matrix, one_port: bool) -> Option<Matrix> {
    if parameter == Parameter::S {
        return Some(m);
    }
    let signs = left_is_voltage(parameter).map(|voltage| if voltage { 1.0 } else { -1.0 });
    let [[m11, m12], [m21, m22]] = m;
    if one_port {
        let s = ((m11 - 1.0) / (m11 + 1.0)).scale(signs[0]);
        return s
            .is_finite()
            .then_some([[s, Complex::ZERO], [Complex::ZERO; 2]]);
    }
    let (p, q) = (m11 + 1.0, m22 + 1.0);
    let inverse = (p * q - m12 * m21).inv();
    let (r, t) = (m11 - 1.0, m22 - 1.0);
    let s = [
        [
            ((q * r - m12 * m21) * inverse).scale(signs[0]),
            ((q * m12 - m12 * t) * inverse).scale(signs[0]),
        ],
        [
            ((p * m21 - m21 * r) * inverse).scale(signs[1]),
            ((p * t - m21 * m12) * inverse).scale(signs[1]),
        ],
    ];
    s.iter()
        .flatten()
        .all(|value| value.is_finite())
        .then_some(s)
}
