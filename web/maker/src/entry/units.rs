//! Numbers that are kept as floats: a decimal or a fraction, in one of several units.

use super::error::{EntryError, shortened};
use super::number::read;

/// The units that one kind of number may be written in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Units {
    /// Spellings in lower case, each with its worth in the unit that is kept.
    pub spellings: &'static [(&'static str, f64)],
    /// A sentence that names them.
    pub known: &'static str,
}

/// A number and the unit behind it, in lower case; empty where none was written.
///
/// # Errors
/// [`EntryError`]: what is wrong with the text.
pub(crate) fn parse_decimal(text: &str) -> Result<(f64, String), EntryError> {
    let typed = read(text)?;
    let exact = typed.number;
    let size = exact.numerator as f64 / exact.denominator as f64;
    let value = if exact.negative { -size } else { size };
    Ok((value, typed.unit))
}

/// Reads a number in one of the units; a bare number is worth `bare`.
///
/// # Errors
/// [`EntryError`]. Ranges are not looked at.
pub fn parse_in(text: &str, units: Units, bare: f64) -> Result<f64, EntryError> {
    let (value, unit) = parse_decimal(text)?;
    if unit.is_empty() {
        return Ok(value * bare);
    }
    units
        .spellings
        .iter()
        .find(|(known, _)| *known == unit)
        .map(|(_, worth)| value * worth)
        .ok_or_else(|| EntryError::UnknownUnit {
            unit: shortened(&unit),
            known: units.known,
        })
}
