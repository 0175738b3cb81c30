//! What the maker has entered as a measurement: a file, a table, or where it is
//! best.

use tinwave_core::complex::Complex;
use tinwave_core::design::Design;
use tinwave_core::diagnosis::{Measurement, MeasurementError};
use tinwave_core::si::hertz;
use tinwave_core::touchstone::{Ports, Touchstone, read_touchstone};
use tinwave_web::entry::{EntryError, format_decimal, parse_frequency};

use super::touchstone_words;
use crate::html::escaped;
use crate::reply::Reply;
use crate::request::Request;

/// A measurement that could be read.
pub(super) struct Entered {
    pub(super) measurement: Measurement,
}

impl Entered {
    /// Frequency in Hz and magnitude of the reflection, as far as it was measured.
    pub(super) fn magnitudes(&self) -> Vec<(f64, f64)> {
        match &self.measurement {
            Measurement::Reflection(points) => {
                points.iter().map(|(hz, at)| (*hz, at.abs())).collect()
            }
            Measurement::Magnitude(points) => points.clone(),
            Measurement::BestAt {
                frequency_hz,
                magnitude,
            } => vec![(*frequency_hz, *magnitude)],
        }
    }
}

/// Those within a design's sweep; a lone point counts wherever it is.
pub(super) fn within_sweep(points: Vec<(f64, f64)>, design: &Design) -> Vec<(f64, f64)> {
    if points.len() < 2 {
        return points;
    }
    let sweep = design.effective_sweep();
    let inside = hertz(sweep.low_khz)..=hertz(sweep.high_khz);
    let near = points.into_iter().filter(|(hz, _)| inside.contains(hz));
    near.collect()
}

/// Reads what was entered; what is wrong is said beside it. `None` also where there
/// is nothing yet.
pub(super) fn entered(request: &Request, reply: &mut Reply) -> Option<Entered> {
    for field in ["file", "table", "best", "vswr"] {
        reply.wrong(field, "");
    }
    reply.place("measured-notes", String::new());
    let read = match request.get("source") {
        "table" => table(request),
        "best" => best(request),
        _ => file(request, reply),
    };
    match read {
        Ok(measurement) => measurement.map(|measurement| Entered { measurement }),
        Err((field, sentence)) => {
            reply.wrong(field, &sentence);
            None
        }
    }
}

