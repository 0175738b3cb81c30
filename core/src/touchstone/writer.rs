//! Writes a one-port file.

use alloc::string::String;

use crate::complex::Complex;
use crate::math;

/// Digits after the point: eleven significant ones.
const DECIMALS: u32 = 10;
const SCALE: f64 = 1e10;

/// A version 1 file in Hz, S, RI: reflection against `reference_ohm` over
/// frequency in Hz (ascending), eleven significant digits. What is no number is
/// left out.
#[must_use]
pub fn write_one_port(points: &[(f64, Complex)], reference_ohm: f64) -> String {
    let mut text = String::from("# Hz S RI R ");
    push_number(&mut text, reference_ohm);
    text.push('\n');
    for (frequency_hz, reflection) in points {
        if !(frequency_hz.is_finite() && reflection.is_finite()) {
            continue;
        }
        for (value, end) in [
            (*frequency_hz, ' '),
            (reflection.re, ' '),
            (reflection.im, '\n'),
        ] {
            push_number(&mut text, value);
            text.push(end);
        }
    }
    text
}

/// Writes `d.dddddddddde±x`; the formatter of the standard library would weigh
/// more than all of this.
fn push_number(text: &mut String, value: f64) {
    if value < 0.0 {
        text.push('-');
    }
    let size = math::fabs(value);
    let mut exponent = if size > 0.0 && size.is_finite() {
        math::floor(math::log10(size))
    } else {
        0.0
    };
    let mut digits = whole(size / math::pow(10.0, exponent) * SCALE);
    if digits >= 10_u64.pow(DECIMALS + 1) {
        digits /= 10;
        exponent += 1.0;
    }
    let unit = 10_u64.pow(DECIMALS);
    push_digits(text, digits / unit, 1);
    text.push('.');
    push_digits(text, digits % unit, DECIMALS);
    text.push('e');
    if exponent < 0.0 {
        text.push('-');
    }
    push_digits(text, whole(math::fabs(exponent)), 1);
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a float-to-integer cast saturates, and NaN becomes 0"
)]
fn whole(value: f64) -> u64 {
    math::round(value) as u64
}

/// At least `width` digits, zeros in front.
fn push_digits(text: &mut String, value: u64, width: u32) {
    if width > 1 || value > 9 {
        push_digits(text, value / 10, width.saturating_sub(1));
    }
    let digit = u32::try_from(value % 10).ok();
    text.extend(digit.and_then(|digit| char::from_digit(digit, 10)));
}
