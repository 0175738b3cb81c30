//! Wire and connector.

use leptos::prelude::*;
use tinwave_core::design_error::Field;
use tinwave_maker::connectors::{CONNECTORS, ConnectorKind, Mounting, connector};
use tinwave_maker::feed::all_gauges;
use tinwave_maker::history::Change;
use tinwave_maker::wire_gauges::{GaugeSystem, gauges};
use tinwave_words::feed as words;
use tinwave_words::section::fine_length;

use super::hole::HoleFold;
use crate::kit::{
    DesignField, EntryGroup, FindingBlock, FindingTone, Pick, PickGroup, Picker, ShortList,
};
use crate::state::Workshop;

/// The wire's thickness, the connector and its fixing, and what is folded in.
#[component]
pub fn WireEntries() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let work = workshop.work;
    let kind = move || work.with(|work| work.connector.kind.key().to_owned());
    let kinds: Vec<Pick> = CONNECTORS
        .iter()
        .map(|known| Pick::new(known.kind.key(), known.name))
        .collect();
    let mountings = move || {
        let offered = work.with(|work| connector(work.connector.kind).mountings);
        let pick = |mounting: &Mounting| Pick::new(mounting.key(), mounting.words());
        offered.iter().map(pick).collect::<Vec<_>>()
    };
    let mounting = move || work.with(|work| work.connector.mounting.key().to_owned());
    let take_kind = move |key: String| {
        if let Some(kind) = ConnectorKind::from_key(&key) {
            workshop.edit(Change::Connector, |work| work.take_connector_kind(kind));
        }
    };
    let take_mounting = move |key: String| {
        if let Some(mounting) = Mounting::from_key(&key) {
            workshop.edit(Change::Connector, |work| work.take_mounting(mounting));
        }
    };
    let note = move || work.with(|work| connector(work.connector.kind).note.to_owned());
    let warning = move || {
        let said = work.with(|work| work.connector.warning(work.design.band));
        said.unwrap_or_default().to_owned()
    };
    view! {
        <EntryGroup title=words::wire_and_connector()>
            <DesignField field=Field::WireDiameter label=words::wire_bare() help=words::wire_bare_help()/>
            <GaugeList/>
            <ShortList label=words::connector() picks=kinds chosen=kind on_choose=take_kind/>
            <ShortList label=words::fixed_by() picks=Signal::derive(mountings) chosen=mounting on_choose=take_mounting/>
            <p class="note below-row">{note}</p>
            <Show when=move || !warning().is_empty()>
                <FindingBlock tone=FindingTone::Caution headline=words::connector_warning() text=warning/>
            </Show>
            <HoleFold/>
        </EntryGroup>
    }
}

/// Wires by gauge, of three systems.
#[component]
fn GaugeList() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let groups = move || {
        let unit = workshop.unit.get();
        let group = |system: GaugeSystem| PickGroup {
            name: system.name().to_owned(),
            picks: gauges(system)
                .iter()
                .map(|gauge| {
                    let label = gauge.label();
                    let detail = fine_length(gauge.diameter_um, unit);
                    Pick::new(label.clone(), label).with_detail(detail)
                })
                .collect(),
        };
        GaugeSystem::ALL.into_iter().map(group).collect::<Vec<_>>()
    };
    let chosen = move || {
        let gauge = workshop.work.with(|work| work.gauge());
        gauge.map_or_else(String::new, |gauge| gauge.label())
    };
    let take = move |label: String| {
        let gauge = all_gauges().find(|gauge| gauge.label() == label);
        if let Some(gauge) = gauge {
            workshop.edit(Change::Wire, |work| {
                work.design.probe.wire_diameter_um = gauge.diameter_um;
            });
        }
    };
    view! {
        <Picker label=words::gauge() groups=Signal::derive(groups) chosen says=words::no_gauge() on_choose=take/>
    }
}
