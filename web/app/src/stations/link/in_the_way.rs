//! Walls, trees, aim, and whatever else takes power.

use leptos::prelude::*;
use tinwave_core::radio_link::{BuildingMaterial, End, Wall};
use tinwave_maker::link_plan::{MOST_WALLS, PlanNumber, materials_at};
use tinwave_words::link_plan::{self as words, ChoiceWord, choice_words};

use super::plan_field::PlanField;
use crate::kit::{Action, ActionKind, Pick, ShortList};
use crate::reactive::{live, memo};
use crate::state::Workshop;

/// Thickness of a wall that is added, m: one of bricks.
const USUAL_WALL_M: f64 = 0.12;

/// The entries.
#[component]
pub fn InTheWay() -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let count = memo(move || plan.entries.with(|plan| plan.walls.len()));
    let add = move |()| {
        let frequency_hz = plan.frequency_hz();
        let first = materials_at(frequency_hz).first().copied();
        plan.change(|plan| {
            plan.walls.push(Wall {
                material: first.unwrap_or(BuildingMaterial::Wood),
                thickness_m: USUAL_WALL_M,
            });
        });
    };
    view! {
        {live(move || (0..count.get()).map(|n| view! { <WallEntry n/> }).collect_view())}
        <Show when=move || count.get() < MOST_WALLS>
            <div class="list-add">
                <Action text=choice_words(ChoiceWord::AddWall) kind=ActionKind::Words on_press=add/>
            </div>
        </Show>
        <PlanField number=PlanNumber::Foliage sub=move || trees_note(plan)/>
        <PlanField number=PlanNumber::Pointing(End::A)/>
        <PlanField number=PlanNumber::Pointing(End::B)/>
        <PlanField number=PlanNumber::Other/>
    }
}

fn trees_note(plan: crate::state::Plan) -> String {
    plan.answer.with(|answer| {
        let trees = answer.as_ref().and_then(|answer| answer.trees);
        let loss = trees.and_then(|trees| trees.loss);
        loss.map_or_else(String::new, |loss| words::trees_note(&loss))
    })
}

/// A wall: material and thickness.
#[component]
fn WallEntry(n: usize) -> impl IntoView {
    let plan = expect_context::<Workshop>().plan();
    let material = move || {
        plan.entries
            .with(|plan| plan.walls.get(n).map(|wall| wall.material))
    };
    let picks = move || {
        let mut materials = materials_at(plan.frequency_hz());
        // The one that is chosen stays in the list, whatever the band.
        materials.extend(material().filter(|one| !materials.contains(one)));
        materials
            .into_iter()
            .map(|one| Pick::new(one.key(), words::material(one)))
            .collect::<Vec<_>>()
    };
    let chosen = move || material().map_or_else(String::new, |one| one.key().to_owned());
    let choose = move |key: String| {
        plan.change(|plan| {
            if let (Some(wall), Some(material)) =
                (plan.walls.get_mut(n), BuildingMaterial::from_key(&key))
            {
                wall.material = material;
            }
        });
    };
    let remove = move |()| {
        plan.change(|plan| {
            if n < plan.walls.len() {
                plan.walls.remove(n);
            }
        });
    };
    let note = move || {
        plan.answer.with(|answer| {
            let wall = answer.as_ref().and_then(|answer| answer.walls.get(n));
            wall.map_or_else(String::new, words::wall_note)
        })
    };
    view! {
        <ShortList label=words::wall_of(n) note=note picks=picks chosen=chosen on_choose=choose/>
        <PlanField number=PlanNumber::WallThickness(n)/>
        <Action text=choice_words(ChoiceWord::Remove) says=words::remove_wall(n) kind=ActionKind::Words
            on_press=remove/>
    }
}
