//! Cut and drill: figures from faces that a ruler or a caliper can touch.

use tinwave_core::ruler::RulerFigures;

use super::live::Named;
use super::match_part::{in_use, slack_sentence};
use super::model::Model;
use super::said;
use crate::connectors::connector;
use crate::entry::{self, LengthUnit};
use crate::words::Occasion;

fn length(um: u32, unit: LengthUnit) -> String {
    let text = entry::format_length(um, unit);
    match unit {
        LengthUnit::Millimetre => text,
        // The mark on the tape beside the decimal.
        LengthUnit::Inch => [&text, " (", &entry::inch_fraction(um, 64).to_string(), ")"].concat(),
    }
}

fn ruler(model: &Model) -> RulerFigures {
    RulerFigures::new(&model.work.design)
}

/// The wire from the face that the connector rests on.
fn wire_from_face_um(model: &Model) -> u32 {
    let work = &model.work;
    let face = work
        .connector
        .face_from_inner_wall_um(work.design.can.wall_um);
    work.design.probe.length_um.saturating_add(face)
}

fn summary(model: &Model) -> String {
    [
        "hole ",
        &entry::format_length(ruler(model).hole_from_closed_rim_um, model.unit),
        " from the closed rim, wire ",
        &entry::format_length(wire_from_face_um(model), model.unit),
        " from the connector's face",
    ]
    .concat()
}

fn drill_text(model: &Model) -> String {
    match model.work.connector.drill_um() {
        Some(um) => {
            let name = connector(model.work.connector.kind).name;
            [&length(um, model.unit), " for ", name].concat()
        }
        None => "measure your connector".to_owned(),
    }
}

/// How far the hole and the wire may be off: of the cut in use.
fn slack_lines(model: &Model) -> String {
    let mut all = model.cuts.pair.cuts.iter().chain(&model.cuts.length.cuts);
    let Some(cut) = all.find(|cut| in_use(model, cut)) else {
        return "How far each may be off is worked out for the best cuts: take one under Match to see it here.".to_owned();
    };
    [
        slack_sentence("wire", cut.length_slack, model.unit),
        slack_sentence("hole", cut.distance_slack, model.unit),
    ]
    .join(" ")
}

fn faces(model: &Model) -> String {
    [
        "The wire is measured from ",
        model.work.connector.measured_from(),
        ". The base counts as thick as the wall; its recess is added to the hole's distance.",
    ]
    .concat()
}

fn about_connector(model: &Model) -> String {
    let kind = connector(model.work.connector.kind);
    [
        kind.note,
        " Source: ",
        kind.source,
        " (",
        kind.confidence.words(),
        ").",
    ]
    .concat()
}

/// What the places of this part show.
pub(super) const NAMES: &[Named] = &[
    ("cut", summary),
    ("hole-closed-rim", |model| {
        length(ruler(model).hole_from_closed_rim_um, model.unit)
    }),
    ("hole-open-rim", |model| {
        let hole = ruler(model).hole_from_open_rim_um;
        hole.map_or_else(|| "beyond the rim".to_owned(), |um| length(um, model.unit))
    }),
    ("drill", drill_text),
    ("wire-face", |model| {
        length(wire_from_face_um(model), model.unit)
    }),
    ("wire-wall", |model| {
        length(ruler(model).wire_from_inner_wall_um, model.unit)
    }),
    ("overall", |model| {
        length(ruler(model).overall_length_um, model.unit)
    }),
    ("faces", faces),
    ("slack", slack_lines),
    ("about-connector", about_connector),
    ("drill-cautions", |model| {
        said::cautions(model, &[Occasion::Drill])
    }),
    ("cautions", |model| {
        said::cautions(model, &[Occasion::Solder, Occasion::Power, Occasion::Mount])
    }),
];
