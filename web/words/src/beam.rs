//! What the Beam station says.

mod cut;
mod dish;
mod funnel;
mod mouths;

pub use cut::{below_the_chart, cut_chart, cut_entry, cut_found, cut_summary};
pub use dish::{
    DishDoubt, dish_best, dish_chart, dish_doubt, dish_found, dish_labels, dish_names, dish_slide,
    dish_summary, dish_title, focus_place, ratio_range,
};
pub use funnel::{
    funnel_found, funnel_search, funnel_summary, funnel_title, limit_labels, must_be_within,
    no_funnel, sheet_names, sheet_title, trade_names, trade_note, trade_point,
};
pub use mouths::{
    at_the_mouth, choice_gain, choice_head, choice_waits, choices_note, goal, mouth_name,
    mouth_size, size_labels,
};

use tinwave_core::design::Band;
use tinwave_maker::entry::format_decimal;

use crate::figures::degrees;

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
    "At the band’s centre, with match and walls counted, worked out for the whole can.".to_owned()
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

/// Below the spot; its height where the beam has one, the wire upright.
#[must_use]
pub fn spot_note(distance: &str, high: Option<&str>) -> String {
    match high {
        Some(high) => format!("wide and {high} high, at {distance}"),
        None => format!("wide, at {distance}"),
    }
}

/// Name and head of the table of what the beam covers.
#[must_use]
pub fn covers() -> (&'static str, Vec<String>) {
    (
        "What the half-power beam covers, the wire upright",
        ["At", "Wide", "High"].map(str::to_owned).to_vec(),
    )
}

/// Where the beam is so wide that it covers half of everything.
#[must_use]
pub const fn no_edge() -> &'static str {
    "no edge"
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
            "Along the wire; angles and the can to scale, distances not. Dashed: where the power is half.",
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
pub fn least_gain(gain_dbi: f64, khz: u32, band: Band) -> String {
    format!(
        "Least in the band: {} dBi at {}.",
        format_decimal(gain_dbi, 1),
        crate::feed::frequency_in(khz, band)
    )
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
}
