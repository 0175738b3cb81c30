//! What a text that was refused most likely means.

use tinwave_core::design_error::Field;

use super::{EntryError, LengthUnit, Quantity, parse_field, quantity};

/// A reading of `text` that is in the field's range, where the text as it stands is
/// not understood or is out of range: with the other unit of length, without groups of
/// digits, in gigahertz. `None` where nothing likely is in range.
#[must_use]
pub fn likely_meaning(field: Field, text: &str, unit: LengthUnit) -> Option<String> {
    let text = text.trim();
    let candidates = match parse_field(field, text, unit) {
        Ok(_) => other_units(field, text, unit),
        Err(
            EntryError::TwoDecimalSigns { suggestion, .. }
            | EntryError::GroupedDigits { suggestion, .. },
        ) => vec![suggestion],
        Err(EntryError::PerhapsGigahertz { text }) => vec![format!("{text} GHz")],
        Err(_) => Vec::new(),
    };
    candidates.into_iter().find(|candidate| {
        parse_field(field, candidate, unit).is_ok_and(|read| field.check(read.value).is_ok())
    })
}

/// The same number with another unit behind it, where it has none.
fn other_units(field: Field, text: &str, unit: LengthUnit) -> Vec<String> {
    let bare = !text
        .chars()
        .any(|c| c.is_ascii_alphabetic() || matches!(c, '"' | '″' | '”'));
    if !bare || !matches!(quantity(field, unit), Quantity::Length(_)) {
        return Vec::new();
    }
    let units: &[&str] = match unit {
        LengthUnit::Millimetre => &["in", "cm"],
        LengthUnit::Inch => &["mm", "cm"],
    };
    units.iter().map(|unit| format!("{text} {unit}")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const MM: LengthUnit = LengthUnit::Millimetre;

    #[test]
    fn a_fraction_among_millimetres_is_inches() {
        let meant = likely_meaning(Field::InsideDiameter, "3 7/8", MM);
        assert_eq!(meant.as_deref(), Some("3 7/8 in"));
    }

    #[test]
    fn a_whole_number_among_inches_is_millimetres() {
        let meant = likely_meaning(Field::InsideDiameter, "87", LengthUnit::Inch);
        assert_eq!(meant.as_deref(), Some("87 mm"));
    }

    #[test]
    fn groups_and_gigahertz_are_offered_as_they_are_meant() {
        let grouped = likely_meaning(Field::OpenLength, "1,234.5", MM);
        assert_eq!(grouped.as_deref(), Some("1234.5"));
        let giga = likely_meaning(Field::BandLow, "2.4", MM);
        assert_eq!(giga.as_deref(), Some("2.4 GHz"));
    }

    #[test]
    fn nothing_is_offered_that_would_be_refused_again() {
        assert_eq!(likely_meaning(Field::InsideDiameter, "0", MM), None);
        assert_eq!(likely_meaning(Field::InsideDiameter, "wide", MM), None);
        assert_eq!(likely_meaning(Field::InsideDiameter, "9000 in", MM), None);
        assert_eq!(likely_meaning(Field::Shunt, "99999", MM), None);
    }
}
