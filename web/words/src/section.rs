//! Words of the can's section drawing.

use tinwave_maker::entry::{LengthUnit, format_length, format_length_number, format_trimmed};

/// Beside the figure of the length.
#[must_use]
pub const fn long_inside() -> &'static str {
    "long inside"
}

/// Figure of an inside diameter.
#[must_use]
pub fn diameter(figure: &str) -> String {
    ["⌀\u{a0}", figure].concat()
}

/// Beside the wire's length where it is to be cut.
#[must_use]
pub const fn from_the_face() -> &'static str {
    "from the face"
}

/// Beside the wire's length where it is to be chosen.
#[must_use]
pub const fn wire_inside() -> &'static str {
    "wire inside"
}

/// Beside the wire's distance.
#[must_use]
pub const fn inside_from_back_wall() -> &'static str {
    "inside, from the back wall"
}

/// The same, short.
#[must_use]
pub const fn from_back_wall() -> &'static str {
    "from back wall"
}

/// Beside the hole's distance.
#[must_use]
pub const fn outside_from_closed_rim() -> &'static str {
    "from the closed end’s rim"
}

/// The same, short.
#[must_use]
pub const fn from_closed_rim() -> &'static str {
    "from the rim"
}

/// At a width that carries one wave: whether the can then does depends on its length too.
#[must_use]
pub fn one_wave_at(figure: &str, unit: &str) -> String {
    [figure, " ", unit, ": one wave"].concat()
}

/// Below the drawing.
#[must_use]
pub fn note(unit: LengthUnit, wall_is_thickened: bool, endless: bool) -> String {
    let mut text = String::from(match unit {
        LengthUnit::Millimetre => "In mm, to scale",
        LengthUnit::Inch => "In inches, to scale",
    });
    if wall_is_thickened {
        text.push_str("; the wall is drawn thicker");
    }
    if endless {
        text.push_str("; the guide goes on without an end");
    }
    text.push('.');
    text
}

/// Figure of a wire or a hole: wires are told apart by hundredths of a millimetre.
#[must_use]
pub fn fine_length(um: u32, unit: LengthUnit) -> String {
    let number = match unit {
        LengthUnit::Millimetre => format_trimmed(i64::from((um + 5) / 10), 2),
        LengthUnit::Inch => format_length_number(um, unit),
    };
    [&number, " ", unit.symbol()].concat()
}

/// The can, for those who can't see it.
#[must_use]
pub fn can_in_words(inside_diameter_um: u32, open_length_um: u32, unit: LengthUnit) -> String {
    [
        "A can cut along its axis, closed on the left and open on the right: ",
        &format_length(inside_diameter_um, unit),
        " wide and ",
        &format_length(open_length_um, unit),
        " long inside.",
    ]
    .concat()
}

/// What a cut is made of, micrometres.
#[derive(Clone, Copy, Debug)]
pub struct CutInWords {
    /// Diameter of the wire.
    pub wire_um: u32,
    /// Its length inside the can.
    pub length_um: u32,
    /// Its distance from the back wall.
    pub distance_um: u32,
    /// The hole's distance from the rim of the closed end.
    pub from_rim_um: u32,
}

/// The can with its cut, for those who can't see it.
#[must_use]
pub fn cut_in_words(can: &str, cut: CutInWords, unit: LengthUnit) -> String {
    [
        can,
        " A wire of ",
        &fine_length(cut.wire_um, unit),
        " stands ",
        &format_length(cut.distance_um, unit),
        " from the back wall and reaches ",
        &format_length(cut.length_um, unit),
        " in. The middle of its hole is ",
        &format_length(cut.from_rim_um, unit),
        " from the closed end’s rim, outside.",
    ]
    .concat()
}

/// The can without a cut, for those who can't see it.
#[must_use]
pub fn no_cut_in_words(can: &str, would_do_um: Option<u32>, unit: LengthUnit) -> String {
    let mut text = [can, " No hole and no wire: no cut of it can be given."].concat();
    if let Some(um) = would_do_um {
        text.push_str(" Dashed: a width that carries one wave, ");
        text.push_str(&format_length(um, unit));
        text.push('.');
    }
    text
}

/// Name of a figure of the drawing that leads to its entry.
#[must_use]
pub fn to_the_entry(label: &str, figure: &str) -> String {
    [label, ", ", figure, ": change it"].concat()
}

/// Name of the wire's tip, which can be moved.
#[must_use]
pub const fn the_tip() -> &'static str {
    "The wire’s tip: up and down for its length, left and right for its distance"
}

/// Where the tip stands.
#[must_use]
pub fn tip(length_um: u32, distance_um: u32, unit: LengthUnit) -> String {
    // In large letters a figure must not be parted from its unit.
    let whole = |um| format_length(um, unit).replace(' ', "\u{a0}");
    [
        &whole(length_um),
        " of wire, ",
        &whole(distance_um),
        " from the back wall",
    ]
    .concat()
}
