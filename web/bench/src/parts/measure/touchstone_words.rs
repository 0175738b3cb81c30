//! What is wrong with a Touchstone file, in plain words.

use tinwave_core::touchstone::{TouchstoneError, TouchstoneProblem, TouchstoneWarning};
use tinwave_web::entry::format_decimal;

fn number(value: f64) -> String {
    format_decimal(value, 0)
}

fn quoted(word: &str) -> String {
    ["\u{201c}", word, "\u{201d}"].concat()
}

/// A sentence with the line that is wrong.
pub(super) fn refused(error: &TouchstoneError) -> String {
    [
        "Line ",
        &error.line.to_string(),
        ": ",
        &problem(&error.problem),
    ]
    .concat()
}

fn problem(problem: &TouchstoneProblem) -> String {
    use TouchstoneProblem as P;
    match problem {
        P::NotAscii { column } => [
            "the character at place ",
            &column.to_string(),
            " does not belong in such a file; only a comment, behind \u{201c}!\u{201d}, may hold it.",
        ]
        .concat(),
        P::NoOptionLine => {
            "numbers stand here, but no line that begins with # came before them (like \u{201c}# MHz S RI R 50\u{201d})."
                .to_owned()
        }
        P::OptionWord { word } => [
            &quoted(word),
            " is none of Hz, kHz, MHz, GHz; S, Y, Z, G, H; DB, MA, RI; R and a number.",
        ]
        .concat(),
        P::NoReference => "the reference impedance has no number.".to_owned(),
        P::Reference { value, range: [low, high] } => [
            "a reference of ",
            &number(*value),
            " ohm; from ",
            &format_decimal(*low, 1),
            " to ",
            &number(*high),
            " can be used.",
        ]
        .concat(),
        P::HybridOnePort => "G and H parameters need two ports; this file has one.".to_owned(),
        P::Number { word } => [&quoted(word), " is no number."].concat(),
        P::Comma { word } => [
            &quoted(word),
            " has a comma: in such a file decimals take a point, and spaces part the values.",
        ]
        .concat(),
        P::ValueCount { found, wanted } => [
            &found.to_string(),
            " values; ",
            &wanted.to_string(),
            " belong there.",
        ]
        .concat(),
        P::Frequency { above: Some(above), .. } => [
            "each frequency must be above the one before it (",
            &format_decimal(above / 1e6, 3),
            " MHz).",
        ]
        .concat(),
        P::Frequency { above: None, .. } => "a frequency below zero.".to_owned(),
        P::PortCount { value, .. } => [
            "a file of ",
            &number(*value),
            " ports; files of one or two are read.",
        ]
        .concat(),
        P::Version { word } => [&quoted(word), " is no version that is read: 2.0 and 2.1 are."].concat(),
        P::Keyword { word } => [&quoted(word), " is not understood."].concat(),
        P::KeywordMissing { keyword } => ["before the data there must be ", keyword, "."].concat(),
        P::FrequencyCount { found, stated } => [
            &stated.to_string(),
            " frequencies are stated, ",
            &found.to_string(),
            " stand there.",
        ]
        .concat(),
        P::Singular => "these parameters have no reflection.".to_owned(),
        P::NoData => "the file ends without any data.".to_owned(),
        _ => "this can\u{2019}t be read.".to_owned(),
    }
}

/// A note on something legal; none for what need not be known.
pub(super) fn warned(warning: &TouchstoneWarning) -> Option<String> {
    match warning {
        TouchstoneWarning::SecondOptionLine { line } => Some(
            [
                "Line ",
                &line.to_string(),
                " is a second line that begins with #; it does not count.",
            ]
            .concat(),
        ),
        TouchstoneWarning::MoreThanAll { line } => Some(
            [
                "From line ",
                &line.to_string(),
                " on more comes back than went in, which no can does: calibrate again.",
            ]
            .concat(),
        ),
        _ => None,
    }
}
