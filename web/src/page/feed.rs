//! The feed: wire, its place, its hole and its connector.

use tinwave_core::design::Sleeve;
use tinwave_core::si::{SiDesign, micrometres};

use super::live::Named;
use super::markup::{fill, flag, group, option};
use super::model::Model;
use super::said::{self, Place};
use crate::connectors::{CONNECTORS, ConnectorChoice, ConnectorKind, Mounting, connector};
use crate::entry;
use crate::wire_gauges::{self, GaugeSystem, WireGauge};
use crate::workpiece::Workpiece;

/// Where the hole's size comes from.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Hole {
    /// The hole that makes a 50-ohm air line with the wire.
    Line,
    /// The connector's own dielectric or outer conductor.
    Connector,
    Typed,
}

/// Permittivity of a fresh sleeve: solid polyethylene, 2.25 to 2.35 in
/// handbooks (from memory).
const SLEEVE_PERMITTIVITY_MILLI: u32 = 2_300;

/// Where the hole's size comes from at present.
pub(super) fn hole(model: &Model) -> Hole {
    match model.work.design.probe.hole_diameter_um {
        None => Hole::Line,
        hole if !model.hole_typed && hole == model.work.connector.line_hole_um() => Hole::Connector,
        Some(_) => Hole::Typed,
    }
}

/// Takes the hole's size from elsewhere.
pub(super) fn take_hole(work: &mut Workpiece, hole: Hole) {
    let effective = effective_hole_um(work);
    work.design.probe.hole_diameter_um = match hole {
        Hole::Line => None,
        Hole::Connector => work.connector.line_hole_um().or(Some(effective)),
        Hole::Typed => Some(effective),
    };
}

/// The hole that holds, its default filled in.
fn effective_hole_um(work: &Workpiece) -> u32 {
    micrometres(2.0 * SiDesign::new(&work.design).hole_radius_m)
}

/// Takes a connector of another kind, with the mounting that it offers.
pub(super) fn take_kind(work: &mut Workpiece, kind: ConnectorKind) {
    let mounting = work.connector.mounting;
    let offered = connector(kind).mountings;
    let mounting = if offered.contains(&mounting) {
        mounting
    } else {
        offered.first().copied().unwrap_or(mounting)
    };
    take_connector(work, ConnectorChoice { kind, mounting });
}

/// Takes another mounting.
pub(super) fn take_mounting(work: &mut Workpiece, mounting: Mounting) {
    let kind = work.connector.kind;
    take_connector(work, ConnectorChoice { kind, mounting });
}

/// A hole that was the old connector's becomes the new one's, and the
/// reference is the connector's impedance.
fn take_connector(work: &mut Workpiece, chosen: ConnectorChoice) {
    let probe = &mut work.design.probe;
    let follows =
        probe.hole_diameter_um.is_some() && probe.hole_diameter_um == work.connector.line_hole_um();
    if follows {
        probe.hole_diameter_um = chosen.line_hole_um();
    }
    probe.reference_milliohm = connector(chosen.kind).impedance_ohm * 1_000;
    work.connector = chosen;
}

/// Puts a sleeve over the wire, or takes it off.
pub(super) fn switch_sleeve(work: &mut Workpiece) {
    let probe = &mut work.design.probe;
    probe.sleeve = match probe.sleeve {
        Some(_) => None,
        None => Some(Sleeve {
            outside_diameter_um: probe.wire_diameter_um.saturating_mul(2),
            permittivity_milli: SLEEVE_PERMITTIVITY_MILLI,
        }),
    };
}

fn summary(model: &Model) -> String {
    let probe = &model.work.design.probe;
    let length = |um| entry::format_length(um, model.unit);
    [
        &length(probe.length_um),
        " of ",
        &entry::format_length_exact(probe.wire_diameter_um, model.unit),
        " ",
        model.unit.symbol(),
        " wire, ",
        &length(probe.backshort_distance_um),
        " from the back wall",
    ]
    .concat()
}

fn hole_line(model: &Model) -> String {
    let hole = entry::format_length(effective_hole_um(&model.work), model.unit);
    ["The field is computed with a hole of ", &hole, "."].concat()
}

fn all_gauges() -> impl Iterator<Item = &'static WireGauge> {
    GaugeSystem::ALL
        .into_iter()
        .flat_map(|system| wire_gauges::gauges(system).iter())
}

fn gauge_options() -> String {
    let mut list = String::new();
    option(&mut list, "", "Another diameter");
    for system in GaugeSystem::ALL {
        let mut options = String::new();
        for gauge in wire_gauges::gauges(system) {
            let label = gauge.label();
            let diameter = entry::format_scaled(i64::from(gauge.diameter_um), 3);
            fill(
                &mut options,
                "<option value=\"~\">~ (~ mm)</option>",
                &[&label, &label, &diameter],
            );
        }
        group(&mut list, system.name(), &options);
    }
    list
}

/// The first gauge of the wire's diameter, to the hundredth of a millimetre
/// that a caliper reads.
fn gauge_of(model: &Model) -> String {
    let diameter = model.work.design.probe.wire_diameter_um;
    all_gauges()
        .find(|gauge| gauge.diameter_um.abs_diff(diameter) <= 5)
        .map_or_else(String::new, |gauge| gauge.label())
}

/// The diameter of a gauge of the list.
pub(super) fn gauge_diameter_um(label: &str) -> Option<u32> {
    all_gauges()
        .find(|gauge| gauge.label() == label)
        .map(|gauge| gauge.diameter_um)
}

/// The mountings that the connector offers.
fn mounting_options(model: &Model) -> String {
    let mut list = String::new();
    for mounting in connector(model.work.connector.kind).mountings {
        option(&mut list, mounting.key(), mounting.words());
    }
    list
}

fn connector_options() -> String {
    let mut list = String::new();
    for connector in CONNECTORS {
        option(&mut list, connector.kind.key(), connector.name);
    }
    list
}

/// What the places of this part show.
pub(super) const NAMES: &[Named] = &[
    ("feed", summary),
    ("gauges", |_| gauge_options()),
    ("gauge", gauge_of),
    ("connectors", |_| connector_options()),
    ("connector", |model| {
        model.work.connector.kind.key().to_owned()
    }),
    ("mountings", mounting_options),
    ("mounting", |model| {
        model.work.connector.mounting.key().to_owned()
    }),
    ("hole-line", |model| flag(hole(model) == Hole::Line)),
    ("hole-connector", |model| {
        flag(hole(model) == Hole::Connector)
    }),
    ("hole-typed", |model| flag(hole(model) == Hole::Typed)),
    ("hole-note", hole_line),
    ("connector-warning", |model| {
        let warning = model.work.connector.warning(model.work.design.band);
        warning.unwrap_or_default().to_owned()
    }),
    ("sleeve", |model| {
        flag(model.work.design.probe.sleeve.is_some())
    }),
    ("feed-findings", |model| said::findings(model, Place::Feed)),
];
