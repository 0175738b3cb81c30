//! What the fit found, in words.

use tinwave_core::diagnosis::{Conclusion, Diagnosis, DiagnosisError, Estimate};
use tinwave_core::dimension::Dimension;
use tinwave_web::entry::{LengthUnit, format_decimal, format_hertz, format_length_signed};

use super::desk::Found;
use super::{Case, known, log_words};
use crate::html::{escaped, result, row};
use crate::reply::Reply;

/// Twice the standard deviation either way holds 95 % of cases.
const BOUND: f64 = 2.0;

/// A dimension in plain words.
pub(super) const fn name(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::ProbeLength => "wire length",
        Dimension::BackshortDistance => "distance from the back wall",
        Dimension::InsideDiameter => "inside diameter",
        Dimension::HoleDiameter => "hole",
        Dimension::ShuntCapacitance => "stray capacitance at the hole",
        Dimension::OpenLength => "length of the can",
        Dimension::WireDiameter => "wire diameter",
    }
}

/// A deviation with its sign and unit.
fn signed(dimension: Dimension, change: f64, unit: LengthUnit) -> String {
    if dimension == Dimension::ShuntCapacitance {
        let sign = if change < 0.0 { "\u{2212}" } else { "+" };
        return [sign, &format_decimal(change.abs() * 1e12, 3), " pF"].concat();
    }
    let text = format_length_signed((change * 1e6).round() as i64, unit);
    // Nothing has no sign; the bound behind it has its own.
    text.trim_start_matches('\u{b1}').to_owned()
}

/// A bound with its unit, never narrower than it is.
pub(super) fn bound(dimension: Dimension, sd: f64, unit: LengthUnit) -> String {
    let (step, decimals, symbol) = match (dimension, unit) {
        (Dimension::ShuntCapacitance, _) => (1e-15, 3, "pF"),
        (_, LengthUnit::Millimetre) => (1e-4, 1, "mm"),
        (_, LengthUnit::Inch) => (25.4e-6, 3, "in"),
    };
    let steps = (BOUND * sd / step - 1e-6).ceil().max(1.0);
    let number = format_decimal(steps / 10_f64.powi(decimals), decimals as u8);
    [&number, " ", symbol].concat()
}

fn with_bound(estimate: &Estimate, unit: LengthUnit) -> String {
    let Estimate {
        dimension,
        change,
        sd,
        ..
    } = *estimate;
    let change = signed(dimension, change, unit);
    [&change, " \u{b1} ", &bound(dimension, sd, unit)].concat()
}

/// Shows what was found, or why nothing could be.
pub(super) fn show(case: &Case<'_>, found: &Found, reply: &mut Reply) {
    let unit = case.request.unit;
    let diagnosis = match &found.diagnosis {
        Ok(diagnosis) => diagnosis,
        Err(error) => {
            reply.text("conclusion", &refused(error));
            for place in ["estimates", "alike", "port", "sharpened", "misfit"] {
                reply.place(place, String::new());
            }
            reply.show("take-out-box", false);
            return;
        }
    };
    reply.text("conclusion", &conclusion(diagnosis, unit));
    reply.place("misfit", misfit(diagnosis));
    let estimates = diagnosis.estimates.iter();
    let rows = estimates.map(|estimate| estimate_row(estimate, found, unit));
    reply.place("estimates", rows.collect());
    reply.text("alike", &alike(diagnosis));
    reply.text("sharpened", &sharpened(case, found, diagnosis));
    port(diagnosis, unit, reply);
}

fn estimate_row(estimate: &Estimate, found: &Found, unit: LengthUnit) -> String {
    let dimension = estimate.dimension;
    let from = if estimate.measured {
        "measured"
    } else if found.prior.from_log {
        "earlier measurements"
    } else {
        "usual tolerance only"
    };
    let before = known::sd_of(&found.prior.knowledge, dimension);
    let before = before.map_or_else(String::new, |sd| {
        ["\u{b1} ", &bound(dimension, sd, unit)].concat()
    });
    row(&[name(dimension), &with_bound(estimate, unit), &before, from])
}

