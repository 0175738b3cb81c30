//! What is entered about the link.

use leptos::prelude::*;
use tinwave_core::radio_link::End;
use tinwave_maker::link_plan::{PlanNumber, Role};
use tinwave_words::link_plan::{self as words, ChoiceWord, PartTitle, Summary, choice_words};

use super::antenna::{AntennaEntry, FarWave};
use super::cables::Cables;
use super::in_the_way::InTheWay;
use super::obstacles::Obstacles;
use super::plan_field::PlanField;
use super::receiver::Receiver;
use super::rules::Rules;
use crate::kit::{EntryGroup, Fold, Pick, ShortList};
use crate::state::Workshop;

/// All entries of the station.
#[component]
pub fn LinkEntries() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let plan = workshop.plan();
    let sends = move |end: End| plan.entries.with(|plan| plan.sends(end));
    let summary = move |fold: Summary| {
        let unit = workshop.unit.get();
        plan.entries.with(|plan| words::summary(fold, plan, unit).1)
    };
    let title = move |fold: Summary| {
        plan.entries
            .with_untracked(|plan| words::summary(fold, plan, workshop.unit.get_untracked()).0)
    };
    view! {
        <EntryGroup title=words::part_titles(PartTitle::Entries).0>
            <PlanField number=PlanNumber::Distance/>
            <Show when=move || sends(End::A)><PlanField number=PlanNumber::Power(End::A)/></Show>
            <Show when=move || sends(End::B)><PlanField number=PlanNumber::Power(End::B)/></Show>
            <AntennaEntry end=End::A/>
            <AntennaEntry end=End::B/>
            <Fold title=title(Summary::Receiver) summary=move || summary(Summary::Receiver)>
                <WhoSends/>
                <PlanField number=PlanNumber::Fade/>
                <Receiver/>
            </Fold>
            <Fold title=title(Summary::Cables) summary=move || summary(Summary::Cables)>
                <Cables end=End::A/>
                <Cables end=End::B/>
            </Fold>
            <Fold title=title(Summary::InTheWay) summary=move || summary(Summary::InTheWay)>
                <InTheWay/>
                <FarWave/>
            </Fold>
            <Fold title=title(Summary::Path) summary=move || summary(Summary::Path)>
                <PlanField number=PlanNumber::Height(End::A)/>
                <PlanField number=PlanNumber::Height(End::B)/>
                <Obstacles/>
            </Fold>
        </EntryGroup>
        <Rules/>
    }
}

#[component]
fn WhoSends() -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let roles = [Role::Both, Role::ListensFar, Role::ListensHere];
    let picks: Vec<Pick> = roles
        .iter()
        .enumerate()
        .map(|(n, role)| Pick::new(n.to_string(), words::role(*role)))
        .collect();
    let chosen = move || {
        let role = plan.entries.with(|plan| plan.role);
        let place = roles.iter().position(|one| *one == role);
        place.unwrap_or_default().to_string()
    };
    let choose = move |key: String| {
        let role = key.parse().ok().and_then(|n: usize| roles.get(n).copied());
        if let Some(role) = role {
            plan.change(|plan| plan.role = role);
        }
    };
    view! {
        <ShortList label=choice_words(ChoiceWord::WhoSends) picks=picks chosen=chosen on_choose=choose/>
    }
}
