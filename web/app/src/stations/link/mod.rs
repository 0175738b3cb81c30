//! The Link station: levels from end to end, margin, reach, aim, law, safety.

pub mod aim;
pub mod antenna;
pub mod before_up;
pub mod budget_table;
pub mod cables;
pub mod entries;
pub mod figures;
pub mod in_the_way;
pub mod levels;
pub mod obstacles;
pub mod path_view;
pub mod plan_field;
pub mod reach;
pub mod receive;
pub mod receiver;
pub mod rules;
pub mod savings;

use std::sync::Arc;

use leptos::prelude::*;
use tinwave_maker::link_plan::{LinkAnswer, PlanAnswer};
use tinwave_maker::station::Station;
use tinwave_words::link_plan as words;

use crate::kit::{Action, FindingBlock, FindingTone, StationPage};
use crate::state::Workshop;
use aim::AimPart;
use before_up::{BeforeUp, KeepAway};
use budget_table::StepsTable;
use entries::LinkEntries;
use figures::LinkFigures;
use levels::Levels;
use path_view::PathPart;
use reach::ReachPart;
use receive::ReceivePart;
use savings::SavingsPart;

/// The Link station.
#[component]
pub fn LinkStation() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let plan = workshop.plan;
    let waits = Memo::new(move |_| plan.waits_for_this_can());
    let answer = move || {
        let unit = workshop.unit.get();
        plan.answer.with(|answer| match answer {
            Some(_) if waits.get() => words::waits().0.to_owned(),
            Some(answer) => words::answer(answer, unit),
            None => words::out_of_range().0.to_owned(),
        })
    };
    let reason = move || {
        plan.answer.with(|answer| match answer {
            Some(_) if waits.get() => words::waits().1.to_owned(),
            Some(answer) => words::reason(answer),
            None => words::out_of_range().1.to_owned(),
        })
    };
    let todo = move || {
        waits.get().then(|| {
            view! {
                <Action text=words::waits().2 on_press=move |()| workshop.go_to(Station::Can)/>
            }
        })
    };
    view! {
        <StationPage station=Station::Link answer reason todo=move || view! { {todo} }
            picture=|| view! { <Levels/> <NotCounted/> } figures=|| view! { <LinkFigures/> }
            entries=|| view! { <LinkEntries/> } more=|| view! { <More/> }/>
    }
}

/// Further pictures and tables.
#[component]
fn More() -> impl IntoView {
    view! {
        <ReachPart/>
        <PathPart/>
        <BeforeUp/>
        <div class="part folds">
            <AimPart/>
            <KeepAway/>
            <SavingsPart/>
            <StepsTable/>
            <ReceivePart/>
        </div>
    }
}

/// What was entered and is not counted.
#[component]
fn NotCounted() -> impl IntoView {
    let workshop = expect_context::<Workshop>();
    let said = move || {
        let unit = workshop.unit.get();
        workshop.plan.answer.with(|answer| {
            let sentences = answer
                .as_ref()
                .map(|answer| words::not_counted(answer, unit));
            sentences.unwrap_or_default()
        })
    };
    move || {
        said()
            .into_iter()
            .map(|sentence| {
                view! { <FindingBlock tone=FindingTone::Caution headline=sentence/> }
            })
            .collect_view()
    }
}

/// The answer, for what needs one.
fn answer_of(workshop: Workshop) -> Option<Arc<PlanAnswer>> {
    workshop.plan.answer.get()
}

/// Something of the link, where both antennas are known and the far field holds.
fn of_link<T>(workshop: Workshop, make: impl FnOnce(&PlanAnswer, &LinkAnswer) -> T) -> Option<T> {
    let answer = answer_of(workshop)?;
    let link = answer
        .link
        .as_ref()
        .filter(|link| link.near_field_m.is_none())?;
    Some(make(&answer, link))
}
