//! How a measurement is brought, and what is wrong with one.

use tinwave_core::touchstone::{TouchstoneError, TouchstoneProblem, TouchstoneWarning};
use tinwave_maker::entry::{format_decimal, format_hertz};
use tinwave_maker::measured::{TableFault, TableProblem};

/// The group.
#[must_use]
pub const fn the_measurement() -> &'static str {
    "The measurement"
}

/// The ways to bring one.
#[must_use]
pub const fn how_brought() -> &'static str {
    "What was measured"
}

/// A file, a table, one reading.
#[must_use]
pub const fn ways() -> [&'static str; 3] {
    ["File", "Table", "One reading"]
}

/// The button for a file.
#[must_use]
pub const fn choose_file() -> &'static str {
    "Choose the analyser’s file"
}

/// Which files.
#[must_use]
pub const fn which_files() -> &'static str {
    "Touchstone, .s1p or .s2p. It stays on this device."
}

/// How to measure.
#[must_use]
pub const fn how_to_measure() -> (&'static str, &'static str) {
    (
        "Measure at the can’s connector",
        "Stand clear of its mouth, with nothing metal within a few metres before it.",
    )
}

/// The table.
#[must_use]
pub const fn table_label() -> &'static str {
    "Frequency and value, one pair per line"
}

/// How a table is written.
#[must_use]
pub const fn table_help() -> &'static str {
    "The lowest frequency first; MHz where no unit stands: 2400 1.8"
}

/// The second column.
#[must_use]
pub const fn second_column() -> &'static str {
    "Second column"
}

/// VSWR or return loss.
#[must_use]
pub const fn columns() -> [&'static str; 2] {
    ["VSWR", "Return loss, dB"]
}

/// Takes the table.
#[must_use]
pub const fn take_table() -> &'static str {
    "Take this table"
}

/// Labels of one reading.
#[must_use]
pub const fn reading_at() -> &'static str {
    "Frequency"
}

/// The VSWR there.
#[must_use]
pub const fn reading_vswr() -> &'static str {
    "VSWR there"
}

/// Takes it.
#[must_use]
pub const fn take_reading() -> &'static str {
    "Take this reading"
}

/// What one reading is good for.
#[must_use]
pub const fn reading_note() -> &'static str {
    "One reading is compared with the prediction; it tells no cause."
}

/// A VSWR is no less than 1.
#[must_use]
pub const fn vswr_from_one() -> &'static str {
    "A VSWR is 1 or more."
}

/// No number.
#[must_use]
pub const fn no_number() -> &'static str {
    "This is no number."
}

/// The name of a table and of one reading.
#[must_use]
pub const fn table_name() -> &'static str {
    "Table by hand"
}

/// The name of one reading.
#[must_use]
pub const fn reading_name() -> &'static str {
    "One reading"
}

/// Points, range, port of a measurement.
#[must_use]
pub fn holds(points: usize, range_hz: Option<(f64, f64)>, port: Option<usize>) -> String {
    let Some((low, high)) = range_hz else {
        return "no point".to_owned();
    };
    let range = match (points, port) {
        (1, None) => return format!("1 point at {}", format_hertz(low)),
        (1, Some(port)) => return format!("1 point at {}, port {port}", format_hertz(low)),
        _ => format!("{} to {}", format_decimal(low / 1e6, 0), format_hertz(high)),
    };
    match port {
        Some(port) => format!("{points} points, {range}, port {port}"),
        None => format!("{points} points, {range}"),
    }
}

/// Brings another.
#[must_use]
pub const fn another() -> &'static str {
    "Another"
}

/// Puts it away.
#[must_use]
pub const fn put_away() -> &'static str {
    "Put away"
}

/// Keeps the present one.
#[must_use]
pub const fn keep_this() -> &'static str {
    "Keep this one"
}

/// The port with the can on it.
#[must_use]
pub const fn port_label() -> &'static str {
    "Port with the can on it"
}

/// One port.
#[must_use]
pub fn port(number: usize) -> String {
    format!("Port {number}")
}

/// How far readings can be trusted.
#[must_use]
pub const fn trust_label() -> &'static str {
    "How far to trust it"
}

/// The choices, the best first.
#[must_use]
pub const fn trusts() -> [&'static str; 3] {
    [
        "calibrated at the plug",
        "hand-held, roughly calibrated",
        "a bridge or a needle",
    ]
}

/// A file is being read.
#[must_use]
pub const fn reading_file() -> &'static str {
    "Reading the file"
}

