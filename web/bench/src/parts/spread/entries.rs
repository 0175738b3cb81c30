//! The fields of this part: text to numbers, what is wrong beside them.

use std::fmt::Display;

use tinwave_core::dimension::Dimension;
use tinwave_core::tolerance::{Spread, YieldSettings};
use tinwave_web::entry::{
    LengthUnit, format_length_exact, format_trimmed, parse_count, parse_length, parse_picofarad,
};

use super::words::fine_length;
use crate::reply::Reply;
use crate::request::Request;

/// Largest tolerance of a length, micrometres, and of the capacitance, femtofarad.
const LARGEST_UM: u32 = 5_000;
const LARGEST_FF: u32 = 1_000;
/// Cans drawn: usual, fewest, most.
const SAMPLES: (u32, u32, u32) = (2_000, 100, 20_000);
/// Cans of a batch.
const BATCH: (u32, u32, u32) = (10, 1, 10_000);
const SEED: (u32, u32, u32) = (1, 0, u32::MAX);

/// The field of a dimension's tolerance.
pub(super) const fn field(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::ProbeLength => "spread-length",
        Dimension::BackshortDistance => "spread-distance",
        Dimension::InsideDiameter => "spread-diameter",
        Dimension::HoleDiameter => "spread-hole",
        Dimension::ShuntCapacitance => "spread-capacitance",
        Dimension::OpenLength => "spread-open",
        Dimension::WireDiameter => "spread-wire",
    }
}

/// The unit that bare lengths of the fields are in: the page's of the last answer.
fn unit_of_fields(request: &Request) -> LengthUnit {
    LengthUnit::from_key(request.get("spread-unit")).unwrap_or(request.unit)
}

fn lengths() -> impl Iterator<Item = Dimension> {
    let all = Dimension::ALL.into_iter();
    all.filter(|dimension| *dimension != Dimension::ShuntCapacitance)
}

/// Writes the lengths anew when the page's unit has changed.
pub(super) fn follow_unit(request: &Request, reply: &mut Reply) {
    let (from, to) = (unit_of_fields(request), request.unit);
    for name in lengths().map(field) {
        reply.text(&[name, "-unit"].concat(), to.symbol());
        if from != to
            && let Ok(length) = parse_length(request.get(name), from)
        {
            reply.field(name, &format_length_exact(length.value, to));
        }
    }
    if request.get("spread-unit") != to.key() {
        reply.field("spread-unit", to.key());
    }
}

/// Puts the usual tolerances into their fields.
pub(super) fn put_usual(request: &Request, reply: &mut Reply) {
    for dimension in Dimension::ALL {
        let text = match usual(dimension) {
            Whole::Micrometres(um) => format_length_exact(um, request.unit),
            Whole::Femtofarad(ff) => format_trimmed(i64::from(ff), 3),
        };
        reply.field(field(dimension), &text);
        reply.wrong(field(dimension), "");
    }
}

/// A tolerance in whole units.
#[derive(Clone, Copy)]
enum Whole {
    Micrometres(u32),
    Femtofarad(u32),
}

fn usual(dimension: Dimension) -> Whole {
    let size = dimension.usual_tolerance();
    match dimension {
        Dimension::ShuntCapacitance => Whole::Femtofarad((size * 1e15).round() as u32),
        _ => Whole::Micrometres((size * 1e6).round() as u32),
    }
}

fn beyond(low: &str, high: &str) -> String {
    ["This must be from ", low, " to ", high, "."].concat()
}

fn parsed_tolerance(request: &Request, dimension: Dimension) -> Result<Whole, String> {
    let text = request.get(field(dimension));
    if text.trim().is_empty() {
        return Ok(usual(dimension));
    }
    let said = |error: &dyn Display| error.to_string();
    if dimension == Dimension::ShuntCapacitance {
        let ff = parse_picofarad(text).map_err(|e| said(&e))?.value;
        return if ff <= LARGEST_FF {
            Ok(Whole::Femtofarad(ff))
        } else {
            Err(beyond("0", "1 pF"))
        };
    }
    let unit = unit_of_fields(request);
    let um = parse_length(text, unit).map_err(|e| said(&e))?.value;
    if um <= LARGEST_UM {
        Ok(Whole::Micrometres(um))
    } else {
        Err(beyond("0", &fine_length(LARGEST_UM, request.unit)))
    }
}

/// Tolerances of all dimensions, in the unit of [`Dimension::of`], 0 where one is
/// exact; `None` where a field can't be read.
pub(super) fn tolerances(request: &Request, reply: &mut Reply) -> Option<Vec<(Dimension, f64)>> {
    let mut all = Vec::new();
    for dimension in Dimension::ALL {
        let entered = if request.act() == "usual" {
            Ok(usual(dimension))
        } else {
            parsed_tolerance(request, dimension)
        };
        let wrong = entered.as_ref().err().map_or("", String::as_str);
        reply.wrong(field(dimension), wrong);
        all.push(entered.map(|whole| {
            let size = match whole {
                Whole::Micrometres(um) => f64::from(um) * 1e-6,
                Whole::Femtofarad(ff) => f64::from(ff) * 1e-15,
            };
            (dimension, size)
        }));
    }
    all.into_iter().collect::<Result<_, _>>().ok()
}

fn count(
    request: &Request,
    reply: &mut Reply,
    name: &str,
    (usual, low, high): (u32, u32, u32),
) -> Option<u32> {
    let text = request.get(name);
    let entered = match text.trim() {
        "" => Ok(usual),
        _ => match parse_count(text) {
            Ok(number) if (low..=high).contains(&number) => Ok(number),
            Ok(_) => Err(beyond(&low.to_string(), &high.to_string())),
            Err(error) => Err(error.to_string()),
        },
    };
    reply.wrong(name, entered.as_ref().err().map_or("", String::as_str));
    entered.ok()
}

/// The VSWR up to which a can passes.
pub(super) fn limit(request: &Request) -> f64 {
    if request.get("spread-limit") == "2" {
        2.0
    } else {
        1.5
    }
}

/// Whether tolerances are standard deviations.
pub(super) fn is_normal(request: &Request) -> bool {
    request.get("spread-kind") == "normal"
}

/// What is drawn and judged; `None` where a field can't be read.
pub(super) fn yield_settings(
    request: &Request,
    reply: &mut Reply,
    tolerances: &[(Dimension, f64)],
) -> Option<YieldSettings> {
    let spread = |size: f64| {
        if is_normal(request) {
            Spread::Normal(size)
        } else {
            Spread::Uniform(size)
        }
    };
    let scattering = tolerances.iter().filter(|(_, size)| *size > 0.0);
    let spreads = scattering.map(|(d, size)| (*d, spread(*size))).collect();
    let samples = count(request, reply, "spread-samples", SAMPLES);
    let seed = count(request, reply, "spread-seed", SEED);
    Some(YieldSettings {
        spreads,
        vswr_limit: limit(request),
        samples: samples?,
        seed: u64::from(seed?),
    })
}

/// Cans of the batch.
pub(super) fn batch_size(request: &Request, reply: &mut Reply) -> Option<u32> {
    count(request, reply, "spread-batch", BATCH)
}
