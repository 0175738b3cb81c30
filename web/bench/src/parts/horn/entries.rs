//! The fields of this part: text to numbers, what is wrong beside them.

use tinwave_web::entry::{
    EntryError, LengthUnit, format_length, format_length_exact, parse_degrees, parse_length,
    parse_permittivity,
};

use crate::reply::Reply;
use crate::request::Request;

/// All fields that hold a length.
const LENGTHS: [&str; 7] = [
    "horn-mouth",
    "horn-length",
    "horn-sheet-width",
    "horn-sheet-height",
    "horn-seam",
    "horn-dish",
    "horn-depth",
];

/// The unit that bare lengths of the fields are in: the page's of the last answer.
fn unit_of_fields(request: &Request) -> LengthUnit {
    LengthUnit::from_key(request.get("horn-unit")).unwrap_or(request.unit)
}

/// Writes the lengths anew when the page's unit has changed.
pub(super) fn follow_unit(request: &Request, reply: &mut Reply) {
    let (from, to) = (unit_of_fields(request), request.unit);
    for name in LENGTHS {
        reply.text(&[name, "-unit"].concat(), to.symbol());
        if from != to
            && let Ok(length) = parse_length(request.get(name), from)
        {
            reply.field(name, &format_length_exact(length.value, to));
        }
    }
    if request.get("horn-unit") != to.key() {
        reply.field("horn-unit", to.key());
    }
}

/// What a field holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Entry<T> {
    /// Nothing.
    Empty,
    /// Text that is no such number, or out of range.
    Wrong,
    /// The number.
    Number(T),
}

impl<T> Entry<T> {
    /// The number; what is empty or wrong has none.
    pub(super) fn number(self) -> Option<T> {
        match self {
            Self::Number(value) => Some(value),
            Self::Empty | Self::Wrong => None,
        }
    }
}

/// Reads a field, and says beside it what is wrong.
fn read<T>(
    request: &Request,
    reply: &mut Reply,
    name: &str,
    parsed: impl Fn(&str) -> Result<T, String>,
) -> Entry<T> {
    let text = request.get(name);
    if text.trim().is_empty() {
        reply.wrong(name, "");
        return Entry::Empty;
    }
    match parsed(text) {
        Ok(value) => {
            reply.wrong(name, "");
            Entry::Number(value)
        }
        Err(sentence) => {
            reply.wrong(name, &sentence);
            Entry::Wrong
        }
    }
}

/// A length in micrometres within a range.
pub(super) fn length(
    request: &Request,
    reply: &mut Reply,
    name: &str,
    (low, high): (u32, u32),
) -> Entry<u32> {
    let unit = unit_of_fields(request);
    read(request, reply, name, |text| {
        let um = parse_length(text, unit).map_err(|e| e.to_string())?.value;
        if (low..=high).contains(&um) {
            return Ok(um);
        }
        let ends = [low, high].map(|end| format_length(end, request.unit));
        Err(["This must be from ", &ends[0], " to ", &ends[1], "."].concat())
    })
}

/// An angle in thousandths of a degree, within one turn either way.
pub(super) fn angle(request: &Request, reply: &mut Reply, name: &str) -> Entry<i32> {
    read(request, reply, name, |text| {
        let angle = parse_degrees(text).map_err(|e| e.to_string())?.value;
        if angle.unsigned_abs() <= 360_000 {
            return Ok(angle);
        }
        Err("This must be from \u{2212}360\u{b0} to 360\u{b0}.".to_owned())
    })
}

/// A plain number in thousandths.
pub(super) fn plain_number(request: &Request, reply: &mut Reply, name: &str) -> Entry<u32> {
    read(request, reply, name, |text| {
        match parse_permittivity(text) {
            Ok(number) => Ok(number.value),
            Err(EntryError::UnknownUnit { .. }) => {
                Err("This is a number without a unit, such as 0.4.".to_owned())
            }
            Err(other) => Err(other.to_string()),
        }
    })
}
