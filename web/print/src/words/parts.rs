//! What is needed: the parts list and the words round the section drawing.

use super::{diameter, length, metal};
use crate::figure::whole;
use crate::fill::fill;
use crate::job::{Fixing, LengthUnit, Mouth, PrintJob};

pub(crate) const PARTS: &str = "Parts and tools";
pub(crate) const STEPS: &str = "Order of work";
pub(crate) const COMPUTED: &str = "Computed for this design";

/// Wire that is held while it is trimmed. Common practice, no source.
pub(crate) const SPARE_WIRE_UM: u32 = 10_000;

/// Under the section drawing.
pub(crate) fn section_caption(job: &PrintJob, scale: i32) -> String {
    let unit = match job.unit {
        LengthUnit::Millimetre => "In mm, scale 1:",
        LengthUnit::Inch => "In inches, scale 1:",
    };
    fill(
        "{}{}. Wire {}, hole {}.",
        &[
            unit,
            &whole(i64::from(scale)),
            &diameter(job, job.probe.wire_diameter_um),
            &diameter(job, job.panel.drill_um),
        ],
    )
}

/// The lower dimension of the section drawing.
pub(crate) fn hole_from_rim(job: &PrintJob) -> String {
    let from = job.from_rim(job.probe.backshort_um);
    fill("{} outside", &[&job.unit.figure(from)])
}

/// The metric screw that goes through a hole (ISO 273, fine to medium).
fn screw_for(hole_um: u32) -> &'static str {
    match hole_um {
        0..2_600 => "M2",
        2_600..3_200 => "M2.5",
        3_200..4_300 => "M3",
        _ => "M4",
    }
}

fn connector(job: &PrintJob) -> String {
    let fixed_by = match job.panel.fixing {
        Fixing::Flange { hole_um, .. } => fill(
            ": four {} screws with nuts and toothed washers",
            &[screw_for(hole_um)],
        ),
        Fixing::Nut => " with its nut and toothed washer".into(),
        Fixing::Solder => ", soldered to the wall".into(),
    };
    fill("{}{}", &[job.panel.name.as_str(), &fixed_by])
}

fn wire(job: &PrintJob) -> String {
    let cut = length_from_face(job) + SPARE_WIRE_UM;
    let mut words = fill(
        "Copper wire {}",
        &[&diameter(job, job.probe.wire_diameter_um)],
    );
    if !job.probe.gauge.is_empty() {
        words.push_str(" (");
        words.push_str(&job.probe.gauge);
        words.push(')');
    }
    words.push_str(", ");
    words.push_str(&length(job, cut));
    words.push_str(" to start with");
    words
}

/// Wire from the connector's face, which lies on the outside of the wall.
pub(crate) fn length_from_face(job: &PrintJob) -> u32 {
    job.probe.length_um.saturating_add(job.can.wall_um)
}

fn mouth(job: &PrintJob) -> Option<String> {
    let (what, sheet) = match job.mouth {
        Mouth::Open => return None,
        Mouth::Funnel { sheet_um, .. } => ("the funnel", sheet_um),
        Mouth::Flange { sheet_um, .. } => ("the flange", sheet_um),
        Mouth::Choke { sheet_um, .. } => ("the choke cup", sheet_um),
    };
    let sheet = job.unit.fine_length(i64::from(sheet));
    Some(fill(
        "Sheet of {}, {}, for {}",
        &[metal(job.can.metal), &sheet, what],
    ))
}

/// The parts list.
pub(crate) fn parts_list(job: &PrintJob) -> Vec<String> {
    let can = &job.can;
    let mut list = vec![
        fill(
            "Can of {}, {} inside, {} deep",
            &[
                metal(can.metal),
                &diameter(job, can.inside_diameter_um()),
                &length(job, can.open_length_um),
            ],
        ),
        connector(job),
        wire(job),
    ];
    if let Some(sleeve) = job.probe.sleeve_um {
        let sleeve = diameter(job, sleeve);
        let long = length(job, job.probe.length_um);
        list.push(fill("Sleeve {}, {}", &[&sleeve, &long]));
    }
    for screw in &job.screws {
        let hole = diameter(job, screw.hole_um);
        let deep = length(job, screw.depth_um);
        list.push(fill(
            "Tuning screw for a hole of {}, with two nuts, {} deep",
            &[&hole, &deep],
        ));
    }
    list.extend(mouth(job));
    if let Some(cap) = job.cap {
        let sheet = job.unit.fine_length(i64::from(cap.sheet_um));
        list.push(fill("Plastic sheet of {} for the cap", &[&sheet]));
    }
    if let Some(bracket) = job.bracket {
        let hole = diameter(job, bracket.hole_um);
        list.push(fill(
            "Bracket with tripod thread 1/4-20 (ISO 1222), two rivets or screws for {}",
            &[&hole],
        ));
    }
    list.push("Solder with flux, neutral-cure sealant, tape".into());
    list.push(
        "Ruler, centre punch, drills, step drill or reamer, file, iron, clamp, goggles, gloves"
            .into(),
    );
    list
}

/// A computed sentence in letters that the standard fonts have.
pub(crate) fn plain(note: &str) -> String {
    let mut words = String::with_capacity(note.len());
    for character in note.chars() {
        match character {
            '⌀' => words.push('Ø'),
            '−' => words.push('-'),
            'Ω' => words.push_str("ohm"),
            '≤' => words.push_str("at most "),
            '≥' => words.push_str("at least "),
            '≈' => words.push_str("about "),
            'Γ' => words.push_str("reflection"),
            '\u{2009}' | '\u{202f}' => words.push('\u{a0}'),
            other => words.push(other),
        }
    }
    words
}
