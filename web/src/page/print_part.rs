//! Printing: the job that the print program is given, but for what the workbench
//! adds to it (limits of the wire's length, cap, bracket).

use tinwave_core::design::Mouth;

use super::browser;
use super::model::Model;
use super::state::Page;
use crate::connectors::{Mounting, connector};
use crate::entry::LengthUnit;
use crate::job_lines::JobLines;
use crate::wire_gauges::{self, GaugeSystem};

/// The job's lines that follow from the design; the maker's choices come beside.
fn job(model: &Model, link: &str) -> Option<String> {
    let work = &model.work;
    let (can, probe) = (&work.design.can, &work.design.probe);
    let kind = connector(work.connector.kind);
    let mut lines = JobLines::default();
    lines.words("name", &work.design.name);
    lines.words("link", link);
    let unit = match model.unit {
        LengthUnit::Millimetre => "mm",
        LengthUnit::Inch => "in",
    };
    lines.words("unit", unit);
    let outside = can
        .inside_diameter_um
        .saturating_add(can.wall_um.saturating_mul(2));
    lines.numbers("outside-diameter", &[outside]);
    lines.numbers("wall", &[can.wall_um]);
    lines.numbers("open-length", &[can.open_length_um]);
    lines.numbers("base-recess", &[can.base_recess_um]);
    lines.words("metal", can.metal.key());
    lines.numbers("wire", &[probe.wire_diameter_um]);
    lines.numbers("length", &[probe.length_um]);
    lines.numbers("backshort", &[probe.backshort_distance_um]);
    let gauge = GaugeSystem::ALL
        .into_iter()
        .flat_map(|system| wire_gauges::gauges(system).iter())
        .find(|gauge| gauge.diameter_um.abs_diff(probe.wire_diameter_um) <= 5);
    if let Some(gauge) = gauge {
        lines.words("gauge", &gauge.label());
    }
    if let Some(sleeve) = probe.sleeve {
        lines.numbers("sleeve", &[sleeve.outside_diameter_um]);
    }
    lines.words("connector", kind.name);
    lines.numbers("drill", &[work.connector.drill_um()?]);
    match (work.connector.mounting, kind.flange) {
        (Mounting::Flange, Some(flange)) => lines.numbers(
            "flange",
            &[flange.square_um, flange.hole_pitch_um, flange.hole_um],
        ),
        (Mounting::Soldered, _) => lines.words("fixing", "solder"),
        _ => lines.words("fixing", "nut"),
    }
    for screw in &work.design.screws {
        let numbers = [
            screw.axial_um.to_string(),
            screw.angle_millideg.to_string(),
            screw.diameter_um.to_string(),
            screw.depth_um.to_string(),
        ];
        lines.words("screw", &numbers.join(" "));
    }
    mouth(work.design.mouth, can.wall_um, &mut lines);
    Some(lines.into_text())
}

/// What stands at the mouth, of sheet as thick as the can's wall.
fn mouth(mouth: Mouth, sheet_um: u32, lines: &mut JobLines) {
    match mouth {
        Mouth::Funnel {
            mouth_diameter_um,
            half_angle_millideg,
        } => lines.numbers(
            "funnel",
            &[mouth_diameter_um, half_angle_millideg, sheet_um],
        ),
        Mouth::Flange {
            outside_diameter_um,
        } => lines.numbers("ring", &[outside_diameter_um, sheet_um]),
        Mouth::Choke {
            outside_diameter_um,
            depth_um,
        } => lines.numbers("choke", &[outside_diameter_um, depth_um, sheet_um]),
        Mouth::Open | Mouth::Absorbing => {}
    }
}

/// Hands the job to the start script, which fetches the print program.
pub(super) fn print(page: Page, kind: &str) {
    page.commit();
    let link = page.link();
    match page.look(|model| job(model, &link)) {
        Some(job) => browser::ask_to_print(&job, kind),
        None => browser::say(
            "print-said",
            "This connector has no hole of a known size: choose another fixing under Feed.",
        ),
    }
}
