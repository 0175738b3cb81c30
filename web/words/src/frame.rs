//! What the kit and the frame round the stations always say.

use tinwave_maker::station::Station;

/// Opens the reasons of a figure.
#[must_use]
pub const fn why() -> &'static str {
    "why"
}

/// Name of a figure's reasons.
#[must_use]
pub fn why_of(label: &str) -> String {
    format!("why: {label}")
}

/// Heads the way a figure is worked out.
#[must_use]
pub const fn how_worked_out() -> &'static str {
    "How it is worked out"
}

/// Heads how far a figure may be off.
#[must_use]
pub const fn how_sure() -> &'static str {
    "How sure"
}

/// Heads the published source.
#[must_use]
pub const fn source() -> &'static str {
    "Source"
}

/// A figure's value before the last change.
#[must_use]
pub fn was(value: &str) -> String {
    format!("was {value}")
}

/// Ends work that takes long.
#[must_use]
pub const fn stop() -> &'static str {
    "Stop"
}

/// Below a chart.
#[must_use]
pub const fn same_as_table() -> &'static str {
    "The same as a table"
}

/// Takes a change back that came from elsewhere.
#[must_use]
pub const fn put_back() -> &'static str {
    "Put back"
}

/// Of a value that a link brought.
#[must_use]
pub fn from_the_link(was: &str) -> String {
    format!("From the link; it was {was}")
}

/// Of a value that undo or redo changed.
#[must_use]
pub fn from_undo(was: &str) -> String {
    format!("Changed back; it was {was}")
}

/// Offers the likeliest meaning of what was typed; `value` is what that comes to,
/// empty where the text already says it.
#[must_use]
pub fn take_it_as(meaning: &str, value: &str) -> String {
    if value.is_empty() || value == meaning {
        format!("Take it as {meaning}")
    } else {
        format!("Take it as {meaning}, {value}")
    }
}

/// Of a number that was typed finer than it is kept.
#[must_use]
pub fn kept_as(value: &str) -> String {
    format!("kept as {value}")
}

/// The button that makes a number smaller.
#[must_use]
pub fn less(label: &str) -> String {
    format!("{label}: less")
}

/// The button that makes a number larger.
#[must_use]
pub fn more(label: &str) -> String {
    format!("{label}: more")
}

/// The unit of an entry, for those who hear its label.
#[must_use]
pub fn in_unit(unit: &str) -> String {
    format!(", {unit}")
}

/// Nothing in a list matches what was typed.
#[must_use]
pub fn nothing_matches(text: &str) -> String {
    format!("Nothing in the list matches “{text}”.")
}

/// On the area where a file is dropped.
#[must_use]
pub const fn choose_file() -> &'static str {
    "Choose a file"
}

/// Below it.
#[must_use]
pub const fn or_drop_or_paste() -> &'static str {
    "or drop it here, or paste its text"
}

/// The field for a file's text.
#[must_use]
pub const fn paste_here() -> &'static str {
    "Paste the text here"
}

/// Takes what was pasted.
#[must_use]
pub const fn take_pasted() -> &'static str {
    "Take the text"
}

/// What a pasted text is called where a file has its name.
#[must_use]
pub const fn pasted_text() -> &'static str {
    "pasted text"
}

/// A file that the browser could not read.
#[must_use]
pub fn file_unreadable(name: &str) -> String {
    format!("{name} could not be read. Choose it again, or paste its text.")
}

/// A file far larger than any that belongs here.
#[must_use]
pub fn file_too_large(name: &str, most_megabytes: u32) -> String {
    format!("{name} is larger than {most_megabytes} MB: this is no file for this place.")
}

/// The name of a station.
#[must_use]
pub const fn station(station: Station) -> &'static str {
    match station {
        Station::Can => "Can",
        Station::Feed => "Feed",
        Station::Beam => "Beam",
        Station::Make => "Make",
        Station::Measure => "Measure",
        Station::Link => "Link",
        Station::Shelf => "Shelf",
    }
}
