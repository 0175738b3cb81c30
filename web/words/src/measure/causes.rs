//! Dimensions that may be off, and by how much.

use tinwave_core::diagnosis::Estimate;
use tinwave_core::dimension::Dimension;
use tinwave_maker::entry::{LengthUnit, format_decimal, format_length_signed, format_metres};

/// Twice the standard deviation either way holds 95 % of cases.
const BOUND: f64 = 2.0;

/// A dimension in plain words, inside a sentence.
#[must_use]
pub const fn dimension(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::ProbeLength => "wire length",
        Dimension::BackshortDistance => "distance from the back wall",
        Dimension::InsideDiameter => "inside diameter",
        Dimension::HoleDiameter => "hole round the wire",
        Dimension::ShuntCapacitance => "stray capacitance at the hole",
        Dimension::OpenLength => "inside length",
        Dimension::WireDiameter => "wire diameter",
    }
}

/// The same at the head of a line.
#[must_use]
pub const fn dimension_head(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::ProbeLength => "Wire length",
        Dimension::BackshortDistance => "Distance from the back wall",
        Dimension::InsideDiameter => "Inside diameter",
        Dimension::HoleDiameter => "Hole round the wire",
        Dimension::ShuntCapacitance => "Stray capacitance at the hole",
        Dimension::OpenLength => "Inside length",
        Dimension::WireDiameter => "Wire diameter",
    }
}

/// A deviation's size with its unit.
fn size(dimension: Dimension, change: f64, unit: LengthUnit) -> String {
    match dimension {
        Dimension::ShuntCapacitance => [&format_decimal(change.abs() * 1e12, 3), " pF"].concat(),
        _ => format_metres(change.abs(), unit),
    }
}

/// A deviation with its sign and unit; nothing has no sign.
#[must_use]
pub fn signed(dimension: Dimension, change: f64, unit: LengthUnit) -> String {
    if dimension == Dimension::ShuntCapacitance {
        let number = format_decimal(change.abs() * 1e12, 3);
        let sign = match (number.trim_matches(['0', '.']).is_empty(), change < 0.0) {
            (true, _) => "",
            (false, true) => "−",
            (false, false) => "+",
        };
        return [sign, &number, " pF"].concat();
    }
    let text = format_length_signed((change * 1e6).round() as i64, unit);
    text.trim_start_matches('±').to_owned()
}

/// A bound with its unit, never narrower than it is: `± 0.4 mm`.
#[must_use]
pub fn bound(dimension: Dimension, sd: f64, unit: LengthUnit) -> String {
    let (step, decimals, symbol) = match (dimension, unit) {
        (Dimension::ShuntCapacitance, _) => (1e-15, 3, "pF"),
        (_, LengthUnit::Millimetre) => (1e-4, 1, "mm"),
        (_, LengthUnit::Inch) => (25.4e-6, 3, "in"),
    };
    let steps = (BOUND * sd / step - 1e-6).ceil().max(1.0);
    let number = format_decimal(steps / 10_f64.powi(i32::from(decimals)), decimals);
    ["± ", &number, " ", symbol].concat()
}

/// A deviation with its bound: `+1.0 mm ± 0.4 mm`.
#[must_use]
pub fn with_bound(estimate: &Estimate, unit: LengthUnit) -> String {
    let off = signed(estimate.dimension, estimate.change, unit);
    [&off, " ", &bound(estimate.dimension, estimate.sd, unit)].concat()
}

/// The one thing that is off, as a heading.
#[must_use]
pub fn off_by(estimate: &Estimate, unit: LengthUnit) -> String {
    let by = size(estimate.dimension, estimate.change, unit);
    let more = estimate.change > 0.0;
    match (estimate.dimension, more) {
        (Dimension::ProbeLength, true) => format!("The wire is {by} too long"),
        (Dimension::ProbeLength, false) => format!("The wire is {by} too short"),
        (Dimension::BackshortDistance, true) => {
            format!("The wire sits {by} too far from the back wall")
        }
        (Dimension::BackshortDistance, false) => {
            format!("The wire sits {by} too near the back wall")
        }
        (Dimension::InsideDiameter, true) => format!("The can is {by} wider than designed"),
        (Dimension::InsideDiameter, false) => format!("The can is {by} narrower than designed"),
        (Dimension::HoleDiameter, true) => format!("The hole is {by} wider than designed"),
        (Dimension::HoleDiameter, false) => format!("The hole is {by} narrower than designed"),
        (Dimension::ShuntCapacitance, true) => {
            format!("{by} more stray capacitance than designed")
        }
        (Dimension::ShuntCapacitance, false) => {
            format!("{by} less stray capacitance than designed")
        }
        (Dimension::OpenLength, true) => format!("The can is {by} longer than designed"),
        (Dimension::OpenLength, false) => format!("The can is {by} shorter than designed"),
        (Dimension::WireDiameter, true) => format!("The wire is {by} thicker than designed"),
        (Dimension::WireDiameter, false) => format!("The wire is {by} thinner than designed"),
    }
}

/// Names of several, one after the other.
#[must_use]
pub fn dimensions(all: &[Dimension]) -> String {
    let names: Vec<&str> = all.iter().map(|one| dimension(*one)).collect();
    names.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use LengthUnit::{Inch, Millimetre};

    #[test]
    fn a_bound_is_never_narrower_than_it_is() {
        let length = Dimension::ProbeLength;
        assert_eq!(bound(length, 0.151e-3, Millimetre), "± 0.4 mm");
        assert_eq!(bound(length, 0.15e-3, Millimetre), "± 0.3 mm");
        assert_eq!(bound(length, 1e-9, Millimetre), "± 0.1 mm");
        assert_eq!(bound(length, 0.127e-3, Inch), "± 0.010 in");
        assert_eq!(
            bound(Dimension::ShuntCapacitance, 2e-15, Millimetre),
            "± 0.004 pF"
        );
    }

    #[test]
    fn nothing_has_no_sign() {
        assert_eq!(signed(Dimension::ProbeLength, 2e-5, Millimetre), "0.0 mm");
        assert_eq!(signed(Dimension::ProbeLength, -1e-3, Millimetre), "−1.0 mm");
        assert_eq!(
            signed(Dimension::ShuntCapacitance, -1e-17, Inch),
            "0.000 pF"
        );
        assert_eq!(
            signed(Dimension::ShuntCapacitance, 2e-14, Inch),
            "+0.020 pF"
        );
    }
}