/// A file that can't be read, and what stays.
#[must_use]
pub fn refused(name: &str) -> String {
    format!("{name} was not taken")
}

/// What was there before stays.
#[must_use]
pub const fn former_stays() -> &'static str {
    "The measurement from before stays."
}

/// Nothing is in a file.
#[must_use]
pub const fn file_empty() -> &'static str {
    "There is nothing in it."
}

/// A file is no text.
#[must_use]
pub const fn file_no_text() -> &'static str {
    "It is no text, so it is no such file."
}

/// What is wrong with a file, with its line.
#[must_use]
pub fn file_wrong(error: &TouchstoneError) -> String {
    format!("Line {}: {}", error.line, problem(&error.problem))
}

fn problem(problem: &TouchstoneProblem) -> String {
    use TouchstoneProblem as P;
    match problem {
        P::NotAscii { column } => format!(
            "the character at place {column} does not belong in such a file; only a comment, behind “!”, may hold it."
        ),
        P::NoOptionLine => {
            "numbers stand here, but no line that begins with # came before them (like “# MHz S RI R 50”). A table of frequency and VSWR goes under Table."
                .to_owned()
        }
        P::OptionWord { word } => format!(
            "“{word}” is none of Hz, kHz, MHz, GHz; S, Y, Z, G, H; DB, MA, RI; R and a number."
        ),
        P::NoReference => "the reference impedance has no number.".to_owned(),
        P::Reference {
            value,
            range: [low, high],
        } => format!(
            "a reference of {} ohm; from {} to {} can be used.",
            format_decimal(*value, 0),
            format_decimal(*low, 1),
            format_decimal(*high, 0)
        ),
        P::HybridOnePort => "G and H parameters need two ports; this file has one.".to_owned(),
        P::Number { word } => format!("“{word}” is no number."),
        P::Comma { word } => format!(
            "“{word}” has a comma: in such a file decimals take a point, and spaces part the values."
        ),
        P::ValueCount { found, wanted } => format!("{found} values; {wanted} belong there."),
        P::Frequency {
            above: Some(above), ..
        } => format!(
            "each frequency must be above the one before it ({} MHz).",
            format_decimal(above / 1e6, 3)
        ),
        P::Frequency { above: None, .. } => "a frequency below zero.".to_owned(),
        P::PortCount { value, .. } => format!(
            "a file of {} ports; files of one or two are read.",
            format_decimal(*value, 0)
        ),
        P::Version { word } => format!("“{word}” is no version that is read: 2.0 and 2.1 are."),
        P::Keyword { word } => format!("“{word}” is not understood."),
        P::KeywordMissing { keyword } => format!("before the data there must be {keyword}."),
        P::FrequencyCount { found, stated } => {
            format!("{stated} frequencies are stated, {found} stand there.")
        }
        P::Singular => "these parameters have no reflection.".to_owned(),
        P::NoData => "the file ends without any data.".to_owned(),
        _ => "this can’t be read.".to_owned(),
    }
}

/// A note on something legal; none for what need not be known.
#[must_use]
pub fn file_warned(warning: &TouchstoneWarning) -> Option<String> {
    match warning {
        TouchstoneWarning::SecondOptionLine { line } => Some(format!(
            "Line {line} is a second line that begins with #; it does not count."
        )),
        TouchstoneWarning::MoreThanAll { line } => Some(format!(
            "From line {line} on more comes back than went in, which no can does: calibrate again."
        )),
        _ => None,
    }
}

/// Values with a minus.
#[must_use]
pub const fn table_turned() -> &'static str {
    "Values below zero are taken as S11 in dB: return loss with a minus."
}

/// What is wrong with a table.
#[must_use]
pub fn table_wrong(fault: &TableFault) -> String {
    let line = fault.line;
    match &fault.problem {
        TableProblem::NoRow => "There is no line with numbers yet.".to_owned(),
        TableProblem::NotTwo => format!("Line {line} needs a frequency and one value."),
        TableProblem::Frequency(error) => format!("Line {line}: {error}"),
        TableProblem::NotAscending => {
            format!("Line {line}: each frequency must be above the one before.")
        }
        TableProblem::NoNumber => format!("Line {line}: the second value is no number."),
        TableProblem::OutOfRange { range: [low, high] } => format!(
            "Line {line}: the value must be from {} to {}.",
            format_decimal(*low, 0),
            format_decimal(*high, 0)
        ),
    }
}
