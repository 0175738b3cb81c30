//! The words of the list of other sizes, and of the ways on from a can.

use super::{
    Grade, LengthUnit, PublishedBand, Room, SizeGroup, TradeSize, format_decimal, format_length,
    format_length_number, vswr,
};

/// Heads the list of sizes: what it is depends on how the own can does.
#[must_use]
pub const fn shelf(grade: Grade) -> &'static str {
    match grade {
        Grade::WillDo => "Also on the shelf",
        Grade::WithCare => "Better on the shelf",
        Grade::WillNotDo => "What would do",
    }
}

/// What the list holds.
#[must_use]
pub fn shelf_note(count: usize, are_matched: bool, unit: LengthUnit) -> String {
    let carry = match count {
        0 => {
            return "No trade size carries one wave over this band. Make the band narrower.".into();
        }
        1 => "1 trade size carries one wave".to_owned(),
        count => format!("{count} trade sizes carry one wave"),
    };
    format!(
        "{carry}, {} first. Lengths in {}; strip: of paper, once round. Room: below and above the band.",
        if are_matched {
            "the best matched"
        } else {
            "the roomiest"
        },
        unit.symbol()
    )
}

/// Heads of the columns.
#[must_use]
pub const fn shelf_heads() -> [&'static str; 7] {
    [
        "Size",
        "Inside",
        "Strip",
        "Outside",
        "Length",
        "Room, %",
        "Best VSWR",
    ]
}

/// Before a figure in a row that has no head above it.
#[must_use]
pub const fn before_figure() -> [&'static str; 4] {
    ["inside", "strip", "outside", "length"]
}

/// The same before the room.
#[must_use]
pub const fn room_before() -> &'static str {
    "room"
}

/// The row of the own can.
#[must_use]
pub const fn your_can_row() -> &'static str {
    "Your can"
}

/// What a size is sold as, and how its width is known.
#[must_use]
pub fn sold_as(size: &TradeSize) -> String {
    let group = group_short(size.group);
    if size.estimated() {
        format!("{group}, estimated")
    } else {
        group.to_owned()
    }
}

const fn group_short(group: SizeGroup) -> &'static str {
    match group {
        SizeGroup::UsCan | SizeGroup::MetricCan => "can",
        SizeGroup::Duct => "duct",
        SizeGroup::StovePipe => "stove pipe",
        SizeGroup::Downpipe => "downpipe",
        SizeGroup::CopperTube | SizeGroup::CopperTubeInch => "copper tube",
        SizeGroup::SteelTube => "steel tube",
        SizeGroup::StainlessTube => "stainless tube",
    }
}

/// Room below and above, in whole per cent of the band's edges: `16 / 6`, `26 / −7`; nothing to be told of a
/// can that will not do.
#[must_use]
pub fn room(room: Room, grade: Grade) -> String {
    if grade == Grade::WillNotDo {
        return "–".to_owned();
    }
    let whole = |share: f64| format_decimal(share * 100.0, 0);
    format!("{} / {}", whole(room.of_low_edge()), whole(room.above))
}

/// A length of the list, and whether the size has it or a tube is cut to it.
#[must_use]
pub fn shelf_length(um: u32, is_its_own: bool, unit: LengthUnit) -> String {
    let number = format_length_number(um, unit);
    if is_its_own {
        number
    } else {
        format!("needs {number}")
    }
}

/// Takes a size.
#[must_use]
pub const fn take() -> &'static str {
    "Take"
}

/// The size is the can's by now.
#[must_use]
pub const fn taken() -> &'static str {
    "Taken"
}

/// A grade that is less than good, beside a VSWR.
#[must_use]
pub const fn less_than_good(grade: Grade) -> &'static str {
    match grade {
        Grade::WillDo => "",
        Grade::WithCare => "with care",
        Grade::WillNotDo => "will not do",
    }
}

/// Shows the whole list.
#[must_use]
pub fn all_sizes(count: usize) -> String {
    format!("All {count} sizes")
}

/// Shows the best again only.
#[must_use]
pub const fn fewer_sizes() -> &'static str {
    "The best only"
}

/// The sizes are being matched.
#[must_use]
pub fn matching_sizes(done: usize, count: usize) -> String {
    format!("Matching the sizes: {done} of {count}")
}

/// The bands are being matched.
#[must_use]
pub const fn matching_bands() -> &'static str {
    "Looking for what would do"
}

/// The matching was stopped.
#[must_use]
pub const fn match_sizes() -> &'static str {
    "Match the sizes"
}

/// A stroke of the gauge in words: what it is, all its measures, how it matches.
#[must_use]
pub fn size_line(
    size: &TradeSize,
    measures_um: [u32; 3],
    length_is_its_own: bool,
    unit: LengthUnit,
) -> String {
    let [strip, outside, length] = measures_um;
    let number = |um| format_length_number(um, unit);
    let length = if length_is_its_own {
        format!("{} long inside", format_length(length, unit))
    } else {
        format!("if {} long inside", format_length(length, unit))
    };
    format!(
        "{}: {} inside, strip {}, outside {}, {length}",
        size.name,
        number(size.inside_um),
        number(strip),
        number(outside)
    )
}

/// The VSWR behind such a line.
#[must_use]
pub fn with_vswr(value: Option<f64>) -> String {
    format!("VSWR {}", vswr(value))
}

/// Offers a trade size; `grade` of that can.
#[must_use]
pub fn take_a_can(size: &TradeSize, worst_vswr: f64, grade: Grade) -> String {
    let thing = match size.group {
        SizeGroup::UsCan | SizeGroup::MetricCan => "can",
        SizeGroup::Duct => "duct",
        SizeGroup::StovePipe => "stove pipe",
        SizeGroup::Downpipe => "downpipe",
        _ => "tube",
    };
    // Read aloud: an eighty, an eleven, an eighteen.
    let article =
        if size.name.starts_with('8') || ["11 ", "18 "].iter().any(|n| size.name.starts_with(n)) {
            "an"
        } else {
            "a"
        };
    format!(
        "Take {article} {} {thing}: VSWR {}{}",
        size.name,
        vswr(Some(worst_vswr)),
        with_care(grade)
    )
}

/// Offers a band; `grade` of the can for it.
#[must_use]
pub fn use_for_band(band: &PublishedBand, worst_vswr: f64, grade: Grade) -> String {
    let name = band.name.split(" (").next().unwrap_or(band.name);
    format!(
        "Use this can for {name}: VSWR {}{}",
        vswr(Some(worst_vswr)),
        with_care(grade)
    )
}

const fn with_care(grade: Grade) -> &'static str {
    match grade {
        Grade::WillDo => "",
        Grade::WithCare | Grade::WillNotDo => ", with care",
    }
}

/// Neither another size nor another band was found.
#[must_use]
pub const fn nothing_would_do() -> &'static str {
    "No trade size and no published band was found that would do."
}

/// The width that would do, in the drawing of a can that will not.
#[must_use]
pub fn would_do(um: u32, unit: LengthUnit) -> String {
    format!("Dashed: {} would do", format_length(um, unit))
}
