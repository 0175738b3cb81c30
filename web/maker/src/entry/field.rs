//! Which quantity each number of a design is, and its text.

use tinwave_core::design_error::Field;

use super::format::{format_length_exact, format_trimmed};
use super::{
    Entered, EntryError, LengthUnit, parse_count, parse_degrees, parse_frequency, parse_length,
    parse_ohm, parse_permittivity, parse_picofarad,
};

/// What kind of number a field holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// Micrometres, shown in that unit.
    Length(LengthUnit),
    /// Kilohertz, shown in megahertz.
    Frequency,
    /// Thousandths.
    Permittivity,
    /// Milliohm, shown in ohm.
    Resistance,
    /// Femtofarad, shown in picofarad.
    Capacitance,
    /// Thousandths of a degree.
    Angle,
    /// A whole number.
    Count,
}

/// The quantity of a design's number.
#[must_use]
pub const fn quantity(field: Field, unit: LengthUnit) -> Quantity {
    match field {
        Field::Reference => Quantity::Resistance,
        Field::Shunt => Quantity::Capacitance,
        Field::SleevePermittivity => Quantity::Permittivity,
        Field::BandLow | Field::BandHigh | Field::SweepLow | Field::SweepHigh => {
            Quantity::Frequency
        }
        Field::SweepPoints | Field::ScrewCount => Quantity::Count,
        Field::ScrewAngle | Field::MouthAngle => Quantity::Angle,
        _ => Quantity::Length(unit),
    }
}

/// The symbol that stands behind the number; empty for a bare number.
#[must_use]
pub const fn unit_symbol(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Length(unit) => unit.symbol(),
        Quantity::Frequency => "MHz",
        Quantity::Permittivity | Quantity::Count => "",
        Quantity::Resistance => "Ω",
        Quantity::Capacitance => "pF",
        Quantity::Angle => "°",
    }
}

/// The exact text of an input box, without its unit.
#[must_use]
pub fn field_text(field: Field, value: i64, unit: LengthUnit) -> String {
    match (quantity(field, unit), u32::try_from(value)) {
        (Quantity::Length(unit), Ok(um)) => format_length_exact(um, unit),
        (Quantity::Count, _) => format_trimmed(value, 0),
        _ => format_trimmed(value, 3),
    }
}

/// Reads a field's text; the value is in the design's own whole units.
///
/// # Errors
/// [`EntryError`]: what is wrong with the text. Ranges are not looked at.
pub fn parse_field(field: Field, text: &str, unit: LengthUnit) -> Result<Entered<i64>, EntryError> {
    let entered = match quantity(field, unit) {
        Quantity::Length(unit) => parse_length(text, unit)?,
        Quantity::Frequency => parse_frequency(text)?,
        Quantity::Permittivity => parse_permittivity(text)?,
        Quantity::Resistance => parse_ohm(text)?,
        Quantity::Capacitance => parse_picofarad(text)?,
        Quantity::Count => Entered::exactly(parse_count(text)?),
        Quantity::Angle => {
            let angle = parse_degrees(text)?;
            return Ok(Entered {
                value: i64::from(angle.value),
                rounded: angle.rounded,
            });
        }
    };
    Ok(Entered {
        value: i64::from(entered.value),
        rounded: entered.rounded,
    })
}
