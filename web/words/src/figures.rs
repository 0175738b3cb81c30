//! How figures are rounded and written, by one rule for the whole page: what is known to
//! two figures is said with two.

use tinwave_maker::entry::{LengthUnit, format_decimal};

const FOOT_M: f64 = 0.304_8;
const MILE_M: f64 = 1_609.344;

/// A number to so many decimals, zeros at the end left out.
#[must_use]
pub fn trimmed(value: f64, decimals: u8) -> String {
    let text = format_decimal(value, decimals);
    let short = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    if short == "−0" {
        "0".to_owned()
    } else {
        short.to_owned()
    }
}

/// A number to two figures: `1.9`, `19`, `190`; never finer than a hundredth.
fn two_figures(value: f64) -> String {
    let size = value.abs();
    if size >= 9.95 {
        let decade = 10_f64.powf(size.log10().floor() - 1.0).max(1.0);
        format_decimal((value / decade).round() * decade, 0)
    } else if size >= 0.995 {
        format_decimal(value, 1)
    } else {
        format_decimal(value, 2)
    }
}

/// The next number of two figures that is no smaller, in whole tenths at least.
fn two_figures_up(value: f64) -> f64 {
    if value <= 0.0 {
        return value;
    }
    let decade = 10_f64.powf(value.log10().floor() - 1.0).max(0.1);
    // A billionth over is an error of rounding.
    (value / decade - 1e-9).ceil() * decade
}

/// A figure as it was entered: to three figures or to the whole number.
fn as_entered(value: f64) -> String {
    let size = value.abs();
    if size >= 100.0 {
        format_decimal(value, 0)
    } else if size >= 10.0 {
        trimmed(value, 1)
    } else {
        trimmed(value, 2)
    }
}

/// A distance and its unit, chosen by its size.
fn scaled(metres: f64, unit: LengthUnit, long_m: f64) -> (f64, &'static str) {
    match unit {
        LengthUnit::Millimetre if metres.abs() < long_m => (metres, "m"),
        LengthUnit::Millimetre => (metres / 1e3, "km"),
        LengthUnit::Inch if metres.abs() < long_m.max(MILE_M) => (metres / FOOT_M, "ft"),
        LengthUnit::Inch => (metres / MILE_M, "mi"),
    }
}

