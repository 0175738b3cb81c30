//! Cable and connectors of an end.

use leptos::prelude::*;
use tinwave_core::radio_link::{CoaxType, Connector, End};
use tinwave_maker::link_plan::PlanNumber;
use tinwave_words::figures::db;
use tinwave_words::link_plan::{self as words, ChoiceWord, choice_words};

use super::plan_field::PlanField;
use crate::kit::{Pick, PickGroup, Picker, ShortList};
use crate::state::Workshop;

/// The cable's entries.
#[component]
pub fn Cables(
    /// Which end.
    end: End,
) -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let groups = || {
        let none = Pick::new("", choice_words(ChoiceWord::NoCable));
        let cables = CoaxType::ALL
            .into_iter()
            .map(|coax| Pick::new(coax.key(), words::cable(coax)));
        vec![PickGroup {
            name: String::new(),
            picks: std::iter::once(none).chain(cables).collect(),
        }]
    };
    let chosen = move || {
        let cable = plan.entries.with(|plan| plan.end(end).cable);
        cable.map_or_else(String::new, |coax| coax.key().to_owned())
    };
    let choose = move |key: String| {
        plan.change(|plan| plan.end_mut(end).cable = CoaxType::from_key(&key));
    };
    let has_cable = move || plan.entries.with(|plan| plan.end(end).cable.is_some());
    let note = move || {
        plan.answer.with(|answer| {
            let line = answer.as_ref().and_then(|answer| answer.end(end).line);
            line.map_or_else(String::new, |line| {
                words::cable_note(&db(line.loss_db), line.basis)
            })
        })
    };
    let label = match end {
        End::A => ChoiceWord::CableHere,
        End::B => ChoiceWord::CableFar,
    };
    view! {
        <Picker label=choice_words(label) note=note groups=groups() chosen=chosen on_choose=choose/>
        <Show when=has_cable><PlanField number=PlanNumber::Cable(end)/></Show>
        <Connectors end/>
        <PlanField number=PlanNumber::Pairs(end)/>
    }
}

#[component]
fn Connectors(end: End) -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let picks: Vec<Pick> = Connector::ALL
        .iter()
        .enumerate()
        .map(|(n, one)| Pick::new(n.to_string(), words::connector(*one)))
        .collect();
    let chosen = move || {
        let connector = plan.entries.with(|plan| plan.end(end).connector);
        let place = Connector::ALL.iter().position(|one| *one == connector);
        place.unwrap_or_default().to_string()
    };
    let choose = move |key: String| {
        let place: Option<usize> = key.parse().ok();
        if let Some(connector) = place.and_then(|n| Connector::ALL.get(n).copied()) {
            plan.change(|plan| plan.end_mut(end).connector = connector);
        }
    };
    view! {
        <ShortList label=words::connectors_of(end) picks=picks chosen=chosen on_choose=choose/>
    }
}