type Read = Result<Option<Measurement>, (&'static str, String)>;

fn file(request: &Request, reply: &mut Reply) -> Read {
    let text = request.get("file");
    if text.trim().is_empty() {
        return Ok(None);
    }
    let name = request.get("file-name").to_ascii_lowercase();
    let ports = [(".s1p", Ports::One), (".s2p", Ports::Two)]
        .into_iter()
        .find_map(|(end, ports)| name.ends_with(end).then_some(ports));
    let network = read_touchstone(text, ports)
        .map_err(|error| ("file", touchstone_words::refused(&error)))?;
    let reference = f64::from(request.design().probe.reference_milliohm) / 1e3;
    let reflections = match (request.get("port"), network.ports) {
        ("2", Ports::Two) => second_port(&network).reflections(reference),
        ("2", Ports::One) => {
            return Err((
                "file",
                "This file has one port only: choose port 1.".to_owned(),
            ));
        }
        _ => network.reflections(reference),
    };
    let notes: Vec<String> = network
        .warnings
        .iter()
        .filter_map(touchstone_words::warned)
        .map(|note| ["<p class=\"note\">", &escaped(&note), "</p>"].concat())
        .collect();
    reply.place("measured-notes", notes.concat());
    Ok(Some(Measurement::Reflection(reflections)))
}

/// The network seen from its other side.
fn second_port(network: &Touchstone) -> Touchstone {
    let mut turned = network.clone();
    turned.reference_ohm.swap(0, 1);
    for point in &mut turned.points {
        let [[s11, s12], [s21, s22]] = point.s;
        point.s = [[s22, s21], [s12, s11]];
    }
    turned
}

fn best(request: &Request) -> Read {
    let (at, there) = (request.get("best").trim(), request.get("vswr").trim());
    if at.is_empty() && there.is_empty() {
        return Ok(None);
    }
    let khz = parse_frequency(at)
        .map_err(|error| ("best", error.to_string()))?
        .value;
    let vswr = decimal(there).ok_or_else(|| ("vswr", NO_VALUE.to_owned()))?;
    Measurement::from_best(f64::from(khz) * 1e3, vswr)
        .map(Some)
        .map_err(|_| ("vswr", "A VSWR is 1 or more.".to_owned()))
}

const NO_VALUE: &str = "This is no number.";

/// A number with a point or a comma.
pub(super) fn decimal(text: &str) -> Option<f64> {
    let plain = text.trim().replace(',', ".");
    plain.parse().ok().filter(|value: &f64| value.is_finite())
}

fn table(request: &Request) -> Read {
    let lines = request.get("table").lines().enumerate();
    let mut rows = Vec::new();
    let mut places = Vec::new();
    for (index, line) in lines.filter(|(_, line)| !line.trim().is_empty()) {
        let wrong = |sentence: &str| ("table", in_line(index, sentence));
        let (frequency, value) =
            two_columns(line).ok_or_else(|| wrong("needs a frequency and one value."))?;
        let hz = read_hertz(frequency).map_err(|error| wrong(&error.to_string()))?;
        rows.push((
            hz,
            decimal(value).ok_or_else(|| wrong("the second value is no number."))?,
        ));
        places.push(index);
    }
    if rows.is_empty() {
        return Ok(None);
    }
    let read = match request.get("column") {
        "loss" => Measurement::from_return_loss(&rows),
        _ => Measurement::from_vswr(&rows),
    };
    read.map(Some).map_err(|error| {
        let (row, sentence) = match error {
            MeasurementError::Frequency { row, .. } => (
                row,
                "each frequency must be above the one before.".to_owned(),
            ),
            MeasurementError::Value { row, range, .. } => {
                let [low, high] = range.map(|end| format_decimal(end, 0));
                (
                    row,
                    ["the value must be from ", &low, " to ", &high, "."].concat(),
                )
            }
        };
        (
            "table",
            in_line(places.get(row).copied().unwrap_or(row), &sentence),
        )
    })
}

fn read_hertz(text: &str) -> Result<f64, EntryError> {
    parse_frequency(text).map(|read| f64::from(read.value) * 1e3)
}

fn in_line(index: usize, sentence: &str) -> String {
    ["Line ", &(index + 1).to_string(), ": ", sentence].concat()
}

/// Two values with space, tab, semicolon or (alone) a comma between them.
fn two_columns(line: &str) -> Option<(&str, &str)> {
    let line = line.trim();
    let parted = |c: char| c.is_ascii_whitespace() || c == ';';
    let (first, rest) = line.split_once(parted).or_else(|| line.split_once(','))?;
    let second = rest.trim_matches(|c: char| parted(c));
    let whole = !first.is_empty() && !second.is_empty() && !second.contains(parted);
    whole.then_some((first.trim_end_matches(','), second))
}

/// A reflection of which only the magnitude is known, for the page's charts.
pub(super) fn for_charts(measurement: &Measurement) -> Vec<(u32, f64, f64)> {
    let khz = |hz: f64| (hz / 1e3).round() as u32;
    match measurement {
        Measurement::Reflection(points) => points
            .iter()
            .map(|(hz, at): &(f64, Complex)| (khz(*hz), at.re, at.im))
            .collect(),
        Measurement::Magnitude(points) => points
            .iter()
            .map(|(hz, size)| (khz(*hz), *size, f64::NAN))
            .collect(),
        Measurement::BestAt { .. } => Vec::new(),
    }
}
