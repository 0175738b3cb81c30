//! Cut and drill: figures from faces that a ruler or a caliper can touch.

use leptos::prelude::*;
use tinwave_core::best_cut::BestCut;
use tinwave_core::ruler::RulerFigures;

use super::cautions;
use super::parts::{live_paragraph, results, row, section};
use super::search::Search;
use super::state::{Now, Page};
use crate::connectors::connector;
use crate::entry::{self, LengthUnit};
use crate::words::{Occasion, Shown};

fn length(um: u32, unit: LengthUnit) -> String {
    let text = entry::format_length(um, unit);
    match unit {
        LengthUnit::Millimetre => text,
        // The mark on the tape beside the decimal.
        LengthUnit::Inch => [&text, " (", &entry::inch_fraction(um, 64).to_string(), ")"].concat(),
    }
}

fn ruler(now: &Now<'_>) -> RulerFigures {
    RulerFigures::new(&now.work.design)
}

/// The wire from the face that the connector rests on.
fn wire_from_face_um(now: &Now<'_>) -> u32 {
    let probe = now.work.design.probe.length_um;
    let face = now
        .work
        .connector
        .face_from_inner_wall_um(now.work.design.can.wall_um);
    probe.saturating_add(face)
}

fn summary(now: &Now<'_>) -> String {
    [
        "hole ",
        &entry::format_length(ruler(now).hole_from_closed_rim_um, now.unit),
        " from the closed rim, wire ",
        &entry::format_length(wire_from_face_um(now), now.unit),
        " from the connector's face",
    ]
    .concat()
}

fn drill_text(now: &Now<'_>) -> String {
    match now.work.connector.drill_um() {
        Some(um) => [
            &length(um, now.unit),
            " for ",
            connector(now.work.connector.kind).name,
        ]
        .concat(),
        None => "measure your connector".to_owned(),
    }
}

/// How far the hole and the wire may be off: of the cut in use.
fn slack_lines(search: Search, page: Page) -> Signal<String> {
    Signal::derive(move || {
        let unit = page.unit.get();
        let (wire, distance) = page.work.with(|work| {
            let probe = &work.design.probe;
            (probe.length_um, probe.backshort_distance_um)
        });
        let in_use = |found: &super::search::Found| -> Option<BestCut> {
            found
                .cuts
                .iter()
                .find(|cut| cut.length_um == wire && cut.backshort_distance_um == distance)
                .copied()
        };
        let cut = search
            .pair
            .with(in_use)
            .or_else(|| search.length.with(in_use));
        let Some(cut) = cut else {
            return "How far each may be off is worked out for the best cuts: take one under 'Match' to see it here.".to_owned();
        };
        let lines = [
            super::matching::slack_sentence("wire", cut.length_slack, unit),
            super::matching::slack_sentence("hole", cut.distance_slack, unit),
        ];
        lines.join(" ")
    })
}

/// The section.
pub(super) fn cut_section(page: Page, search: Search) -> AnyView {
    section(
        page,
        "cut",
        "7 Cut and drill",
        true,
        summary,
        vec![
            results(vec![
                row(page, "Hole centre, from the closed end's outer rim", |now| {
                    length(ruler(now).hole_from_closed_rim_um, now.unit)
                }, Shown::HolePosition),
                row(page, "Hole centre, from the open rim", |now| {
                    ruler(now)
                        .hole_from_open_rim_um
                        .map_or_else(|| "beyond the rim".to_owned(), |um| length(um, now.unit))
                }, Shown::HolePosition),
                row(page, "Drill", drill_text, Shown::HoleSize),
                row(page, "Wire, from the connector's face", |now| {
                    length(wire_from_face_um(now), now.unit)
                }, Shown::WireLength),
                row(page, "Wire, from the inner wall", |now| {
                    length(ruler(now).wire_from_inner_wall_um, now.unit)
                }, Shown::WireLength),
                row(page, "Whole can, rim to rim", |now| {
                    length(ruler(now).overall_length_um, now.unit)
                }, Shown::HolePosition),
            ]),
            live_paragraph("note", page.text(|now| {
                ["The wire is measured from ", now.work.connector.measured_from(), ". The base counts as thick as the wall; its recess is added to the hole's distance."].concat()
            })),
            live_paragraph("note", slack_lines(search, page)),
            live_paragraph("note", page.text(|now| {
                let kind = connector(now.work.connector.kind);
                [kind.note, " Source: ", kind.source, " (", kind.confidence.words(), ")."].concat()
            })),
            cautions::list(page, &[Occasion::Drill]),
        ],
    )
}
