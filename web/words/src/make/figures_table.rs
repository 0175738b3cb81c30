//! All figures with their plus and minus, as a table and on the build sheet.

use tinwave_maker::connectors::{ConnectorChoice, connector};
use tinwave_maker::entry::LengthUnit;

use super::{drilled, ruled};

/// Heads the table.
#[must_use]
pub const fn all_figures() -> &'static str {
    "All figures"
}

/// Below its heading. `to_two`: the limit is 2, because the cut is not within 1.5 as drawn.
#[must_use]
pub const fn plus_and_minus_note(to_two: bool) -> &'static str {
    if to_two {
        "Plus and minus: how far that figure alone may be off before the VSWR passes 2"
    } else {
        "Plus and minus: how far that figure alone may be off before the VSWR passes 1.5"
    }
}

/// Heads of its columns: what, the figure in the unit, plus and minus, from where.
#[must_use]
pub fn heads(unit: LengthUnit) -> [String; 4] {
    [
        "What".into(),
        unit.symbol().into(),
        "plus, minus".into(),
        "from".into(),
    ]
}

/// A row of the table, by what it is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Row {
    /// The hole, from the closed end.
    HoleFromClosedEnd,
    /// The hole, from the mouth.
    HoleFromMouth,
    /// The drill.
    Drill,
    /// The wire, from the connector's face.
    WireFromFace,
    /// The wire, from the inner wall.
    WireFromWall,
    /// The whole can.
    WholeCan,
    /// Its inside width.
    InsideWidth,
    /// Its inside length.
    InsideLength,
    /// The wire's thickness.
    WireThickness,
}

/// What a row is of.
#[must_use]
pub const fn row_name(row: Row) -> &'static str {
    match row {
        Row::HoleFromClosedEnd | Row::HoleFromMouth => "Middle of the hole",
        Row::Drill => "Drill",
        Row::WireFromFace | Row::WireFromWall => "Wire",
        Row::WholeCan => "Whole can",
        Row::InsideWidth => "Can, inside",
        Row::InsideLength => "Can, inside length",
        Row::WireThickness => "Wire diameter",
    }
}

/// What a row is measured from.
#[must_use]
pub const fn row_from(row: Row, choice: ConnectorChoice) -> &'static str {
    match row {
        Row::HoleFromClosedEnd => "closed end’s outer rim",
        Row::HoleFromMouth => "rim of the mouth",
        Row::Drill => connector(choice.kind).name,
        Row::WireFromFace => "connector’s face",
        Row::WireFromWall => "inner wall",
        Row::WholeCan => "rim to rim",
        Row::InsideWidth => "wall to wall",
        Row::InsideLength => "back wall to the rim of the mouth",
        Row::WireThickness => "across the bare wire",
    }
}

/// How far a figure may be off, up and down.
#[must_use]
pub fn plus_and_minus(longer_um: u32, shorter_um: u32, unit: LengthUnit) -> String {
    let number = |um| tinwave_maker::entry::format_length_number(um, unit);
    if number(longer_um) == number(shorter_um) {
        format!("±{}", number(longer_um))
    } else {
        format!("+{} −{}", number(longer_um), number(shorter_um))
    }
}

/// A length in the table.
#[must_use]
pub fn cell(row: Row, um: u32, unit: LengthUnit) -> String {
    match row {
        Row::Drill | Row::WireThickness => super::drill(um, unit),
        _ => super::ruler(um, unit),
    }
}

/// The can in one line, on the build sheet.
#[must_use]
pub fn can_in_words(
    inside_um: u32,
    length_um: u32,
    wall_um: u32,
    metal: &str,
    unit: LengthUnit,
) -> String {
    format!(
        "Can of {} inside, {} long inside, wall {}, {metal}",
        ruled(inside_um, unit),
        ruled(length_um, unit),
        drilled(wall_um, unit)
    )
}

/// The band and its match, on the build sheet.
#[must_use]
pub fn band_in_words(low_mhz: &str, high_mhz: &str, vswr: Option<f64>) -> String {
    match vswr {
        Some(vswr) => format!(
            "For {low_mhz} to {high_mhz} MHz; worked out: VSWR {} at worst",
            tinwave_maker::entry::format_decimal(vswr, 2)
        ),
        None => format!("For {low_mhz} to {high_mhz} MHz"),
    }
}
