//! Dimensions and their sizes in words.

use tinwave_core::dimension::Dimension;
use tinwave_web::entry::{LengthUnit, format_decimal, format_length_exact, format_trimmed};

/// A dimension in plain words.
pub(super) const fn name(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::ProbeLength => "wire length",
        Dimension::BackshortDistance => "distance from the back wall",
        Dimension::InsideDiameter => "inside diameter",
        Dimension::HoleDiameter => "hole round the wire",
        Dimension::ShuntCapacitance => "stray capacitance at the hole",
        Dimension::OpenLength => "length of the can",
        Dimension::WireDiameter => "wire diameter",
    }
}

/// The same where a line begins with it.
pub(super) fn name_as_head(dimension: Dimension) -> String {
    let name = name(dimension);
    let mut letters = name.chars();
    let first = letters.next().map(|first| first.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
}

/// A tolerance with its unit: `±0.5 mm`.
pub(super) fn tolerance(dimension: Dimension, size: f64, unit: LengthUnit) -> String {
    if dimension == Dimension::ShuntCapacitance {
        return [
            "\u{b1}",
            &format_trimmed((size * 1e15).round() as i64, 3),
            " pF",
        ]
        .concat();
    }
    ["\u{b1}", &fine_length((size * 1e6).round() as u32, unit)].concat()
}

/// A length that is finer than the page's usual tenth of a millimetre.
pub(super) fn fine_length(um: u32, unit: LengthUnit) -> String {
    [&format_length_exact(um, unit), " ", unit.symbol()].concat()
}

/// A VSWR; what is far beyond use is only said to be.
pub(super) fn vswr(value: f64) -> String {
    if value > 20.0 {
        return "over 20".to_owned();
    }
    format_decimal(value, 2)
}

/// A share as per cent.
pub(super) fn per_cent(share: f64) -> String {
    [&format_decimal(100.0 * share, 1), " %"].concat()
}