fn sharpened(case: &Case<'_>, found: &Found, diagnosis: &Diagnosis) -> String {
    if found.prior.another_can {
        return "The log is of a can of quite another size than the drawing, so that it isn\u{2019}t counted. Begin a new can, or open the drawing that belongs to it.".to_owned();
    }
    let length = find(diagnosis, Dimension::ProbeLength);
    length.map_or_else(String::new, |length| {
        log_words::sharpened(&case.log, &found.mark, length.sd, case.request.unit)
    })
}

fn refused(error: &DiagnosisError) -> String {
    match error {
        DiagnosisError::NoPoint { range } => [
            "No point of the measurement lies where this can can be computed, ",
            &format_hertz(range[0]),
            " to ",
            &format_hertz(range[1]),
            ".",
        ]
        .concat(),
        _ => "The drawn can can\u{2019}t be computed, so nothing can be compared: see the verdict above.".to_owned(),
    }
}

fn find(found: &Diagnosis, dimension: Dimension) -> Option<&Estimate> {
    found
        .estimates
        .iter()
        .find(|estimate| estimate.dimension == dimension)
}

fn conclusion(found: &Diagnosis, unit: LengthUnit) -> String {
    match &found.conclusion {
        Conclusion::AsDrawn => "The can is as drawn, as far as this measurement can tell.".to_owned(),
        Conclusion::OneCause(cause) => {
            let by = find(found, *cause).map_or_else(String::new, |e| with_bound(e, unit));
            [
                "One cause explains it: the ",
                name(*cause),
                " differs from the drawing by ",
                &by,
                ". No other single cause does.",
            ]
            .concat()
        }
        Conclusion::CannotTell(causes) => {
            let names: Vec<&str> = causes.iter().map(|cause| name(*cause)).collect();
            [
                "Cannot tell: any one of these alone would explain it: ",
                &names.join(", "),
                ". Check them with a ruler or a caliper; this measurement can\u{2019}t tell them apart.",
            ]
            .concat()
        }
        Conclusion::SeveralTogether => {
            "No single dimension explains it; several small differences together do, as listed.".to_owned()
        }
        Conclusion::Unexplained => {
            "No likely difference of these dimensions explains it. Look at the calibration, the plug, the solder joint, a dent or an oval can, a hole that was measured from the wrong rim, something that stands before the mouth, or a file of another can.".to_owned()
        }
    }
}

/// What is left between measurement and drawing, and what between measurement and
/// the can as found.
fn misfit(found: &Diagnosis) -> String {
    let value = |misfit: f64| format_decimal(misfit, 3);
    [
        result(
            "Left over with the drawing (reflection, 0 to 1)",
            &value(found.misfit_as_drawn),
        ),
        result("Left over with the can as found", &value(found.misfit)),
    ]
    .concat()
}

fn alike(found: &Diagnosis) -> String {
    let pairs: Vec<String> = found
        .alike
        .iter()
        .map(|(one, other, _)| [name(*one), " and ", name(*other)].concat())
        .collect();
    if pairs.is_empty() {
        return String::new();
    }
    [
        "These look alike to this measurement, so that more of one and less of the other fits as well: ",
        &pairs.join("; "),
        ".",
    ]
    .concat()
}

/// The extra length between the analyser's plane and the can.
fn port(found: &Diagnosis, unit: LengthUnit, reply: &mut Reply) {
    reply.show("take-out-box", found.port_length_m.is_some());
    let Some((length, sd)) = found.port_length_m else {
        reply.place("port", String::new());
        return;
    };
    let inside = if length < 0.0 {
        " A length below zero: the calibrated plane lies further in than the wall."
    } else {
        ""
    };
    let text = [
        "The measurement behaves as if a line of ",
        &signed(Dimension::ProbeLength, length, unit),
        " \u{b1} ",
        &bound(Dimension::ProbeLength, sd, unit),
        " (as air line) lay between the analyser\u{2019}s calibrated plane and the inner wall of the can: an adapter, the connector itself, or a cable.",
        inside,
        " What follows counts it in. It turns the phase alone: VSWR stays, and the Smith chart keeps it unless you take it out.",
    ]
    .concat();
    reply.place(
        "port",
        ["<p class=\"note\">", &escaped(&text), "</p>"].concat(),
    );
}
