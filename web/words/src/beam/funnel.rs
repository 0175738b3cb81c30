//! The funnel of sheet metal.

use tinwave_maker::entry::{LengthUnit, format_decimal, format_length};

use crate::figures::{degrees, hand_length};

/// Name of the fold of the funnel, and its line.
#[must_use]
pub const fn funnel_title() -> &'static str {
    "Funnel of sheet metal"
}

/// The fold's line: gain and length of the best that is known.
#[must_use]
pub fn funnel_summary(best: Option<(f64, f64)>, unit: LengthUnit) -> String {
    best.map_or_else(
        || "the most gain within a length, mouth or sheet".to_owned(),
        |(gain, length_m)| {
            format!(
                "{} dBi with {} of length",
                format_decimal(gain, 1),
                hand_length(length_m, unit)
            )
        },
    )
}

/// Limits of the funnel: label and help of mouth, length, sheet's sides, seam.
#[must_use]
pub const fn limit_labels() -> [(&'static str, &'static str); 5] {
    [
        ("Mouth, at most", "Across the wide end; empty: no limit."),
        ("Length, at most", "Along the axis; empty: no limit."),
        (
            "Sheet, one side",
            "The flat sheet it is cut from; give both sides or none.",
        ),
        (
            "Sheet, other side",
            "The flat sheet it is cut from; give both sides or none.",
        ),
        ("Seam", "Added along one edge of the flat sheet."),
    ]
}

/// A length outside its range, the ends as texts.
#[must_use]
pub fn must_be_within(low: &str, high: &str, unit: &str) -> String {
    format!("This must be from {low} to {high} {unit}.")
}

/// The button that begins the search, and what is said while it runs.
#[must_use]
pub const fn funnel_search() -> [&'static str; 3] {
    ["Find the best", "Solving funnels", "Take this funnel"]
}

/// No limit was given, or none fits.
#[must_use]
pub const fn no_funnel(are_no_limits: bool) -> &'static str {
    if are_no_limits {
        "Give at least one limit: a length, a mouth or a sheet."
    } else {
        "No funnel fits these limits: its mouth must be wider than the can."
    }
}

/// The funnel that was found.
#[must_use]
pub fn funnel_found(
    gain_dbi: f64,
    more_db: Option<f64>,
    mouth_um: u32,
    length_m: f64,
    half_angle_deg: f64,
    unit: LengthUnit,
) -> String {
    let more = more_db.filter(|more| more.is_finite());
    let more = more.map_or_else(String::new, |more| {
        format!(", {} dB more than the bare can", format_decimal(more, 1))
    });
    format!(
        "{} dBi{more}: mouth {} wide, {} long, half angle {}.",
        format_decimal(gain_dbi, 1),
        format_length(mouth_um, unit),
        hand_length(length_m, unit),
        degrees(half_angle_deg)
    )
}

/// Titles of the trades: against length, against mouth; the axis of gain.
#[must_use]
pub const fn trade_names() -> [&'static str; 5] {
    [
        "Gain against the funnel’s length",
        "Gain against the funnel’s mouth",
        "Length",
        "Mouth",
        "Gain",
    ]
}

/// What a trade's points are.
#[must_use]
pub const fn trade_note(all_solved: bool) -> &'static str {
    if all_solved {
        "dBi, worked out; each point below can be taken"
    } else {
        "dBi; not all worked out yet"
    }
}

/// A point of a trade as a button.
#[must_use]
pub fn trade_point(
    gain_dbi: f64,
    is_solved: bool,
    mouth_um: u32,
    length_m: f64,
    unit: LengthUnit,
) -> String {
    let about = if is_solved { "" } else { "about " };
    format!(
        "{about}{} dBi: {} wide, {} long",
        format_decimal(gain_dbi, 1),
        format_length(mouth_um, unit),
        hand_length(length_m, unit)
    )
}

/// The flat sheet: rows of name and value.
#[must_use]
pub fn sheet_names() -> [&'static str; 7] {
    [
        "Inner radius",
        "Outer radius",
        "Angle, without the seam",
        "Straight between the corners of the mouth",
        "Along the wall",
        "Seam, added along one edge",
        "Sheet needed, seam included",
    ]
}

/// Name of the table of the flat sheet.
#[must_use]
pub const fn sheet_title() -> &'static str {
    "The flat sheet of the funnel at the mouth now"
}
