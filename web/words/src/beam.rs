//! What the Beam station says.

use tinwave_core::design::Mouth;
use tinwave_maker::entry::{LengthUnit, format_decimal, format_frequency, format_length};
use tinwave_maker::mouth_goal::MouthGoal;

use crate::figures::{degrees, hand_length, percent};

/// Half-power widths: along the wire by across it; `None` where neither has one.
fn widths(e_deg: Option<f64>, h_deg: Option<f64>) -> Option<String> {
    match (e_deg, h_deg) {
        (Some(e), Some(h)) => Some(format!("{} by {} wide", degrees(e), degrees(h))),
        (Some(one), None) | (None, Some(one)) => Some(format!("{} wide", degrees(one))),
        (None, None) => None,
    }
}

/// The station's answer.
#[must_use]
pub fn answer(gain_dbi: f64, e_deg: Option<f64>, h_deg: Option<f64>) -> String {
    let gain = format!("{} dBi ahead", format_decimal(gain_dbi, 1));
    match widths(e_deg, h_deg) {
        Some(widths) => format!("{gain}, {widths}"),
        None => gain,
    }
}

/// Where nothing can be said of the gain.
#[must_use]
pub const fn unknown() -> (&'static str, &'static str) {
    (
        "No beam for this can",
        "No gain can be worked out for this can, wire and band. It comes back with a can that will do.",
    )
}

/// While the beam is being worked out.
#[must_use]
pub const fn being_worked_out() -> &'static str {
    "The beam is being worked out"
}

/// One sentence below the answer.
#[must_use]
pub fn reason(is_estimate: bool, peak_off_deg: f64) -> String {
    if is_estimate {
        return "An estimate, as if the can were an endless pipe. The whole can is being worked out."
            .to_owned();
    }
    if peak_off_deg.abs() >= 2.0 {
        return format!(
            "With match and walls counted. The beam is strongest {} off the axis.",
            degrees(peak_off_deg.abs())
        );
    }
    "At the band's centre, with match and walls counted, worked out for the whole can.".to_owned()
}

/// Labels of the four figures.
#[must_use]
pub const fn figure_labels() -> [&'static str; 4] {
    ["Gain", "Half-power width", "Covers", "Front to back"]
}

/// Below the gain.
#[must_use]
pub fn gain_note(directivity_dbi: f64, is_estimate: bool) -> String {
    if is_estimate {
        "estimate; the full figure comes".to_owned()
    } else {
        format!(
            "{} dBi before match and walls",
            format_decimal(directivity_dbi, 1)
        )
    }
}

/// The two widths as one figure.
#[must_use]
pub fn width_figure(e_deg: Option<f64>, h_deg: Option<f64>) -> String {
    match (e_deg, h_deg) {
        (Some(e), Some(h)) => format!("{} × {}", degrees(e), degrees(h)),
        (Some(one), None) | (None, Some(one)) => degrees(one),
        (None, None) => "–".to_owned(),
    }
}

/// Below the widths.
#[must_use]
pub const fn width_note() -> &'static str {
    "along the wire, across it"
}

/// Below the spot.
#[must_use]
pub fn spot_note(distance: &str) -> String {
    format!("across, at {distance}")
}

/// Below front to back.
#[must_use]
pub const fn rough() -> &'static str {
    "rough: cable and mount change it"
}