/// A value and its unit, apart: a figure shows them in two sizes.
#[must_use]
pub fn joined((value, unit): (String, &'static str)) -> String {
    [value.as_str(), " ", unit].concat()
}

/// A distance as it was entered: `300 m`, `984 ft`, `30 km`.
#[must_use]
pub fn entered_distance(metres: f64, unit: LengthUnit) -> String {
    let (value, symbol) = scaled(metres, unit, 9_999.5);
    joined((as_entered(value), symbol))
}

/// A distance that is worked out, to two figures: `1.9 km`, `430 m`.
#[must_use]
pub fn distance(metres: f64, unit: LengthUnit) -> String {
    joined(distance_parts(metres, unit))
}

/// The same, value and unit apart.
#[must_use]
pub fn distance_parts(metres: f64, unit: LengthUnit) -> (String, &'static str) {
    let (value, symbol) = scaled(metres, unit, 995.0);
    (two_figures(value), symbol)
}

/// A distance to be kept, rounded up: whole centimetres below a metre, half inches below
/// three feet, else to two figures.
#[must_use]
pub fn distance_at_least(metres: f64, unit: LengthUnit) -> (String, &'static str) {
    let up = |value: f64, parts: f64| (value * parts - 1e-9).ceil() / parts;
    match unit {
        LengthUnit::Millimetre if metres < 0.995 => (trimmed(up(metres * 100.0, 1.0), 0), "cm"),
        LengthUnit::Inch if metres < 3.0 * FOOT_M => (trimmed(up(metres / 0.025_4, 2.0), 1), "in"),
        _ => {
            let (value, symbol) = scaled(metres, unit, 1_000.0);
            (trimmed(two_figures_up(value), 1), symbol)
        }
    }
}

/// A length that a hand can span, to two figures: millimetres or inches below a metre.
#[must_use]
pub fn hand_length(metres: f64, unit: LengthUnit) -> String {
    if metres.abs() >= 0.995 {
        return distance(metres, unit);
    }
    let in_unit = match unit {
        LengthUnit::Millimetre => metres * 1e3,
        LengthUnit::Inch => metres / 0.025_4,
    };
    joined((two_figures(in_unit), unit.symbol()))
}

/// Unit of a distance axis that is so long, and its worth in metres.
#[must_use]
pub fn axis_unit(longest_m: f64, unit: LengthUnit) -> (&'static str, f64) {
    match unit {
        LengthUnit::Millimetre if longest_m < 5_000.0 => ("m", 1.0),
        LengthUnit::Millimetre => ("km", 1e3),
        LengthUnit::Inch if longest_m < MILE_M => ("ft", FOOT_M),
        LengthUnit::Inch => ("mi", MILE_M),
    }
}

/// Tenths of a decibel.
#[must_use]
pub fn db(value: f64) -> String {
    [&format_decimal(value, 1), " dB"].concat()
}

/// Percent of a fraction: whole from 10 %, else one decimal.
#[must_use]
pub fn percent(fraction: f64) -> String {
    let hundred = 100.0 * fraction;
    let decimals = u8::from(hundred.abs() < 9.95);
    [&format_decimal(hundred, decimals), " %"].concat()
}

/// How far below the band something lies, as a share of the band's lower edge, of what
/// that edge lies above it as a share of itself: 0.25 above is 0.2 below.
#[must_use]
pub fn share_below(room: f64) -> f64 {
    room / (1.0 + room)
}

/// A change in decibels with its sign, without the unit.
#[must_use]
pub fn signed_db(value: f64) -> String {
    let number = format_decimal(value.abs(), 1);
    let sign = match (number.as_str(), value < 0.0) {
        ("0.0", _) => "",
        (_, true) => "−",
        (_, false) => "+",
    };
    [sign, &number].concat()
}

/// The same in hundredths where tenths would be nothing, or much too coarse.
#[must_use]
pub fn small_signed_db(value: f64) -> String {
    if value.abs() >= 0.095 {
        return signed_db(value);
    }
    let number = format_decimal(value.abs(), 2);
    let sign = match (number.as_str(), value < 0.0) {
        ("0.00", _) => return "0".to_owned(),
        (_, true) => "−",
        (_, false) => "+",
    };
    [sign, &number].concat()
}

/// Whole decibels without their sign, for sentences. Never `0` of what is not zero.
#[must_use]
pub fn whole_db(value: f64) -> String {
    let size = value.abs();
    let decimals = if size < 0.5 { 1 } else { 0 };
    [&format_decimal(size, decimals), " dB"].concat()
}

/// The same with a minus where something is missing, value and unit apart.
#[must_use]
pub fn whole_db_parts(value: f64) -> (String, &'static str) {
    let decimals = if value.abs() < 0.5 { 1 } else { 0 };
    (format_decimal(value, decimals), "dB")
}

/// A level.
#[must_use]
pub fn dbm(value: f64) -> String {
    [&format_decimal(value, 1), " dBm"].concat()
}

/// An angle: whole degrees, tenths below ten.
#[must_use]
pub fn degrees(value: f64) -> String {
    let decimals = if value.abs() >= 9.95 { 0 } else { 1 };
    [&format_decimal(value, decimals), "°"].concat()
}

/// An angle in whole degrees.
#[must_use]
pub fn whole_degrees(value: f64) -> String {
    [&trimmed(value, 0), "°"].concat()
}

/// Power of a level: `63 mW`.
#[must_use]
pub fn watts(dbm: f64) -> String {
    let milliwatts = 10_f64.powf(dbm / 10.0);
    if milliwatts >= 995.0 {
        [&two_figures(milliwatts / 1e3), " W"].concat()
    } else {
        [&two_figures(milliwatts), " mW"].concat()
    }
}

#[cfg(test)]
mod tests {
    use super::{
        distance, distance_at_least, entered_distance, signed_db, small_signed_db, watts, whole_db,
    };
    use tinwave_maker::entry::LengthUnit::{Inch, Millimetre};

    #[test]
    fn what_is_worked_out_has_two_figures() {
        assert_eq!(distance(1_454.0, Millimetre), "1.5 km");
        assert_eq!(distance(433.0, Millimetre), "430 m");
        assert_eq!(distance(1.834, Millimetre), "1.8 m");
        assert_eq!(distance(12_345.0, Millimetre), "12 km");
        // 1454 m over 0.3048 m is 4770 ft; 3 km over 1609.344 m 1.86 mi.
        assert_eq!(distance(1_454.0, Inch), "4800 ft");
        assert_eq!(distance(3_000.0, Inch), "1.9 mi");
    }

    #[test]
    fn what_was_entered_stays() {
        assert_eq!(entered_distance(300.0, Millimetre), "300 m");
        assert_eq!(entered_distance(1_250.0, Millimetre), "1250 m");
        assert_eq!(entered_distance(30e3, Millimetre), "30 km");
        assert_eq!(entered_distance(304.8, Inch), "1000 ft");
    }

    #[test]
    fn a_distance_to_be_kept_is_never_rounded_down() {
        let said = |metres, unit| super::joined(distance_at_least(metres, unit));
        assert_eq!(said(0.7103, Millimetre), "72 cm");
        assert_eq!(said(12.31, Millimetre), "13 m");
        assert_eq!(said(7.0, Millimetre), "7 m");
        // 0.7103 m is 27.97 in.
        assert_eq!(said(0.7103, Inch), "28 in");
        assert_eq!(said(0.2, Inch), "8 in");
    }

    #[test]
    fn changes_have_signs_and_levels_watts() {
        assert_eq!(signed_db(-0.04), "0.0");
        assert_eq!(signed_db(-3.0), "−3.0");
        assert_eq!(small_signed_db(-0.034), "−0.03");
        assert_eq!(small_signed_db(0.0949), "+0.09");
        assert_eq!(small_signed_db(-0.096), "−0.1");
        assert_eq!(small_signed_db(0.0), "0");
        // 10^1.8 = 63.1.
        assert_eq!(watts(18.0), "63 mW");
        assert_eq!(watts(61.761), "1500 W");
        assert_eq!(whole_db(-0.2), "0.2 dB");
    }
}
