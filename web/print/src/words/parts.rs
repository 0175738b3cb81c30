//! What is needed: the parts list and the words round the section drawing.

use super::{When, diameter, length, say};
use crate::figure::{Figures, whole};
use crate::fill::{Put, fill};
use tinwave_maker::entry::LengthUnit;
use tinwave_protocol::print::PrintJob;

pub(crate) const PARTS: &str = "Parts and tools";
pub(crate) const STEPS: &str = "Order of work";
pub(crate) const COMPUTED: &str = "Computed for this design";

/// Wire that is held while it is trimmed. Common practice, no source.
pub(crate) const SPARE_WIRE_UM: u32 = 10_000;

/// Under the section drawing.
pub(crate) fn section_caption(job: &PrintJob, scale: i32) -> String {
    let unit = match job.unit {
        LengthUnit::Millimetre => "mm",
        LengthUnit::Inch => "inches",
    };
    let scale = fill("In {}, scale 1:{}. ", &[unit, &whole(i64::from(scale))]);
    scale + &say(job, "Wire {wire}, hole {drill}.")
}

/// The lower dimension of the section drawing.
pub(crate) fn hole_from_rim(job: &PrintJob) -> String {
    let from = job.from_rim(job.probe.backshort_um);
    fill("{} outside", &[&job.unit.figure(from)])
}

const LIST: &[(When, &str)] = &[
    (When::Always, "Can ({metal}), {inside} inside, {deep} deep"),
    (
        When::Flange,
        "{connector}: four {screws} screws with nuts and toothed washers",
    ),
    (When::Nut, "{connector} with its nut and toothed washer"),
    (When::Solder, "{connector}, soldered to the wall"),
    (
        When::Always,
        "Copper wire {wire} {gauge}, {start} to start with",
    ),
    (When::Sleeve, "Sleeve {sleeve}, {length}"),
    (When::MouthPart, "Sheet ({metal}), {sheet}, for the {part}"),
    (When::Cap, "Plastic sheet of {cap} for the cap"),
    (
        When::Bracket,
        "Bracket with tripod thread 1/4-20 (ISO 1222), two rivets or screws",
    ),
    (When::Always, "Solder with flux, neutral-cure sealant, tape"),
    (
        When::Always,
        "Ruler, centre punch, drills, step drill or reamer, file, iron, clamp, goggles, gloves",
    ),
];

/// The parts list.
pub(crate) fn parts_list(job: &PrintJob) -> Vec<String> {
    let mut list = Vec::new();
    for (when, words) in LIST {
        if when.holds(job) {
            list.push(say(job, words));
        }
    }
    for screw in &job.screws {
        list.push(fill(
            "Tuning screw for a hole of {}, with two nuts, {} deep",
            &[&diameter(job, screw.hole_um), &length(job, screw.depth_um)],
        ));
    }
    list
}

/// A computed sentence in letters that the standard fonts have.
pub(crate) fn plain(note: &str) -> String {
    const SAME: [(char, &str); 9] = [
        ('⌀', "Ø"),
        ('−', "-"),
        ('Ω', "ohm"),
        ('≤', "at most "),
        ('≥', "at least "),
        ('≈', "about "),
        ('Γ', "reflection"),
        ('\u{2009}', "\u{a0}"),
        ('\u{202f}', "\u{a0}"),
    ];
    let mut words = String::new();
    for character in note.chars() {
        match SAME.iter().find(|(sign, _)| *sign == character) {
            Some((_, same)) => words.put(same),
            None => words.push(character),
        }
    }
    words
}
