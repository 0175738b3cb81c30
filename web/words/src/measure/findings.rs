//! The station's answer: what the measurement told.

use tinwave_core::diagnosis::{Conclusion, Diagnosis, Estimate};
use tinwave_core::dimension::Dimension;
use tinwave_maker::entry::{LengthUnit, format_decimal, format_hertz};

use super::causes::{bound, dimension, dimensions, off_by, signed, with_bound};

/// A heading and its sentence.
pub type Answer = (String, String);

fn answer(heading: &str, sentence: &str) -> Answer {
    (heading.to_owned(), sentence.to_owned())
}

/// Nothing was brought yet.
#[must_use]
pub fn bring_one() -> Answer {
    answer(
        "Bring a measurement",
        "A file of an analyser, a table or one reading: it is laid over what is predicted, and what is off is worked out.",
    )
}

/// Something was done to the can since the last one.
#[must_use]
pub fn measure_again() -> Answer {
    answer(
        "Measure again",
        "The can was changed. Bring the new file: the estimate sharpens with each measurement.",
    )
}

/// The worker is at it.
#[must_use]
pub fn looking() -> Answer {
    answer(
        "Compared with the prediction",
        "What is off is being worked out.",
    )
}

/// The prediction itself is still being worked out.
#[must_use]
pub fn prediction_first() -> Answer {
    answer(
        "Compared with the prediction",
        "The prediction is still an estimate; what is off is worked out as soon as it is final.",
    )
}

/// The worker did not come.
#[must_use]
pub fn no_worker() -> Answer {
    answer(
        "Compared with the prediction",
        "What is off can’t be worked out: the part of the page that does it did not load. Open the page anew with a network.",
    )
}

/// One or two points, with the VSWR measured and predicted there, Hz.
#[must_use]
pub fn too_few(hz: f64, measured: f64, predicted: Option<f64>) -> Answer {
    let at = format_hertz(hz);
    let found = format_decimal(measured, 2);
    let heading = match predicted {
        Some(vswr) => format!(
            "VSWR {found} measured, {} predicted at {at}",
            format_decimal(vswr, 2)
        ),
        None => format!("VSWR {found} measured at {at}"),
    };
    (
        heading,
        "So few points can be compared, but they tell no cause: many different faults give the same reading. A sweep over the band tells more.".to_owned(),
    )
}

/// No point lies where the can is computed.
#[must_use]
pub fn no_point(range_hz: [f64; 2]) -> Answer {
    let [low, high] = range_hz.map(format_hertz);
    (
        "No point near the band".to_owned(),
        format!("Nothing was measured where this can can be computed, {low} to {high}."),
    )
}

/// The drawn can is not computed.
#[must_use]
pub fn not_computed() -> Answer {
    answer(
        "Nothing to compare with",
        "The can as designed can’t be computed, so there is no prediction.",
    )
}

fn find(found: &Diagnosis, wanted: Dimension) -> Option<&Estimate> {
    let mut estimates = found.estimates.iter();
    estimates.find(|estimate| estimate.dimension == wanted)
}

/// What was found.
#[must_use]
pub fn found(diagnosis: &Diagnosis, unit: LengthUnit) -> Answer {
    match &diagnosis.conclusion {
        Conclusion::AsDrawn => answer(
            "As predicted",
            "The can is as designed, as far as this measurement can tell.",
        ),
        Conclusion::OneCause(cause) => find(diagnosis, *cause).map_or_else(not_computed, |off| {
            let reason = format!(
                "One cause explains the difference: the {}, {}. No other single cause does.",
                dimension(*cause),
                with_bound(off, unit)
            );
            (off_by(off, unit), reason)
        }),
        Conclusion::CannotTell(causes) => (
            "Something is off: several causes fit".to_owned(),
            format!(
                "Any one of these alone would explain it: {}. Check them with a ruler or a caliper; this measurement can’t tell them apart.",
                dimensions(causes)
            ),
        ),
        Conclusion::SeveralTogether => answer(
            "Several small things are off",
            "No single dimension explains the difference; small ones together do, as listed.",
        ),
        Conclusion::Unexplained => answer(
            "Not explained",
            "No likely difference of the can’s dimensions explains this. Don’t cut on the strength of it.",
        ),
    }
}

