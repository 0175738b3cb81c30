//! The feed: wire, its place, its hole and its connector.

use leptos::prelude::*;
use tinwave_core::design::Sleeve;
use tinwave_core::design_error::Field;
use tinwave_core::si::{SiDesign, micrometres};

use super::entries::Entry;
use super::entry_field::entry_field;
use super::parts::{
    Place, choice, fields, findings, group_html, live_paragraph, option_html, radios, section,
};
use super::state::{Now, Page};
use crate::connectors::{CONNECTORS, ConnectorChoice, ConnectorKind, Mounting, connector};
use crate::entry;
use crate::history::Change;
use crate::wire_gauges::{self, GaugeSystem};
use crate::words;
use crate::workpiece::Workpiece;

/// Where the hole's size comes from.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Hole {
    /// The hole that makes a 50-ohm air line with the wire.
    Line,
    /// The connector's own dielectric or outer conductor.
    Connector,
    Typed,
}

/// Permittivity of a fresh sleeve: polyethylene, 2.3 (solid polyethylene,
/// 2.25 to 2.35 in handbooks; from memory).
const SLEEVE_PERMITTIVITY_MILLI: u32 = 2_300;

fn summary(now: &Now<'_>) -> String {
    let probe = &now.work.design.probe;
    let length = |um| entry::format_length(um, now.unit);
    [
        &length(probe.length_um),
        " of ",
        &length(probe.wire_diameter_um),
        " wire, ",
        &length(probe.backshort_distance_um),
        " from the back wall",
    ]
    .concat()
}

/// The section.
pub(super) fn feed_section(page: Page) -> AnyView {
    let typed = RwSignal::new(false);
    let hole = Memo::new(move |_| page.work.with(|work| hole_of(work, typed.get())));
    let hole_choice = radios(
        "hole-by",
        "Hole in the wall",
        &[
            ("Makes a 50 \u{3a9} line", Hole::Line),
            ("As the connector", Hole::Connector),
            ("Typed", Hole::Typed),
        ],
        hole.into(),
        pick_hole,
        page,
    );
    // A typed hole stays typed even where it equals the connector's.
    Effect::new(move |_| {
        let id = Entry::Plain(Field::HoleDiameter).id();
        if page.wrong.with(|wrong| wrong.contains(&id)) {
            typed.set(true);
        }
    });
    let hole_entry = move || {
        (hole.get() == Hole::Typed)
            .then(|| entry_field(page, Entry::Plain(Field::HoleDiameter), true))
    };
    section(
        page,
        "feed",
        "3 Feed",
        true,
        summary,
        vec![
            fields(vec![
                entry_field(page, Entry::Plain(Field::ProbeLength), true),
                entry_field(page, Entry::Plain(Field::BackshortDistance), true),
                entry_field(page, Entry::Wire, true),
                gauge_choice(page),
                connector_choice(page),
                mounting_choice(page),
            ]),
            hole_choice,
            fields(vec![hole_entry.into_any()]),
            live_paragraph("note", page.text(hole_line)),
            live_paragraph("note warning", page.text(connector_warning)),
            sleeve(page),
            finer(page),
            findings(page, Place::Feed),
        ],
    )
}

fn hole_of(work: &Workpiece, typed: bool) -> Hole {
    match work.design.probe.hole_diameter_um {
        None => Hole::Line,
        hole if !typed && hole == work.connector.line_hole_um() => Hole::Connector,
        Some(_) => Hole::Typed,
    }
}

/// The hole that holds, its default filled in.
fn effective_hole_um(work: &Workpiece) -> u32 {
    micrometres(2.0 * SiDesign::new(&work.design).hole_radius_m)
}

fn pick_hole(page: Page, hole: Hole) {
    let mut work = page.work.get_untracked();
    let effective = effective_hole_um(&work);
    let of_connector = work.connector.line_hole_um();
    work.design.probe.hole_diameter_um = match hole {
        Hole::Line => None,
        Hole::Connector => of_connector.or(Some(effective)),
        // A hair beside the connector's, so that it counts as typed.
        Hole::Typed => Some(if of_connector == Some(effective) {
            effective.saturating_add(10)
        } else {
            effective
        }),
    };
    page.replace(work, Change::Field(Field::HoleDiameter));
}

fn hole_line(now: &Now<'_>) -> String {
    let hole = effective_hole_um(now.work);
    [
        "The field is computed with a hole of ",
        &entry::format_length(hole, now.unit),
        ".",
    ]
    .concat()
}

fn connector_warning(now: &Now<'_>) -> String {
    now.work
        .connector
        .warning(now.work.design.band)
        .unwrap_or_default()
        .to_owned()
}

