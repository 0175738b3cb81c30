//! Whole micrometres and kilohertz as text. Integers all the way: what is
//! shown in a box is exactly what is kept.

use std::fmt;

use super::LengthUnit;

/// What stands where a number can't be given.
pub const NO_NUMBER: &str = "–";

/// `value` counted in 10^-`decimals` as a decimal number, with U+2212 for minus.
#[must_use]
pub fn format_scaled(value: i64, decimals: u8) -> String {
    let mut text = String::with_capacity(24);
    if value < 0 {
        text.push('−');
    }
    push_scaled(&mut text, value.unsigned_abs(), decimals);
    text
}

fn push_scaled(text: &mut String, value: u64, decimals: u8) {
    let decimals = usize::from(decimals);
    let digits = value.to_string();
    let (whole, part) = match digits.len().checked_sub(decimals) {
        Some(at) => digits.split_at(at),
        None => ("", digits.as_str()),
    };
    text.push_str(if whole.is_empty() { "0" } else { whole });
    if decimals > 0 {
        text.push('.');
        for _ in part.len()..decimals {
            text.push('0');
        }
        text.push_str(part);
    }
}

/// Without trailing zeros, and without a decimal sign that nothing follows.
fn push_trimmed(text: &mut String, value: u64, decimals: u8) {
    push_scaled(text, value, decimals);
    if decimals > 0 {
        let kept = text.trim_end_matches('0').trim_end_matches('.').len();
        text.truncate(kept);
    }
}

/// `value` in 10^-`decimals` without trailing zeros, with an ASCII minus: the
/// text of an input box.
#[must_use]
pub fn format_trimmed(value: i64, decimals: u8) -> String {
    let mut text = String::with_capacity(24);
    if value < 0 {
        text.push('-');
    }
    push_trimmed(&mut text, value.unsigned_abs(), decimals);
    text
}

/// A float to so many decimals (at most 9), halves away from zero; an en dash
/// where it is no number or has no whole-number form.
#[must_use]
pub fn format_decimal(value: f64, decimals: u8) -> String {
    let decimals = decimals.min(9);
    let mut scale = 1.0;
    for _ in 0..decimals {
        scale *= 10.0;
    }
    nearest(value * scale).map_or_else(|| NO_NUMBER.into(), |whole| format_scaled(whole, decimals))
}

/// The nearest whole number, halves away from zero; `None` outside ±9e15.
pub(crate) fn nearest(value: f64) -> Option<i64> {
    if !value.is_finite() || value.abs() >= 9.0e15 {
        return None;
    }
    let half = if value < 0.0 { -0.5 } else { 0.5 };
    Some((value + half) as i64)
}

/// A result's length without its unit: millimetres to 0.1, inches to 0.001.
#[must_use]
pub fn format_length_number(um: u32, unit: LengthUnit) -> String {
    let mut text = String::new();
    push_length(&mut text, u64::from(um), unit);
    text
}

fn push_length(text: &mut String, um: u64, unit: LengthUnit) {
    match unit {
        LengthUnit::Millimetre => push_scaled(text, (um + 50) / 100, 1),
        LengthUnit::Inch => push_scaled(text, (um * 10 + 127) / 254, 3),
    }
}

/// A result's length: `87.0 mm`, `3.425 in`.
#[must_use]
pub fn format_length(um: u32, unit: LengthUnit) -> String {
    let mut text = format_length_number(um, unit);
    text.push(' ');
    text.push_str(unit.symbol());
    text
}

/// A difference of lengths with its sign: `+0.5 mm`, `−0.5 mm`.
#[must_use]
pub fn format_length_signed(um: i64, unit: LengthUnit) -> String {
    let mut number = String::new();
    push_length(&mut number, um.unsigned_abs().min(1 << 50), unit);
    let zero = number.bytes().all(|byte| byte == b'0' || byte == b'.');
    let sign = match (zero, um < 0) {
        (true, _) => "±",
        (false, true) => "−",
        (false, false) => "+",
    };
    let mut text = String::from(sign);
    text.push_str(&number);
    text.push(' ');
    text.push_str(unit.symbol());
    text
}

