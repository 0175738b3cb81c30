//! What stands at an end: this design, a kept one, or something whose gain is known.

use leptos::prelude::*;
use tinwave_core::radio_link::End;
use tinwave_maker::link;
use tinwave_maker::link_plan::{EndAntenna, FarPolarisation, PlanNumber};
use tinwave_words::link_plan::{self as words, ChoiceWord, choice_words};

use super::plan_field::PlanField;
use crate::kit::{Choice, FindingBlock, FindingTone, Pick, PickGroup, Picker};
use crate::state::Workshop;

const THIS: &str = "this";
const STATED: &str = "stated";

/// The antenna of an end.
#[component]
pub fn AntennaEntry(
    /// Which end.
    end: End,
) -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let plan = workshop.plan();
    let chosen = move || {
        plan.entries.with(|plan| match &plan.end(end).antenna {
            EndAntenna::ThisDesign => THIS.to_owned(),
            EndAntenna::Stated => STATED.to_owned(),
            EndAntenna::Kept(fragment) => fragment.clone(),
        })
    };
    let groups = move || {
        let kept = workshop.memory.kept.with(|kept| kept.saved.clone());
        let saved = kept.into_iter().map(|one| Pick::new(one.link, one.name));
        let mut groups = vec![PickGroup {
            name: choice_words(ChoiceWord::Usual).to_owned(),
            picks: vec![
                Pick::new(THIS, choice_words(this_word(end))),
                Pick::new(STATED, choice_words(ChoiceWord::SomethingElse)),
            ],
        }];
        let picks: Vec<Pick> = saved.collect();
        if !picks.is_empty() {
            groups.push(PickGroup {
                name: choice_words(ChoiceWord::KeptDesigns).to_owned(),
                picks,
            });
        }
        groups
    };
    let choose = move |key: String| {
        plan.change(|plan| {
            plan.end_mut(end).antenna = match key.as_str() {
                THIS => EndAntenna::ThisDesign,
                STATED => EndAntenna::Stated,
                _ => EndAntenna::Kept(key),
            };
        });
    };
    // A design that was taken off the shelf is still the far end's: its own name stands.
    let says = move || {
        plan.entries.with(|plan| match &plan.end(end).antenna {
            EndAntenna::Kept(fragment) => name_of(fragment),
            EndAntenna::ThisDesign | EndAntenna::Stated => String::new(),
        })
    };
    let note = move || {
        plan.answer.with(|answer| {
            let note = answer
                .as_ref()
                .map(|answer| words::antenna_note(answer, end));
            note.unwrap_or_default()
        })
    };
    let is_stated = move || {
        plan.entries
            .with(|plan| plan.end(end).antenna == EndAntenna::Stated)
    };
    let is_unusable = move || {
        let is_kept = plan
            .entries
            .with(|plan| matches!(plan.end(end).antenna, EndAntenna::Kept(_)));
        let lacks = plan.answer.with(|answer| {
            let end = answer.as_ref().map(|answer| answer.end(end));
            end.is_some_and(|end| end.antenna.is_none())
        });
        is_kept && lacks
    };
    let label = match end {
        End::A => ChoiceWord::AntennaHere,
        End::B => ChoiceWord::AntennaFar,
    };
    view! {
        <Picker label=choice_words(label) note=note groups=groups chosen=chosen says=says on_choose=choose/>
        <Show when=is_stated>
            <PlanField number=PlanNumber::Gain(end)/>
            <PlanField number=PlanNumber::Width(end)/>
        </Show>
        <Show when=is_unusable>
            <FindingBlock tone=FindingTone::Caution headline=words::kept_unusable().0
                text=words::kept_unusable().1/>
        </Show>
    }
}

const fn this_word(end: End) -> ChoiceWord {
    match end {
        End::A => ChoiceWord::ThisCan,
        End::B => ChoiceWord::CanLikeThis,
    }
}

/// The name that a kept design has of itself.
fn name_of(fragment: &str) -> String {
    let opened = link::decode(fragment).ok();
    let name = opened.map(|opened| opened.work.design.name);
    name.filter(|name| !name.is_empty())
        .unwrap_or_else(|| choice_words(ChoiceWord::DesignOfLink).to_owned())
}

/// How the far antenna's wave lies.
#[component]
pub fn FarWave() -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let kinds = [
        ("straight", FarPolarisation::Linear, ChoiceWord::Straight),
        ("right", FarPolarisation::RightHand, ChoiceWord::TurnsRight),
        ("left", FarPolarisation::LeftHand, ChoiceWord::TurnsLeft),
    ];
    let picks: Vec<Pick> = kinds
        .iter()
        .map(|(key, _, word)| Pick::new(*key, choice_words(*word)))
        .collect();
    let chosen = move || {
        let kind = plan.entries.with(|plan| plan.far_polarisation);
        let found = kinds.iter().find(|(_, one, _)| *one == kind);
        found.map_or_else(String::new, |(key, ..)| (*key).to_owned())
    };
    let choose = move |key: String| {
        if let Some((_, kind, _)) = kinds.iter().find(|(known, ..)| *known == key) {
            plan.change(|plan| plan.far_polarisation = *kind);
        }
    };
    let is_straight = move || {
        plan.entries
            .with(|plan| plan.far_polarisation == FarPolarisation::Linear)
    };
    view! {
        <Choice label=choice_words(ChoiceWord::FarWave) picks=picks chosen=chosen on_choose=choose labelled=true/>
        <Show when=is_straight><PlanField number=PlanNumber::Turn/></Show>
    }
}
