//! Figures in words: distances in metres and feet, levels, small lengths.

use tinwave_web::entry::{LengthUnit, format_decimal, format_metres};

const FOOT_M: f64 = 0.3048;
const MILE_M: f64 = 1609.344;

/// So many digits that three figures are told.
fn three_figures(value: f64) -> String {
    let size = value.abs();
    if size >= 999.5 {
        let decade = 10_f64.powf(size.log10().floor() - 2.0);
        format_decimal((value / decade).round() * decade, 0)
    } else if size >= 99.95 {
        format_decimal(value, 0)
    } else if size >= 9.995 {
        format_decimal(value, 1)
    } else {
        format_decimal(value, 2)
    }
}

/// The next number of three figures that is no smaller, in whole hundredths at least.
fn three_figures_or_more(value: f64) -> f64 {
    if value <= 0.0 {
        return value;
    }
    let decade = 10_f64.powf(value.log10().floor() - 2.0).max(0.01);
    // A billionth over is an error of rounding.
    (value / decade - 1e-9).ceil() * decade
}

/// A distance along the path: `300 m`, `984 ft (300 m)`.
pub(super) fn distance(metres: f64, unit: LengthUnit) -> String {
    distance_of(metres, unit, |value| value)
}

/// A distance to be kept, rounded up in every unit shown.
pub(super) fn distance_at_least(metres: f64, unit: LengthUnit) -> String {
    distance_of(metres, unit, three_figures_or_more)
}

fn distance_of(metres: f64, unit: LengthUnit, rounded: fn(f64) -> f64) -> String {
    let three_figures = |value| three_figures(rounded(value));
    if !metres.is_finite() {
        return "beyond any distance".to_owned();
    }
    let metric = if metres.abs() < 1_000.0 {
        [&three_figures(metres), " m"].concat()
    } else {
        [&three_figures(metres / 1e3), " km"].concat()
    };
    match unit {
        LengthUnit::Millimetre => metric,
        LengthUnit::Inch => {
            let imperial = if metres.abs() < 2.0 * MILE_M {
                [&three_figures(metres / FOOT_M), " ft"].concat()
            } else {
                [&three_figures(metres / MILE_M), " mi"].concat()
            };
            [&imperial, " (", &metric, ")"].concat()
        }
    }
}

/// A length that a hand can span: millimetres or inches below a metre.
pub(super) fn small(metres: f64, unit: LengthUnit) -> String {
    if metres.abs() < 1.0 {
        format_metres(metres, unit)
    } else {
        distance(metres, unit)
    }
}

/// The unit of a distance axis that is so long, and its worth in metres.
pub(super) fn axis_unit(longest_m: f64, unit: LengthUnit) -> (&'static str, f64) {
    match unit {
        LengthUnit::Millimetre if longest_m < 5_000.0 => ("m", 1.0),
        LengthUnit::Millimetre => ("km", 1e3),
        LengthUnit::Inch if longest_m < MILE_M => ("ft", FOOT_M),
        LengthUnit::Inch => ("mi", MILE_M),
    }
}

/// Tenths of a decibel.
pub(super) fn db(value: f64) -> String {
    [&format_decimal(value, 1), " dB"].concat()
}

/// A change in decibels with its sign.
pub(super) fn signed_db(value: f64) -> String {
    let number = format_decimal(value.abs(), 1);
    let sign = match (number.as_str(), value < 0.0) {
        ("0.0", _) => "",
        (_, true) => "−",
        (_, false) => "+",
    };
    [sign, &number].concat()
}

/// Whole decibels, for sentences.
pub(super) fn whole_db(value: f64) -> String {
    [&format_decimal(value.abs(), 0), " dB"].concat()
}

/// A level.
pub(super) fn dbm(value: f64) -> String {
    [&format_decimal(value, 1), " dBm"].concat()
}

/// Degrees to a tenth.
pub(super) fn degrees(value: f64) -> String {
    [&format_decimal(value, 1), "°"].concat()
}

/// Power of a level in words: `63 mW`.
pub(super) fn milliwatts(dbm: f64) -> String {
    let mw = 10_f64.powf(dbm / 10.0);
    if mw >= 1e3 {
        [&three_figures(mw / 1e3), " W"].concat()
    } else {
        [&three_figures(mw), " mW"].concat()
    }
}

#[cfg(test)]
mod tests {
    use super::{distance, distance_at_least, milliwatts, signed_db};
    use tinwave_web::entry::LengthUnit::{Inch, Millimetre};

    #[test]
    fn distances_have_three_figures_in_both_units() {
        assert_eq!(distance(300.0, Millimetre), "300 m");
        assert_eq!(distance(12_345.0, Millimetre), "12.3 km");
        // 300 m over 0.3048 m.
        assert_eq!(distance(300.0, Inch), "984 ft (300 m)");
        assert_eq!(distance(1.82, Millimetre), "1.82 m");
        assert_eq!(distance(1_841.0, Inch), "6040 ft (1.84 km)");
    }

    #[test]
    fn a_distance_to_be_kept_is_never_rounded_down() {
        assert_eq!(distance_at_least(123.2, Millimetre), "124 m");
        assert_eq!(distance_at_least(12.31, Millimetre), "12.4 m");
        assert_eq!(distance_at_least(7.0, Millimetre), "7.00 m");
        assert_eq!(distance_at_least(1_001.0, Millimetre), "1.01 km");
        // 12.31 m over 0.3048 m is 40.387.
        assert_eq!(distance_at_least(12.31, Inch), "40.4 ft (12.4 m)");
    }

    #[test]
    fn changes_have_signs_and_powers_milliwatts() {
        assert_eq!(signed_db(-0.04), "0.0");
        assert_eq!(signed_db(-3.0), "−3.0");
        // 10^1.8 = 63.1.
        assert_eq!(milliwatts(18.0), "63.1 mW");
    }
}
