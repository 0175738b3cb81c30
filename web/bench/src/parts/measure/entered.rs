//! What the maker has entered as a measurement: a file, a table, or where it is
//! best.

use tinwave_core::design::Sweep;
use tinwave_core::diagnosis::{Measurement, MeasurementError};
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

/// Reads what was entered; what is wrong is said beside it. `None` also where there
/// is nothing yet.
pub(super) fn entered(request: &Request, reply: &mut Reply) -> Option<Entered> {
    for field in ["file", "table", "best", "vswr"] {
        reply.wrong(field, "");
    }
    reply.place("measured-notes", String::new());
    let read = match request.get("source") {
        "table" => table(request, reply),
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
        if request.act() == "file file" {
            return Err(("file", NO_TEXT.to_owned()));
        }
        return Ok(None);
    }
    // The name tells the number of ports; a text pasted over the file may be another.
    let name = request.get("file-name").to_ascii_lowercase();
    let ports = [(".s1p", Ports::One), (".s2p", Ports::Two)]
        .into_iter()
        .find_map(|(end, ports)| name.ends_with(end).then_some(ports));
    let network = read_touchstone(text, ports)
        .or_else(|error| read_touchstone(text, None).map_err(|_| error))
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

const NO_TEXT: &str = "That file is empty, or far larger than any measurement (over 4 MB).";

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

/// A row of a table: its line (from 0), frequency in Hz and value.
type Row = (usize, f64, f64);

fn table_rows(text: &str) -> Result<Vec<Row>, (&'static str, String)> {
    let mut rows = Vec::new();
    for (index, line) in text.lines().enumerate() {
        // Headings and notes.
        let said = line.split('!').next().unwrap_or_default();
        if !said.contains(|c: char| c.is_ascii_digit()) {
            continue;
        }
        let wrong = |sentence: &str| ("table", in_line(index, sentence));
        let (frequency, value) =
            two_columns(said).ok_or_else(|| wrong("needs a frequency and one value."))?;
        let hz = hertz(frequency).map_err(|error| wrong(&error.to_string()))?;
        let value = decimal(value).ok_or_else(|| wrong("the second value is no number."))?;
        rows.push((index, hz, value));
    }
    Ok(rows)
}

fn table(request: &Request, reply: &mut Reply) -> Read {
    let rows = table_rows(request.get("table"))?;
    if rows.is_empty() {
        return if request.get("table").trim().is_empty() {
            Ok(None)
        } else {
            Err(("table", "There is no line with numbers yet.".to_owned()))
        };
    }
    let loss = request.get("column") == "loss";
    let mut pairs: Vec<(f64, f64)> = rows.iter().map(|(_, hz, value)| (*hz, *value)).collect();
    if loss && pairs.iter().all(|(_, value)| *value <= 0.0) && pairs.iter().any(|p| p.1 < 0.0) {
        for pair in &mut pairs {
            pair.1 = -pair.1;
        }
        let note = "<p class=\"note\">Values below zero are taken as S11 in dB: return loss with a minus.</p>";
        reply.place("measured-notes", note.to_owned());
    }
    let read = if loss {
        Measurement::from_return_loss(&pairs)
    } else {
        Measurement::from_vswr(&pairs)
    };
    read.map(Some).map_err(|error| {
        let (row, sentence) = match error {
            MeasurementError::Frequency { row, .. } => (
                row,
                "each frequency must be above the one before.".to_owned(),
            ),
            MeasurementError::Value { row, range, .. } => {
                let [low, high] = range.map(|end| format_decimal(end, 0));
                let sentence = ["the value must be from ", &low, " to ", &high, "."].concat();
                (row, sentence)
            }
        };
        let line = rows.get(row).map_or(row, |(line, ..)| *line);
        ("table", in_line(line, &sentence))
    })
}

fn hertz(text: &str) -> Result<f64, EntryError> {
    parse_frequency(text).map(|read| f64::from(read.value) * 1e3)
}

fn in_line(index: usize, sentence: &str) -> String {
    ["Line ", &(index + 1).to_string(), ": ", sentence].concat()
}

/// A frequency and the last value, with space, tab, semicolon or (alone) a comma
/// before it; the frequency's unit may stand apart.
fn two_columns(line: &str) -> Option<(&str, &str)> {
    let parted = |c: char| c.is_ascii_whitespace() || c == ';';
    let line = line.trim_matches(parted);
    let (first, value) = line.rsplit_once(parted).or_else(|| line.split_once(','))?;
    let frequency = first.trim_end_matches(|c: char| parted(c) || c == ',');
    // Three numbers are no pair.
    let alone = frequency
        .split(parted)
        .skip(1)
        .all(|word| !word.contains(|c: char| c.is_ascii_digit()));
    (alone && !frequency.is_empty() && !value.is_empty()).then_some((frequency, value.trim()))
}

/// Most points that the page's charts are given.
const MOST_SHOWN: usize = 1_001;

/// What was measured within the sweep, for the page's charts; where only the
/// magnitude is known the imaginary part is no number.
pub(super) fn for_charts(measurement: &Measurement, sweep: Sweep) -> Vec<(u32, f64, f64)> {
    let khz = |hz: f64| (hz / 1e3).round() as u32;
    let points: Vec<(u32, f64, f64)> = match measurement {
        Measurement::Reflection(points) => points
            .iter()
            .map(|(hz, at)| (khz(*hz), at.re, at.im))
            .collect(),
        Measurement::Magnitude(points) => points
            .iter()
            .map(|(hz, size)| (khz(*hz), *size, f64::NAN))
            .collect(),
        Measurement::BestAt { .. } => Vec::new(),
    };
    let range = sweep.low_khz..=sweep.high_khz;
    let shown: Vec<_> = points
        .into_iter()
        .filter(|(khz, ..)| range.contains(khz))
        .collect();
    let every = shown.len() / MOST_SHOWN + 1;
    shown.into_iter().step_by(every).collect()
}
