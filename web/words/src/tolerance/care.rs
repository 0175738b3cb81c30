//! Which dimension deserves the care.

use tinwave_core::dimension::Dimension;
use tinwave_core::tolerance::Sensitivity;
use tinwave_maker::entry::{LengthUnit, format_decimal, format_length_exact, format_trimmed};

use crate::measure::{dimension, dimension_head, vswr};

/// The fold.
#[must_use]
pub const fn careful_title() -> &'static str {
    "How careful must I be?"
}

/// Its line while nothing is worked out.
#[must_use]
pub const fn careful_summary() -> &'static str {
    "tolerances, and how many of ten come out well"
}

/// Its line: the share that passes.
#[must_use]
pub fn careful_found(share: f64, limit: f64) -> String {
    format!(
        "{} pass VSWR {}, simulated",
        per_cent(share),
        format_decimal(limit, 1)
    )
}

/// What the tolerances are.
#[must_use]
pub const fn tolerances_note() -> &'static str {
    "How far each dimension may be off, either way; 0 is exact. At first what a careful maker with hand tools is off by (common practice, no source)."
}

/// The fold of the tolerances.
#[must_use]
pub const fn tolerances_title() -> &'static str {
    "Tolerances"
}

/// Its line.
#[must_use]
pub const fn tolerances_summary(usual: bool) -> &'static str {
    if usual { "the usual ones" } else { "your own" }
}

/// How a tolerance is found.
#[must_use]
pub const fn tolerance_help(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::ProbeLength => "A rule reads to half a millimetre, a caliper to a tenth.",
        Dimension::BackshortDistance => {
            "The hole is drilled off the mark by this much, and the back wall bulges."
        }
        Dimension::InsideDiameter => {
            "A can may be oval: half the difference of its widest and narrowest width."
        }
        Dimension::HoleDiameter => "Where the connector’s insulator meets the inside of the can.",
        Dimension::ShuntCapacitance => {
            "From the connector’s insulator and from solder at the foot of the wire."
        }
        Dimension::OpenLength => "From the back wall to the rim of the mouth, inside.",
        Dimension::WireDiameter => {
            "Drawn copper wire is exact to a few hundredths of a millimetre."
        }
    }
}

/// Back to the usual ones.
#[must_use]
pub const fn usual_again() -> &'static str {
    "The usual tolerances again"
}

/// A tolerance beyond what is taken.
#[must_use]
pub fn beyond(low: &str, high: &str) -> String {
    format!("From {low} to {high}.")
}

/// What a tolerance means.
#[must_use]
pub const fn kinds() -> (&'static str, [&'static str; 2]) {
    (
        "A tolerance means",
        ["Anything within it", "A third go beyond"],
    )
}

/// The same in full.
#[must_use]
pub const fn kind_note(normal: bool) -> &'static str {
    if normal {
        "Most come out closer, a third go beyond: normal, one standard deviation."
    } else {
        "Anything within it is as likely: uniform."
    }
}

/// A tolerance with its unit: `±0.5 mm`.
#[must_use]
pub fn tolerance(dimension: Dimension, size: f64, unit: LengthUnit) -> String {
    match dimension {
        Dimension::ShuntCapacitance => {
            format!("±{} pF", format_trimmed((size * 1e15).round() as i64, 3))
        }
        _ => format!("±{}", fine_length((size * 1e6).round() as u32, unit)),
    }
}

/// A length that is finer than the page's usual tenth of a millimetre.
#[must_use]
pub fn fine_length(um: u32, unit: LengthUnit) -> String {
    format!("{} {}", format_length_exact(um, unit), unit.symbol())
}

/// A share.
#[must_use]
pub fn per_cent(share: f64) -> String {
    format!("{} %", format_decimal(100.0 * share, 1))
}

/// The part.
#[must_use]
pub const fn ranking_title() -> &'static str {
    "What deserves the care"
}

/// The dimension that deserves the care.
#[must_use]
pub fn deserves_care(of: &Sensitivity, as_drawn: f64, worst: f64, unit: LengthUnit) -> String {
    format!(
        "The {}: within {} it alone can raise the worst VSWR from {} to {}.",
        dimension(of.dimension),
        tolerance(of.dimension, of.change, unit),
        vswr(as_drawn),
        vswr(worst)
    )
}

/// None does.
#[must_use]
pub fn none_deserves(as_drawn: f64) -> String {
    format!(
        "None of them: no dimension alone moves the worst VSWR ({} as designed) noticeably.",
        vswr(as_drawn)
    )
}

/// A tolerance with which the can could not be built.
#[must_use]
pub fn impossible(of: Dimension, size: f64, unit: LengthUnit) -> String {
    format!(
        "With {} on the {} the can could become impossible to build or compute. State less.",
        tolerance(of, size, unit),
        dimension(of)
    )
}

/// Nothing is computed.
#[must_use]
pub const fn nothing_ranked() -> &'static str {
    "This can isn’t computed as it stands."
}

/// A row's name.
#[must_use]
pub fn row_name(of: Dimension, size: f64, unit: LengthUnit) -> String {
    format!("{}, {}", dimension_head(of), tolerance(of, size, unit))
}

/// A row's figure.
#[must_use]
pub fn row_vswr(worst: f64) -> String {
    format!("VSWR {}", vswr(worst))
}

/// Heads of the table of dimensions.
#[must_use]
pub fn ranking_heads() -> Vec<String> {
    [
        "Dimension",
        "Tolerance",
        "VSWR with less",
        "VSWR with more",
        "Best match moves",
    ]
    .map(str::to_owned)
    .to_vec()
}

/// How far the frequency of the best match moves, per what a maker can set.
#[must_use]
pub fn shift(of: &Sensitivity, unit: LengthUnit) -> String {
    let Some(slope) = of.best_slope_hz else {
        return "best match beyond the range".to_owned();
    };
    let (step, per) = match (of.dimension, unit) {
        (Dimension::ShuntCapacitance, _) => (1e-13, "MHz per 0.1 pF"),
        (_, LengthUnit::Millimetre) => (1e-3, "MHz per mm"),
        (_, LengthUnit::Inch) => (0.254e-3, "MHz per 0.01 in"),
    };
    let mhz = format_decimal(slope * step * 1e-6, 1);
    let sign = if slope > 0.0 { "+" } else { "" };
    format!("{sign}{mhz} {per}")
}
