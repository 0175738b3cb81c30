//! Tuning screws.

use tinwave_core::design::Screw;
use tinwave_core::screw_search::TunedScrews;
use tinwave_maker::entry::{LengthUnit, format_length};
use tinwave_maker::threads::{Thread, turns};

use crate::measure::vswr;

/// The fold.
#[must_use]
pub const fn screws_title() -> &'static str {
    "Tune with a screw"
}

/// Its line.
#[must_use]
pub fn screws_summary(present: usize) -> String {
    match present {
        0 => "no screw in the design".to_owned(),
        1 => "one screw in the design".to_owned(),
        count => format!("{count} screws in the design"),
    }
}

/// What it is.
#[must_use]
pub const fn screws_note() -> &'static str {
    "One or two screws through the wall, turned in until the match is right. Wire and screws are solved together. What is found is added to the screws that are there."
}

/// One or two.
#[must_use]
pub const fn how_many() -> (&'static str, [&'static str; 2]) {
    ("How many", ["One screw", "Two in a line"])
}

/// Its thread.
#[must_use]
pub const fn thread_label() -> &'static str {
    "Thread"
}

/// A thread with its width.
#[must_use]
pub fn thread_name(thread: Thread, unit: LengthUnit) -> String {
    format!(
        "{} ({})",
        thread.name,
        format_length(thread.diameter_um, unit)
    )
}

/// The side of the can.
#[must_use]
pub const fn side_label() -> &'static str {
    "Side of the can"
}

/// A side: thousandths of a degree round the axis from the wire.
#[must_use]
pub fn side(angle_millideg: i32) -> &'static str {
    match angle_millideg {
        180_000 => "opposite the wire",
        150_000 => "30° beside the line opposite the wire",
        135_000 => "45° beside the line opposite the wire",
        0 => "on the wire’s side",
        30_000 => "30° beside the wire’s line",
        45_000 => "45° beside the wire’s line",
        90_000 => "a quarter round from the wire, does little",
        _ => "elsewhere",
    }
}

/// Searches.
#[must_use]
pub const fn search_screws() -> &'static str {
    "Search for the best screws"
}

/// The work in hand.
#[must_use]
pub const fn searching_screws() -> &'static str {
    "Searching for screws"
}

/// The can is not computed.
#[must_use]
pub const fn screws_not_computed() -> &'static str {
    "This can isn’t computed as it stands."
}

/// What was found.
#[must_use]
pub fn screws_found(tuned: &TunedScrews, wanted: u32) -> String {
    let (without, with) = (vswr(tuned.worst_vswr_without), vswr(tuned.worst_vswr));
    match (tuned.screws.len(), wanted) {
        (0, _) => format!(
            "No screw there betters the match: the worst VSWR is {without} without. Try another side, or move and cut the wire."
        ),
        (1, 2) => format!(
            "One screw (a second adds nothing) would bring the worst VSWR from {without} to {with}. Computed, not measured."
        ),
        (1, _) => format!(
            "One screw would bring the worst VSWR from {without} to {with}. Computed, not measured."
        ),
        _ => format!(
            "Two screws would bring the worst VSWR from {without} to {with}. Computed, not measured."
        ),
    }
}

/// Where a screw goes.
#[derive(Clone, Copy, Debug)]
pub struct ScrewPlace {
    /// The screw.
    pub screw: Screw,
    /// From the closed end's rim, outside.
    pub from_closed_rim_um: u32,
    /// From the rim of the mouth; `None` beyond it.
    pub from_mouth_um: Option<u32>,
    /// Its thread.
    pub thread: Thread,
    /// Quarter turns that keep the match near its best.
    pub slack: Option<(u32, u32)>,
}

/// Its figures: what each is, and its value.
#[must_use]
pub fn screw_rows(place: &ScrewPlace, unit: LengthUnit) -> Vec<(String, String)> {
    let length = |um: u32| format_length(um, unit);
    let quarters = place.thread.quarter_turns(place.screw.depth_um);
    let row = |what: &str, value: String| (what.to_owned(), value);
    vec![
        row(
            "Middle of the hole, from the closed end’s rim",
            length(place.from_closed_rim_um),
        ),
        row(
            "From the inside of the back wall",
            length(place.screw.axial_um),
        ),
        row(
            "From the rim of the mouth",
            place
                .from_mouth_um
                .map_or_else(|| "beyond the rim".to_owned(), length),
        ),
        row("Depth inside the wall", length(place.screw.depth_um)),
        row("Turns in from flush with the wall", turns(quarters)),
        row(
            "Turns that keep VSWR within 0.05",
            place.slack.map_or_else(
                || "not known".to_owned(),
                |(low, high)| format!("{} to {}", turns(low), turns(high)),
            ),
        ),
    ]
}

/// A screw's heading.
#[must_use]
pub fn screw_head(number: usize, thread: Thread, angle_millideg: i32) -> String {
    format!("Screw {number}, {}, {}", thread.name, side(angle_millideg))
}

/// The chart.
#[must_use]
pub const fn depth_chart() -> (&'static str, &'static str) {
    (
        "Depth of the screw",
        "Worst VSWR over the band, lower is better",
    )
}

/// Its axis.
#[must_use]
pub const fn turns_axis() -> (&'static str, &'static str) {
    ("Quarter turns in from flush", "¼ turns")
}

/// A curve.
#[must_use]
pub fn screw_curve(number: usize) -> String {
    format!("screw {number}")
}

/// Within 0.05 of the best.
#[must_use]
pub const fn near_best() -> &'static str {
    "within 0.05 of the best"
}

/// Puts them in.
#[must_use]
pub const fn put_in() -> &'static str {
    "Put these screws into the design"
}

/// Takes all out.
#[must_use]
pub const fn remove_screws() -> &'static str {
    "Take all screws out of the design"
}

/// Cautions of a screw: headline, text, source.
#[must_use]
pub const fn screw_cautions() -> [(&'static str, &'static str, &'static str); 3] {
    [
        (
            "Drill before you solder, and deburr",
            "Drill the screw’s hole while the can is empty, and take off the burr inside: it is razor sharp, and part of the match. Thin sheet holds no thread: rivet a nut plate over the hole, outside. Soldering a nut on zinc gives off fumes that make you ill. The screw must touch the wall all round.",
            "Common practice, no source",
        ),
        (
            "Screws work loose",
            "Heat, wind and shaking turn them. Hold each with a lock nut, and look at the match again after tightening.",
            "Common practice, no source",
        ),
        (
            "Never turn a screw with the transmitter on",
            "Tune with an analyser. A transmitter can be damaged by the mismatch on the way, and your eyes are close to the can.",
            "ICNIRP guidelines 2020 for what people may be exposed to; your national rules decide",
        ),
    ]
}