fn gauge_choice(page: Page) -> AnyView {
    let mut list = String::new();
    option_html(&mut list, "", "Another diameter");
    for system in GaugeSystem::ALL {
        group_html(&mut list, Some(system.name()));
        for gauge in wire_gauges::gauges(system) {
            let label = [
                &gauge.label(),
                " (",
                &entry::format_scaled(i64::from(gauge.diameter_um), 3),
                " mm)",
            ]
            .concat();
            option_html(&mut list, &gauge.label(), &label);
        }
        group_html(&mut list, None);
    }
    choice(
        "gauge",
        "Wire gauge",
        list,
        page.text(|now| gauge_of(now.work.design.probe.wire_diameter_um)),
        Box::new(move |label| {
            if let Some(um) = gauge_diameter(&label) {
                let mut work = page.work.get_untracked();
                work.design.probe.wire_diameter_um = um;
                page.replace(work, Change::Field(Field::WireDiameter));
            }
        }),
    )
}

/// The first gauge of exactly this diameter.
fn gauge_of(diameter_um: u32) -> String {
    GaugeSystem::ALL
        .into_iter()
        .flat_map(|system| wire_gauges::gauges(system).iter())
        .find(|gauge| gauge.diameter_um == diameter_um)
        .map_or_else(String::new, |gauge| gauge.label())
}

fn gauge_diameter(label: &str) -> Option<u32> {
    GaugeSystem::ALL
        .into_iter()
        .flat_map(|system| wire_gauges::gauges(system).iter())
        .find(|gauge| gauge.label() == label)
        .map(|gauge| gauge.diameter_um)
}

fn connector_choice(page: Page) -> AnyView {
    let mut list = String::new();
    for connector in CONNECTORS {
        option_html(&mut list, connector.kind.key(), connector.name);
    }
    choice(
        "connector",
        "Connector",
        list,
        page.text(|now| now.work.connector.kind.key().to_owned()),
        Box::new(move |key| {
            if let Some(kind) = ConnectorKind::from_key(&key) {
                let mounting = page.work.with_untracked(|work| work.connector.mounting);
                let offered = connector(kind).mountings;
                let mounting = if offered.contains(&mounting) {
                    mounting
                } else {
                    offered.first().copied().unwrap_or(mounting)
                };
                take_connector(page, ConnectorChoice { kind, mounting });
            }
        }),
    )
}

fn mounting_choice(page: Page) -> AnyView {
    let kind = Memo::new(move |_| page.work.with(|work| work.connector.kind));
    (move || {
        let mut list = String::new();
        for mounting in connector(kind.get()).mountings {
            option_html(&mut list, mounting.key(), mounting.words());
        }
        choice(
            "mounting",
            "Fixed by",
            list,
            page.text(|now| now.work.connector.mounting.key().to_owned()),
            Box::new(move |key| {
                if let Some(mounting) = Mounting::from_key(&key) {
                    let kind = page.work.with_untracked(|work| work.connector.kind);
                    take_connector(page, ConnectorChoice { kind, mounting });
                }
            }),
        )
    })
    .into_any()
}

/// Takes a connector; a hole that was the old connector's becomes the new one's,
/// and the reference is the connector's impedance.
fn take_connector(page: Page, chosen: ConnectorChoice) {
    let mut work = page.work.get_untracked();
    let follows = work.design.probe.hole_diameter_um.is_some()
        && work.design.probe.hole_diameter_um == work.connector.line_hole_um();
    work.connector = chosen;
    if follows {
        work.design.probe.hole_diameter_um = chosen.line_hole_um();
    }
    work.design.probe.reference_milliohm = connector(chosen.kind).impedance_ohm * 1_000;
    page.replace(work, Change::Connector);
}

fn sleeve(page: Page) -> AnyView {
    let has = Memo::new(move |_| page.work.with(|work| work.design.probe.sleeve.is_some()));
    let entries = move || {
        has.get().then(|| {
            fields(vec![
                entry_field(page, Entry::Plain(Field::SleeveDiameter), true),
                entry_field(page, Entry::Plain(Field::SleevePermittivity), true),
            ])
        })
    };
    let switch = move |_| {
        let mut work = page.work.get_untracked();
        let probe = &mut work.design.probe;
        probe.sleeve = match probe.sleeve {
            Some(_) => None,
            None => Some(Sleeve {
                outside_diameter_um: probe.wire_diameter_um.saturating_mul(2),
                permittivity_milli: SLEEVE_PERMITTIVITY_MILLI,
            }),
        };
        page.replace(work, Change::Sleeve);
    };
    view! {
        <label class="check">
            <input type="checkbox" id="sleeve" prop:checked=has on:change=switch/>
            <span>"The wire keeps its insulation (a sleeve over its whole length)"</span>
        </label>
        {entries}
    }
    .into_any()
}

/// What most makers never touch.
fn finer(page: Page) -> AnyView {
    let label = words::label(Field::Shunt).plain;
    view! {
        <details class="finer">
            <summary>"Finer: "{label}", reference impedance"</summary>
            {fields(vec![
                entry_field(page, Entry::Plain(Field::Shunt), true),
                entry_field(page, Entry::Plain(Field::Reference), true),
            ])}
        </details>
    }
    .into_any()
}
