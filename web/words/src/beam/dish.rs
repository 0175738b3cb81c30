//! The can as the feed of a dish.

use tinwave_maker::entry::{LengthUnit, format_decimal, format_length};

use crate::figures::{hand_length, percent};

/// Name of the dish's fold.
#[must_use]
pub const fn dish_title() -> &'static str {
    "If it feeds a dish"
}

/// The fold's line: gain of a dish.
#[must_use]
pub fn dish_summary(
    gain_dbi: f64,
    diameter_um: u32,
    focal_ratio: f64,
    total: f64,
    unit: LengthUnit,
) -> String {
    format!(
        "{} dBi with {} at f/D {}; {} efficient as dish feed",
        format_decimal(gain_dbi, 1),
        format_length(diameter_um, unit),
        format_decimal(focal_ratio, 2),
        percent(total)
    )
}

/// Entries of the dish: diameter, focal length over diameter, depth.
#[must_use]
pub const fn dish_labels() -> [(&'static str, &'static str); 3] {
    [
        ("Dish, diameter", "Across its rim."),
        (
            "Focal length over diameter (f/D)",
            "From 0.2 to 2; follows from the depth, and the depth from it.",
        ),
        (
            "Dish, depth",
            "From a ruler across the rim to the middle; f/D is the diameter over 16 times that.",
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
        "{} dBi before match and walls, {} of an evenly lit dish.",
        format_decimal(gain_dbi, 1),
        percent(total)
    )
}

/// The dish that this feed lights best.
#[must_use]
pub fn dish_best(focal_ratio: f64, total: f64) -> String {
    format!(
        "This feed lights a dish of f/D {} best: {}.",
        format_decimal(focal_ratio, 2),
        percent(total)
    )
}

/// What makes the dish's figures rough, or impossible.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DishDoubt {
    /// Narrower than five wavelengths.
    Small,
    /// The feed’s beam points off the axis.
    Leans,
    /// What stands at the focus shades this share of the dish.
    Shade(f64),
    /// The funnel reaches into the dish.
    TooLong,
}

/// A doubt in words.
#[must_use]
pub fn dish_doubt(doubt: DishDoubt) -> String {
    match doubt {
        DishDoubt::Small => {
            "The dish is narrower than five wavelengths: a rough figure.".to_owned()
        }
        DishDoubt::Leans => "The feed’s beam leans; the mean of both sides is taken.".to_owned(),
        DishDoubt::Shade(share) => format!(
            "What stands at the focus shades {} of the dish, which is not counted.",
            percent(share)
        ),
        DishDoubt::TooLong => {
            "This funnel is longer than the way to the dish: it can’t stand there.".to_owned()
        }
    }
}

/// Head and names of the dish's table.
#[must_use]
pub const fn dish_names() -> [&'static str; 10] {
    [
        "Gain, match and walls counted",
        "Of the feed’s power meets the dish (spillover)",
        "How evenly it is lit (illumination)",
        "Left by uneven phase",
        "Level at the rim over the middle, on the dish",
        "Half-power width, about",
        "Far field begins at",
        "Focus from the middle of the dish",
        "Rim of the can from the focus",
        "Mouth of the funnel from the middle of the dish",
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
    "Slide the can along the axis for the strongest signal before you fix it. The shade of arms and mast is not counted."
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn efficiency_is_told_as_percent() {
        assert_eq!(
            dish_summary(22.13, 600_000, 0.4, 0.694, LengthUnit::Millimetre),
            "22.1 dBi with 600.0 mm at f/D 0.40; 69 % efficient as dish feed"
        );
    }
}