/// The reasons behind a figure: how it is worked out, how sure it is, its source.
pub type Reasons = (&'static str, &'static str, &'static str);

/// Of the four figures, in their order.
#[must_use]
pub const fn whys() -> [Reasons; 4] {
    [
        (
            "The field on the whole outside of the can is solved for, each mode with the strength that the wire gives it; what comes back at the connector and what the walls take is counted off.",
            "Within 0.1 dB of finite elements for cans, 0.13 dB for funnels. While it is an estimate, the mouth is that of an endless pipe.",
            "Method of moments for bodies of revolution; IEEE Std 145 for the terms.",
        ),
        (
            "The angle between the two directions in which the power is half of the strongest.",
            "Within 1.3° of finite elements.",
            "IEEE Std 145.",
        ),
        (
            "Twice the distance times the tangent of half the half-power width.",
            "At the edges the power is half; there is some beyond.",
            "Plane geometry.",
        ),
        (
            "The level straight ahead over the level straight back.",
            "Rough: cable, mount and your own hand change what goes back.",
            "IEEE Std 145.",
        ),
    ]
}

/// Titles and notes of the pictures: from the side, all round, over the band.
#[must_use]
pub const fn pictures() -> [(&'static str, &'static str); 3] {
    [
        (
            "The beam from the side",
            "As far as the field is strong. Dashed: where the power is half.",
        ),
        (
            "The beam all round",
            "Directivity in dBi. Full: along the wire (E plane); dashed: across it (H plane).",
        ),
        (
            "Gain over the band",
            "dBi straight ahead, match and walls counted",
        ),
    ]
}

/// The side view in words.
#[must_use]
pub fn side_description(e_deg: Option<f64>) -> String {
    e_deg.map_or_else(
        || "The beam leaves the mouth to the right; its power never falls to half.".to_owned(),
        |width| {
            format!(
                "The beam leaves the mouth to the right; its power is half at the edges of {}.",
                degrees(width)
            )
        },
    )
}

/// Names in the round picture.
#[must_use]
pub const fn round_names() -> [&'static str; 4] {
    ["ahead", "back", "E", "H"]
}

/// A level at a ring.
#[must_use]
pub fn ring_level(dbi: f64, with_unit: bool) -> String {
    let number = format_decimal(dbi, 0);
    if with_unit {
        format!("{number} dBi")
    } else {
        number
    }
}

/// Names of the chart's axes and curves: frequency, gain, gain if matched.
#[must_use]
pub const fn band_names() -> [&'static str; 3] {
    ["Frequency", "Gain", "if matched"]
}

/// The least gain of the band.
#[must_use]
pub fn least_gain(gain_dbi: f64, khz: u32) -> String {
    format!(
        "Least in the band: {} dBi at {}.",
        format_decimal(gain_dbi, 1),
        format_frequency(khz)
    )
}

/// Heading of the choices at the mouth, and of the chosen one's sizes.
#[must_use]
pub const fn at_the_mouth() -> &'static str {
    "At the mouth"
}

/// What may stand at the mouth, by its picture.
#[must_use]
pub const fn mouth_name(mouth: Mouth) -> &'static str {
    match mouth {
        Mouth::Open | Mouth::Absorbing => "Nothing",
        Mouth::Funnel { .. } => "Funnel",
        Mouth::Flange { .. } => "Ring",
        Mouth::Choke { .. } => "Cup",
    }
}

/// Gain of a choice before match and walls.
#[must_use]
pub fn choice_gain(gain_dbi: f64) -> String {
    format!("{} dBi", format_decimal(gain_dbi, 1))
}

/// While a choice's gain is being worked out.
#[must_use]
pub const fn choice_waits() -> &'static str {
    "…"
}

/// What the choices' gains are.
#[must_use]
pub const fn choices_note() -> &'static str {
    "Gain of a fair size for this can, before match and walls. The best cut is found anew for each."
}

/// Size of a choice.
#[must_use]
pub fn mouth_size(mouth: Mouth, unit: LengthUnit) -> String {
    match mouth {
        Mouth::Open | Mouth::Absorbing => String::new(),
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        } => format!(
            "{} wide, half angle {}",
            format_length(mouth_diameter_um, unit),
            degrees(f64::from(half_angle_millideg) / 1e3)
        ),
        Mouth::Flange {
            outside_diameter_um,
        } => format!("{} outside", format_length(outside_diameter_um, unit)),
        Mouth::Choke {
            outside_diameter_um,
            depth_um,
        } => format!(
            "{} outside, {} deep",
            format_length(outside_diameter_um, unit),
            format_length(depth_um, unit)
        ),
    }
}

/// Labels and help of the sizes: diameter, half angle, depth.
#[must_use]
pub const fn size_labels(mouth: Mouth) -> [(&'static str, &'static str); 3] {
    let diameter = match mouth {
        Mouth::Funnel { .. } => ("Mouth of the funnel", "Across the inside of the wide end."),
        Mouth::Flange { .. } => ("Ring, outside", "Across the whole ring."),
        _ => ("Cup, outside", "Across the inside of the cup's wall."),
    };
    [
        diameter,
        (
            "Half angle",
            "Between the axis and the funnel's wall: half of the angle of the cone.",
        ),
        (
            "Depth of the cup",
            "From the rim back to the cup's bottom; a quarter of a wavelength chokes best.",
        ),
    ]
}

/// What a goal is for.
#[must_use]
pub const fn goal(goal: MouthGoal) -> &'static str {
    match goal {
        MouthGoal::Bare => "Nothing",
        MouthGoal::Funnel => "Funnel, a wavelength long",
        MouthGoal::RingForGain => "Ring for the most gain",
        MouthGoal::CupForGain => "Cup for the most gain",
        MouthGoal::CupForRear => "Cup for the least behind",
    }
}

