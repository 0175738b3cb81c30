//! What was refused, and what would be right.

use tinwave_core::design_error::{DesignError, Field};

use super::labels::label;
use tinwave_maker::entry::{LengthUnit, field_text, quantity, unit_symbol};
use tinwave_maker::link::LinkError;

/// The message beside a field: the value and the range that would be right.
#[must_use]
pub fn design_error(error: &DesignError, unit: LengthUnit) -> String {
    let field = error.field;
    // A value beyond every length has no text in inches.
    let unit = match u32::try_from(error.value) {
        Ok(_) => unit,
        Err(_) => LengthUnit::Millimetre,
    };
    let symbol = unit_symbol(quantity(field, unit));
    let gap = if symbol.is_empty() || symbol == "°" {
        ""
    } else {
        " "
    };
    let low = field_text(field, error.low, unit);
    let high = field_text(field, error.high, unit);
    let value = field_text(field, error.value, unit);
    let mut text = format!("{}: {value}{gap}{symbol} is ", label(field).plain);
    text.push_str(if error.value < error.low {
        "too small. "
    } else {
        "too large. "
    });
    let bound_by_other = error.low != field.range().0;
    match field {
        Field::BandHigh if bound_by_other => {
            text.push_str("It must be above the band’s lower edge: ");
        }
        Field::SweepHigh if bound_by_other => {
            text.push_str("It must be above the chart’s first frequency: ");
        }
        _ => text.push_str("It can be "),
    }
    text.push_str(&format!("{low} to {high}{gap}{symbol}."));
    text
}

/// What each key of a link holds, in words.
fn key_words(key: &str) -> &'static str {
    let field = match key {
        "b" => return "the band",
        "n" => return "the name",
        "m" => return "the metal",
        "mo" => return "the mouth",
        "k" => return "the connector",
        "t" => return "the screws",
        "f" => return "the chart’s range",
        "s" => return "the sleeve",
        "d" => Field::InsideDiameter,
        "l" => Field::OpenLength,
        "w" => Field::Wall,
        "r" => Field::BaseRecess,
        "pw" => Field::WireDiameter,
        "pl" => Field::ProbeLength,
        "pd" => Field::BackshortDistance,
        "ph" => Field::HoleDiameter,
        "z" => Field::Reference,
        "c" => Field::Shunt,
        _ => return "a part",
    };
    label(field).plain
}

/// Why a link was not opened. The design on the page stays as it was.
#[must_use]
pub fn link_error(error: &LinkError, unit: LengthUnit) -> String {
    let reason = match error {
        LinkError::Empty => "There is nothing in it.".into(),
        LinkError::TooLong { length, most } => {
            format!("It is {length} characters long; no link of this page has more than {most}.")
        }
        LinkError::NoVersion => {
            "It does not begin like a link of this page, or its beginning was lost.".into()
        }
        LinkError::BadVersion { text } => format!("“{text}” is no version of it."),
        LinkError::BadCharacter { character } => {
            format!("“{character}” stands in no link of this page.")
        }
        LinkError::NoValue { part } => format!("The part “{part}” has no value."),
        LinkError::Duplicate { key } => format!("The part “{key}” stands in it twice."),
        LinkError::Missing { key } => format!(
            "This is missing: {}. Perhaps the link was cut off.",
            key_words(key)
        ),
        LinkError::BadValue { key, value } => {
            format!("“{value}” can’t be read ({}).", key_words(key))
        }
        LinkError::OutOfRange(error) => design_error(error, unit),
    };
    format!(
        "This link was not opened. {reason} Your own design is untouched. Ask for the link again."
    )
}

/// A link from a newer version of the page.
#[must_use]
pub fn newer_link(version: u32) -> String {
    format!(
        "This link was made by a newer version of the page (link version {version}). What this version knows was opened; the rest is kept for the link you share. Update the page to see all of it."
    )
}

/// What was kept on the device can't be read.
#[must_use]
pub const fn broken_store() -> &'static str {
    "What this page had kept on the device could not be read in full. What could be read is here; the old text is kept on the device and nothing of it was deleted."
}

/// The name under which a design is put on the shelf that an opened link has covered.
#[must_use]
pub const fn before_the_link() -> &'static str {
    "From before the opened link"
}
