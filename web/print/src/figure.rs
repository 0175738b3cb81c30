//! Whole micrometres as figures. Integers all the way, so that the program
//! needs no float formatting and what is written is exactly what is drawn.

use tinwave_maker::entry::LengthUnit;

use crate::fill::{Put, fill};

/// Lengths as figures for people.
pub trait Figures: Copy {
    /// A figure without its unit, to 0.1 mm or 0.001 in.
    #[must_use]
    fn figure(self, um: i64) -> String;

    /// A figure without its unit for wires and holes, to 0.01 mm or 0.001 in.
    #[must_use]
    fn fine_figure(self, um: i64) -> String;

    /// A length with its unit.
    #[must_use]
    fn length(self, um: i64) -> String;

    /// A wire's or hole's length with its unit.
    #[must_use]
    fn fine_length(self, um: i64) -> String;
}

/// Appends a whole number.
pub(crate) fn push_whole(text: &mut String, value: i64) {
    if value < 0 {
        text.put("-");
    }
    push_digits(text, value.unsigned_abs());
}

fn push_digits(text: &mut String, value: u64) {
    if value >= 10 {
        push_digits(text, value / 10);
    }
    // The remainder is a single digit.
    text.push(char::from(b'0' + (value % 10) as u8));
}

/// A whole number.
#[must_use]
pub fn whole(value: i64) -> String {
    let mut text = String::new();
    push_whole(&mut text, value);
    text
}

/// Appends `value` counted in 10^-`decimals`, without trailing zeros.
pub(crate) fn push_scaled(text: &mut String, value: i64, decimals: u32) {
    push_decimal(text, value, decimals, false);
}

/// `value` counted in 10^-`decimals` with all its decimals.
#[must_use]
pub fn fixed(value: i64, decimals: u32) -> String {
    let mut text = String::new();
    push_decimal(&mut text, value, decimals, true);
    text
}

#[inline(never)]
fn push_decimal(text: &mut String, value: i64, decimals: u32, with_zeros: bool) {
    let mut place = 10_u64.saturating_pow(decimals);
    let size = value.unsigned_abs();
    if value < 0 {
        text.put("-");
    }
    push_digits(text, size / place);
    let mut rest = size % place;
    if place > 1 && (with_zeros || rest > 0) {
        text.put(".");
    }
    while place > 1 && (with_zeros || rest > 0) {
        place /= 10;
        push_digits(text, rest / place);
        rest %= place;
    }
}

/// Division to the nearest whole number, halves away from zero.
pub(crate) const fn rounded(value: i64, by: i64) -> i64 {
    let half = if value < 0 { -by / 2 } else { by / 2 };
    (value + half) / by
}

impl Figures for LengthUnit {
    fn figure(self, um: i64) -> String {
        match self {
            Self::Millimetre => fixed(rounded(um, 100), 1),
            Self::Inch => fixed(rounded(um * 10, 254), 3),
        }
    }

    fn fine_figure(self, um: i64) -> String {
        match self {
            Self::Millimetre => fixed(rounded(um, 10), 2),
            Self::Inch => fixed(rounded(um * 10, 254), 3),
        }
    }

    fn length(self, um: i64) -> String {
        fill("{} {}", &[&self.figure(um), self.symbol()])
    }

    fn fine_length(self, um: i64) -> String {
        fill("{} {}", &[&self.fine_figure(um), self.symbol()])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_rounded_to_what_a_maker_can_use() {
        let mm = LengthUnit::Millimetre;
        assert_eq!(mm.length(56_249), "56.2 mm");
        assert_eq!(mm.length(56_250), "56.3 mm");
        assert_eq!(mm.length(0), "0.0 mm");
        assert_eq!(mm.length(-1_050), "-1.1 mm");
        assert_eq!(mm.fine_length(2_053), "2.05 mm");
        // 25.4 mm to the inch (international yard and pound agreement 1959).
        assert_eq!(LengthUnit::Inch.length(101_600), "4.000 in");
        assert_eq!(LengthUnit::Inch.length(56_249), "2.215 in");
    }

    #[test]
    fn scaled_numbers_drop_zeros() {
        let scaled = |value, decimals| {
            let mut text = String::new();
            push_scaled(&mut text, value, decimals);
            text
        };
        assert_eq!(scaled(1_500, 3), "1.5");
        assert_eq!(scaled(-20, 3), "-0.02");
        assert_eq!(scaled(7_000, 3), "7");
        assert_eq!(scaled(i64::MIN, 3), "-9223372036854775.808");
        assert_eq!(whole(-40), "-40");
    }
}