/// Head of the table of choices.
#[must_use]
pub fn choice_head() -> Vec<String> {
    ["At the mouth", "Size", "Gain, dBi", "Front over rear, dB"]
        .map(str::to_owned)
        .to_vec()
}

/// Name of the fold of the funnel, and its line.
#[must_use]
pub const fn funnel_title() -> &'static str {
    "Funnel of sheet metal"
}

/// The fold's line.
#[must_use]
pub fn funnel_summary(best: Option<(f64, u32)>, unit: LengthUnit) -> String {
    best.map_or_else(
        || "the most gain within a length, mouth or sheet".to_owned(),
        |(gain, mouth_um)| {
            format!(
                "{} dBi with a mouth of {}",
                format_decimal(gain, 1),
                format_length(mouth_um, unit)
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
        "Gain against the funnel's length",
        "Gain against the funnel's mouth",
        "Length",
        "Mouth",
        "Gain",
    ]
}

/// What a trade's points are.
#[must_use]
pub const fn trade_note(all_solved: bool) -> &'static str {
    if all_solved {
        "dBi, worked out; each row of the table can be taken"
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

/// Name of the dish's fold.
#[must_use]
pub const fn dish_title() -> &'static str {
    "If it feeds a dish"
}

/// The fold's line.
#[must_use]
pub fn dish_summary(total: f64, focal_ratio: f64) -> String {
    format!(
        "{} efficient as dish feed at best, at f/D {}",
        percent(total),
        format_decimal(focal_ratio, 2)
    )
}

/// Entries of the dish: diameter, focal length over diameter.
#[must_use]
pub const fn dish_labels() -> [(&'static str, &'static str); 2] {
    [
        ("Dish, diameter", "Across its rim."),
        (
            "Focal length over diameter (f/D)",
            "For a dish of depth t: its diameter over 16 t. From 0.2 to 2.",
        ),
    ]
}

/// The refusal of a focal ratio.
#[must_use]
pub const fn ratio_range() -> &'static str {
    "This must be from 0.2 to 2."
}

/// What the dish gives.
#[must_use]
pub fn dish_found(gain_dbi: f64, total: f64) -> String {
    format!(
        "{} dBi, {} efficient.",
        format_decimal(gain_dbi, 1),
        percent(total)
    )
}

/// Head and names of the dish's table.
#[must_use]
pub const fn dish_names() -> [&'static str; 8] {
    [
        "Of the feed's power meets the dish (spillover)",
        "How evenly it is lit (illumination)",
        "Left by uneven phase",
        "Level at the rim over the middle, on the dish",
        "Half-power width, about",
        "Far field begins at",
        "Focus from the middle of the dish",
        "Rim of the can from the focus",
    ]
}

/// Where the can's rim stands to the focus.
#[must_use]
pub fn focus_place(focus_m: f64, unit: LengthUnit) -> String {
    if focus_m.abs() < 5e-4 {
        "at the focus".to_owned()
    } else if focus_m > 0.0 {
        format!(
            "{} behind it, farther from the dish",
            hand_length(focus_m, unit)
        )
    } else {
        format!("{} inside it, nearer the dish", hand_length(-focus_m, unit))
    }
}

/// The last word on the dish.
#[must_use]
pub const fn dish_slide() -> &'static str {
    "Slide the can along the axis for the strongest signal before you fix it. The shade of can and arms on the dish is not counted."
}

/// Title and axes of the dish's chart.
#[must_use]
pub const fn dish_chart() -> [&'static str; 4] {
    [
        "Efficiency as dish feed",
        "per cent of an evenly lit dish",
        "f/D",
        "Efficiency",
    ]
}

/// Heads of two-column tables.
#[must_use]
pub fn table_head() -> Vec<String> {
    ["What", "Value"].map(str::to_owned).to_vec()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn widths_are_rounded_alike_everywhere() {
        assert_eq!(
            answer(7.93, Some(71.4), Some(72.2)),
            "7.9 dBi ahead, 71° by 72° wide"
        );
        assert_eq!(width_figure(Some(71.4), Some(72.2)), "71° × 72°");
        assert_eq!(answer(7.9, None, None), "7.9 dBi ahead");
    }

    #[test]
    fn a_squint_is_told() {
        assert!(reason(false, -14.8).contains("15°"));
        assert!(!reason(false, 0.3).contains("off"));
    }

    #[test]
    fn efficiency_is_told_as_percent() {
        assert_eq!(
            dish_summary(0.694, 0.38),
            "69 % efficient as dish feed at best, at f/D 0.38"
        );
    }
}
