//! The log in words.

use tinwave_core::dimension::Dimension;
use tinwave_web::entry::{LengthUnit, format_decimal, format_hertz, format_length};

use super::find_words::bound;
use super::known;
use super::log::Log;
use super::log_line::{Change, Done, Figures, Line, Measured};
use crate::html::escaped;
use crate::request::Request;

/// Whose log it is.
pub(super) fn whose(request: &Request, is_empty: bool) -> String {
    let name = request.design().name.as_str();
    let name = if name.is_empty() {
        "this can (it has no name yet: under \u{201c}Keep and share\u{201d} each can gets its own name and log)"
    } else {
        name
    };
    let state = if is_empty { " is empty." } else { "." };
    ["Log of ", name, state].concat()
}

fn vswr(milli: u32) -> String {
    format_decimal(f64::from(milli) * 1e-3, 2)
}

/// A match in a few words.
pub(super) fn figures(figures: Figures) -> String {
    let best = figures.best.map(|(khz, there)| {
        let at = format_hertz(f64::from(khz) * 1e3);
        ["best at ", &at, " (VSWR ", &vswr(there), ")"].concat()
    });
    let worst = figures
        .worst_milli
        .map(|worst| ["VSWR at worst ", &vswr(worst)].concat());
    let said: Vec<String> = worst.into_iter().chain(best).collect();
    if said.is_empty() {
        return "no point near the band".to_owned();
    }
    said.join(", ")
}

fn measured(one: &Measured, unit: LengthUnit) -> String {
    let known = known::length_sd(&one.after).map_or_else(String::new, |sd| {
        let bound = bound(Dimension::ProbeLength, sd, unit);
        ["; wire length then known to \u{b1} ", &bound].concat()
    });
    [
        "measured: ",
        &figures(one.figures),
        " (wire drawn ",
        &format_length(one.wire_um, unit),
        ")",
        &known,
    ]
    .concat()
}

fn done(change: &Change, unit: LengthUnit) -> String {
    let amount = format_length(change.amount_um, unit);
    match change.done {
        Done::Cut => ["then cut ", &amount, " off"].concat(),
        Done::Lengthened => ["then a wire ", &amount, " longer"].concat(),
        Done::Moved => ["then another hole, ", &amount, " from the back wall"].concat(),
        Done::Screwed => ["then a tuning screw, ", &amount, " deep"].concat(),
        Done::Redrawn => "the drawing was made like the can as found".to_owned(),
    }
}

/// The match before and after a change, each from the nearest measurement.
fn around(lines: &[Line], place: usize) -> (Option<Figures>, Option<Figures>) {
    let of = |line: &Line| match line {
        Line::Measured(one) => Some(one.figures),
        _ => None,
    };
    let (before, rest) = lines.split_at(place.min(lines.len()));
    let before = before.iter().rev().find_map(of);
    // After the next change it would be that one's.
    let after = rest.iter().skip(1).take_while(|line| !line.is_work());
    (before, after.into_iter().find_map(of))
}

/// VSWR of two measurements of the same kind: at worst, or where it is best.
fn pair(before: Option<Figures>, after: Option<Figures>) -> (Option<u32>, Option<u32>) {
    let worst = |figures: Option<Figures>| figures?.worst_milli;
    let best = |figures: Option<Figures>| Some(figures?.best?.1);
    let (b, a) = (worst(before), worst(after));
    if b.is_some() || a.is_some() {
        (b, a)
    } else {
        (best(before), best(after))
    }
}

fn changed(lines: &[Line], place: usize, change: &Change, unit: LengthUnit) -> String {
    let mut text = [
        &done(change, unit),
        " (wire drawn ",
        &format_length(change.wire_um, unit),
        ")",
    ]
    .concat();
    if change.done == Done::Redrawn {
        return text;
    }
    let (before, after) = around(lines, place);
    let (before, after) = pair(before, after);
    let told = [
        (before, " before"),
        (change.expected_milli, " expected"),
        (after, " measured after"),
    ];
    let told: Vec<String> = told
        .iter()
        .filter_map(|(milli, word)| Some([&vswr((*milli)?), *word].concat()))
        .collect();
    if !told.is_empty() {
        text.push_str("; VSWR ");
        text.push_str(&told.join(", "));
    }
    text
}

fn sentence(lines: &[Line], place: usize, line: &Line, unit: LengthUnit) -> String {
    match line {
        Line::Measured(one) => measured(one, unit),
        Line::Changed(change) => changed(lines, place, change, unit),
        Line::Other(text) => text.clone(),
    }
}

/// The log as a list's items, each with a button that takes it out.
pub(super) fn items(log: &Log, unit: LengthUnit) -> String {
    let mut markup = String::new();
    for (place, line) in log.lines.iter().enumerate() {
        for part in [
            "<li>",
            &escaped(&sentence(&log.lines, place, line, unit)),
            " <button type=\"button\" data-act=\"drop ",
            &place.to_string(),
            "\" aria-label=\"Take line ",
            &(place + 1).to_string(),
            " out\">Take out</button></li>",
        ] {
            markup.push_str(part);
        }
    }
    markup
}

/// The log as plain lines.
pub(super) fn plain(log: &Log, unit: LengthUnit) -> String {
    let mut text = String::new();
    for (place, line) in log.lines.iter().enumerate() {
        let number = (place + 1).to_string();
        let line = sentence(&log.lines, place, line, unit);
        for part in [&number, ". ", &line, "\n"] {
            text.push_str(part);
        }
    }
    text
}

/// How the estimate of the wire's length sharpened from measurement to measurement;
/// empty before the second.
pub(super) fn sharpened(log: &Log, mark: &str, now_sd_m: f64, unit: LengthUnit) -> String {
    let before = log.lines.iter().filter_map(|line| match line {
        Line::Measured(one) if one.mark != mark => known::length_sd(&one.after),
        _ => None,
    });
    let mut bounds: Vec<String> = before
        .chain([now_sd_m])
        .map(|sd| ["\u{b1} ", &bound(Dimension::ProbeLength, sd, unit)].concat())
        .collect();
    let Some(now) = bounds.pop().filter(|_| !bounds.is_empty()) else {
        return String::new();
    };
    [
        "The wire length was known to ",
        &bounds.join(", then to "),
        " after earlier measurements of this can, and is now known to ",
        &now,
        ".",
    ]
    .concat()
}