/// A length from the physics, in metres, as [`format_length`] writes it.
#[must_use]
pub fn format_metres(metres: f64, unit: LengthUnit) -> String {
    let Some(um) = nearest(metres * 1e6) else {
        return NO_NUMBER.into();
    };
    let mut text = String::new();
    if um < 0 {
        text.push('−');
    }
    push_length(&mut text, um.unsigned_abs(), unit);
    text.push(' ');
    text.push_str(unit.symbol());
    text
}

/// The exact text of an input box, without its unit. Inches go to five places
/// (0.25 µm), which [`super::parse_length`] reads back as the same micrometre.
#[must_use]
pub fn format_length_exact(um: u32, unit: LengthUnit) -> String {
    let mut text = String::new();
    match unit {
        LengthUnit::Millimetre => push_trimmed(&mut text, u64::from(um), 3),
        LengthUnit::Inch => push_trimmed(&mut text, inch_hundred_thousandths(um), 5),
    }
    text
}

/// How this page writes a whole micrometre in inches: in 0.00001 in.
pub(crate) fn inch_hundred_thousandths(um: u32) -> u64 {
    (u64::from(um) * 1000 + 127) / 254
}

/// Inches as a whole number and a fraction in lowest terms.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InchFraction {
    /// Whole inches.
    pub whole: u32,
    /// Upper number; 0 where there is no fraction.
    pub numerator: u32,
    /// Lower number.
    pub denominator: u32,
    /// The true length less the fraction, micrometres.
    pub remainder_um: i32,
}

/// The nearest fraction of an inch over `denominator` (64, 32, 16 …; taken as
/// at least 1 and at most 1024).
#[must_use]
pub fn inch_fraction(um: u32, denominator: u32) -> InchFraction {
    let denominator = denominator.clamp(1, 1024);
    let per_inch = u64::from(denominator);
    let parts = (u64::from(um) * per_inch + 12_700) / 25_400;
    // Remainder: um - parts * 25400 / denominator, to the nearest micrometre.
    let exact = i128::from(um) * i128::from(per_inch) - i128::from(parts) * 25_400;
    let half = i128::from(per_inch / 2) * if exact < 0 { -1 } else { 1 };
    let remainder_um = i32::try_from((exact + half) / i128::from(per_inch)).unwrap_or(0);
    let (mut numerator, mut lower) = (parts % per_inch, per_inch);
    while numerator > 0 && numerator % 2 == 0 && lower % 2 == 0 {
        numerator /= 2;
        lower /= 2;
    }
    let small = |number: u64| u32::try_from(number).unwrap_or(u32::MAX);
    InchFraction {
        whole: small(parts / per_inch),
        numerator: small(numerator),
        denominator: small(lower),
        remainder_um,
    }
}

impl fmt::Display for InchFraction {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.whole, self.numerator) {
            (whole, 0) => write!(f, "{whole} in"),
            (0, above) => write!(f, "{above}/{} in", self.denominator),
            (whole, above) => write!(f, "{whole} {above}/{} in", self.denominator),
        }
    }
}

/// A result's frequency in whole megahertz: `2442 MHz`.
#[must_use]
pub fn format_frequency(khz: u32) -> String {
    let mut text = String::new();
    push_scaled(&mut text, (u64::from(khz) + 500) / 1000, 0);
    text.push_str(" MHz");
    text
}

/// The exact text of an input box, megahertz without unit: `2483.5`.
#[must_use]
pub fn format_frequency_exact(khz: u32) -> String {
    format_trimmed(i64::from(khz), 3)
}

/// A frequency from the physics, in hertz: `2295 MHz`.
#[must_use]
pub fn format_hertz(hertz: f64) -> String {
    let mut text = format_decimal(hertz / 1e6, 0);
    text.push_str(" MHz");
    text
}