/// What to look at where nothing explains a measurement.
#[must_use]
pub const fn look_at() -> (&'static str, &'static str) {
    (
        "Look for the cause first, and measure again",
        "The calibration, the plug, the solder joint; a dent or an oval can; a hole that was measured from the wrong rim; something that stands before the mouth; a file of another can.",
    )
}

/// The rail's line for what was found.
#[must_use]
pub fn line(diagnosis: &Diagnosis, unit: LengthUnit) -> String {
    match &diagnosis.conclusion {
        Conclusion::OneCause(cause) => {
            find(diagnosis, *cause).map_or_else(String::new, |off| off_by(off, unit))
        }
        Conclusion::AsDrawn => "As predicted".to_owned(),
        Conclusion::CannotTell(_) => "Several causes fit".to_owned(),
        Conclusion::SeveralTogether => "Several things are off".to_owned(),
        Conclusion::Unexplained => "Not explained".to_owned(),
    }
}

/// The rail's line for a measurement that tells no cause.
#[must_use]
pub const fn line_compared() -> &'static str {
    "Compared with the prediction"
}

/// The part with the table of what is off.
#[must_use]
pub const fn off_title() -> &'static str {
    "What is off, as far as it can be known"
}

/// Heads of that table.
#[must_use]
pub fn off_heads() -> Vec<String> {
    ["Dimension", "Off by", "Known before to"]
        .map(str::to_owned)
        .to_vec()
}

/// What the bounds mean, and what is left over.
#[must_use]
pub fn off_note(diagnosis: &Diagnosis) -> String {
    format!(
        "± holds in 95 of 100 cases, if the readings are as good as stated. Left over in the reflection (0 to 1): {} as designed, {} as found.",
        format_decimal(diagnosis.misfit_as_drawn, 3),
        format_decimal(diagnosis.misfit, 3)
    )
}

/// An estimate that rests on the tolerance alone.
#[must_use]
pub fn not_told(text: &str) -> String {
    format!("{text}, not told by this measurement")
}

/// Pairs that look alike to the measurement.
#[must_use]
pub fn alike(diagnosis: &Diagnosis) -> Option<String> {
    let pairs: Vec<String> = diagnosis
        .alike
        .iter()
        .map(|(one, other, _)| format!("{} and {}", dimension(*one), dimension(*other)))
        .collect();
    (!pairs.is_empty()).then(|| {
        format!(
            "These look alike to this measurement, so that more of one and less of the other fits as well: {}.",
            pairs.join("; ")
        )
    })
}

/// How the estimate of the wire's length sharpened: standard deviations after earlier
/// measurements, and now.
#[must_use]
pub fn sharpened(earlier_m: &[f64], now_m: f64, unit: LengthUnit) -> Option<String> {
    if earlier_m.is_empty() {
        return None;
    }
    let of = |sd: f64| bound(Dimension::ProbeLength, sd, unit);
    let before: Vec<String> = earlier_m.iter().map(|sd| of(*sd)).collect();
    Some(format!(
        "The wire length was known to {} after earlier measurements of this can, and is now known to {}.",
        before.join(", then to "),
        of(now_m)
    ))
}

/// The log is of another can.
#[must_use]
pub const fn another_can() -> &'static str {
    "The log is of a can of quite another size than the design, so it isn’t counted. Begin a new log, or open the design that belongs to it."
}

/// The extra length between the analyser's plane and the can, m of air line.
#[must_use]
pub fn port_length(length_m: f64, sd_m: f64, unit: LengthUnit) -> String {
    let length = signed(Dimension::ProbeLength, length_m, unit);
    let bound = bound(Dimension::ProbeLength, sd_m, unit);
    let inside = if length_m < 0.0 {
        " Below zero: the calibrated plane lies further in than the wall."
    } else {
        ""
    };
    format!(
        "The measurement behaves as if {length} {bound} of air line lay between the analyser’s calibrated plane and the inner wall: an adapter, the connector itself, or a cable.{inside} It is counted in. It turns the phase alone: VSWR stays."
    )
}

/// What takes that length out of the Smith chart.
#[must_use]
pub const fn take_out() -> &'static str {
    "Take that length out of the Smith chart"
}

/// Takes what was found over.
#[must_use]
pub const fn take_as_found() -> &'static str {
    "Make the design like the can as found"
}

/// What that does.
#[must_use]
pub const fn take_as_found_note() -> &'static str {
    "Every picture and figure is then about the can as it is. It can be undone."
}
