//! Typed numbers: text to whole micrometres and kilohertz, and back.
//!
//! A point or a comma is the decimal sign; anything that can be read in two
//! ways is refused with the reading that would be right. Nothing is cut off
//! in silence: what is finer than a whole unit comes back marked as rounded.

mod error;
mod field;
mod format;
mod likely;
mod measured;
mod number;
mod units;

pub use error::EntryError;
pub use field::{Quantity, field_text, parse_field, quantity, unit_symbol};
pub use format::{
    InchFraction, NO_NUMBER, format_decimal, format_frequency, format_frequency_exact,
    format_hertz, format_length, format_length_exact, format_length_number, format_length_signed,
    format_metres, format_scaled, format_trimmed, inch_fraction,
};
pub use likely::likely_meaning;
pub use measured::{
    PAPER_UM, circumference_of, inside_from_outside, outside_from_circumference, strip_round,
};

pub use error::shortened;

pub use number::plainly;
pub use units::{Units, parse_in};

use number::{Typed, read};
pub(crate) use units::parse_decimal;

/// The unit that a bare length is in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum LengthUnit {
    /// Millimetres.
    #[default]
    Millimetre,
    /// Inches of 25.4 mm.
    Inch,
}

/// A number as it was understood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Entered<T> {
    /// In whole units of the design.
    pub value: T,
    /// Whether the text said something finer than the whole unit, so that the
    /// value is its nearest. To be shown.
    pub rounded: bool,
}

impl<T> Entered<T> {
    /// A value that lost nothing.
    pub const fn exactly(value: T) -> Self {
        Self {
            value,
            rounded: false,
        }
    }
}

impl LengthUnit {
    /// The symbol behind a number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Inch => "in",
        }
    }

    /// The word it is kept under.
    #[must_use]
    pub const fn key(self) -> &'static str {
        self.symbol()
    }

    /// The unit of such a word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        [Self::Millimetre, Self::Inch]
            .into_iter()
            .find(|unit| unit.key() == key)
    }
}

const LENGTH_UNITS: &str = "Lengths are in mm, cm, m, µm or in.";
const FREQUENCY_UNITS: &str = "Frequencies are in MHz, GHz, kHz or Hz.";

/// Reads a length in whole micrometres. A unit in the text (`mm`, `cm`, `m`,
/// `µm`, `in`, `"`, `thou`) overrides `unit`; inches may be fractions.
///
/// # Errors
/// [`EntryError`], whose text says what would be right.
pub fn parse_length(text: &str, unit: LengthUnit) -> Result<Entered<u32>, EntryError> {
    let typed = read(text)?;
    let (up, down, inches) = match typed.unit.as_str() {
        "" if unit == LengthUnit::Inch => (25_400, 1, true),
        "" | "mm" => (1000, 1, false),
        "cm" => (10_000, 1, false),
        "m" => (1_000_000, 1, false),
        "um" | "µm" | "μm" => (1, 1, false),
        "in" | "in." | "inch" | "inches" | "\"" | "″" | "''" | "′′" | "”" => {
            (25_400, 1, true)
        }
        "thou" => (254, 10, false),
        _ => return Err(unknown_unit(&typed, LENGTH_UNITS)),
    };
    let mut entered = unsigned(&typed, up, down)?;
    // How this page itself writes a whole micrometre in inches loses nothing.
    if inches && entered.rounded {
        let own = u128::from(format::inch_hundred_thousandths(entered.value));
        entered.rounded = !typed.number.equals(own, 100_000);
    }
    Ok(entered)
}

/// Reads a frequency in whole kilohertz; megahertz where no unit is written.
///
/// # Errors
/// [`EntryError`]; a bare number below 100 is refused, since gigahertz may be
/// meant.
pub fn parse_frequency(text: &str) -> Result<Entered<u32>, EntryError> {
    let typed = read(text)?;
    let (up, down) = match typed.unit.as_str() {
        "" | "mhz" | "m" => (1000, 1),
        "ghz" | "g" => (1_000_000, 1),
        "khz" | "k" => (1, 1),
        "hz" => (1, 1000),
        _ => return Err(unknown_unit(&typed, FREQUENCY_UNITS)),
    };
    let entered = unsigned(&typed, up, down)?;
    if typed.unit.is_empty() && (1..100_000).contains(&entered.value) {
        return Err(EntryError::PerhapsGigahertz { text: typed.digits });
    }
    Ok(entered)
}

/// Reads a relative permittivity in thousandths.
///
/// # Errors
/// [`EntryError`].
pub fn parse_permittivity(text: &str) -> Result<Entered<u32>, EntryError> {
    let typed = read(text)?;
    if !typed.unit.is_empty() {
        return Err(unknown_unit(&typed, "A permittivity has no unit."));
    }
    unsigned(&typed, 1000, 1)
}

/// Reads a resistance in milliohm; ohm where no unit is written.
///
/// # Errors
/// [`EntryError`].
pub fn parse_ohm(text: &str) -> Result<Entered<u32>, EntryError> {
    let typed = read(text)?;
    match typed.unit.as_str() {
        // The Greek letter and the sign of its own.
        "" | "Ω" | "\u{2126}" | "ohm" | "ohms" => unsigned(&typed, 1000, 1),
        _ => Err(unknown_unit(&typed, "Resistances are in ohm.")),
    }
}

/// Reads a capacitance in femtofarad; picofarad where no unit is written.
///
/// # Errors
/// [`EntryError`].
pub fn parse_picofarad(text: &str) -> Result<Entered<u32>, EntryError> {
    let typed = read(text)?;
    match typed.unit.as_str() {
        "" | "pf" => unsigned(&typed, 1000, 1),
        "ff" => unsigned(&typed, 1, 1),
        _ => Err(unknown_unit(&typed, "Capacitances are in pF or fF.")),
    }
}

/// Reads an angle in thousandths of a degree; it may be below zero.
///
/// # Errors
/// [`EntryError`].
pub fn parse_degrees(text: &str) -> Result<Entered<i32>, EntryError> {
    let typed = read(text)?;
    if !matches!(typed.unit.as_str(), "" | "°" | "deg" | "degrees") {
        return Err(unknown_unit(&typed, "Angles are in degrees."));
    }
    let (size, rounded) = typed.number.scaled(1000, 1);
    let size = i32::try_from(size).map_err(|_| EntryError::TooLarge)?;
    let value = if typed.number.negative { -size } else { size };
    Ok(Entered { value, rounded })
}

/// Reads a whole number.
///
/// # Errors
/// [`EntryError`]; a fraction is refused.
pub fn parse_count(text: &str) -> Result<u32, EntryError> {
    let typed = read(text)?;
    if !typed.unit.is_empty() {
        return Err(unknown_unit(&typed, "This is a plain number."));
    }
    let entered = unsigned(&typed, 1, 1)?;
    if entered.rounded {
        return Err(EntryError::NotWhole);
    }
    Ok(entered.value)
}

fn unknown_unit(typed: &Typed, known: &'static str) -> EntryError {
    EntryError::UnknownUnit {
        unit: shortened(&typed.unit),
        known,
    }
}

fn unsigned(typed: &Typed, up: u128, down: u128) -> Result<Entered<u32>, EntryError> {
    let (size, rounded) = typed.number.scaled(up, down);
    if typed.number.negative && (size > 0 || rounded) {
        return Err(EntryError::Negative);
    }
    let value = u32::try_from(size).map_err(|_| EntryError::TooLarge)?;
    Ok(Entered { value, rounded })
}
