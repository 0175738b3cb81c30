//! Safe distances in words.

use tinwave_core::radio_link::{DistanceHeldBy, End, ExposureStandard, LinkError, LinkQuantity};
use tinwave_maker::entry::{LengthUnit, format_decimal};
use tinwave_maker::link_plan::{LinkPlan, PlanAnswer, SafeAnswer};

use crate::figures::{distance_at_least, joined};

/// Added to a mast's length as distance from a mains line, m (common practice, no
/// source).
const BESIDE_LINES_M: f64 = 3.0;

/// The distances as a table: heads, then a row for each end and standard.
#[must_use]
pub fn safe_rows(answer: &PlanAnswer, unit: LengthUnit) -> (Vec<String>, Vec<Vec<String>>) {
    let head = ["In front of", "At least", "Because of"];
    let here = answer.end(End::A);
    let far = answer.end(End::B);
    let alike = here.safe == far.safe;
    let mut rows = Vec::new();
    for (end, name) in [(here, "this end"), (far, "the far end")] {
        let name = if alike { "either end" } else { name };
        if alike && !rows.is_empty() {
            break;
        }
        for safe in &end.safe {
            let (keep, why) = said(safe, unit);
            rows.push(vec![
                format!("{name}, {}", standard(safe.standard)),
                keep,
                why,
            ]);
        }
    }
    (head.map(str::to_owned).to_vec(), rows)
}

const fn standard(standard: ExposureStandard) -> &'static str {
    match standard {
        ExposureStandard::Icnirp2020 => "ICNIRP 2020, general public",
        ExposureStandard::Fcc1310 => "47 CFR 1.1310, uncontrolled",
    }
}

fn said(safe: &SafeAnswer, unit: LengthUnit) -> (String, String) {
    let (found, keep_m) = match (safe.found, safe.keep_m) {
        (Ok(found), Some(keep_m)) => (found, keep_m),
        (Err(error), _) => return ("–".to_owned(), not_given(&error).to_owned()),
        (Ok(_), None) => return ("–".to_owned(), String::new()),
    };
    let why = if keep_m > found.distance_m {
        "nearer than 20 cm these rules ask for the power absorbed in the body, which is not worked out".to_owned()
    } else {
        let limit = format_decimal(found.limit_w_m2, 1);
        let held = match found.held_by {
            DistanceHeldBy::FarField => "far field",
            DistanceHeldBy::Aperture => "near field of the mouth",
            DistanceHeldBy::ReactiveField => "no closer, whatever the power",
        };
        format!("{limit} W/m²; {held}")
    };
    (joined(distance_at_least(keep_m, unit)), why)
}

const fn not_given(error: &LinkError) -> &'static str {
    match error {
        LinkError::OutOfRange {
            quantity: LinkQuantity::FrequencyHz,
            ..
        } => "not given at this frequency",
        _ => "not worked out for so much power or gain: keep far away",
    }
}

/// How far from a mains line a mast of the entered heights can stand.
#[must_use]
pub fn fall(plan: &LinkPlan, unit: LengthUnit) -> String {
    let tallest = plan.here.height_m.max(plan.far.height_m);
    let clear_m = (2.0 * tallest).max(tallest + BESIDE_LINES_M);
    format!(
        "With these heights no overhead line may be nearer than {} to the foot of the mast, ladder and guys included (twice what could fall; common practice, no source).",
        joined(distance_at_least(clear_m, unit))
    )
}
