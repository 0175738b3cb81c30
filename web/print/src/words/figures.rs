//! The figures and names of a job that sentences speak of.

use super::{SPARE_WIRE_UM, diameter, length};
use crate::figure::{Figures, rounded, whole};
use crate::fill::{fill, fill_by};
use crate::mount::{balance, bracket_holes};
use tinwave_protocol::print::{Fixing, Mouth, PrintJob, Rim};

/// A template with names of figures in braces, filled for a job.
#[must_use]
pub(crate) fn say(job: &PrintJob, template: &str) -> String {
    fill_by(template, &mut |name| figure(job, name))
}

/// Wire from the connector's face, which lies on the outside of the wall.
pub(crate) fn length_from_face(job: &PrintJob) -> u32 {
    job.probe.length_um.saturating_add(job.can.wall_um)
}

fn fine(job: &PrintJob, um: u32) -> String {
    job.unit.fine_length(i64::from(um))
}

/// What a name stands for.
fn figure(job: &PrintJob, name: &str) -> String {
    let from_face = length_from_face(job);
    match name {
        "outside" => diameter(job, job.can.outside_diameter_um),
        "inside" => diameter(job, job.can.inside_diameter_um()),
        "deep" => length(job, job.can.open_length_um),
        "drill" => diameter(job, job.panel.drill_um),
        "wire" => diameter(job, job.probe.wire_diameter_um),
        "start" => length(job, from_face.saturating_add(SPARE_WIRE_UM)),
        "face" => fine(job, from_face),
        "length" => fine(job, job.probe.length_um),
        "covered" => diameter(job, crate::mouth_pattern::covered_um(job)),
        "screws" | "screw hole" => match job.panel.fixing {
            Fixing::Flange { hole_um, .. } if name == "screws" => screw_for(hole_um).into(),
            Fixing::Flange { hole_um, .. } => diameter(job, hole_um),
            Fixing::Nut | Fixing::Solder => String::new(),
        },
        "sleeve" => diameter(job, job.probe.sleeve_um.unwrap_or(0)),
        "cap" => fine(job, job.cap.map_or(0, |cap| cap.sheet_um)),
        "sheet" => fine(job, sheet_um(job)),
        "weight" | "balance" | "middle" | "place" | "deepest" => mounting(job, name),
        _ => name_of(job, name).to_owned(),
    }
}

fn name_of<'a>(job: &'a PrintJob, name: &str) -> &'a str {
    match name {
        "metal" => job.can.metal.key(),
        "connector" => &job.panel.name,
        "gauge" => &job.probe.gauge,
        "end" => match job.rim {
            Rim::Closed => "closed end",
            Rim::Open => "mouth",
        },
        "side" => match job.rim {
            Rim::Closed => "right",
            Rim::Open => "left",
        },
        "rim" => match job.rim {
            Rim::Closed => "the closed end’s rim",
            Rim::Open => "the rim of the mouth",
        },
        "part" => match job.mouth {
            Mouth::Open => "",
            Mouth::Funnel { .. } => "funnel",
            Mouth::Ring { .. } => "ring",
            Mouth::Choke { .. } => "choke cup",
        },
        _ => "",
    }
}

fn sheet_um(job: &PrintJob) -> u32 {
    match job.mouth {
        Mouth::Open => 0,
        Mouth::Funnel { sheet_um, .. }
        | Mouth::Ring { sheet_um, .. }
        | Mouth::Choke { sheet_um, .. } => sheet_um,
    }
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

/// Figures of the bracket and the balance.
fn mounting(job: &PrintJob, name: &str) -> String {
    let (Some(balance), Some(([lower, upper], bracket))) = (balance(job), bracket_holes(job))
    else {
        return String::new();
    };
    let middle = lower.midpoint(upper).saturating_add(job.can.base_um());
    let at_balance = middle.abs_diff(balance.from_closed_rim_um) < 1_000;
    match (name, bracket.deepest_um) {
        ("weight", _) => whole(rounded(i64::from(balance.mass_mg), 1_000)),
        ("balance", _) => length(job, balance.from_closed_rim_um),
        ("middle", _) => length(job, middle),
        ("place", _) if at_balance => String::new(),
        ("place", _) => ", as near the balance point as the can’s length lets it be".into(),
        ("deepest", Some(deepest)) => fill(
            " Nothing may stick in deeper than {}, or the VSWR moves by 0.1.",
            &[&length(job, deepest)],
        ),
        _ => String::new(),
    }
}
