//! What the fit found, in words.

use tinwave_core::diagnosis::{Conclusion, Diagnosis, DiagnosisError, Estimate};
use tinwave_core::dimension::Dimension;
use tinwave_web::entry::{LengthUnit, format_decimal, format_hertz, format_length_signed};

use crate::html::{escaped, row};
use crate::reply::Reply;
use crate::request::Request;

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
    format_length_signed((change * 1e6).round() as i64, unit)
}

/// A bound with its unit.
fn bound(dimension: Dimension, sd: f64, unit: LengthUnit) -> String {
    let text = signed(dimension, BOUND * sd, unit);
    text.trim_start_matches(['+', '\u{b1}']).to_owned()
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
pub(super) fn show(
    request: &Request,
    found: &Result<Diagnosis, DiagnosisError>,
    reply: &mut Reply,
) {
    let found = match found {
        Ok(found) => found,
        Err(error) => {
            reply.text("conclusion", &refused(error));
            for place in ["estimates", "alike", "port"] {
                reply.place(place, String::new());
            }
            reply.show("take-out-box", false);
            return;
        }
    };
    reply.text("conclusion", &conclusion(found, request.unit));
    let estimates = found.estimates.iter().map(|estimate| {
        let from = if estimate.measured {
            "measured"
        } else {
            "usual tolerance only"
        };
        row(&[
            name(estimate.dimension),
            &with_bound(estimate, request.unit),
            from,
        ])
    });
    reply.place("estimates", estimates.collect());
    reply.text("alike", &alike(found));
    port(found, request.unit, reply);
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
    let misfit = |value: f64| format_decimal(value, 3);
    let mut text = match &found.conclusion {
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
                ". Check them with a ruler; the measurement can\u{2019}t tell them apart.",
            ]
            .concat()
        }
        Conclusion::SeveralTogether => {
            "No single dimension explains it; several small differences together do, as listed.".to_owned()
        }
        Conclusion::Unexplained => {
            "No likely difference of these dimensions explains it. Look at the calibration, the plug, the solder joint, a dent or an oval can, or something that stands before the mouth.".to_owned()
        }
    };
    text.push_str(
        &[
            " Left over between measurement and can: ",
            &misfit(found.misfit),
            " as reflection; between measurement and drawing: ",
            &misfit(found.misfit_as_drawn),
            ".",
        ]
        .concat(),
    );
    text
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
    let text = [
        "The measurement behaves as if a line of ",
        &format_length_signed((length * 1e6).round() as i64, unit),
        " \u{b1} ",
        &bound(Dimension::ProbeLength, sd, unit),
        " (as air line) lay between the analyser\u{2019}s calibrated plane and the inner wall of the can: an adapter, the connector itself, or a cable. The comparison below counts it in; what is drawn keeps it unless you take it out.",
    ]
    .concat();
    reply.place(
        "port",
        ["<p class=\"note\">", &escaped(&text), "</p>"].concat(),
    );
}
