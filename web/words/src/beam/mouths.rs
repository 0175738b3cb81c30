//! What may stand at the mouth.

use tinwave_core::design::Mouth;
use tinwave_maker::entry::{LengthUnit, format_decimal, format_length};
use tinwave_maker::mouth_goal::MouthGoal;

use crate::figures::degrees;

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

/// In place of a choice's gain: while it is being worked out, or where none comes.
#[must_use]
pub const fn choice_waits(comes: bool) -> &'static str {
    if comes { "…" } else { "–" }
}

/// What the choices' gains are.
#[must_use]
pub const fn choices_note() -> &'static str {
    "Gain of a fair size for this can, before match and walls. Where the cut follows the best, it is found anew for each."
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
        _ => ("Cup, outside", "Across the inside of the cup’s wall."),
    };
    [
        diameter,
        (
            "Half angle",
            "Between the axis and the funnel’s wall: half of the angle of the cone.",
        ),
        (
            "Depth of the cup",
            "From the rim back to the cup’s bottom; a quarter of a wavelength chokes best.",
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
    [
        "At the mouth",
        "Size",
        "Gain, dBi",
        "Ahead over the strongest behind, dB",
    ]
    .map(str::to_owned)
    .to_vec()
}
