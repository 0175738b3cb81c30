//! The log of a can.

use tinwave_core::dimension::Dimension;
use tinwave_maker::can_log::{CanLog, Change, Done, Figures, Line, Measured};
use tinwave_maker::entry::{LengthUnit, format_decimal, format_hertz, format_length};

use super::causes::bound;

/// The fold.
#[must_use]
pub const fn log_title() -> &'static str {
    "Log of this can"
}

/// Its line.
#[must_use]
pub fn log_summary(log: &CanLog) -> String {
    match log.lines.len() {
        0 => "empty".to_owned(),
        1 => "1 entry".to_owned(),
        count => format!("{count} entries"),
    }
}

/// Whose log it is.
#[must_use]
pub fn log_of(name: &str) -> String {
    if name.is_empty() {
        "This can has no name yet: with a name (at Shelf) each can keeps its own log.".to_owned()
    } else {
        format!("Log of {name}.")
    }
}

/// What counts.
#[must_use]
pub const fn log_counts() -> &'static str {
    "Each measurement in the log counts in the next estimate. A line that is taken out counts no more, unless a later line was built on it; what was cut stays cut."
}

/// Notes the present measurement.
#[must_use]
pub const fn note_this() -> &'static str {
    "Note this measurement"
}

/// It is there.
#[must_use]
pub const fn noted_already() -> &'static str {
    "This measurement is in the log."
}

/// Takes a line out.
#[must_use]
pub const fn take_line_out() -> &'static str {
    "Take out"
}

/// The same for those who hear it alone.
#[must_use]
pub fn take_this_line_out(number: usize) -> String {
    format!("Take line {number} out")
}

/// Empties the log.
#[must_use]
pub const fn new_log() -> &'static str {
    "Begin a new log"
}

/// Brings lines back.
#[must_use]
pub const fn bring_back() -> &'static str {
    "Bring back what was taken out"
}

/// Saves it.
#[must_use]
pub const fn save_log() -> &'static str {
    "Save the log as a text"
}

/// What a file of the log is called.
#[must_use]
pub const fn log_file() -> &'static str {
    "log"
}

fn vswr(milli: u32) -> String {
    format_decimal(f64::from(milli) * 1e-3, 2)
}

fn figures(figures: Figures) -> String {
    let best = |(khz, there): (u32, u32)| {
        format!(
            "best {} at {}",
            vswr(there),
            format_hertz(f64::from(khz) * 1e3)
        )
    };
    match (figures.worst_milli, figures.best) {
        (Some(worst), Some(at)) => format!("VSWR {} at worst, {}", vswr(worst), best(at)),
        (Some(worst), None) => format!("VSWR {} at worst", vswr(worst)),
        (None, Some(at)) => format!("VSWR {}", best(at)),
        (None, None) => "no point near the band".to_owned(),
    }
}

fn measured(line: &Line, one: &Measured, unit: LengthUnit) -> String {
    let figures = figures(one.figures);
    match line.length_sd_m() {
        Some(sd) => {
            let bound = bound(Dimension::ProbeLength, sd, unit);
            format!("Measured: {figures}. Wire length then known to {bound}.")
        }
        None => format!("Measured: {figures}."),
    }
}

fn done(change: &Change, unit: LengthUnit) -> String {
    let amount = format_length(change.amount_um, unit);
    match change.done {
        Done::Cut => format!("Took {amount} off"),
        Done::Lengthened => format!("Put a wire {amount} longer in"),
        Done::Moved => format!("Drilled another hole, {amount} from the back wall"),
        Done::Screwed => format!("Put a tuning screw in, {amount} deep"),
        Done::Redrawn => "Made the design like the can as found".to_owned(),
    }
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

fn changed(log: &CanLog, place: usize, change: &Change, unit: LengthUnit) -> String {
    let done = done(change, unit);
    if change.done == Done::Redrawn {
        return [&done, "."].concat();
    }
    let (before, after) = log.around(place);
    let (before, after) = pair(before, after);
    let told: Vec<String> = [
        before.map(|milli| format!("{} before", vswr(milli))),
        change
            .expected_milli
            .map(|milli| format!("{} expected", vswr(milli))),
        after.map(|milli| format!("{} measured after", vswr(milli))),
    ]
    .into_iter()
    .flatten()
    .collect();
    if told.is_empty() {
        return [&done, "."].concat();
    }
    format!("{done}. VSWR {}.", told.join(", "))
}

/// A line of the log: its day, if it is known, and what it tells.
#[must_use]
pub fn log_line(log: &CanLog, place: usize, unit: LengthUnit) -> Option<(String, String)> {
    let line = log.lines.get(place)?;
    let (on, text) = match line {
        Line::Measured(one) => (one.on, measured(line, one, unit)),
        Line::Changed(change) => (change.on, changed(log, place, change, unit)),
        Line::Other(text) => (None, text.clone()),
    };
    Some((on.map_or_else(String::new, |day| day.text()), text))
}

/// The log as plain lines.
#[must_use]
pub fn log_text(name: &str, log: &CanLog, unit: LengthUnit) -> String {
    let mut text = [&log_of(name), "\n\n"].concat();
    for place in 0..log.lines.len() {
        if let Some((on, line)) = log_line(log, place, unit) {
            text.push_str(&format!("{}. {on} {line}\n", place + 1).replace("  ", " "));
        }
    }
    text
}
